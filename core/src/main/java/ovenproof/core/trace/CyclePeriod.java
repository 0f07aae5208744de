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
          "Median time from one peak to the next once steady.",
          "median(peak to peak) over the steady cycles, swings of 2 K and more",
          "common practice");

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    Cycles cycles = curve.steadyCycles();
    if (cycles.size() == 0) {
      return TraceMeasures.missing(DESCRIPTION, input, CycleAmplitude.whyNone(curve));
    }
    double[] periods = cycles.list().stream().mapToDouble(Cycles.Cycle::periodSeconds).toArray();
    double median = Medians.of(periods);
    double sumOfSquares = 0;
    for (double period : periods) {
      sumOfSquares += (period - median) * (period - median);
    }
    double n = periods.length;
    double scatter = n > 1 ? Math.sqrt(sumOfSquares / (n - 1) / n) * 1.2533 : 0;
    double step = curve.clean().medianStepSeconds();
    return TraceMeasures.value(
        DESCRIPTION,
        input,
        median,
        List.of(Component.run(Math.hypot(scatter, step / Math.sqrt(6) / Math.sqrt(n)))),
        "median of " + periods.length + " cycles, peak to peak");
  }
}
