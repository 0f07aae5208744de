package ovenproof.core.thermal;

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

  public double powerPerLitre(double litres) {
    return powerWatt / litres;
  }
}
