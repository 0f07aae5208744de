package ovenproof.core.thermal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.MeasureDescription.EvidenceKind;
import ovenproof.core.measure.MeasureDescription.Parameter;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Unit;
import ovenproof.core.trace.HeatCurve;
import ovenproof.core.trace.MainsMean;
import ovenproof.core.trace.PreheatFirst;
import ovenproof.core.trace.TraceInput;
import ovenproof.core.trace.TraceMeasure;

/**
 * How long the preheat would have taken at the nominal voltage. Stands beside the time as measured,
 * never instead of it.
 *
 * <p>Power goes with V², and so does every rise above the room at every moment while the elements
 * are on, whatever the number of time constants: the equations are linear. So the time is when the
 * run as measured was at room + (setting − room) · (V/V₀)², or would have been by the model when
 * that lies above the setting. Multiplying the time by V² would be wrong by a lot near the ceiling.
 */
final class PreheatAtNominalMains implements TraceMeasure {

  static final MeasureDescription DESCRIPTION =
      new MeasureDescription(
          "preheat-nominal",
          "Preheat at nominal mains",
          Unit.SECOND,
          "First crossing of the setting, brought to the nominal voltage by the thermal model;"
              + " refused beyond 15 % of it.",
          "first time at which the centre is at room + (setting − room) · (V/V₀)², measured or by the"
              + " model",
          "linear heat balance, resistive elements: rise ∝ V²",
          EvidenceKind.TRACE,
          List.of(
              new Parameter("set", "what the dial was set to", Dimension.TEMPERATURE, ""),
              new Parameter("nominal", "mains to bring it to", Dimension.VOLTAGE, "")),
          2);

  /** A warmer start does not scale with the power. */
  private static final double LARGEST_HOT_START_KELVIN = 5;

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    Measurement raw = new PreheatFirst().measure(input, curve);
    Measurement volt = new MainsMean().measure(input, curve);
    Double nominal = input.nominalVolt();
    Double room = input.ambientCelsius();
    Double set = input.settingCelsius();
    Double volts = volt.value();
    if (raw.isMissing() || volts == null) {
      return missing(input, raw.isMissing() ? raw : volt);
    }
    if (nominal == null || room == null || set == null) {
      return missing(
          input, nominal == null ? "no nominal voltage was given" : "room or setting is not known");
    }
    Mains mains = new Mains(volts, nominal);
    if (!mains.isWithinReach()) {
      return missing(
          input,
          String.format(
              Locale.ROOT,
              "%.0f V is more than 15 %% from %.0f V: too far to be brought there",
              volts,
              nominal));
    }
    if (Math.abs(curve.clean().values()[0] - room) > LARGEST_HOT_START_KELVIN) {
      return missing(input, "a start that is not cold cannot be brought to another voltage");
    }
    double level = room + (set - room) / mains.powerRatio();
    double perVolt = 2 * (level - room) / volts * u(volt);
    return level <= set || isPassed(input, curve, level)
        ? measured(input, curve, level, perVolt, nominal)
        : modelled(input, curve, level, perVolt, nominal);
  }

  /** Whether the run as measured passed a level before its elements first switched off. */
  private static boolean isPassed(TraceInput input, HeatCurve curve, double level) {
    Double time = new PreheatFirst().measure(input.withSetting(level), curve).value();
    HeatUp heatUp = HeatUp.of(input, curve);
    return time != null && (!heatUp.isCut() || time < heatUp.cutOffSecond());
  }

  /** With more power the run as measured passes the lower level on its way. */
  private static Measurement measured(
      TraceInput input, HeatCurve curve, double level, double levelU, double nominal) {
    Measurement crossing = new PreheatFirst().measure(input.withSetting(level), curve);
    Double time = crossing.value();
    if (time == null) {
      return missing(input, crossing);
    }
    Double later = new PreheatFirst().measure(input.withSetting(level + levelU), curve).value();
    List<Component> parts = new ArrayList<>(crossing.components());
    parts.add(Component.run(later == null ? 0 : later - time));
    return result(input, time, parts, level, nominal);
  }

  /** With less power the level lies above the setting: only the model goes there. */
  private static Measurement modelled(
      TraceInput input, HeatCurve curve, double level, double levelU, double nominal) {
    Measurement byModel = new PreheatByModel().measure(input.withSetting(level), curve);
    HeatingModel model = HeatingModel.fit(input, curve).model();
    Double time = byModel.value();
    if (time == null || model == null) {
      return byModel.isMissing()
          ? missing(input, byModel)
          : missing(input, "at the nominal voltage the setting may never be reached");
    }
    double slope = Math.max(1e-4, model.temperature(time + 1) - model.temperature(time));
    List<Component> parts = new ArrayList<>(byModel.components());
    parts.add(Component.run(levelU / slope));
    return result(input, time, parts, level, nominal);
  }

  private static double u(Measurement measurement) {
    Double u = measurement.uncertainty();
    return u == null ? 0 : u;
  }

  private static Measurement result(
      TraceInput input, double time, List<Component> parts, double level, double nominal) {
    return Measurement.of(DESCRIPTION, input.subject(), time)
        .withComponents(parts)
        .withDefinition(
            String.format(
                Locale.ROOT, "brought to %.0f V: when the run was at %.1f °C", nominal, level))
        .withEvidence(input.evidence());
  }

  private static Measurement missing(TraceInput input, Measurement because) {
    String note = because.note();
    return missing(input, note == null ? because.label() + " is not known" : note);
  }

  private static Measurement missing(TraceInput input, @Nullable String why) {
    return input.missing(DESCRIPTION, String.valueOf(why));
  }
}
