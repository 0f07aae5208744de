package ovenproof.core.trace;

import java.util.Arrays;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/** Hottest place minus coldest place. */
public final class SpreadRange implements TraceMeasure {

  public static final MeasureDescription DESCRIPTION =
      TraceMeasures.describe(
              "spread-range",
              "Hottest minus coldest place",
              Unit.KELVIN,
              "Range of the steady means over the places. It grows with the number of places: only"
                  + " ranges over equally many compare.",
              "max − min over the places of their time-means in the steady part",
              "common practice")
          .revised(2);

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    SteadyState steady = curve.steady();
    if (steady == null || input.points().size() < 2) {
      return input.missing(
          DESCRIPTION, steady == null ? curve.whyNotSteady() : "only one place was measured");
    }
    double[] means = Spread.means(input, steady);
    if (means.length < 2) {
      return input.missing(DESCRIPTION, "fewer than two places have readings over the steady part");
    }
    Arrays.sort(means);
    return TraceMeasures.value(
        DESCRIPTION,
        input,
        means[means.length - 1] - means[0],
        input.probe().ofPlaces(Math.sqrt(2), steady.standardError()),
        "range of " + means.length + " places; compare only with as many places");
  }
}
