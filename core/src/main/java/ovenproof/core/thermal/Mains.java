package ovenproof.core.thermal;

import java.util.OptionalDouble;

/**
 * What another mains voltage would change: power goes with V², and so does the rise of the ceiling.
 * Holds for plain resistive elements; the time is not multiplied but computed from the new ceiling.
 *
 * @param measuredVolt mean while the elements were on
 * @param nominalVolt to which it is brought
 */
public record Mains(double measuredVolt, double nominalVolt) {

  /** No correction beyond this share of the voltage: resistance and losses change too. */
  public static final double LARGEST_SHARE = 0.15;

  public Mains {
    if (!(measuredVolt > 0) || !(nominalVolt > 0)) {
      throw new IllegalArgumentException(
          "voltages must be above 0 V, found " + measuredVolt + " and " + nominalVolt);
    }
  }

  public boolean isWithinReach() {
    return Math.abs(measuredVolt / nominalVolt - 1) <= LARGEST_SHARE;
  }

  /** Power at nominal voltage over power as measured. */
  public double powerRatio() {
    double ratio = nominalVolt / measuredVolt;
    return ratio * ratio;
  }

  /** Ceiling at nominal voltage; empty beyond ±15 %. */
  public OptionalDouble ceilingCelsius(double measuredCeilingCelsius, double ambientCelsius) {
    return isWithinReach()
        ? OptionalDouble.of(
            ambientCelsius + (measuredCeilingCelsius - ambientCelsius) * powerRatio())
        : OptionalDouble.empty();
  }

  /**
   * Time to a temperature at nominal voltage over time as measured, first order: t = −τ·ln(1 −
   * ΔT/ΔT∞). Empty beyond ±15 % and when either never gets there.
   */
  public OptionalDouble timeRatio(double riseKelvin, double ceilingRiseKelvin) {
    double measured = riseKelvin / ceilingRiseKelvin;
    double nominal = riseKelvin / (ceilingRiseKelvin * powerRatio());
    return isWithinReach() && measured < 1 && nominal < 1
        ? OptionalDouble.of(Math.log1p(-nominal) / Math.log1p(-measured))
        : OptionalDouble.empty();
  }
}
