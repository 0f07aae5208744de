package ovenproof.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;

/**
 * How many: "eight ovens", "none reached 230 °C", "three of the eight took over 40 minutes", "the
 * only oven that", "all stayed under 90 °C".
 */
final class QuantifierReader implements ClaimReader {
  static final String PRODUCTS =
      "(?:ovens?|products?|models?|machines?|appliances?|toasters?|fryers?|air fryers?|contenders?)";
  static final String NUMBER =
      "\\d+|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|a dozen";
  private static final Pattern OF_FIELD =
      Pattern.compile(
          "\\b(?:(?<none>none of (?:them|the (?:\\w+ )?"
              + PRODUCTS
              + "|the others|the (?:"
              + NUMBER
              + "))|no (?:other )?"
              + PRODUCTS
              + "|not one(?: of them)?|neither of (?:them|the two))"
              + "|(?<all>(?:all|every one) (?:of )?(?:them|the others?|others|the rest|the "
              + PRODUCTS
              + "|(?:the )?(?:"
              + NUMBER
              + ")(?: "
              + PRODUCTS
              + ")?|(?:the )?other "
              + PRODUCTS
              + "|"
              + PRODUCTS
              + ")|every other "
              + PRODUCTS
              + "|every "
              + PRODUCTS
              + "|each "
              + PRODUCTS
              + ")"
              + "|(?:only |just )?(?<![\\d.,])(?<some>"
              + NUMBER
              + ") (?:of|out of) (?!(?:ten|10|four|4)\\b(?! "
              + PRODUCTS
              + "))(?:the |our |them\\b|these )?(?<total>"
              + NUMBER
              + ")?(?: ?"
              + PRODUCTS
              + ")?"
              + "|(?<=(?:^|[.,;:])\\s{0,3})(?:only )?(?:(?<bare>"
              + NUMBER
              + ")|(?<bareNone>none)) (?=(?:cost|costs|took|scored|scores|reached|exceeded|needed|used|lost|overshot|weigh|weighs|stayed|ran|hold|holds|have|had)\\b)"
              + "|(?<less>nothing)(?= (?:under|below|over|above|less|more|cheaper)\\b)"
              + "|(?<half>half (?:of )?(?:the |our )?(?:(?:"
              + NUMBER
              + ") )?"
              + PRODUCTS
              + "|half of them)"
              + "|(?:only |just )?(?<![\\d.,])(?<!half the |half of the )(?<plain>"
              + NUMBER
              + ") "
              + PRODUCTS
              + "(?= (?:\\w+ ){0,2}?(?:took|take|takes|costs?|scored?|scores|reach(?:ed|es)?|exceed(?:ed|s)?|had|have|has|used?|uses|need(?:ed|s)?|lost|lose|overshot|overshoot|ran|run|stay(?:ed|s)?|toast(?:ed|s)?|finish(?:ed|es)?|fail(?:ed|s)?|never|did|do|were|was|are|got|get|made|make|manage[ds]?|sell|weigh(?:ed)?|come|came|end(?:ed)?|land(?:ed)?)\\b)"
              + "|(?<only>(?:the )?only (?:one |"
              + PRODUCTS
              + " )(?:of (?:the )?(?:"
              + NUMBER
              + ")(?: "
              + PRODUCTS
              + ")? )?(?:that|to|which)))",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern REACH =
      Pattern.compile(
          "\\b(reach(?:ed|es)?|get to|get past|got past|exceed(?:ed|s)?|pass(?:ed|es)?|hit|hits|got to|gets to|make|made|topped|got above|went over|went above|climbed to|managed|manages?)\\s*$",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern LIMIT =
      Pattern.compile(
          "\\s+(?:the|our|a|its)\\s+(?:\\p{L}+\\s+)?(?:limit|cap|mark|ceiling|threshold|maximum)(?:\\s+of)?$",
          Pattern.CASE_INSENSITIVE);

  private final Figures figures;
  private final FigureSearch search;

  QuantifierReader(Figures figures, FigureSearch search) {
    this.figures = figures;
    this.search = search;
  }

  @Override
  public void read(SentenceClaims sentence) {
    Matcher matcher = OF_FIELD.matcher(sentence.text());
    while (matcher.find()) {
      total(sentence, matcher);
      predicate(sentence, matcher);
    }
  }

  private void total(SentenceClaims sentence, Matcher matcher) {
    String total = matcher.group("total");
    if (total != null && number(total) != size()) {
      sentence.add(
          matcher.start("total"),
          matcher.end("total"),
          Kind.COUNT,
          Finding.CONTRADICTED,
          total,
          Integer.toString(size()),
          List.of("products compared"),
          size() + " were compared");
    }
  }

  /** What follows must say something that can be counted: a limit in a unit. */
  private void predicate(SentenceClaims sentence, Matcher matcher) {
    Optional<NumberPhrase> limit =
        sentence.freeNumbers().stream()
            .filter(
                n ->
                    n.start() >= matcher.end()
                        && (NumberKinds.isCheckable(sentence, n) || isBareScore(sentence, n)))
            .findFirst();
    if (limit.isEmpty() || limit.get().start() - matcher.end() > 80) {
      return;
    }
    NumberPhrase number = limit.get();
    String between = sentence.text().substring(matcher.end(), number.start());
    boolean reach = REACH.matcher(LIMIT.matcher(between.strip()).replaceFirst("")).find();
    boolean method =
        number.hedge() == Hedge.PLAIN
            && !number.isRange()
            && !reach
            && matcher.group("none") == null
            && matcher.group("bareNone") == null
            && matcher.group("less") == null
            && matcher.group("some") == null;
    if (Wording.is(between, "(?is).*(?:[;:]|\\b(?:until|till|when|before)\\b).*")
        || !VERB.matcher(between).find()
            && matcher.group("bare") == null
            && matcher.group("bareNone") == null
            && matcher.group("less") == null
        || method && matcher.group("only") == null) {
      return;
    }
    Optional<Set<String>> part = part(sentence, matcher);
    if (isOfSome(matcher) && part.isEmpty()) {
      return;
    }
    List<Figure> field =
        field(sentence, number, reach).stream()
            .filter(f -> part.isEmpty() || part.get().contains(f.product()))
            .toList();
    if (field.isEmpty()) {
      return;
    }
    judge(
        sentence, matcher, number, count(field, number, reach), NEGATED.matcher(between).matches());
  }

  /** "Every oven gets nine or more". */
  private static boolean isBareScore(SentenceClaims sentence, NumberPhrase number) {
    return number.unit() == null
        && number.scale() == Scale.NONE
        && number.hedge() != Hedge.PLAIN
        && number.high() <= 10
        && Wording.is(
            Wording.before(sentence.text(), number.start()),
            "(?is).*\\b(?:gets?|got|scores?|scored|reach(?:es|ed)?|earns?|earned|managed?|manages|ends? (?:up )?(?:on|at|with)|are|is|was|were|stays?|stayed|less|more|marks?)\\s+(?:\\p{L}+\\s+)?$");
  }

  /** "In all three it was …": a part of the field that was named before. */
  private boolean isOfSome(Matcher matcher) {
    boolean neither = Wording.is(matcher.group(), "(?is)neither.*");
    Matcher count = SOME.matcher(matcher.group());
    boolean whole = matcher.group("all") != null || matcher.group("none") != null;
    return neither || whole && count.find() && number(count.group(1)) < size();
  }

  /** The products that were named before, where just so many are spoken of. */
  private Optional<Set<String>> part(SentenceClaims sentence, Matcher matcher) {
    if (!isOfSome(matcher)) {
      return Optional.empty();
    }
    Matcher count = SOME.matcher(matcher.group());
    int many = count.find() ? number(count.group(1)) : 2;
    List<String> carried = sentence.context().lists().carried();
    List<String> found = carried.size() == many ? carried : sentence.context().pair();
    return found.size() == many ? Optional.of(Set.copyOf(found)) : Optional.empty();
  }

  private static final Pattern SOME =
      Pattern.compile("\\b(two|three|four|five|six|seven)\\b", Pattern.CASE_INSENSITIVE);

  private static final Pattern VERB =
      Pattern.compile(
          "\\b(took|takes?|costs?|scored?|scores|reach(ed|es)?|exceed(ed|s)?|had|have|has|used?|uses|need(ed|s)?|lost|loses?|overshot|overshoots?|ran|runs?|stay(ed|s)?|toast(ed|s)?|finish(ed|es)?|fail(ed|s)?|did|does|do|were|was|is|are|got|gets?|made|makes?|went|goes|came|comes|topped|managed|kept|keeps?|held|holds?|weighs?|weighed|draws?|drew|hit|passed|settled|sells?|fell|rose|dropped|measured|averaged|done)\\b|n['’]t\\b",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern NEGATED =
      Pattern.compile(
          "(?is).*\\b(not|\\w+n['’]t|never|failed to|fails to|couldn['’]t|could not|did not|didn['’]t|unable to)\\b.*");
  private static final Pattern EXCEPT =
      Pattern.compile(
          "(?is)^\\s*,?\\s*(?:but|except(?: for)?|apart from|other than|bar|besides)\\s+(?:the\\s+)?$");

  private void judge(
      SentenceClaims sentence,
      Matcher matcher,
      NumberPhrase number,
      Counted counted,
      boolean negated) {
    List<String> holding = negated ? counted.without : counted.which;
    int all = counted.which.size() + counted.without.size() + counted.open;
    boolean other =
        Wording.is(matcher.group().toLowerCase(Locale.ROOT), "(?s).*\\b(other|others|rest)\\b.*");
    Optional<String> except =
        other
            ? Optional.ofNullable(sentence.context().productAt(matcher.start()))
            : exception(sentence, matcher.end()).or(() -> leftOut(sentence, matcher.start()));
    int stated =
        matcher.group("none") != null
                || matcher.group("bareNone") != null
                || matcher.group("less") != null
            ? 0
            : matcher.group("all") != null
                ? all
                : matcher.group("only") != null
                    ? 1
                    : matcher.group("half") != null && all % 2 == 0
                        ? all / 2
                        : matcher.group("half") != null
                            ? -1
                            : number(
                                matcher.group("some") != null
                                    ? matcher.group("some")
                                    : matcher.group("bare") != null
                                        ? matcher.group("bare")
                                        : matcher.group("plain"));
    boolean holds = holding.size() == stated && counted.open == 0;
    if (except.isPresent()) {
      holds =
          stated == 0
              ? (other
                  ? List.of(except.get()).containsAll(holding)
                  : holding.equals(List.of(except.get())))
              : holding.size() == all - 1 && !holding.contains(except.get());
    }
    if (!holds && other && matcher.group("all") != null) {
      java.util.Set<String> before = sentence.context().around();
      holds = before.containsAll(negated ? counted.which : counted.without) && counted.open == 0;
    }
    if (holds && matcher.group("only") != null) {
      String subject = sentence.context().productAt(matcher.start());
      holds = subject == null || holding.contains(subject);
    }
    boolean open = !holds && counted.open > 0 && Math.abs(holding.size() - stated) <= counted.open;
    Finding finding = holds ? Finding.SUPPORTED : open ? Finding.UNCLEAR : Finding.CONTRADICTED;
    String expected = holding.size() + " of " + all;
    String names =
        holding.isEmpty()
            ? ""
            : ": " + String.join(", ", holding.stream().map(figures::name).toList());
    sentence.add(
        matcher.start(),
        number.end(),
        Kind.COUNT,
        finding,
        sentence.text().substring(matcher.start(), number.end()),
        expected,
        counted.evidence,
        counted.label + ": " + expected + names);
  }

  /** "None but Larch", "all except Larch". */
  private static Optional<String> exception(SentenceClaims sentence, int end) {
    return sentence.context().mentions().stream()
        .filter(m -> m.start() >= end)
        .findFirst()
        .filter(m -> EXCEPT.matcher(sentence.text().substring(end, m.start())).matches())
        .map(Mentions.ProductMention::product);
  }

  /** "Apart from the Larch, every oven …". */
  private Optional<String> leftOut(SentenceClaims sentence, int start) {
    Optional<GroupReader.Group> group = GroupReader.at(sentence, start, start);
    return group
        .filter(g -> g.end() <= start && g.products().size() == size() - 1)
        .flatMap(
            g ->
                figures.campaign().products().stream()
                    .map(Campaign.Product::id)
                    .filter(p -> !g.products().contains(p))
                    .findFirst());
  }

  /**
   * How a field divides at a limit.
   *
   * @param open how many products' bounds leave it open
   */
  private record Counted(
      String label, List<String> which, List<String> without, int open, List<String> evidence) {}

  private Counted count(List<Figure> field, NumberPhrase limit, boolean reach) {
    List<String> which = new ArrayList<>();
    List<String> without = new ArrayList<>();
    int open = 0;
    NumberPhrase asked =
        reach && limit.hedge() == Hedge.PLAIN ? limit.hedged(Hedge.AT_LEAST) : limit;
    for (Figure figure : field) {
      Finding finding = Judge.rule(asked, figure, unit(limit)).finding();
      if (finding == Finding.SUPPORTED) {
        which.add(figure.product());
      } else if (finding == Finding.CONTRADICTED) {
        without.add(figure.product());
      } else {
        open++;
      }
    }
    return new Counted(
        field.get(0).label(), which, without, open, field.get(0).evidence().subList(0, 1));
  }

  private static @Nullable Unit unit(NumberPhrase number) {
    return number.scale() == Scale.DEGREES ? Unit.CELSIUS : number.unit();
  }

  private List<Figure> field(SentenceClaims sentence, NumberPhrase number, boolean reach) {
    Focus focus = sentence.context().at(number.start(), number.end());
    Predicate<Figure> kind = NumberKinds.kindOf(sentence, number);
    List<Figure> limited = limited(number);
    if (!limited.isEmpty()) {
      return limited;
    }
    boolean heat = reach && NumberKinds.isTemperature(number);
    List<Figure> best = List.of();
    for (Campaign.Product product : figures.campaign().products()) {
      if (best.isEmpty()) {
        best =
            search.best(
                focus, product.id(), heat ? f -> ReachReader.PEAKS.contains(f.take()) : kind);
      }
    }
    return best.isEmpty() ? List.of() : search.field(best.get(0));
  }

  /** A number that repeats the limit of a gate speaks of what the gate measures. */
  private List<Figure> limited(NumberPhrase number) {
    for (ovenproof.method.TestPlan test : figures.campaign().method().tests()) {
      for (ovenproof.method.Gate gate : test.gates()) {
        boolean same = repeats(gate.atMost(), number) || repeats(gate.atLeast(), number);
        if (same) {
          return figures.where(
              f ->
                  test.id().equals(f.test())
                      && f.use().equals(gate.measure())
                      && f.batch() == null
                      && !f.isScore());
        }
      }
    }
    return List.of();
  }

  private static boolean repeats(
      ovenproof.core.quantity.@Nullable Quantity limit, NumberPhrase number) {
    Unit unit = unit(number);
    return limit != null
        && unit != null
        && unit.dimension() == limit.unit().dimension()
        && Math.abs(limit.to(unit).value() - number.low()) < 1e-6;
  }

  private int size() {
    return figures.campaign().products().size();
  }

  /** A number up to twelve, in a word or digits. */
  static int number(String word) {
    if (Wording.is(word, "\\d{1,6}")) {
      return Integer.parseInt(word);
    }
    List<String> words =
        List.of(
            "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
            "eleven", "twelve");
    int index = words.indexOf(word.toLowerCase(Locale.ROOT));
    return index >= 0 ? index : 12;
  }
}
