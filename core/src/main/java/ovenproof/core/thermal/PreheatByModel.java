package ovenproof.core.thermal;

import java.util.List;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.MeasureDescription.EvidenceKind;
import ovenproof.core.measure.MeasureDescription.Parameter;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Unit;
import ovenproof.core.trace.HeatCurve;
import ovenproof.core.trace.ProbeAccuracy;
import ovenproof.core.trace.TraceInput;
import ovenproof.core.trace.TraceMeasure;

/** When the model reaches the setting with the elements on without a break. */
final class PreheatByModel implements TraceMeasure {

  static final MeasureDescription DESCRIPTION =
      new MeasureDescription(
          "preheat-model",
          "Preheat by the model",
          Unit.SECOND,
          "When the centre would reach the setting with the elements on without a break. Modelled,"
              + " not measured; beyond the record it is a prediction.",
          "first time at which the fitted curve is at the setting",
          "energy balance with constant power; residuals AR(1)",
          EvidenceKind.TRACE,
          List.of(new Parameter("set", "what the dial was set to", Dimension.TEMPERATURE, "")),
          1);

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  /** Above the lower end of the interval when the setting may never be reached. */
  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    Double setting = input.settingCelsius();
    if (setting == null) {
      return input.missing(DESCRIPTION, "the setting is not known");
    }
    HeatingModel.Outcome outcome = HeatingModel.fit(input, curve);
    HeatingModel model = outcome.model();
    if (model == null) {
      return input.missing(DESCRIPTION, outcome.why());
    }
    if (setting <= model.startCelsius()) {
      return input.missing(DESCRIPTION, "the heat-up begins above the setting");
    }
    HeatingModel.TimeTo time = model.timeTo(setting, probeKelvin(input.probe()));
    return time.isReached() && Double.isFinite(time.highSeconds())
        ? reached(input, model, time)
        : never(input, model, time);
  }

  private static Measurement reached(
      TraceInput input, HeatingModel model, HeatingModel.TimeTo time) {
    double slope =
        Math.max(
            1e-4,
            (model.temperature(time.seconds() + 1) - model.temperature(time.seconds() - 1)) / 2);
    Measurement value =
        ThermalMeasures.value(
            input,
            DESCRIPTION,
            time.seconds(),
            model.widened(model.temperatureU(time.seconds())) / slope,
            -1 / slope,
            ThermalMeasures.ofModel(model));
    return time.seconds() > model.endSecond()
        ? value.withNote("beyond what was measured: the model says it")
        : value;
  }

  private static Measurement never(TraceInput input, HeatingModel model, HeatingModel.TimeTo time) {
    if (!Double.isFinite(time.lowSeconds())) {
      return input.missing(
          DESCRIPTION, "out of reach: no part of the ceiling's 90 % interval is at the setting");
    }
    return Measurement.above(DESCRIPTION, input.subject(), time.lowSeconds())
        .withDefinition(ThermalMeasures.ofModel(model))
        .withNote("perhaps never: the setting lies near the ceiling")
        .withEvidence(input.evidence());
  }

  static double probeKelvin(ProbeAccuracy probe) {
    return Math.hypot(probe.calibrationKelvin(), probe.placementKelvin());
  }
}
