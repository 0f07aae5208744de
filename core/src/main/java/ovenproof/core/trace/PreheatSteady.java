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
          "start of the first cycle (or minute) from which the line through the means of the next"
              + " 10 min and at least five cycles changes less than 1 K in 10 min",
          "common practice");

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  /** Its uncertainty is half a cycle or half a minute: finer it cannot be known. */
  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    SteadyState steady = curve.steady();
    if (steady == null) {
      return TraceMeasures.missing(DESCRIPTION, input, curve.whyNotSteady());
    }
    double width = (steady.endSecond() - steady.startSecond()) / steady.blocks();
    return TraceMeasures.value(
        DESCRIPTION,
        input,
        steady.startSecond(),
        List.of(Component.run(width / Math.sqrt(12))),
        DESCRIPTION.formula());
  }
}
