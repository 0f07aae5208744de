package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.List;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/** How far the curve shoots past the level it settles at. */
public final class Overshoot implements TraceMeasure {

  static final double LOOK_SECONDS = 1800;

  public static final MeasureDescription DESCRIPTION =
      TraceMeasures.describe(
              "overshoot",
              "Overshoot",
              Unit.KELVIN,
              "Highest temperature of the first 30 min above the steady mean. The probe's calibration"
                  + " cancels.",
              "max(first 30 min) − steady mean",
              "common practice")
          .revised(2);

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    SteadyState steady = curve.steady();
    if (steady == null) {
      return input.missing(DESCRIPTION, "no steady part to compare with: " + curve.whyNotSteady());
    }
    String cold = HeatCurve.notHeated(curve, steady);
    if (cold != null) {
      return input.missing(DESCRIPTION, cold);
    }
    double until = Math.min(LOOK_SECONDS, steady.endSecond());
    double top = Highest.of(curve.smooth().window(0, until));
    if (!Double.isFinite(top)) {
      return input.missing(DESCRIPTION, "no reading in the first 30 min");
    }
    return TraceMeasures.value(
            DESCRIPTION,
            input,
            top - steady.meanCelsius(),
            components(input, Math.hypot(curve.readingU(), steady.standardError())),
            DESCRIPTION.formula())
        .withNote(percent(input, top, steady));
  }

  /** The calibration cancels; what the probe feels of glowing elements while they heat does not. */
  private static List<Component> components(TraceInput input, double runU) {
    List<Component> parts = new ArrayList<>(input.probe().radiation().unlike(1));
    parts.add(Component.run(runU));
    return parts;
  }

  private static @org.jspecify.annotations.Nullable String percent(
      TraceInput input, double top, SteadyState steady) {
    Double ambient = input.ambientCelsius();
    if (ambient == null || steady.meanCelsius() - ambient < 20) {
      return null;
    }
    double share = 100 * (top - steady.meanCelsius()) / (steady.meanCelsius() - ambient);
    return TraceMeasures.digits(share, 1) + " % of the rise above the room";
  }
}
