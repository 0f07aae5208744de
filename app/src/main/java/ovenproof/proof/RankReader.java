package ovenproof.proof;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;
import ovenproof.verdict.Verdict.ProductVerdict;
import ovenproof.verdict.Verdict.RankSet;

/** "Came third", "in second place", "finished last", "the winner", "runner-up", "tier 2". */
final class RankReader implements ClaimReader {
  private static final Pattern BEFORE =
      Pattern.compile(
          "(?is).*\\b(came|comes|finish(?:es|ed)|placed|ranks?|ranked|(?:end|land|come|came|finish)(?:s|ed)? up|ends?|ended|lands?|landed|sits?|sat|(?:drops?|slips?|falls?|slipped|dropped|fell) to|makes? it|in|takes?|took|stands?|lies|(?:makes?|made|puts?|leaves?|left) (?:the )?\\p{L}+)\\s+(?:in\\s+|a\\s+|an\\s+|overall\\s+|the\\s+|joint\\s+|equal\\s+)*$");
  private static final Pattern WORDS =
      Pattern.compile(
          "\\b(winner|won(?!['’]t)|wins|runner-up|(?:came|comes|finish(?:es|ed)|ranks|ranked|placed)\\s+last|last place|tier (\\d|one|two|three))\\b",
          Pattern.CASE_INSENSITIVE);

  /** "Behind the winner": somebody else is spoken of. */
  private static final Pattern REFERENCE =
      Pattern.compile(
          "(?is).*\\b(than|behind|to|from|as|below|above|with|of|like)\\s+(?:the|our)\\s+$");

  private static final Pattern BETWEEN = Pattern.compile("(?is).*\\bbetween\\b.{0,30}\\band\\s+$");

  private final Figures figures;

  RankReader(Figures figures) {
    this.figures = figures;
  }

  @Override
  public void read(SentenceClaims sentence) {
    for (NumberPhrase number : sentence.freeNumbers()) {
      boolean bare =
          Wording.is(Wording.before(sentence.text(), number.start()), "(?is).*\\b(is|was|are)\\s+$")
              && Wording.is(
                  Wording.after(sentence.text(), number.end()),
                  "(?is)^\\s*(?:[.,;!:)—–]|$|of eight|overall|because|since|as\\b|and\\b|but\\b|behind|with\\b|in the|then\\b|for\\b).*")
              && number.scale() == Scale.ORDINAL;
      boolean place =
          bare
              || number.scale() == Scale.ORDINAL
                  && (BEFORE.matcher(Wording.before(sentence.text(), number.start())).matches()
                      || Wording.is(
                          sentence.text().substring(number.end()),
                          "(?is)\\s*(place|overall)\\b.*"));
      boolean batch =
          Wording.is(
              sentence.text().substring(number.end()),
              "(?is)\\s*(batch|load|run|slice|side|time|attempt|day|minute|half)\\b.*");
      boolean between = BETWEEN.matcher(Wording.before(sentence.text(), number.start())).matches();
      boolean reference =
          Wording.is(
                  Wording.before(sentence.text(), number.start()),
                  "(?is).*\\b(?:in|with|of|from) the\\s+$")
              && Wording.is(Wording.after(sentence.text(), number.end()), "(?is)^\\s*[:;,.].*");
      if (place && !batch && !between && !reference) {
        claim(sentence, number.start(), number.end(), (int) number.low());
      }
    }
    Matcher matcher = WORDS.matcher(sentence.text());
    while (matcher.find() && !sentence.isQuestion()) {
      if (Wording.is(
              Wording.before(sentence.text(), matcher.start()),
              "(?is).*\\b(?:who|(?:an?|no|any|one|single|clear|name the|name a)(?: \\p{L}+)?)\\s+$")
          && !Wording.is(matcher.group(), "(?is).*tier.*")
          && (matcher.group().equalsIgnoreCase("winner")
              || Wording.is(
                  Wording.before(sentence.text(), matcher.start()), "(?is).*\\bwho\\s+$"))) {
        continue;
      }
      words(sentence, matcher);
    }
    readLead(sentence);
  }

  private static final Pattern LEAD =
      Pattern.compile(
          "\\b(leads?|led|share[sd]? (?:the )?(?:first place|top spot|lead)|(?:on|at the) top(?: of the (?:table|ranking|field))?|come out on top|comes out on top|came out on top|top the (?:table|ranking)|tops the (?:table|ranking))\\b(?! (?:to|into|in the|from|cord|us|by))",
          Pattern.CASE_INSENSITIVE);

  /** "Alder and Hornbeam lead", "Alder leads": the whole first tier, or one that stands alone. */
  private void readLead(SentenceClaims sentence) {
    Matcher matcher = LEAD.matcher(sentence.text());
    while (matcher.find()) {
      java.util.Set<String> named =
          new java.util.TreeSet<>(sentence.context().lists().listedBefore(matcher.start()));
      boolean ofTotal = ofTotal(sentence, matcher.start(), matcher.end());
      if (!named.isEmpty() && ofTotal && sentence.isFree(matcher.start(), matcher.end())) {
        lead(sentence, matcher, named);
      }
    }
  }

  private void lead(SentenceClaims sentence, Matcher matcher, java.util.Set<String> named) {
    java.util.Set<String> first = new java.util.TreeSet<>();
    List<String> names = new java.util.ArrayList<>();
    for (ProductVerdict product : figures.verdict().products()) {
      if (product.tier() != null && product.tier() == 1) {
        first.add(product.id());
        names.add(product.name());
      }
    }
    Finding finding =
        named.equals(first)
            ? Finding.SUPPORTED
            : first.containsAll(named) ? Finding.UNCLEAR : Finding.CONTRADICTED;
    String tier = String.join(", ", names);
    sentence.add(
        matcher.start(),
        matcher.end(),
        Kind.RANK,
        finding,
        matcher.group(),
        tier,
        evidence(),
        "the first tier holds " + tier);
  }

  private void words(SentenceClaims sentence, Matcher matcher) {
    String word = matcher.group(1).toLowerCase(java.util.Locale.ROOT);
    if (word.equals("winner")
        && REFERENCE.matcher(Wording.before(sentence.text(), matcher.start())).matches()) {
      return;
    }
    boolean measured =
        word.equals("last place") && sentence.numbers().stream().anyMatch(n -> n.unit() != null);
    if (measured) {
      return;
    }
    int count = ranked();
    if (word.startsWith("tier")) {
      tier(sentence, matcher);
    } else if (word.startsWith("w") && !ofTotal(sentence, matcher.start(), matcher.end())) {
      ofTest(sentence, matcher);
    } else if (word.startsWith("w")) {
      claim(sentence, matcher.start(), matcher.end(), 1);
    } else if (word.equals("runner-up") && isSecondTier(sentence, matcher.start())) {
      sentence.take(matcher.start(), matcher.end());
    } else if (word.equals("runner-up")) {
      claim(sentence, matcher.start(), matcher.end(), 2);
    } else {
      claim(sentence, matcher.start(), matcher.end(), count);
    }
  }

  /** Whether nothing narrower than the whole is spoken of: "wins on toast", "for juiciness". */
  private boolean ofTotal(SentenceClaims sentence, int start, int end) {
    boolean mark =
        Stems.ofAll(sentence.text()).stream()
            .anyMatch(s -> figures.isMark(s) && !OVERALL.contains(s));
    return sentence.context().at(start, end).tests().isEmpty()
        && !sentence.context().namesTests()
        && (sentence.context().testsAbove().isEmpty() || !OF_THIS.matcher(sentence.text()).find())
        && !mark;
  }

  private static final Pattern OF_THIS =
      Pattern.compile(
          "\\b(this one|here|this round|that one|that with|this test|it on|this too|on points)\\b",
          Pattern.CASE_INSENSITIVE);

  private static final java.util.Set<String> OVERALL =
      Stems.ofAll("everyone people one two use display like");

  /** "Wins on toast": the first by that test's score, of the two that are compared or of all. */
  private void ofTest(SentenceClaims sentence, Matcher matcher) {
    @Nullable String product = sentence.context().productAt(matcher.start());
    java.util.Set<String> named = sentence.context().at(matcher.start(), matcher.end()).tests();
    java.util.Set<String> tests = named.isEmpty() ? sentence.context().testsAbove() : named;
    boolean timed =
        sentence.numbers().stream().anyMatch(n -> n.start() >= matcher.end() && n.unit() != null);
    if (timed
        || product == null
        || tests.size() != 1
        || !sentence.isFree(matcher.start(), matcher.end())) {
      return;
    }
    String test = tests.iterator().next();
    List<Figure> field =
        figures.where(f -> f.kind() == Figure.Kind.TEST_SCORE && test.equals(f.test()));
    List<String> pair = sentence.context().pair();
    if (pair.contains(product)) {
      field = field.stream().filter(f -> pair.contains(f.product())).toList();
    }
    Optional<Figure> own = field.stream().filter(f -> f.product().equals(product)).findFirst();
    if (own.isEmpty()) {
      return;
    }
    Extremes.Place extreme =
        new Extremes(new Separation(field, Vocabulary.Direction.HIGH), figures::name)
            .first(own.get());
    sentence.add(
        matcher.start(),
        matcher.end(),
        Kind.RANK,
        extreme.finding(),
        matcher.group(),
        extreme.expected(),
        own.get().evidence(),
        own.get().label() + " score: " + extreme.why());
  }

  /** "On flatbread the Whimbrel is first": its place by that test's score. */
  private boolean placeInTest(
      SentenceClaims sentence, int start, int end, String product, int place) {
    java.util.Set<String> named = sentence.context().at(start, end).tests();
    boolean there = Wording.is(sentence.text(), "(?is).*\\bthere\\b.*");
    java.util.Set<String> tests =
        named.isEmpty() && there ? sentence.context().testsAbove() : named;
    boolean overall = Wording.is(Wording.after(sentence.text(), end), "(?is)^\\s*overall\\b.*");
    if (overall || tests.size() != 1 || !sentence.isFree(start, end)) {
      return false;
    }
    String test = tests.iterator().next();
    List<Figure> field =
        figures.where(f -> f.kind() == Figure.Kind.TEST_SCORE && test.equals(f.test()));
    Optional<Figure> own = field.stream().filter(f -> f.product().equals(product)).findFirst();
    if (own.isEmpty()) {
      return false;
    }
    Extremes extremes =
        new Extremes(new Separation(field, Vocabulary.Direction.HIGH), figures::name);
    Extremes.Place found =
        place == 1 ? extremes.first(own.get()) : extremes.inPlace(own.get(), place);
    sentence.add(
        start,
        end,
        Kind.RANK,
        found.finding(),
        "place " + place,
        found.expected(),
        own.get().evidence(),
        own.get().label() + " score: " + found.why());
    return true;
  }

  /** Behind a tie the next is a runner-up in speech, whatever its place. */
  private boolean isSecondTier(SentenceClaims sentence, int at) {
    return product(sentence, at).map(p -> p.tier() != null && p.tier() == 2).orElse(false);
  }

  private int ranked() {
    return (int) figures.verdict().products().stream().filter(p -> p.rank() != null).count();
  }

  private void tier(SentenceClaims sentence, Matcher matcher) {
    int stated =
        switch (matcher.group(2).toLowerCase(java.util.Locale.ROOT)) {
          case "one" -> 1;
          case "two" -> 2;
          case "three" -> 3;
          default -> Integer.parseInt(matcher.group(2));
        };
    Optional<ProductVerdict> product = product(sentence, matcher.start());
    if (product.isPresent() && product.get().tier() != null) {
      boolean holds = product.get().tier() == stated;
      sentence.add(
          matcher.start(),
          matcher.end(),
          Kind.RANK,
          holds ? Finding.SUPPORTED : Finding.CONTRADICTED,
          "tier " + stated,
          "tier " + product.get().tier(),
          evidence(),
          name(product.get()) + " is in tier " + product.get().tier());
    }
  }

  private static final Pattern COLON =
      Pattern.compile(
          "(?is)\\**\\s*(?:place|overall)?\\s*(?:[:—–-]|is|was|goes to|went to|comes?|came)\\s*\\**\\s*(?:the \\p{L}+,\\s*)?(?:the\\s+)?");

  /** "Runner-up: Siskin" names its product behind it. */
  private static @Nullable String named(SentenceClaims sentence, int from) {
    return sentence.context().mentions().stream()
        .filter(m -> m.start() >= from && !m.isPronoun())
        .findFirst()
        .filter(
            m -> {
              String between = sentence.text().substring(from, m.start());
              int word = between.indexOf(':') >= 0 ? between.indexOf(':') : between.indexOf(' ');
              return word >= 0 && word < 14 && COLON.matcher(between.substring(word)).matches();
            })
        .map(Mentions.ProductMention::product)
        .orElse(null);
  }

  private Optional<ProductVerdict> product(SentenceClaims sentence, int at) {
    @Nullable String behind = named(sentence, at);
    @Nullable String id = behind != null ? behind : sentence.context().productAt(at);
    return id == null ? Optional.empty() : figures.verdict().product(id);
  }

  /** "Larch and Rowan rank eighth and fifth": places in the order of the names. */
  private Optional<ProductVerdict> listed(SentenceClaims sentence, int start) {
    List<NumberPhrase> places =
        sentence.numbers().stream().filter(n -> n.scale() == Scale.ORDINAL).toList();
    int at = places.stream().map(NumberPhrase::start).toList().indexOf(start);
    if (places.size() < 2 || at < 0) {
      return Optional.empty();
    }
    List<String> names = sentence.context().lists().inOrder(places.get(0).start(), places.size());
    return names.isEmpty() ? Optional.empty() : figures.verdict().product(names.get(at));
  }

  private void claim(SentenceClaims sentence, int start, int end, int place) {
    Optional<ProductVerdict> product = listed(sentence, start).or(() -> product(sentence, start));
    if (product.isPresent() && placeInTest(sentence, start, end, product.get().id(), place)) {
      return;
    }
    if (product.isEmpty() || product.get().rank() == null || !sentence.isFree(start, end)) {
      return;
    }
    RankSet rank = product.get().rank();
    int shown = place(product.get());
    String expected =
        rank.low() == rank.high()
            ? "place " + rank.low()
            : "place " + rank.low() + " to " + rank.high();
    boolean sure = rank.low() == rank.high() && rank.low() == place;
    boolean possible = place >= rank.low() && place <= rank.high();
    Finding finding =
        sure
            ? Finding.SUPPORTED
            : shown == place && possible ? Finding.UNCLEAR : Finding.CONTRADICTED;
    String why =
        sure
            ? "separated from its neighbours"
            : finding == Finding.UNCLEAR
                ? "by score it is, but the runs only support " + expected
                : name(product.get()) + " holds " + expected;
    sentence.add(start, end, Kind.RANK, finding, "place " + place, expected, evidence(), why);
  }

  /** Place by displayed score; ties share the better place. */
  private int place(ProductVerdict product) {
    java.math.BigDecimal own = product.score().value();
    if (own == null) {
      return 0;
    }
    int place = 1;
    for (ProductVerdict other : figures.verdict().products()) {
      java.math.BigDecimal score = other.score().value();
      if (other.rank() != null && score != null && score.compareTo(own) > 0) {
        place++;
      }
    }
    return place;
  }

  private List<String> evidence() {
    return List.of("verdict " + figures.verdict().version());
  }

  private static String name(ProductVerdict product) {
    return product.name();
  }
}
