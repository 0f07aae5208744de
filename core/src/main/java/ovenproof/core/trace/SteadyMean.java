package ovenproof.core.trace;

import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/** The temperature the appliance holds. */
public final class SteadyMean implements TraceMeasure {

  public static final MeasureDescription DESCRIPTION =
      TraceMeasures.describe(
          "steady-mean",
          "Steady mean",
          Unit.CELSIUS,
          "Time-mean of the centre once it no longer drifts, over whole cycles only.",
          "time-mean over whole cycles (or minutes) of the steady part",
          "common practice");

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    SteadyState steady = curve.steady();
    if (steady == null) {
      return input.missing(DESCRIPTION, curve.whyNotSteady());
    }
    return TraceMeasures.value(
        DESCRIPTION,
        input,
        steady.meanCelsius(),
        input.probe().components(1, u(curve, steady)),
        over(steady));
  }

  /** Scatter of the block means, never below what noise and resolution leave in a mean. */
  static double u(HeatCurve curve, SteadyState steady) {
    return Math.hypot(steady.standardError(), curve.resolutionKelvin() / Math.sqrt(12) / 2);
  }

  static String over(SteadyState steady) {
    return "time-mean over "
        + steady.blocks()
        + (steady.swing() == SteadyState.Swing.CYCLING ? " whole cycles" : " minutes")
        + ", "
        + TraceMeasures.clock(steady.startSecond())
        + " to "
        + TraceMeasures.clock(steady.endSecond());
  }
}
