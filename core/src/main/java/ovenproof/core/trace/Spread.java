package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.List;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/** How unevenly warm the places are. */
public final class Spread implements TraceMeasure {

  public static final MeasureDescription DESCRIPTION =
      TraceMeasures.describe(
              "spread",
              "Spread over the places",
              Unit.KELVIN,
              "Standard deviation of the steady means of the places measured at once. It does not grow"
                  + " with the number of places, as the range does.",
              "standard deviation (n − 1) over the places of their time-means in the steady part",
              "common practice")
          .revised(2);

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    if (input.points().size() < 2) {
      return input.missing(DESCRIPTION, "only one place was measured");
    }
    SteadyState steady = curve.steady();
    if (steady == null) {
      return input.missing(DESCRIPTION, curve.whyNotSteady());
    }
    double[] means = means(input, steady);
    if (means.length < 2) {
      return input.missing(DESCRIPTION, "fewer than two places have readings over the steady part");
    }
    double sd = deviation(means);
    return TraceMeasures.value(
        DESCRIPTION,
        input,
        sd,
        // ∂SD/∂x = d/((n − 1)·SD): independent errors of σ each make σ/√(n − 1) of it.
        input.probe().ofPlaces(1 / Math.sqrt(means.length - 1.0), steady.standardError()),
        "standard deviation of " + means.length + " places, " + SteadyMean.over(steady));
  }

  static double[] means(TraceInput input, SteadyState steady) {
    List<Double> means = new ArrayList<>();
    for (Trace point : input.points()) {
      double mean = TimeMean.of(point.present(), steady.startSecond(), steady.endSecond());
      if (Double.isFinite(mean)) {
        means.add(mean);
      }
    }
    return means.stream().mapToDouble(Double::doubleValue).toArray();
  }

  static double deviation(double[] values) {
    double mean = java.util.Arrays.stream(values).average().orElse(0);
    double squares = 0;
    for (double value : values) {
      squares += (value - mean) * (value - mean);
    }
    return Math.sqrt(squares / (values.length - 1));
  }
}
