package ovenproof.core.thermal;

import java.util.Optional;
import ovenproof.core.trace.Duty;
import ovenproof.core.trace.HeatCurve;
import ovenproof.core.trace.TimeMean;
import ovenproof.core.trace.Trace;
import ovenproof.core.trace.TraceInput;

/**
 * What goes in and what is lost.
 *
 * @param powerWatt mean power while the elements are on
 * @param ambientCelsius of the room
 * @param ceilingCelsius where loss equals power
 * @param effectiveSeconds effective time constant of the heat-up
 */
public record HeatBalance(
    double powerWatt, double ambientCelsius, double ceilingCelsius, double effectiveSeconds) {

  public HeatBalance {
    if (!(powerWatt > 0) || !(ceilingCelsius > ambientCelsius)) {
      throw new IllegalArgumentException(
          "power must be above 0 W and the ceiling above the room, found "
              + powerWatt
              + " W, "
              + ceilingCelsius
              + " °C, "
              + ambientCelsius
              + " °C");
    }
  }

  /**
   * The balance of a run; empty without power or when the ceiling does not lie above the room. The
   * room is the logged one, else the first reading.
   */
  static Optional<HeatBalance> of(TraceInput input, HeatCurve curve, HeatingModel model) {
    Trace power = input.power() == null ? null : input.power().present();
    if (power == null || power.size() < 2) {
      return Optional.empty();
    }
    double mean = TimeMean.of(power, model.startSecond(), model.endSecond());
    double watt = Double.isFinite(mean) ? mean : Duty.fullPowerWatt(power);
    Double room = input.ambientCelsius();
    double ambient = room == null ? curve.clean().values()[0] : room;
    return watt > 0 && model.ceilingCelsius() > ambient
        ? Optional.of(
            new HeatBalance(watt, ambient, model.ceilingCelsius(), model.effectiveSeconds()))
        : Optional.empty();
  }

  /** The same of the model that the curve carries; empty when it carries none. */
  public static Optional<HeatBalance> of(TraceInput input, HeatCurve curve) {
    HeatingModel model = HeatingModel.fit(input, curve).model();
    return model == null ? Optional.empty() : of(input, curve, model);
  }

  /** UA = P / (T∞ − Tₐ), in W/K. */
  public double lossWattPerKelvin() {
    return powerWatt / (ceilingCelsius - ambientCelsius);
  }

  /** C = UA·τ, in J/K, as seen from the probe. */
  public double heatCapacityJoulePerKelvin() {
    return lossWattPerKelvin() * effectiveSeconds;
  }

  /** Power that holding a temperature takes. */
  public double powerToHoldWatt(double celsius) {
    return lossWattPerKelvin() * (celsius - ambientCelsius);
  }
}
