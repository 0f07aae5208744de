package ovenproof.tracepage;

import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Unit;
import ovenproof.core.thermal.HeatBalance;
import ovenproof.core.thermal.HeatingModel;
import ovenproof.core.trace.TraceInput;
import ovenproof.publish.figure.Figures;
import ovenproof.web.Shown;

/**
 * When the model reaches a temperature.
 *
 * @param lowest where the slider begins
 * @param highest where it ends
 * @param at what was asked for
 * @param words the answer in a sentence
 */
public record Prediction(int lowest, int highest, int at, String words) {

  /** Beyond the ceiling, so that "never" can be seen as well. */
  private static final int BEYOND_CEILING_KELVIN = 40;

  /** Of the asked temperature; the setting when nothing was asked. */
  static @Nullable Prediction of(HeatPicture picture, @Nullable Integer asked) {
    TraceInput input = picture.input();
    HeatingModel model = picture.model().model();
    if (model == null) {
      return null;
    }
    int lowest = 10 * (int) Math.ceil((model.startCelsius() + 10) / 10);
    int highest =
        Math.max(
            lowest + 50,
            10 * (int) Math.ceil((model.ceilingCelsius() + BEYOND_CEILING_KELVIN) / 10));
    Double setting = input.settingCelsius();
    long wanted =
        asked != null
            ? asked
            : Math.round(setting == null ? model.ceilingCelsius() * 0.9 : setting);
    int at = (int) Math.max(lowest, Math.min(highest, wanted));
    double probe = Math.hypot(input.probe().calibrationKelvin(), input.probe().placementKelvin());
    return new Prediction(
        lowest,
        highest,
        at,
        words(model, at, probe) + power(HeatBalance.of(input, picture.curve()).orElse(null), at));
  }

  private static String words(HeatingModel model, int at, double probe) {
    HeatingModel.TimeTo time = model.timeTo(at, probe);
    String wanted = HeatPicture.celsius(at);
    if (!time.isReached()) {
      return wanted
          + " is not reached: the ceiling is "
          + HeatPicture.celsius(model.ceilingCelsius())
          + (Double.isFinite(time.lowSeconds())
              ? ". The 90 % interval begins at "
                  + Shown.elapsed(time.lowSeconds())
                  + " min, so it cannot be ruled out."
              : ". No part of the 90 % interval reaches it.");
    }
    String end =
        Double.isFinite(time.highSeconds())
            ? Shown.elapsed(time.highSeconds()) + " min"
            : "never (it cannot be ruled out)";
    return wanted
        + " after "
        + Shown.elapsed(time.seconds())
        + " min; 90 % interval "
        + Shown.elapsed(time.lowSeconds())
        + " min to "
        + end
        + (time.seconds() > model.endSecond()
            ? ". Beyond what was measured: the model says it."
            : ".");
  }

  /** What it needs to hold a temperature, beside what it has; empty without power. */
  private static String power(@Nullable HeatBalance balance, int at) {
    return balance == null
        ? ""
        : " Holding it needs "
            + Figures.text(balance.powerToHoldWatt(at), Unit.WATT)
            + "; full power is "
            + Figures.text(balance.powerWatt(), Unit.WATT)
            + ".";
  }
}
