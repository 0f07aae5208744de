package ovenproof.core.trace;

import java.util.List;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/** How the steady mean still moves. */
public final class Drift implements TraceMeasure {

  public static final MeasureDescription DESCRIPTION =
      TraceMeasures.describe(
          "drift",
          "Drift when steady",
          Unit.KELVIN_PER_HOUR.contractUnit(),
          "Slope of the cycle means over the steady part.",
          "least-squares slope of the means of whole cycles (or minutes)",
          "own definition");

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
            steady.driftKelvinPerHour() / 3600,
            List.of(Component.run(steady.driftUKelvinPerHour() / 3600)),
            DESCRIPTION.formula())
        .withNote(TraceMeasures.digits(steady.driftKelvinPerHour(), 1) + " K per hour");
  }
}
