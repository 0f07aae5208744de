package ovenproof.core.trace;

import java.util.List;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/** Time until the curve no longer drifts. */
public final class PreheatSteady implements TraceMeasure {

  public static final MeasureDescription DESCRIPTION =
      TraceMeasures.describe(
              "preheat-steady",
              "Preheat, until steady",
              Unit.SECOND,
              "Time from heat on until the mean over a cycle drifts less than 1 K in 10 min: the walls"
                  + " are warm too.",
              "when the line through the cycle (or minute) means of the next 10 min and at least five"
                  + " cycles comes to change less than 1 K in 10 min, between two cycles"
                  + " interpolated",
              "common practice")
          .revised(2);

  /** Known no better than this and than half of itself, it is not known. */
  private static final double LARGEST_U_SECONDS = 300;

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  /**
   * Finer than a cycle or a minute it cannot be known, nor than the scatter of their means lets.
   */
  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    SteadyState steady = curve.steady();
    if (steady == null) {
      return input.missing(DESCRIPTION, curve.whyNotSteady());
    }
    String cold = HeatCurve.notHeated(curve, steady);
    if (cold != null) {
      return input.missing(DESCRIPTION, cold);
    }
    if (steady.settledU() > Math.max(LARGEST_U_SECONDS, steady.settledSecond() / 2)) {
      return input.missing(
          DESCRIPTION, "the means of its cycles scatter too much to tell since when");
    }
    return TraceMeasures.value(
        DESCRIPTION,
        input,
        steady.settledSecond(),
        List.of(Component.run(steady.settledU())),
        DESCRIPTION.formula());
  }
}
