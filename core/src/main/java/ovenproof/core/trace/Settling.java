package ovenproof.core.trace;

import java.util.List;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/** Time until the moving mean stays within 2 % of the rise of where it ends. */
public final class Settling implements TraceMeasure {

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
      return TraceMeasures.missing(DESCRIPTION, input, curve.whyNotSteady());
    }
    double rise = steady.meanCelsius() - curve.clean().values()[0];
    if (rise < 20) {
      return TraceMeasures.missing(
          DESCRIPTION, input, "the curve rises by less than 20 K: no cold start in the window");
    }
    double period = curve.cycles().size() > 0 ? curve.cycles().medianPeriodSeconds() : 60;
    MovingMean mean = MovingMean.of(curve, period, steady.endSecond());
    int i = mean.size() - 1;
    while (i > 0 && Math.abs(mean.value(i - 1) - steady.meanCelsius()) <= 0.02 * rise) {
      i--;
    }
    if (i < 1) {
      return TraceMeasures.missing(DESCRIPTION, input, "the record is shorter than one cycle");
    }
    double slope =
        Math.max(
            1e-4,
            Math.abs((mean.value(i) - mean.value(i - 1)) / (mean.second(i) - mean.second(i - 1))));
    double u = Math.hypot(curve.readingU(), steady.standardError()) / slope;
    return TraceMeasures.value(
        DESCRIPTION, input, mean.second(i), List.of(Component.run(u)), DESCRIPTION.formula());
  }
}
