package ovenproof.core.trace;

import java.util.List;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/** Electric energy over the window. */
public final class Energy implements TraceMeasure {

  private static final double WATT_SECONDS_PER_KILOWATT_HOUR = 3_600_000;

  public static final MeasureDescription DESCRIPTION =
      TraceMeasures.describe(
          "energy",
          "Energy",
          Unit.KILOWATT_HOUR,
          "Electric energy from the start to the end of the window.",
          "difference of the energy counter, else the integral of power over time",
          "definition of energy");

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    Trace counter = input.energy() == null ? null : input.energy().present();
    if (counter != null && counter.size() >= 2) {
      return ofCounter(input, counter);
    }
    Trace power = input.power() == null ? null : input.power().present();
    if (power == null || power.size() < 2) {
      return input.missing(DESCRIPTION, "neither power nor energy was logged");
    }
    if (!Gap.in(power.seconds(), power.medianStepSeconds()).isEmpty()) {
      return input.missing(DESCRIPTION, "the record of power has a gap of more than 30 s");
    }
    return ofPower(input, power);
  }

  /** Sums the rises, so that a counter set back to zero on the way does no harm. */
  private static Measurement ofCounter(TraceInput input, Trace counter) {
    double[] v = counter.values();
    double sum = 0;
    int resets = 0;
    double digit = Double.POSITIVE_INFINITY;
    for (int i = 1; i < v.length; i++) {
      double rise = v[i] - v[i - 1];
      resets += rise < 0 ? 1 : 0;
      sum += Math.max(0, rise);
      digit = rise > 0 ? Math.min(digit, rise) : digit;
    }
    double u = Double.isInfinite(digit) ? 0 : Math.min(digit, 0.001) / Math.sqrt(6);
    Measurement result =
        TraceMeasures.value(
            DESCRIPTION, input, sum, List.of(Component.run(u)), "difference of the energy counter");
    return resets == 0
        ? result
        : result.withNote("the counter was set back " + resets + " time(s) on the way");
  }

  private static Measurement ofPower(TraceInput input, Trace power) {
    double from = power.seconds()[0];
    double to = power.lastSecond();
    double wattSeconds = TimeMean.integral(power, from, to);
    return TraceMeasures.value(
        DESCRIPTION,
        input,
        wattSeconds / WATT_SECONDS_PER_KILOWATT_HOUR,
        List.of(Component.run(switchingU(power))),
        "integral of power from " + TraceMeasures.clock(from) + " to " + TraceMeasures.clock(to));
  }

  /** Each switching happens somewhere between two samples. */
  private static double switchingU(Trace power) {
    return switchingWattSeconds(power) / WATT_SECONDS_PER_KILOWATT_HOUR;
  }

  /** Standard uncertainty, in W s, of the integral of a power that switches between samples. */
  static double switchingWattSeconds(Trace power) {
    double[] t = power.seconds();
    double[] v = power.values();
    double sum = 0;
    for (int i = 1; i < v.length; i++) {
      double part = (v[i] - v[i - 1]) * (t[i] - t[i - 1]);
      sum += part * part / 12;
    }
    return Math.sqrt(sum);
  }
}
