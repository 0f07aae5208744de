package ovenproof.core.trace;

import java.util.List;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/** The swing of the thermostat, peak to trough. */
public final class CycleAmplitude implements TraceMeasure {

  public static final MeasureDescription DESCRIPTION =
      TraceMeasures.describe(
          "cycle-amplitude",
          "Swing, peak to trough",
          Unit.KELVIN,
          "Median distance from a peak to the following trough once steady, as the probe shows it: a"
              + " slow probe shows less than the air does.",
          "median(peak − trough) over the steady cycles, swings of 2 K and more",
          "common practice; lag of a first-order probe 1/√(1 + (2πτ/P)²)");

  /** A probe must be this many times faster than the cycle to lose less than 5 % of it. */
  static final double PERIODS_PER_TIME_CONSTANT = 20;

  /** Below this the probe shows less than half of the swing: refused. */
  static final double REFUSED_SHARE = 0.5;

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    Cycles cycles = curve.steadyCycles();
    if (cycles.size() == 0) {
      return input.missing(DESCRIPTION, whyNone(curve));
    }
    double period = cycles.medianPeriodSeconds();
    double share = shownShare(input, period);
    if (share < REFUSED_SHARE) {
      return input.missing(
          DESCRIPTION,
          "cannot be resolved with this probe: it shows "
              + TraceMeasures.digits(100 * share, 0)
              + " % of a cycle of "
              + TraceMeasures.digits(period, 0)
              + " s");
    }
    double[] swings = cycles.list().stream().mapToDouble(Cycles.Cycle::amplitude).toArray();
    Measurement result =
        TraceMeasures.value(
            DESCRIPTION,
            input,
            Medians.of(swings),
            List.of(Component.run(Math.hypot(u(swings, curve), missed(swings, period, curve)))),
            "median of " + swings.length + " swings, peak to trough");
    return result.withNote(note(input, curve, period, share));
  }

  /** A peak is the highest of noisy readings, a trough the lowest: both err outwards. */
  private static double u(double[] swings, HeatCurve curve) {
    return Math.hypot(Medians.standardError(swings), Math.sqrt(2) * curve.cycleReadingU());
  }

  /** What few readings per cycle miss of the peaks of a sine, on average. */
  private static double missed(double[] swings, double period, HeatCurve curve) {
    double x = Math.PI * curve.clean().medianStepSeconds() / period;
    return x > 0 ? Medians.of(swings) * (1 - Math.sin(x) / x) : 0;
  }

  /** Share of a sine that a first-order probe shows; 1 when its time constant is unknown. */
  static double shownShare(TraceInput input, double period) {
    Double tau = input.probe().timeConstantSeconds();
    return tau == null ? 1 : 1 / Math.hypot(1, 2 * Math.PI * tau / period);
  }

  private static @org.jspecify.annotations.Nullable String note(
      TraceInput input, HeatCurve curve, double period, double share) {
    Double tau = input.probe().timeConstantSeconds();
    if (tau != null && period / tau < PERIODS_PER_TIME_CONSTANT) {
      return "the probe shows about " + TraceMeasures.digits(100 * share, 0) + " % of the swing";
    }
    if (period < 10 * curve.clean().medianStepSeconds()) {
      return "fewer than ten readings per cycle: peaks may be missed";
    }
    return null;
  }

  static String whyNone(HeatCurve curve) {
    if (curve.cycles().size() == 0) {
      return "no swing of 2 K or more was found";
    }
    return "no steady cycles: " + curve.whyNotSteady();
  }
}
