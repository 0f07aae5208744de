package ovenproof.core.thermal;

import java.util.Locale;
import java.util.Optional;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;
import ovenproof.core.trace.Duty;
import ovenproof.core.trace.HeatCurve;
import ovenproof.core.trace.SteadyState;
import ovenproof.core.trace.TimeMean;
import ovenproof.core.trace.Trace;
import ovenproof.core.trace.TraceInput;
import ovenproof.core.trace.TraceMeasure;

/** What every kelvin above the room costs, once everything is warm. */
final class HeatLoss implements TraceMeasure {

  static final MeasureDescription DESCRIPTION =
      ThermalMeasures.describe(
          "heat-loss",
          "Heat loss",
          Unit.WATT_PER_KELVIN,
          "Power that one kelvin above the room takes when everything is warm. Small is well"
              + " insulated.",
          "P / (T∞ − room) of the fitted heat-up; else mean power / (mean − room) of the last third"
              + " of the hold",
          "energy balance with constant power");

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    HeatingModel.Outcome outcome = HeatingModel.fit(input, curve);
    HeatingModel model = outcome.model();
    if (model != null) {
      return HeatBalance.of(input, curve, model)
          .map(balance -> ofModel(input, model, balance))
          .orElseGet(() -> input.missing(DESCRIPTION, "power was not logged"));
    }
    return ofHold(input, curve)
        .map(m -> m.withNote("not from the heat-up: " + outcome.why()))
        .orElseGet(
            () -> input.missing(DESCRIPTION, outcome.why() + "; no hold with power logged either"));
  }

  private static Measurement ofModel(TraceInput input, HeatingModel model, HeatBalance balance) {
    double rise = model.ceilingCelsius() - balance.ambientCelsius();
    double loss = balance.lossWattPerKelvin();
    return ThermalMeasures.value(
        input,
        DESCRIPTION,
        loss,
        loss * model.ceilingU() / rise,
        -loss / rise,
        ThermalMeasures.ofModel(model));
  }

  /** The walls may still take heat: what the third before took more is its uncertainty. */
  private static Optional<Measurement> ofHold(TraceInput input, HeatCurve curve) {
    SteadyState steady = curve.steady();
    Trace power = input.power() == null ? null : input.power().present();
    Double room = input.ambientCelsius();
    if (steady == null || power == null || power.size() < 2 || room == null) {
      return Optional.empty();
    }
    double end = steady.endSecond();
    double third = (end - steady.startSecond()) / 3;
    double watt = TimeMean.of(power, end - third, end);
    double before = TimeMean.of(power, end - 2 * third, end - third);
    double rise = steady.meanCelsius() - room;
    if (!(watt > 0) || !Double.isFinite(before) || rise < 20) {
      return Optional.empty();
    }
    double loss = watt / rise;
    double share = Math.min(1, watt / Duty.fullPowerWatt(power));
    double switching = Duty.fullPowerWatt(power) * HoldCeiling.dutyU(share, steady);
    double powerU = Math.hypot(Math.abs(before - watt), switching);
    String definition =
        String.format(Locale.ROOT, "%.0f W for %.0f K above the room, end of the hold", watt, rise);
    return Optional.of(
        ThermalMeasures.value(input, DESCRIPTION, loss, powerU / rise, -loss / rise, definition));
  }
}
