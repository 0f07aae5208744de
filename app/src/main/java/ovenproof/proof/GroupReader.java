package ovenproof.proof;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import ovenproof.proof.Mentions.ProductMention;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;
import ovenproof.verdict.Verdict.ProductVerdict;

/**
 * The part of the field that a sentence narrows itself to: "of the three under €150", "among the
 * tier-two ovens", "apart from the Alder", "of the two". Later readers look for an extreme or a
 * count within it.
 */
final class GroupReader implements ClaimReader {

  /**
   * A part of the field.
   *
   * @param products who belongs to it
   * @param start where it is spoken of
   * @param words how a finding names it
   */
  record Group(Set<String> products, int start, int end, String words) {
    Group {
      products = Set.copyOf(products);
    }
  }

  private static final String THINGS =
      "(?:ovens?|models?|machines?|ones|products?|appliances?|candidates?)";

  /** "Of the three ovens that cost" leads up to a price. */
  private static final Pattern BEFORE_PRICE =
      Pattern.compile(
          "(?is).*\\b(?:of|among|amongst|within|in|all|any|every|other|for)\\s+(?:(?:the|all|our|these|those|any|it)\\s+)*(?:(?<count>\\d|two|three|four|five|six|seven)\\s+)?(?:"
              + THINGS
              + "\\s*)?(?:that\\s+|which\\s+)?(?:costs?\\s+|costing\\s+|sells?\\s+(?:for|at)\\s+|selling\\s+(?:for|at)\\s+|priced\\s+(?:at\\s+)?)?$|[\\s*•-]*(?:and |but )?(?:if you have )?$");

  private static final Pattern TIER =
      Pattern.compile(
          "\\b(?:of|among|amongst|within|in|inside)\\s+(?:(?:the|our|all)\\s+)*(?:(?<count>two|three|four|five)\\s+)?(?:"
              + THINGS
              + "\\s+)?(?:(?:in|of)\\s+(?:the\\s+)?)?(?:tier[\\s-](?<number>one|two|three|four|five|six|\\d)|(?<place>first|second|third|fourth|fifth|top|bottom|last)[\\s-]tier)\\b(?:\\s+"
              + THINGS
              + ")?",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern EXCLUDING =
      Pattern.compile(
          "(?is).*\\b(?:apart from|aside from|except(?: for)?|excepting|excluding|leaving (?:out|aside)|leave (?:out|aside)|not counting|discounting|ignoring|disregarding|without|other than|but for|besides|save for|if you (?:leave out|ignore)|setting aside|forget(?:ting)?)\\s+(?:the\\s+)?$");

  private static final Pattern ASIDE_AFTER =
      Pattern.compile("(?is)^\\s*(?:aside|excepted|excluded|apart)\\b.*");

  private static final Pattern PAIR =
      Pattern.compile(
          "\\b(?:of|between|among)\\s+(?:the|these|those|our)\\s+(?:two|pair|twins|couple)\\b(?!\\s+(?:that|which|who|under|below|over|above))|\\bof (?:the )?both\\b",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern OF_THOSE =
      Pattern.compile(
          "\\b(?:of|among|between)\\s+(?:those|these|the|them,? the)\\s+(?<count>two|three|four|five|six)\\b(?!\\s+(?:that|which|who|under|below|over|above|ovens (?:that|under|below)))",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern LIST_BEFORE =
      Pattern.compile("(?is).*\\b(?:of|among|between)\\s+(?:the\\s+)?$");

  private final Figures figures;

  GroupReader(Figures figures) {
    this.figures = figures;
  }

  @Override
  public void read(SentenceClaims sentence) {
    prices(sentence);
    tiers(sentence);
    exclusions(sentence);
    pairs(sentence);
    lists(sentence);
  }

  // ---- by price ----

  private void prices(SentenceClaims sentence) {
    for (NumberPhrase number : sentence.freeNumbers()) {
      boolean bounded = number.hedge() != Hedge.PLAIN && number.hedge() != Hedge.ABOUT;
      if (number.scale() == Scale.MONEY && bounded) {
        Matcher before = BEFORE_PRICE.matcher(sentence.text().substring(0, number.start()));
        if (before.matches() && !SumReader.sums(sentence.text())) {
          price(sentence, number, before);
        }
      }
    }
  }

  private void price(SentenceClaims sentence, NumberPhrase number, Matcher before) {
    Set<String> within =
        products(
            p ->
                figures.of(p).stream()
                    .filter(f -> f.kind() == Figure.Kind.PRICE)
                    .anyMatch(f -> Judge.rule(number, f, null).finding() == Finding.SUPPORTED));
    String words = number.text() + ": " + names(within);
    sentence.narrow(new Group(within, number.start(), number.end(), words));
    sentence.take(number.start(), number.end());
    String count = before.group("count");
    if (count != null) {
      count(sentence, before.start("count"), count, within, words);
    }
  }

  // ---- by tier ----

  private void tiers(SentenceClaims sentence) {
    Matcher matcher = TIER.matcher(sentence.text());
    while (matcher.find()) {
      int tier = tier(matcher);
      boolean plural = matcher.group().toLowerCase(Locale.ROOT).matches("(?s).*s$");
      boolean among =
          Wording.is(matcher.group(), "(?is)(?:of|among|amongst|within)\\b.*") || plural;
      if (among) {
        Set<String> within =
            figures.verdict().products().stream()
                .filter(p -> p.tier() != null && p.tier() == tier)
                .map(ProductVerdict::id)
                .collect(Collectors.toCollection(LinkedHashSet::new));
        String words = "tier " + tier + ": " + names(within);
        sentence.narrow(new Group(within, matcher.start(), matcher.end(), words));
        sentence.take(matcher.start(), matcher.end());
        if (matcher.group("count") != null) {
          count(sentence, matcher.start("count"), matcher.group("count"), within, words);
        }
      }
    }
  }

  private int tier(Matcher matcher) {
    String place = matcher.group("place");
    String word = (place != null ? place : matcher.group("number")).toLowerCase(Locale.ROOT);
    return switch (word) {
      case "one", "first", "top" -> 1;
      case "two", "second" -> 2;
      case "three", "third" -> 3;
      case "four", "fourth" -> 4;
      case "five", "fifth" -> 5;
      case "six" -> 6;
      case "bottom", "last" ->
          figures.verdict().products().stream()
              .map(ProductVerdict::tier)
              .filter(t -> t != null)
              .mapToInt(Integer::intValue)
              .max()
              .orElse(0);
      default -> Integer.parseInt(word);
    };
  }

  // ---- by name ----

  private void exclusions(SentenceClaims sentence) {
    List<ProductMention> named = sentence.context().named();
    for (int i = 0; i < named.size(); i++) {
      ProductMention first = named.get(i);
      int last = lastOfList(sentence.text(), named, i);
      boolean out =
          EXCLUDING.matcher(Wording.before(sentence.text(), first.start())).matches()
              || ASIDE_AFTER
                  .matcher(Wording.after(sentence.text(), named.get(last).end()))
                  .matches();
      if (out) {
        Set<String> left = new LinkedHashSet<>();
        named.subList(i, last + 1).forEach(m -> left.add(m.product()));
        Set<String> within = products(p -> !left.contains(p));
        sentence.narrow(
            new Group(within, first.start(), named.get(last).end(), "without " + names(left)));
        i = last;
      }
    }
  }

  private void pairs(SentenceClaims sentence) {
    Matcher some = OF_THOSE.matcher(sentence.text());
    while (some.find()) {
      List<String> carried = sentence.context().lists().carried();
      if (carried.size() == QuantifierReader.number(some.group("count"))) {
        Set<String> within = new LinkedHashSet<>(carried);
        sentence.narrow(new Group(within, some.start(), some.end(), names(within)));
      }
    }
    Matcher matcher = PAIR.matcher(sentence.text());
    List<String> pair = sentence.context().pair();
    while (matcher.find() && pair.size() == 2) {
      Set<String> within = new LinkedHashSet<>(pair);
      sentence.narrow(new Group(within, matcher.start(), matcher.end(), names(within)));
    }
  }

  /** "Of the Alder, the Siskin and the Rowan, …". */
  private void lists(SentenceClaims sentence) {
    List<ProductMention> named = sentence.context().named();
    for (int i = 0; i < named.size(); i++) {
      int last = lastOfList(sentence.text(), named, i);
      boolean among =
          last > i
              && LIST_BEFORE
                  .matcher(Wording.before(sentence.text(), named.get(i).start()))
                  .matches();
      if (among) {
        Set<String> within = new LinkedHashSet<>();
        named.subList(i, last + 1).forEach(m -> within.add(m.product()));
        sentence.narrow(
            new Group(within, named.get(i).start(), named.get(last).end(), names(within)));
      }
      i = last;
    }
  }

  private static int lastOfList(String text, List<ProductMention> named, int first) {
    int last = first;
    while (last + 1 < named.size()
        && ProductLists.isJoined(
            text.substring(named.get(last).end(), named.get(last + 1).start()))) {
      last++;
    }
    return last;
  }

  // ---- shared ----

  private static void count(
      SentenceClaims sentence, int start, String stated, Set<String> within, String words) {
    int number = QuantifierReader.number(stated);
    sentence.add(
        start,
        start + stated.length(),
        Kind.COUNT,
        number == within.size() ? Finding.SUPPORTED : Finding.CONTRADICTED,
        stated,
        Integer.toString(within.size()),
        List.of("products compared"),
        words);
  }

  private Set<String> products(Predicate<String> condition) {
    return figures.campaign().products().stream()
        .map(p -> p.id())
        .filter(condition)
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  private String names(Set<String> products) {
    return String.join(", ", products.stream().map(figures::name).toList());
  }

  /** The part of the field that a claim is made of, or nothing where it is the whole. */
  static Optional<Group> at(SentenceClaims sentence, int start, int end) {
    @Nullable Group found = null;
    for (Group group : sentence.groups()) {
      boolean close =
          group.end() <= start
              || group.start() - end < 60
                  && Wording.is(sentence.text().substring(end, group.start()), "(?s)[^;]*");
      if (close) {
        Set<String> both = new LinkedHashSet<>(group.products());
        if (found != null) {
          both.retainAll(found.products());
        }
        found = new Group(both, group.start(), group.end(), group.words());
      }
    }
    return Optional.ofNullable(found);
  }
}
