package ovenproof.core.trace;

import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/** How hot the centre was when the appliance said that it is ready. */
public final class SignalTemperature implements TraceMeasure {

  /** A person's tap on the clock. */
  private static final double TAPPED_SECONDS = 1;

  public static final MeasureDescription DESCRIPTION =
      TraceMeasures.describe(
          "signal-temperature",
          "Centre at the ready signal",
          Unit.CELSIUS,
          "What the centre showed when the appliance said that it is ready. 20 to 40 K early is"
              + " common.",
          "smoothed centre temperature at the signal",
          "common practice");

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    Happening signal = input.first(Happening.Kind.SIGNAL, 0).orElse(null);
    if (signal == null) {
      return input.missing(DESCRIPTION, "the appliance gave no signal that was noted");
    }
    double at = signal.second();
    boolean logged =
        !curve.isEmpty()
            && at >= curve.clean().seconds()[0]
            && at <= curve.clean().lastSecond()
            && curve.gapBetween(at, at + 1e-3) == null;
    if (!logged) {
      return input.missing(DESCRIPTION, "the centre was not logged at the signal");
    }
    double celsius = TimeMean.at(curve.smooth(), at);
    double tapped = LocalSlope.at(curve.clean(), at) * TAPPED_SECONDS;
    return TraceMeasures.value(
            DESCRIPTION,
            input,
            celsius,
            input.probe().components(1, Math.hypot(curve.readingU(), tapped)),
            DESCRIPTION.formula())
        .withNote(note(input.settingCelsius(), celsius));
  }

  private static @org.jspecify.annotations.Nullable String note(
      @org.jspecify.annotations.Nullable Double setting, double celsius) {
    if (setting == null) {
      return null;
    }
    double early = setting - celsius;
    return TraceMeasures.digits(Math.abs(early), 0)
        + (early >= 0 ? " K below the setting" : " K above the setting");
  }
}
