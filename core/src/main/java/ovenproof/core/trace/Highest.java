package ovenproof.core.trace;

import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/** The highest temperature of the window. */
public final class Highest implements TraceMeasure {

  public static final MeasureDescription DESCRIPTION =
      TraceMeasures.describe(
          "highest",
          "Highest temperature",
          Unit.CELSIUS,
          "Highest reading of the centre, spikes left out, smoothed where noise calls for it. Not"
              + " the highest it could reach.",
          "max of the cleaned centre temperature",
          "own definition");

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    if (curve.isEmpty()) {
      return input.missing(DESCRIPTION, "the centre has no readings");
    }
    double top = of(curve.smooth());
    Measurement result =
        TraceMeasures.value(
            DESCRIPTION,
            input,
            top,
            input.probe().components(1, curve.readingU()),
            DESCRIPTION.formula());
    return curve.gaps().isEmpty()
        ? result
        : result.withNote("the record has gaps; it may have been hotter inside one");
  }

  /** Highest value; NaN when there is none. */
  static double of(Trace trace) {
    double top = Double.NaN;
    for (double value : trace.values()) {
      if (Double.isNaN(top) || value > top) {
        top = value;
      }
    }
    return top;
  }
}
