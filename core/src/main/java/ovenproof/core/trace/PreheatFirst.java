package ovenproof.core.trace;

import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/** Time until the centre first reaches the setting. */
public final class PreheatFirst implements TraceMeasure {

  public static final MeasureDescription DESCRIPTION =
      TraceMeasures.describeWithSetting(
          "preheat-first",
          "Preheat, first crossing",
          Unit.SECOND,
          "Time from heat on until the centre first shows the setting. Air may be there long before"
              + " the walls are.",
          "first time at which the smoothed centre temperature reaches the setting, interpolated",
          "own definition");

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  /**
   * Above the last time when the setting was not reached; below the first time when the record
   * starts above it; between the ends of a gap when it was crossed inside one.
   */
  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    Double setting = input.settingCelsius();
    if (setting == null) {
      return input.missing(DESCRIPTION, "the setting is not known");
    }
    if (curve.isEmpty()) {
      return input.missing(DESCRIPTION, "the centre has no readings");
    }
    return crossing(input, curve, setting)
        .withDefinition(
            "first time at which the centre, smoothed over 15 s, reaches "
                + TraceMeasures.digits(setting, 1)
                + " °C, from the start of the window")
        .withEvidence(input.evidence());
  }

  private static Measurement crossing(TraceInput input, HeatCurve curve, double setting) {
    double[] t = curve.smooth().seconds();
    double[] v = curve.smooth().values();
    if (v[0] >= setting) {
      return Measurement.below(DESCRIPTION, input.subject(), t[0])
          .withNote("the record starts above the setting: a hot start, or it began too late");
    }
    int i = 1;
    while (i < v.length && v[i] < setting) {
      i++;
    }
    if (i == v.length) {
      return Measurement.above(DESCRIPTION, input.subject(), t[t.length - 1])
          .withNote(
              "not reached; highest "
                  + TraceMeasures.digits(Highest.of(curve.smooth()), 1)
                  + " °C");
    }
    if (curve.gapBetween(t[i - 1], t[i]) != null) {
      return Measurement.between(DESCRIPTION, input.subject(), t[i - 1], t[i])
          .withNote("reached inside a gap of the record");
    }
    double time = t[i - 1] + (setting - v[i - 1]) / (v[i] - v[i - 1]) * (t[i] - t[i - 1]);
    double slope = LocalSlope.at(curve.clean(), time);
    return Measurement.of(DESCRIPTION, input.subject(), time)
        .withComponents(input.probe().components(-1 / slope, curve.readingU() / slope));
  }
}
