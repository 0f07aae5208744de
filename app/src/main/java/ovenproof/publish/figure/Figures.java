package ovenproof.publish.figure;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Rounding;
import ovenproof.core.quantity.Unit;

/**
 * The digits of the publication.
 *
 * <p>A value is printed with the decimals of its unit: whole degrees, whole seconds, one decimal
 * for litres, points and colour, two for kilowatt-hours; below 10, kelvin, grams, millimetres and
 * per cent get one decimal. Rates of temperature, which are drifts, are printed in kelvin per hour.
 * Beside its standard uncertainty it is printed to the place of the second significant digit of the
 * uncertainty (JCGM 100:2008, 7.2.6), which is rounded up at the half like everything else.
 *
 * <p>Number and unit are joined by a no-break space; the minus sign is U+2212.
 */
public final class Figures {
  /** Between a number and its unit. */
  public static final String GAP = "\u00a0";

  private Figures() {}

  /** A value in its contract unit, in both systems. */
  public static Dual dual(double value, Unit unit) {
    return dual(printed(value, unit), Rounding.HALF_UP);
  }

  /**
   * A quantity as written, and in the other system.
   *
   * @param rounding {@link Rounding#FLOOR_UP} for floors, so that neither number lies below them
   */
  public static Dual dual(Quantity quantity, Rounding rounding) {
    Quantity shown = comfortable(quantity);
    Quantity other = otherSystem(shown);
    return new Dual(
        text(shown, rounding), other == null ? null : text(other, rounding) + suffix(other));
  }

  /** A value in its contract unit, as printed in that system only. */
  public static String text(double value, Unit unit) {
    return text(comfortable(printed(value, unit)), Rounding.HALF_UP);
  }

  /** A quantity in its own unit. */
  public static String text(Quantity quantity, Rounding rounding) {
    if (quantity.unit() == Unit.SECOND) {
      return duration(quantity.value(), rounding);
    }
    String digits = rounding.text(quantity.value(), decimals(quantity));
    return digits + symbol(quantity.unit());
  }

  /**
   * Value and standard uncertainty: {@code 215.9 ± 2.2 °C}; the value alone when the uncertainty is
   * unknown or zero.
   */
  public static String withUncertainty(double value, @Nullable Double uncertainty, Unit unit) {
    if (uncertainty == null || !(uncertainty > 0)) {
      return text(value, unit);
    }
    if (unit == Unit.KELVIN_PER_SECOND) {
      double perHour = printed(uncertainty, unit).value();
      return withUncertainty(printed(value, unit).value(), perHour, Unit.KELVIN_PER_HOUR);
    }
    int decimals = Math.max(0, placesOfSecondDigit(uncertainty));
    return Rounding.HALF_UP.text(value, decimals)
        + " ± "
        + uncertaintyDigits(uncertainty, decimals)
        + (unit == Unit.SECOND ? GAP + "s" : symbol(unit));
  }

  /** A standard uncertainty alone, with two significant digits: {@code 2.2 K}. */
  public static String uncertainty(double uncertainty, Unit unit) {
    if (unit == Unit.KELVIN_PER_SECOND) {
      return uncertainty(printed(uncertainty, unit).value(), Unit.KELVIN_PER_HOUR);
    }
    Unit difference = unit == Unit.CELSIUS ? Unit.KELVIN : unit;
    if (!(uncertainty > 0)) {
      return "0" + symbol(difference);
    }
    int decimals = Math.max(0, placesOfSecondDigit(uncertainty));
    return uncertaintyDigits(uncertainty, decimals) + symbol(difference);
  }

  /** A measurement in words and digits: value, bound, or why there is none. */
  public static Dual of(Measurement measurement) {
    Unit unit = measurement.unit();
    if (measurement.value() != null) {
      return dual(measurement.value(), unit);
    }
    return switch (measurement.censored()) {
      case ABOVE -> bound("over ", measurement.low(), unit);
      case BELOW -> bound("under ", measurement.high(), unit);
      case BETWEEN -> between(measurement.low(), measurement.high(), unit);
      case NONE -> new Dual("none", null);
    };
  }

  /** Digits of a standard uncertainty: two significant ones, no zero that was not there. */
  private static String uncertaintyDigits(double uncertainty, int decimals) {
    BigDecimal rounded =
        new BigDecimal(uncertainty).round(new MathContext(2, RoundingMode.HALF_UP));
    return rounded.setScale(decimals, RoundingMode.HALF_UP).toPlainString();
  }

  private static int placesOfSecondDigit(double uncertainty) {
    BigDecimal rounded =
        BigDecimal.valueOf(uncertainty).round(new MathContext(2, RoundingMode.HALF_UP));
    return 1 - (rounded.precision() - rounded.scale() - 1);
  }

  private static Dual bound(String word, @Nullable Double bound, Unit unit) {
    if (bound == null) {
      return new Dual("none", null);
    }
    Dual dual = dual(bound, unit);
    return new Dual(word + dual.first(), dual.second());
  }

  private static Dual between(@Nullable Double low, @Nullable Double high, Unit unit) {
    if (low == null || high == null) {
      return new Dual("none", null);
    }
    Dual from = dual(low, unit);
    Dual to = dual(high, unit);
    String second =
        from.second() == null || to.second() == null ? null : from.second() + " to " + to.second();
    return new Dual(from.first() + " to " + to.first(), second);
  }

  /** {@code 45 s}, {@code 6 min 31 s}, {@code 1 h 5 min}; tenths below ten seconds. */
  static String duration(double seconds, Rounding rounding) {
    if (Math.abs(seconds) < 10 && seconds != Math.rint(seconds)) {
      return rounding.text(seconds, 1) + GAP + "s";
    }
    long whole = rounding.apply(seconds, 0).longValueExact();
    String sign = whole < 0 ? "−" : "";
    long rest = Math.abs(whole);
    if (rest < 60) {
      return sign + rest + GAP + "s";
    }
    String hours = rest >= 3600 ? rest / 3600 + GAP + "h" + GAP : "";
    String minutes = rest % 3600 < 60 ? "" : rest % 3600 / 60 + GAP + "min" + GAP;
    String last = rest % 60 == 0 ? "" : rest % 60 + GAP + "s";
    String words = sign + hours + minutes + last;
    return words.endsWith(GAP) ? words.substring(0, words.length() - 1) : words;
  }

  /** A drift per second is all zeros to a reader: rates of temperature are printed per hour. */
  private static Quantity printed(double value, Unit contractUnit) {
    Quantity quantity = new Quantity(value, contractUnit);
    return contractUnit == Unit.KELVIN_PER_SECOND ? quantity.to(Unit.KELVIN_PER_HOUR) : quantity;
  }

  /** Kilograms from 1000 g on, as people say it. */
  private static Quantity comfortable(Quantity quantity) {
    boolean heavy = quantity.unit() == Unit.GRAM && Math.abs(quantity.value()) >= 1000;
    return heavy ? quantity.to(Unit.KILOGRAM) : quantity;
  }

  private static @Nullable Quantity otherSystem(Quantity shown) {
    double contract = Math.abs(shown.contract());
    return switch (shown.unit()) {
      case CELSIUS -> shown.to(Unit.FAHRENHEIT);
      case FAHRENHEIT -> shown.to(Unit.CELSIUS);
      case KELVIN -> shown.to(Unit.FAHRENHEIT_DIFFERENCE);
      case GRAM, KILOGRAM -> shown.to(contract < 453.59237 ? Unit.OUNCE : Unit.POUND);
      case OUNCE, POUND -> shown.to(contract < 1000 ? Unit.GRAM : Unit.KILOGRAM);
      case MILLIMETRE, CENTIMETRE -> shown.to(Unit.INCH);
      case INCH -> shown.to(Unit.MILLIMETRE);
      case SQUARE_CENTIMETRE -> shown.to(Unit.SQUARE_INCH);
      case LITRE -> shown.to(contract < 10 ? Unit.QUART : Unit.CUBIC_FOOT);
      case QUART, CUBIC_FOOT -> shown.to(Unit.LITRE);
      default -> null;
    };
  }

  private static String suffix(Quantity other) {
    return other.unit() == Unit.FAHRENHEIT_DIFFERENCE ? " difference" : "";
  }

  private static int decimals(Quantity quantity) {
    double size = Math.abs(quantity.value());
    return switch (quantity.unit()) {
      case CELSIUS, FAHRENHEIT, WATT, BROWNING_INDEX, SQUARE_CENTIMETRE, SQUARE_INCH -> 0;
      case KELVIN, FAHRENHEIT_DIFFERENCE, GRAM, MILLIMETRE, CENTIMETRE, PERCENT, DECIBEL, VOLT ->
          size < 9.95 ? 1 : 0;
      case PIECES -> quantity.value() == Math.rint(quantity.value()) ? 0 : 1;
      case KILOGRAM, POUND, KILOWATT_HOUR, CUBIC_FOOT -> 2;
      case INCH -> size < 0.995 ? 2 : 1;
      case LIGHTNESS, A_STAR, B_STAR, DELTA_E00 -> 1;
      default -> size < 0.095 && size > 0 ? 3 : 1;
    };
  }

  private static String symbol(Unit unit) {
    return switch (unit) {
      case ONE -> "";
      case FAHRENHEIT_DIFFERENCE -> GAP + "°F";
      default -> GAP + unit.symbol();
    };
  }
}
