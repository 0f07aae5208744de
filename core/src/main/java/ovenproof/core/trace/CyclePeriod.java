package ovenproof.core.trace;

import java.util.List;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/** How long a swing of the thermostat lasts. */
public final class CyclePeriod implements TraceMeasure {

  public static final MeasureDescription DESCRIPTION =
      TraceMeasures.describe(
              "cycle-period",
              "Cycle, peak to peak",
              Unit.SECOND,
              "Usual time from one peak to the next once steady.",
              "mean(peak to peak) over the steady cycles within 30 % of their median, swings of 2 K"
                  + " and more",
              "common practice")
          .revised(2);

  /** A cycle further from the median missed a peak or was disturbed. */
  private static final double USUAL_SHARE = 0.3;

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    Cycles cycles = curve.steadyCycles();
    if (cycles.size() == 0) {
      return input.missing(DESCRIPTION, CycleAmplitude.whyNone(curve));
    }
    double median = cycles.medianPeriodSeconds();
    double[] periods =
        cycles.list().stream()
            .mapToDouble(Cycles.Cycle::periodSeconds)
            .filter(p -> Math.abs(p / median - 1) <= USUAL_SHARE)
            .toArray();
    double n = periods.length;
    double mean = java.util.Arrays.stream(periods).sum() / n;
    double squares = java.util.Arrays.stream(periods).map(p -> (p - mean) * (p - mean)).sum();
    double scatter = n > 1 ? Math.sqrt(squares / (n - 1) / n) : 0;
    double step = curve.clean().medianStepSeconds();
    return TraceMeasures.value(
        DESCRIPTION,
        input,
        mean,
        List.of(Component.run(Math.hypot(scatter, step / Math.sqrt(6) / Math.sqrt(n)))),
        "mean of " + periods.length + " cycles, peak to peak");
  }
}
