package ovenproof.core.trace;

import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Unit;

/**
 * The unit of a meter's column that names its quantity but no unit, from what the columns beside it
 * add up to, and from what a kitchen's socket can give.
 *
 * @param unit most plausible
 * @param sure whether the other readings are out of the question
 * @param why in words
 * @param readings the possible ones in words, the assumed one first
 */
record MeterUnit(Unit unit, boolean sure, String why, List<String> readings) {

  /** No socket in a kitchen gives more for long, in W. */
  private static final double MOST_WATTS = 8000;

  /** In A; what is larger is written in mA. */
  private static final double MOST_AMPERES = 63;

  /** Within this factor two figures for one energy agree: meters round and sample. */
  private static final double AGREES = 1.6;

  private static final double JOULES_PER_KWH = 3.6e6;

  /**
   * Of an energy counter, by its rise; where it begins says nothing, counters run for years.
   *
   * @param watts power at the same times, null when it was not logged
   */
  static MeterUnit ofEnergy(double[] seconds, double[] counter, double @Nullable [] watts) {
    double rise = rise(counter);
    double duration = seconds.length < 2 ? 0 : seconds[seconds.length - 1] - seconds[0];
    double joules = watts == null ? Double.NaN : integral(seconds, watts);
    for (Unit unit : List.of(Unit.KILOWATT_HOUR, Unit.WATT_HOUR, Unit.JOULE, Unit.KILOJOULE)) {
      double ratio = rise * joulesPer(unit) / joules;
      if (joules > 0 && ratio > 1 / AGREES && ratio < AGREES) {
        String why = unit.symbol() + ": its rise is what the power beside it adds up to";
        return new MeterUnit(unit, true, why, List.of(unit.symbol()));
      }
    }
    boolean tooMuch = duration > 0 && rise * JOULES_PER_KWH / duration > MOST_WATTS;
    if (tooMuch) {
      return new MeterUnit(
          Unit.WATT_HOUR,
          true,
          "Wh: in kWh its rise would be more than a socket gives",
          List.of("Wh"));
    }
    return new MeterUnit(
        Unit.KILOWATT_HOUR,
        false,
        "no unit is written and no power stands beside it; meters mostly count kWh",
        List.of("kWh", "Wh"));
  }

  private static double joulesPer(Unit unit) {
    return ovenproof.core.quantity.Quantity.of(1, unit).contract() * JOULES_PER_KWH;
  }

  /**
   * Of a power that never goes above 100.
   *
   * @param high largest reading
   * @param volts and amperes at the same times, null when they were not logged
   * @return in per cent where it is a share of full power
   */
  static MeterUnit ofPower(
      double high, double[] power, double @Nullable [] volts, double @Nullable [] amperes) {
    if (volts != null && amperes != null) {
      double product = 0;
      double sum = 0;
      for (int i = 0; i < power.length; i++) {
        boolean read = Double.isFinite(power[i] + volts[i] + amperes[i]);
        product += read ? volts[i] * amperes[i] : 0;
        sum += read ? power[i] : 0;
      }
      for (Unit unit : List.of(Unit.WATT, Unit.KILOWATT)) {
        double ratio = sum * (unit == Unit.WATT ? 1 : 1000) / product;
        if (product > 0 && ratio > 0.3 && ratio < AGREES) {
          String why = unit.symbol() + ": as volts times amperes beside it";
          return new MeterUnit(unit, true, why, List.of(unit.symbol()));
        }
      }
    }
    if (high > 1.0001 && high <= 5) {
      return new MeterUnit(
          Unit.KILOWATT,
          false,
          "never above 5: taken as kW",
          List.of("kW", "% of full power", "W"));
    }
    return new MeterUnit(
        Unit.PERCENT,
        false,
        high <= 1.0001
            ? "never above 1: taken as shares of full power"
            : "never above 100: taken as per cent of full power",
        high <= 1.0001 ? List.of("share of full power", "kW") : List.of("% of full power", "W"));
  }

  /** Of a current, by its largest reading. */
  static UnitText ofCurrent(double high) {
    return new UnitText(Unit.AMPERE, high > MOST_AMPERES ? 1e-3 : 1);
  }

  private static double rise(double[] counter) {
    double rise = 0;
    double last = Double.NaN;
    for (double v : counter) {
      if (Double.isFinite(v)) {
        rise += v > last ? v - last : 0;
        last = v;
      }
    }
    return rise;
  }

  private static double integral(double[] seconds, double[] watts) {
    double joules = 0;
    for (int i = 1; i < seconds.length; i++) {
      double mean = (watts[i] + watts[i - 1]) / 2;
      joules += Double.isFinite(mean) ? mean * (seconds[i] - seconds[i - 1]) : 0;
    }
    return joules;
  }
}
