package ovenproof.core.trace;

import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/** How far the held temperature is from the dial. */
public final class Offset implements TraceMeasure {

  public static final MeasureDescription DESCRIPTION =
      TraceMeasures.describeWithSetting(
          "offset",
          "Offset from the setting",
          Unit.KELVIN,
          "Steady mean minus setting: positive is hotter than the dial says.",
          "steady mean − setting",
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
    SteadyState steady = curve.steady();
    if (steady == null) {
      return input.missing(DESCRIPTION, curve.whyNotSteady());
    }
    return TraceMeasures.value(
        DESCRIPTION,
        input,
        steady.meanCelsius() - setting,
        input.probe().components(1, SteadyMean.u(curve, steady)),
        SteadyMean.over(steady) + ", minus " + TraceMeasures.digits(setting, 1) + " °C");
  }
}
