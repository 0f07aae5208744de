package ovenproof.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.Mentions.ProductMention;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;
import ovenproof.proof.Vocabulary.Adjective;
import ovenproof.proof.Vocabulary.Direction;

/**
 * "Alder was two minutes faster than Siskin", "twice as fast as", "3 points behind", "hotter than
 * average".
 */
final class ComparisonReader implements ClaimReader {
  private static final Pattern THAN =
      Pattern.compile(
          "\\b(?:(more|less)\\s+(?<long>\\p{L}+)|(?<short>\\p{L}+er|worse|better|more|less))\\s+than\\b",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern AS_AS =
      Pattern.compile("\\bas\\s+(?<adj>\\p{L}+)\\s+as\\b", Pattern.CASE_INSENSITIVE);
  private static final Pattern POINTS =
      Pattern.compile("\\b(behind|ahead of|clear of|above|below)\\b", Pattern.CASE_INSENSITIVE);
  private static final Pattern BEAT =
      Pattern.compile(
          "\\b(beats?|outscored|outscores|outperform(?:s|ed))\\b", Pattern.CASE_INSENSITIVE);
  private static final Pattern REST =
      Pattern.compile(
          "^\\s*(?:the\\s+)?(average|field average|mean|rest|others|any other|all (?:the )?others|every other)\\b",
          Pattern.CASE_INSENSITIVE);

  private final Figures figures;
  private final FigureSearch search;

  ComparisonReader(Figures figures, FigureSearch search) {
    this.figures = figures;
    this.search = search;
  }

  @Override
  public void read(SentenceClaims sentence) {
    readThan(sentence);
    readAsAs(sentence);
    readPoints(sentence);
    readBeat(sentence);
  }

  /**
   * What is compared.
   *
   * @param other the second product; null for the average or the rest
   */
  private record Compared(String subject, @Nullable String other, int end, String against) {}

  private void readThan(SentenceClaims sentence) {
    Matcher matcher = THAN.matcher(sentence.text());
    while (matcher.find()) {
      String word = matcher.group("long") != null ? matcher.group("long") : matcher.group("short");
      boolean less = "less".equalsIgnoreCase(matcher.group(1));
      Optional<Compared> compared = compared(sentence, matcher.start(), matcher.end());
      String stem = Stems.of(word.toLowerCase(Locale.ROOT));
      Adjective adjective = Vocabulary.adjective(stem);
      boolean known = adjective != null || isMark(stem);
      if (compared.isPresent() && known) {
        claim(sentence, matcher.start(), compared.get(), stem, adjective, less);
      }
    }
  }

  private void readAsAs(SentenceClaims sentence) {
    Matcher matcher = AS_AS.matcher(sentence.text());
    while (matcher.find()) {
      Optional<NumberPhrase> times = numberBefore(sentence, matcher.start());
      Optional<Compared> compared = compared(sentence, matcher.start(), matcher.end());
      String stem = Stems.of(matcher.group("adj"));
      Adjective adjective = Vocabulary.adjective(stem);
      boolean factor =
          times.isPresent() && (times.get().scale() == Scale.TIMES || times.get().low() < 1);
      if (compared.isPresent() && factor && adjective != null) {
        claim(sentence, matcher.start(), compared.get(), stem, adjective, false);
      }
    }
  }

  private void readPoints(SentenceClaims sentence) {
    Matcher matcher = POINTS.matcher(sentence.text());
    while (matcher.find()) {
      Optional<NumberPhrase> points = numberBefore(sentence, matcher.start());
      Optional<Compared> compared = compared(sentence, matcher.start(), matcher.end());
      boolean apply =
          points.isPresent()
              && compared.isPresent()
              && (points.get().scale() == Scale.POINTS
                  || points.get().unit() == null && points.get().decimals() > 0);
      if (apply) {
        boolean less = matcher.group(1).matches("(?i)behind|below");
        claim(
            sentence, matcher.start(), compared.get(), "good", Vocabulary.adjective("good"), less);
      }
    }
  }

  private void readBeat(SentenceClaims sentence) {
    Matcher matcher = BEAT.matcher(sentence.text());
    while (matcher.find()) {
      Optional<Compared> compared = compared(sentence, matcher.start(), matcher.end());
      if (compared.isPresent()) {
        claim(
            sentence, matcher.start(), compared.get(), "good", Vocabulary.adjective("good"), false);
      }
    }
  }

  private Optional<Compared> compared(SentenceClaims sentence, int start, int end) {
    String subject = null;
    ProductMention other = null;
    for (ProductMention mention : sentence.context().mentions()) {
      if (mention.start() < start) {
        subject = mention.product();
      } else if (other == null && mention.start() >= end && mention.start() - end < 40) {
        other = mention;
      }
    }
    if (subject == null) {
      subject = sentence.context().inherited();
    }
    if (subject == null) {
      return Optional.empty();
    }
    if (other != null && !other.product().equals(subject)) {
      return Optional.of(
          new Compared(subject, other.product(), other.end(), name(other.product())));
    }
    Matcher rest = REST.matcher(sentence.text().substring(end));
    return rest.find()
        ? Optional.of(
            new Compared(subject, null, end + rest.end(), rest.group(1).toLowerCase(Locale.ROOT)))
        : Optional.empty();
  }

  private static Optional<NumberPhrase> numberBefore(SentenceClaims sentence, int start) {
    return sentence.freeNumbers().stream()
        .filter(
            n ->
                n.end() <= start
                    && sentence.text().substring(n.end(), start).matches("\\s*(?:more|as)?\\s*"))
        .reduce((a, b) -> b);
  }

  private boolean isMark(String stem) {
    return figures.all().stream()
        .anyMatch(f -> f.kind() == Figure.Kind.MARK && f.words().contains(stem));
  }

  private void claim(
      SentenceClaims sentence,
      int start,
      Compared compared,
      String stem,
      @Nullable Adjective adjective,
      boolean less) {
    Optional<NumberPhrase> by = numberBefore(sentence, start);
    int from = by.map(NumberPhrase::start).orElse(start);
    if (!sentence.isFree(from, compared.end())) {
      return;
    }
    String said = sentence.text().substring(from, compared.end()).strip();
    List<Figure> uses = search.uses(sentence.context(), adjective, stem, compared.subject());
    if (uses.isEmpty()) {
      sentence.add(
          from,
          compared.end(),
          Kind.COMPARISON,
          Finding.UNSUPPORTED,
          said,
          null,
          List.of(),
          "nothing that was measured of " + name(compared.subject()) + " says this");
      return;
    }
    Direction direction = adjective == null ? Direction.HIGH : adjective.direction();
    Direction wanted = less ? turned(direction) : direction;
    List<Outcome> outcomes = new ArrayList<>();
    for (Figure use : uses) {
      outcomes.add(outcome(use, compared, wanted, by));
    }
    Outcome first = outcomes.get(0);
    boolean agree = outcomes.stream().allMatch(o -> o.finding == first.finding);
    Finding finding = agree ? first.finding : Finding.UNCLEAR;
    String why = agree ? first.why : "the words fit several figures, and they differ";
    sentence.add(
        from, compared.end(), Kind.COMPARISON, finding, said, first.expected, first.evidence, why);
  }

  private record Outcome(
      Finding finding, @Nullable String expected, List<String> evidence, String why) {}

  private Outcome outcome(
      Figure use, Compared compared, Direction wanted, Optional<NumberPhrase> by) {
    List<Figure> field = search.field(use);
    Separation separation = new Separation(field, wanted);
    Double own = Separation.level(use);
    if (own == null) {
      return new Outcome(Finding.UNSUPPORTED, null, use.evidence(), "it was not measured");
    }
    String other = compared.other();
    if (other == null) {
      return againstField(use, field, wanted, compared.against(), separation);
    }
    Optional<Figure> second = field.stream().filter(f -> f.product().equals(other)).findFirst();
    if (second.isEmpty() || Separation.level(second.get()) == null) {
      return new Outcome(
          Finding.UNSUPPORTED, null, use.evidence(), name(other) + " was not measured there");
    }
    return againstOne(use, second.get(), separation, by);
  }

  private Outcome againstOne(Figure a, Figure b, Separation separation, Optional<NumberPhrase> by) {
    String expected = both(a, b);
    double gap = separation.signed(a) - separation.signed(b);
    if (gap < 0) {
      return new Outcome(
          Finding.CONTRADICTED, expected, a.evidence(), "it is the other way round: " + expected);
    }
    if (by.isPresent()) {
      Outcome amount = amount(a, b, by.get(), expected);
      if (amount.finding != Finding.SUPPORTED) {
        return amount;
      }
    }
    double probability = separation.probability(a, b);
    if (gap == 0) {
      return new Outcome(
          Finding.CONTRADICTED, expected, a.evidence(), "they are equal: " + expected);
    }
    if (a.kind() == Figure.Kind.TOTAL) {
      probability = pair(a.product(), b.product(), probability);
    }
    boolean sure = probability >= 0.95;
    String p =
        Double.isNaN(probability)
            ? "one run each cannot tell"
            : "probability " + percent(probability);
    return new Outcome(
        sure ? Finding.SUPPORTED : Finding.UNCLEAR,
        expected,
        a.evidence(),
        sure ? expected + ", " + p : expected + ", but the runs do not separate them (" + p + ")");
  }

  private double pair(String better, String worse, double fallback) {
    return figures.verdict().pairs().stream()
        .filter(p -> p.better().equals(better) && p.worse().equals(worse))
        .mapToDouble(p -> p.probability())
        .findFirst()
        .orElse(fallback);
  }

  /** "two minutes faster", "20 percent faster", "twice as fast", "3 points ahead". */
  private static Outcome amount(Figure a, Figure b, NumberPhrase by, String expected) {
    Double va = a.value();
    Double vb = b.value();
    if (va == null || vb == null) {
      return new Outcome(
          Finding.UNCLEAR, expected, a.evidence(), "one of the two is only known within bounds");
    }
    boolean hedged = by.hedge() != Hedge.PLAIN;
    if (by.scale() == Scale.TIMES
        || by.unit() == Unit.PERCENT
        || by.unit() == null && by.low() < 1 && by.decimals() == 1 && !a.isScore()) {
      double ratio = Math.max(va, vb) / Math.min(va, vb);
      double stated =
          by.scale() == Scale.TIMES
              ? by.low()
              : by.unit() == Unit.PERCENT ? 1 + by.low() / 100 : 1 / by.low();
      boolean lessThan =
          by.unit() == Unit.PERCENT
              && Math.abs((1 - 1 / ratio) * 100 - by.low()) <= by.step() / 2 + 0.5;
      boolean near = Math.abs(ratio / stated - 1) <= (hedged ? 0.10 : 0.05) || lessThan;
      String found = "a factor of " + ovenproof.core.quantity.Rounding.HALF_UP.text(ratio, 2);
      return new Outcome(
          near ? Finding.SUPPORTED : Finding.CONTRADICTED,
          found,
          a.evidence(),
          found + " (" + expected + ")");
    }
    return difference(a, b, by, expected);
  }

  /** The stored or the shown difference. */
  private static Outcome difference(Figure a, Figure b, NumberPhrase by, String expected) {
    double difference =
        Math.abs(
            java.util.Objects.requireNonNull(a.value())
                - java.util.Objects.requireNonNull(b.value()));
    Unit unit = by.unit();
    Unit own = a.unit() != null && a.unit() == Unit.CELSIUS ? Unit.KELVIN : a.unit();
    if (unit == Unit.FAHRENHEIT) {
      unit = Unit.FAHRENHEIT_DIFFERENCE;
    } else if (unit == Unit.CELSIUS || by.scale() == Scale.DEGREES) {
      unit = Unit.KELVIN;
    }
    if (unit != null && own != null && unit.dimension() != own.dimension()) {
      return new Outcome(
          Finding.UNCLEAR, expected, a.evidence(), "the unit does not fit: " + expected);
    }
    Figure gap =
        new Figure(
            a.kind(),
            a.product(),
            a.test(),
            a.use(),
            a.label(),
            a.batch(),
            difference,
            difference,
            difference,
            List.of(difference),
            null,
            own,
            a.shownDecimals(),
            a.words(),
            a.evidence());
    Judge.Ruling ruling = Judge.rule(by, gap, unit);
    return new Outcome(
        ruling.finding(),
        ruling.expected(),
        a.evidence(),
        "the difference is " + ruling.expected() + " (" + expected + ")");
  }

  private Outcome againstField(
      Figure use, List<Figure> field, Direction wanted, String against, Separation separation) {
    if (against.matches("average|field average|mean")) {
      double mean =
          field.stream()
              .map(Separation::level)
              .filter(java.util.Objects::nonNull)
              .mapToDouble(Double::doubleValue)
              .average()
              .orElse(Double.NaN);
      double own = java.util.Objects.requireNonNull(Separation.level(use));
      boolean holds = wanted == Direction.HIGH ? own > mean : own < mean;
      String expected =
          name(use.product()) + " " + shown(use, own) + ", average " + shown(use, mean);
      return new Outcome(
          holds ? Finding.SUPPORTED : Finding.CONTRADICTED, expected, use.evidence(), expected);
    }
    SuperlativeReader.Extreme extreme = SuperlativeReader.extreme(use, separation, this::name);
    return new Outcome(extreme.finding(), extreme.expected(), use.evidence(), extreme.why());
  }

  private String both(Figure a, Figure b) {
    return name(a.product())
        + " "
        + shownOrBound(a)
        + ", "
        + name(b.product())
        + " "
        + shownOrBound(b);
  }

  static String shownOrBound(Figure figure) {
    Double value = figure.value();
    return value == null ? Judge.bounds(figure, null, 1) : shown(figure, value);
  }

  static String shown(Figure figure, double value) {
    Unit unit = figure.unit();
    if (unit == Unit.SECOND) {
      return Judge.text(value / 60, Unit.MINUTE, 0);
    }
    return Judge.text(value, unit, figure.shownDecimals() >= 0 ? figure.shownDecimals() : 1);
  }

  private static String percent(double probability) {
    return probability > 0.995 ? "over 99 %" : Math.round(probability * 100) + " %";
  }

  private static Direction turned(Direction direction) {
    return direction == Direction.HIGH ? Direction.LOW : Direction.HIGH;
  }

  private String name(String product) {
    return figures.campaign().product(product).map(p -> p.name()).orElse(product);
  }
}
