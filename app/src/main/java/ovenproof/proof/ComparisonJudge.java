package ovenproof.proof;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Rounding;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.ComparedProducts.Compared;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Vocabulary.Adjective;
import ovenproof.proof.Vocabulary.Direction;

/**
 * Whether a comparison holds: one figure against another or against the field, with or without a
 * stated amount. An order holds where the runs separate the two (probability 0.95 or more).
 */
final class ComparisonJudge {
  private final Figures figures;
  private final FigureSearch search;

  ComparisonJudge(Figures figures, FigureSearch search) {
    this.figures = figures;
    this.search = search;
  }

  /** "A point ahead of the next", "six minutes longer than our quickest": who that is. */
  private static Optional<Figure> rival(
      Figure use, List<Figure> field, Separation separation, String against) {
    List<Figure> ordered =
        separation.ordered().stream().filter(f -> !f.product().equals(use.product())).toList();
    if (ordered.isEmpty()) {
      return Optional.empty();
    }
    Adjective superlative = Vocabulary.adjective(Stems.of(against.replaceFirst("^our ", "")));
    boolean leader = superlative != null || Wording.is(against, "(?:our )?(?:leader|winner)");
    if (!leader) {
      return Optional.of(ordered.get(0));
    }
    Direction end = superlative == null ? Direction.HIGH : superlative.direction();
    return new Separation(field, end).ordered().stream().findFirst();
  }

  record Outcome(Finding finding, @Nullable String expected, List<String> evidence, String why) {}

  Outcome outcome(Figure use, Compared compared, Direction wanted, Optional<NumberPhrase> by) {
    List<Figure> field = search.field(use);
    Separation separation = new Separation(field, wanted);
    Double own = Separation.level(use);
    if (own == null) {
      return new Outcome(Finding.UNSUPPORTED, null, use.evidence(), "it was not measured");
    }
    String other = compared.other();
    if (other == null && by.isPresent() && !compared.isAverage()) {
      return rival(use, field, separation, compared.against())
          .map(r -> againstOne(use, r, separation, by))
          .orElseGet(
              () ->
                  new Outcome(
                      Finding.UNCLEAR,
                      null,
                      use.evidence(),
                      "there is no other to hold it against"));
    }
    if (other == null) {
      return againstField(use, field, wanted, compared.against(), separation);
    }
    Optional<Figure> second = field.stream().filter(f -> f.product().equals(other)).findFirst();
    if (second.isEmpty() || Separation.level(second.get()) == null) {
      return new Outcome(
          Finding.UNSUPPORTED,
          null,
          use.evidence(),
          figures.name(other) + " was not measured there");
    }
    return againstOne(use, second.get(), separation, by);
  }

  private Outcome againstOne(Figure a, Figure b, Separation separation, Optional<NumberPhrase> by) {
    String expected = both(a, b);
    double gap = separation.signed(a) - separation.signed(b);
    if (gap < 0
        && a.kind() == Figure.Kind.TEST_SCORE | a.kind() == Figure.Kind.TOTAL
        && by.isEmpty()
        && separation.probability(b, a) < 0.95) {
      return new Outcome(
          Finding.UNCLEAR, expected, a.evidence(), "the other way round by figures: " + expected);
    }
    if (gap < 0) {
      return new Outcome(
          Finding.CONTRADICTED, expected, a.evidence(), "it is the other way round: " + expected);
    }
    if (by.isPresent()) {
      return amount(a, b, by.get(), expected);
    }
    double probability = a.isSingle() ? 1 : separation.probability(a, b);
    if (gap == 0) {
      return new Outcome(
          Finding.CONTRADICTED, expected, a.evidence(), "they are equal: " + expected);
    }
    if (a.kind() == Figure.Kind.TOTAL) {
      boolean ahead = a.value() != null && b.value() != null && a.value() > b.value();
      probability =
          ahead
              ? probability(a.product(), b.product(), probability)
              : probability(b.product(), a.product(), probability);
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

  private double probability(String better, String worse, double fallback) {
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
    if (by.scale() == Scale.POINTS && !a.isScore() && a.kind() != Figure.Kind.MARK) {
      return new Outcome(Finding.UNCLEAR, expected, a.evidence(), "no score fits: " + expected);
    }
    if (by.scale() == Scale.TIMES
        || by.unit() == Unit.PERCENT
        || by.unit() == null && by.scale() == Scale.NONE && by.low() < 1 && !a.isScore()) {
      double ratio = Math.max(va, vb) / Math.min(va, vb);
      double stated =
          by.scale() == Scale.TIMES
              ? by.low()
              : by.unit() == Unit.PERCENT ? 1 + by.low() / 100 : 1 / by.low();
      boolean lessThan =
          by.unit() == Unit.PERCENT
              && Math.abs((1 - 1 / ratio) * 100 - by.low()) <= by.step() / 2 + 0.5;
      boolean near =
          switch (by.hedge()) {
            case OVER, AT_LEAST ->
                ratio >= stated * (by.low() < 1 && by.unit() == null ? 0 : 1)
                    && (by.low() >= 1 || by.unit() != null || ratio < stated);
            case UNDER, AT_MOST ->
                by.low() < 1 && by.unit() == null ? ratio > stated : ratio < stated;
            default -> Math.abs(ratio / stated - 1) <= (hedged ? 0.10 : 0.05) || lessThan;
          };
      String found = "a factor of " + Rounding.HALF_UP.text(ratio, 2);
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
        Math.abs(Objects.requireNonNull(a.value()) - Objects.requireNonNull(b.value()));
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
    Figure gap = a.asDifference(difference, own);
    Judge.Ruling ruling = Judge.rule(by, gap, unit);
    if (ruling.finding() != Finding.SUPPORTED && shownDifferenceHolds(a, b, by, own, unit)) {
      ruling = new Judge.Ruling(Finding.SUPPORTED, ruling.expected(), ruling.why());
    }
    return new Outcome(
        ruling.finding(),
        ruling.expected(),
        a.evidence(),
        "the difference is " + ruling.expected() + " (" + expected + ")");
  }

  /** Readers subtract what is printed: 8.0 and 7.4 lie 0.6 apart. */
  private static boolean shownDifferenceHolds(
      Figure a, Figure b, NumberPhrase by, @Nullable Unit own, @Nullable Unit unit) {
    double step = unit == null || own == null || unit == own ? by.step() : Double.NaN;
    if (Double.isNaN(step) || a.value() == null || b.value() == null) {
      return false;
    }
    double shown =
        Math.abs(
            Judge.rounded(a.value(), Math.min(step, 1))
                - Judge.rounded(b.value(), Math.min(step, 1)));
    return Judge.rule(by, a.asDifference(Judge.rounded(shown, Math.min(step, 0.1)), own), unit)
            .finding()
        == Finding.SUPPORTED;
  }

  /** Degrees of a difference are kelvin. */
  static @Nullable Unit differenceOf(@Nullable Unit unit) {
    return unit == Unit.CELSIUS
        ? Unit.KELVIN
        : unit == Unit.FAHRENHEIT ? Unit.FAHRENHEIT_DIFFERENCE : unit;
  }

  private Outcome againstField(
      Figure use, List<Figure> field, Direction wanted, String against, Separation separation) {
    if (Wording.is(against, "average|field average|mean")) {
      double mean =
          field.stream()
              .map(Separation::level)
              .filter(Objects::nonNull)
              .mapToDouble(Double::doubleValue)
              .average()
              .orElse(Double.NaN);
      double own = Objects.requireNonNull(Separation.level(use));
      boolean holds = wanted == Direction.HIGH ? own > mean : own < mean;
      String expected =
          figures.name(use.product()) + " " + shown(use, own) + ", average " + shown(use, mean);
      return new Outcome(
          holds ? Finding.SUPPORTED : Finding.CONTRADICTED, expected, use.evidence(), expected);
    }
    Matcher but = BUT.matcher(against);
    if (but.matches()) {
      return behind(
          use, separation, List.of("one", "two", "three", "four").indexOf(but.group(1)) + 1);
    }
    Extremes.Place extreme = new Extremes(separation, figures::name).first(use);
    return new Outcome(extreme.finding(), extreme.expected(), use.evidence(), extreme.why());
  }

  private static final Pattern BUT =
      Pattern.compile("(?is).*\\b(?:but|except|bar|save)\\s+(one|two|three|four)");

  /** "Longer than every other but two": just so many lie further. */
  private Outcome behind(Figure use, Separation separation, int stated) {
    List<Figure> further =
        separation.ordered().stream()
            .filter(f -> !f.product().equals(use.product()))
            .filter(f -> separation.signed(f) > separation.signed(use))
            .toList();
    String expected =
        further.size()
            + " lie further: "
            + String.join(", ", further.stream().map(f -> figures.name(f.product())).toList());
    return new Outcome(
        further.size() == stated ? Finding.SUPPORTED : Finding.CONTRADICTED,
        expected,
        use.evidence(),
        use.label() + ": " + expected);
  }

  String both(Figure a, Figure b) {
    return figures.name(a.product())
        + " "
        + shownOrBound(a)
        + ", "
        + figures.name(b.product())
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

  static Direction turned(Direction direction) {
    return direction == Direction.HIGH ? Direction.LOW : Direction.HIGH;
  }
}
