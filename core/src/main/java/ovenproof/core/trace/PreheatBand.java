package ovenproof.core.trace;

import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/** Time until the one-cycle mean stays near the setting. */
public final class PreheatBand implements TraceMeasure {

  static final double BAND_KELVIN = 5;

  public static final MeasureDescription DESCRIPTION =
      TraceMeasures.describeWithSetting(
          "preheat-band",
          "Preheat, within 5 K and staying",
          Unit.SECOND,
          "Time from heat on until the mean over one cycle has come within 5 K of the setting and"
              + " stays there.",
          "first time after which the moving mean over one cycle stays within ±5 K of the setting",
          "common practice");

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    Double setting = input.settingCelsius();
    if (setting == null) {
      return input.missing(DESCRIPTION, "the setting is not known");
    }
    if (curve.clean().size() < 10) {
      return input.missing(DESCRIPTION, "fewer than ten readings");
    }
    double period = curve.cycles().size() > 0 ? curve.cycles().medianPeriodSeconds() : 60;
    double end = curve.steady() == null ? curve.clean().lastSecond() : curve.steady().endSecond();
    MovingMean mean = MovingMean.of(curve, period, end);
    return find(input, curve, setting, mean)
        .withDefinition(
            "first time after which the mean over one cycle ("
                + TraceMeasures.digits(period, 0)
                + " s) stays within 5 K of "
                + TraceMeasures.digits(setting, 1)
                + " °C")
        .withEvidence(input.evidence());
  }

  private static Measurement find(
      TraceInput input, HeatCurve curve, double setting, MovingMean mean) {
    int last = mean.size() - 1;
    if (last < 0) {
      return input.missing(DESCRIPTION, "the record is shorter than one cycle");
    }
    BandEntry entry = new BandEntry(mean, BAND_KELVIN);
    double time = entry.second(setting);
    if (Double.isNaN(time)) {
      return Measurement.above(DESCRIPTION, input.subject(), curve.clean().lastSecond())
          .withNote(
              "at the end its mean is "
                  + TraceMeasures.digits(mean.value(last), 1)
                  + " °C, outside the band");
    }
    if (Double.isInfinite(time)) {
      return Measurement.below(DESCRIPTION, input.subject(), mean.second(0))
          .withNote("inside the band from the start");
    }
    if (curve.gapBetween(time - 1e-6, mean.second(last)) != null) {
      return input.missing(DESCRIPTION, "a gap of more than 30 s lies in the hold");
    }
    double own = Math.hypot(curve.readingU(), BandEntry.rippleKelvin(curve));
    double kelvin = Math.max(0.1, Math.hypot(input.probe().readingKelvin(), own));
    double sensitivity = entry.sensitivity(setting, kelvin);
    double run = Math.hypot(own * sensitivity, BandEntry.ofWindow(curve));
    return Measurement.of(DESCRIPTION, input.subject(), time)
        .withComponents(input.probe().components(sensitivity, run));
  }
}
