package ovenproof.core.thermocouple;

/** Where water boils: IAPWS-IF97 region 4 (R7-97, 2012) and the ISO 2533 standard atmosphere. */
public final class BoilingPoint {

  private static final double[] N = {
    0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.12020824702470e5,
    -0.32325550322333e7, 0.14915108613530e2, -0.48232657361591e4, 0.40511340542057e6,
    -0.23855557567849, 0.65017534844798e3
  };

  private static final double SEA_LEVEL_PASCAL = 101_325;
  private static final double SEA_LEVEL_KELVIN = 288.15;
  private static final double LAPSE_KELVIN_PER_METRE = 0.0065;
  private static final double EXPONENT = 9.80665 / (0.0065 * 287.05287);

  private BoilingPoint() {}

  /**
   * Saturation temperature in °C.
   *
   * @param pascal pressure, 611.213 Pa to 22.064 MPa
   */
  public static double celsiusAtPressure(double pascal) {
    if (!(pascal >= 611.213 && pascal <= 22.064e6)) {
      throw new IllegalArgumentException(
          "pascal must be between 611.213 and 22,064,000, found " + pascal);
    }
    double beta = Math.pow(pascal / 1e6, 0.25);
    double e = beta * beta + N[2] * beta + N[5];
    double f = N[0] * beta * beta + N[3] * beta + N[6];
    double g = N[1] * beta * beta + N[4] * beta + N[7];
    double d = 2 * g / (-f - Math.sqrt(f * f - 4 * e * g));
    double sum = N[9] + d;
    return (sum - Math.sqrt(sum * sum - 4 * (N[8] + N[9] * d))) / 2 - 273.15;
  }

  /** Pressure of the standard atmosphere in Pa; weather moves it by 2 to 3 %. */
  public static double pascalAtAltitude(double metres) {
    if (!(metres >= -1000 && metres <= 11_000)) {
      throw new IllegalArgumentException("metres must be between -1000 and 11000, found " + metres);
    }
    return SEA_LEVEL_PASCAL
        * Math.pow(1 - LAPSE_KELVIN_PER_METRE * metres / SEA_LEVEL_KELVIN, EXPONENT);
  }

  /** Boiling point in °C at an altitude in the standard atmosphere. */
  public static double celsiusAtAltitude(double metres) {
    return celsiusAtPressure(pascalAtAltitude(metres));
  }
}
