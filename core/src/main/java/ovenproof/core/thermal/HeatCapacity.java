package ovenproof.core.thermal;

import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;
import ovenproof.core.trace.HeatCurve;
import ovenproof.core.trace.TraceInput;
import ovenproof.core.trace.TraceMeasure;

/** How much heat it takes to warm the appliance by a kelvin, as seen from the probe. */
final class HeatCapacity implements TraceMeasure {

  static final MeasureDescription DESCRIPTION =
      ThermalMeasures.describe(
          "heat-capacity",
          "Heat capacity",
          Unit.JOULE_PER_KELVIN,
          "Heat that one kelvin more takes, as the place of the probe sees it: air at once, walls"
              + " later.",
          "P / (T∞ − room) · effective time constant, ∫(T∞ − T) dt / (T∞ − T₀)",
          "energy balance with constant power");

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    HeatingModel.Outcome outcome = HeatingModel.fit(input, curve);
    HeatingModel model = outcome.model();
    if (model == null) {
      return input.missing(DESCRIPTION, outcome.why());
    }
    return HeatBalance.of(input, curve, model)
        .map(balance -> of(input, model, balance))
        .orElseGet(() -> input.missing(DESCRIPTION, "power was not logged"));
  }

  /**
   * What a probe feels of the walls grows as they warm, so it errs in both rises alike: over the
   * room and over the start.
   */
  private static Measurement of(TraceInput input, HeatingModel model, HeatBalance balance) {
    double capacity = balance.heatCapacityJoulePerKelvin();
    double rise = model.ceilingCelsius() - balance.ambientCelsius();
    return ThermalMeasures.value(
        input,
        DESCRIPTION,
        capacity,
        capacity * model.capacityShareU(balance.ambientCelsius()),
        -2 * capacity / rise,
        ThermalMeasures.ofModel(model));
  }
}
