package ovenproof.core.trace;

import java.util.List;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/** Time until the moving mean stays within 2 % of the rise of where it ends. */
public final class Settling implements TraceMeasure {
  private static final double SHARE = 0.02;

  public static final MeasureDescription DESCRIPTION =
      TraceMeasures.describe(
          "settling",
          "Settling time",
          Unit.SECOND,
          "Time from heat on until the mean over a cycle stays within 2 % of the rise of the steady"
              + " mean.",
          "first time after which |moving mean − steady mean| ≤ 0.02 (steady mean − start)",
          "usual definition of control engineering");

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
    String cold = HeatCurve.notHeated(curve, steady);
    if (cold != null) {
      return input.missing(DESCRIPTION, cold);
    }
    double rise = steady.meanCelsius() - curve.clean().values()[0];
    double period = curve.cycles().size() > 0 ? curve.cycles().medianPeriodSeconds() : 60;
    MovingMean mean = MovingMean.of(curve, period, steady.endSecond());
    BandEntry entry = new BandEntry(mean, SHARE * rise);
    double time = entry.second(steady.meanCelsius());
    if (!Double.isFinite(time)) {
      return input.missing(DESCRIPTION, "the record is shorter than one cycle");
    }
    double reading = Math.hypot(curve.readingU(), steady.standardError());
    double kelvin = Math.max(0.05, Math.hypot(reading, BandEntry.rippleKelvin(curve)));
    double moved = kelvin * entry.sensitivity(steady.meanCelsius(), kelvin);
    double u = Math.hypot(moved, BandEntry.ofWindow(curve));
    return TraceMeasures.value(
        DESCRIPTION, input, time, List.of(Component.run(u)), DESCRIPTION.formula());
  }
}
