package ovenproof.proof;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.Proof.Finding;

/**
 * Holds one stated number against one figure, by the wording.
 *
 * <p>A plain number is supported if the stored value rounds to it; it is unclear if only rounding
 * twice, or reading a round number generously, leads to it. Hedges have their bands.
 */
final class Judge {
  private static final double ABOUT_SHARE = 0.05;
  private static final double ABOUT_KELVIN = 3;
  private static final double ABOUT_FAHRENHEIT_STEPS = 5;

  private Judge() {}

  /** A finding with the expected value in words and the reason. */
  record Ruling(Finding finding, @Nullable String expected, String why) {}

  /**
   * Whether a number is just the bound at which a figure was given up: a cap, as text repeats it.
   */
  static boolean isBound(NumberPhrase said, Figure figure, @Nullable Unit unit) {
    Double bound = figure.low();
    return figure.value() == null
        && bound != null
        && said.low() > 0
        && Math.abs(inUnit(bound, figure, unit) / said.low() - 1) < 0.01;
  }

  static Ruling rule(NumberPhrase said, Figure figure, @Nullable Unit unit) {
    Double value = figure.value();
    if (value == null) {
      return bounded(said, figure, unit);
    }
    double v = inUnit(value, figure, unit);
    String expected = text(v, unit, decimals(said, figure));
    if (said.isRange()) {
      return range(said, figure, unit, expected);
    }
    boolean holds = holds(said, v, unit);
    if (holds) {
      return new Ruling(Finding.SUPPORTED, expected, "the stored value is " + expected);
    }
    if (said.hedge() == Hedge.PLAIN && almost(said, v)) {
      return new Ruling(
          Finding.UNCLEAR,
          expected,
          "the stored value is " + expected + ": only a generous rounding gives this");
    }
    return new Ruling(Finding.CONTRADICTED, expected, "the stored value is " + expected);
  }

  /** Whether a value is what a number states, by its hedge. */
  static boolean holds(NumberPhrase said, double v, @Nullable Unit unit) {
    double stated = said.low();
    double band = band(said, stated, unit);
    return switch (said.hedge()) {
      case PLAIN -> roundsTo(said, v, stated);
      case ABOUT -> Math.abs(v - stated) <= band;
      case ALMOST -> v < stated && v >= stated - band;
      case JUST_OVER -> v > stated && v <= stated + band;
      case OVER -> v > stated;
      case AT_LEAST -> v >= stated;
      case UNDER -> v < stated;
      case AT_MOST -> v <= stated;
    };
  }

  /** A mean that lies on the tie but for the last bit of a double may be rounded either way. */
  private static boolean roundsTo(NumberPhrase said, double v, double stated) {
    double hair = 1e-9 * Math.max(1, Math.abs(v));
    return same(rounded(v - hair, said.step()), stated, said.step())
        || same(rounded(v + hair, said.step()), stated, said.step());
  }

  static double band(NumberPhrase said, double stated, @Nullable Unit unit) {
    double half = said.step() / 2;
    if (unit == Unit.CELSIUS || unit == Unit.KELVIN) {
      return Math.max(half, ABOUT_KELVIN);
    }
    if (unit == Unit.FAHRENHEIT || unit == Unit.FAHRENHEIT_DIFFERENCE) {
      return Math.max(half, ABOUT_FAHRENHEIT_STEPS);
    }
    return Math.max(half, ABOUT_SHARE * Math.abs(stated));
  }

  /** Rounding twice, or a round number within half of its own place (170 for 168). */
  private static boolean almost(NumberPhrase said, double v) {
    double twice = rounded(rounded(v, said.step() / 10), said.step());
    if (same(twice, said.low(), said.step())) {
      return true;
    }
    double stated = said.low();
    double place = said.step();
    while (place < 1e9 && stated != 0 && same(rounded(stated, place * 10), stated, place)) {
      place *= 10;
    }
    return place > said.step() && Math.abs(v - stated) <= place / 2;
  }

  /** A range that states bounds or an interval must be it, or hold it. */
  private static Ruling interval(NumberPhrase said, double low, double high, String expected) {
    double left = rounded(low, said.step()) - said.low();
    double right = said.high() - rounded(high, said.step());
    boolean holds = left >= -1e-9 && right >= -1e-9;
    boolean tight = Math.max(left, right) <= said.step() + 1e-9;
    return new Ruling(
        !holds ? Finding.CONTRADICTED : tight ? Finding.SUPPORTED : Finding.UNCLEAR,
        expected,
        "it lies at " + expected);
  }

  /** All runs must round inside; with a single value that value must. */
  private static Ruling range(
      NumberPhrase said, Figure figure, @Nullable Unit unit, String expected) {
    if (figure.isScore() && figure.low() != null && figure.high() != null) {
      return interval(
          said, figure.low(), figure.high(), bounds(figure, unit, decimals(said, figure)));
    }
    List<Double> runs = figure.runs().isEmpty() ? List.of(value(figure)) : figure.runs();
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    for (double run : runs) {
      lowest = Math.min(lowest, inUnit(run, figure, unit));
      highest = Math.max(highest, inUnit(run, figure, unit));
    }
    boolean inside =
        rounded(lowest, said.step()) >= said.low() - 1e-9
            && rounded(highest, said.step()) <= said.high() + 1e-9;
    int decimals = decimals(said, figure);
    String found =
        runs.size() == 1
            ? expected
            : text(lowest, null, decimals) + " to " + text(highest, unit, decimals);
    return new Ruling(
        inside ? Finding.SUPPORTED : Finding.CONTRADICTED,
        found,
        (inside ? "all runs lie inside: " : "the runs lie at ") + found);
  }

  /** Only a bound is known: "over 45 minutes" can be true, "45 minutes" cannot. */
  private static Ruling bounded(NumberPhrase said, Figure figure, @Nullable Unit unit) {
    Double low = figure.low();
    Double high = figure.high();
    if (low == null && high == null) {
      return new Ruling(Finding.UNSUPPORTED, null, "it was not measured");
    }
    int decimals = decimals(said, figure);
    String expected = bounds(figure, unit, decimals);
    if (said.isRange() && low != null && high != null) {
      return interval(said, inUnit(low, figure, unit), inUnit(high, figure, unit), expected);
    }
    boolean above = low != null && high == null;
    boolean says = said.hedge() == Hedge.OVER || said.hedge() == Hedge.AT_LEAST;
    if (low != null && above && says) {
      boolean holds = rounded(inUnit(low, figure, unit), said.step()) >= said.low() - 1e-9;
      return new Ruling(
          holds ? Finding.SUPPORTED : Finding.UNCLEAR,
          expected,
          "it is only known to be " + expected);
    }
    boolean impossible =
        low != null && said.high() + said.step() / 2 < inUnit(low, figure, unit)
            || high != null && said.low() - said.step() / 2 > inUnit(high, figure, unit)
            || above;
    return new Ruling(
        impossible ? Finding.CONTRADICTED : Finding.UNCLEAR,
        expected,
        above
            ? "the cap was reached: it is only known to be " + expected
            : "it is only known to be " + expected);
  }

  static String bounds(Figure figure, @Nullable Unit unit, int decimals) {
    Double low = figure.low();
    Double high = figure.high();
    if (low != null && high != null) {
      return text(inUnit(low, figure, unit), null, decimals)
          + " to "
          + text(inUnit(high, figure, unit), unit, decimals);
    }
    return low != null
        ? "over " + text(inUnit(low, figure, unit), unit, decimals)
        : "under "
            + text(inUnit(java.util.Objects.requireNonNull(high), figure, unit), unit, decimals);
  }

  // ---- numbers ----

  static double inUnit(double contract, Figure figure, @Nullable Unit unit) {
    Unit own = figure.unit();
    if (unit == null || own == null || unit == own || unit.dimension() != own.dimension()) {
      return contract;
    }
    return Quantity.of(contract, own).to(unit).value();
  }

  /** To the nearest multiple of the step, halves up, decided on the shortest decimal. */
  static double rounded(double value, double step) {
    BigDecimal s = BigDecimal.valueOf(step);
    BigDecimal steps =
        BigDecimal.valueOf(value)
            .divide(s, 9, RoundingMode.HALF_UP)
            .setScale(0, RoundingMode.HALF_UP);
    return steps.multiply(s).doubleValue();
  }

  private static boolean same(double a, double b, double step) {
    return Math.abs(a - b) < step * 1e-6 + 1e-12;
  }

  private static int decimals(NumberPhrase said, Figure figure) {
    if (figure.shownDecimals() >= 0) {
      return figure.shownDecimals();
    }
    boolean time = figure.unit() != null && figure.unit().dimension() == Dimension.TIME;
    return time ? 0 : Math.max(1, Math.min(4, said.decimals()));
  }

  static String text(double value, @Nullable Unit unit, int decimals) {
    if (unit == Unit.MINUTE) {
      long seconds = Math.round(value * 60);
      return seconds / 60 + " min " + seconds % 60 + " s";
    }
    String number = ovenproof.core.quantity.Rounding.HALF_UP.text(value, decimals);
    return unit == null || unit == Unit.POINTS ? number : number + " " + unit.symbol();
  }

  private static double value(Figure figure) {
    return java.util.Objects.requireNonNull(figure.value());
  }
}
