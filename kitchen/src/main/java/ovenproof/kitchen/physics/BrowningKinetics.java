package ovenproof.kitchen.physics;

/**
 * First-order browning of a dry crust towards a colour difference of 52 (B. Zanoni, C. Peri, D.
 * Bruno 1995, Lebensm.-Wiss. u.-Technol. 28, 604–609): k = 42 000 s⁻¹ · exp(−64 151 J/mol / RT).
 */
public final class BrowningKinetics {

  /** Colour difference from raw that burnt crust tends to. */
  public static final double LIMIT = 52;

  private static final double K0_PER_SECOND = 42_000;
  private static final double ACTIVATION_JOULE_PER_MOLE = 64_151;
  private static final double GAS_CONSTANT = 8.314;
  private static final double LOWEST = -30;
  private static final double PER_KELVIN = 4;
  private static final double[] TABLE = new double[(int) (480 * PER_KELVIN)];

  static {
    for (int i = 0; i < TABLE.length; i++) {
      TABLE[i] = exactRate(LOWEST + i / PER_KELVIN);
    }
  }

  private BrowningKinetics() {}

  /** The rate constant at a surface temperature, s⁻¹, from a table of quarter kelvins. */
  public static double ratePerSecond(double celsius) {
    double at = Math.min(TABLE.length - 2, Math.max(0, (celsius - LOWEST) * PER_KELVIN));
    int i = (int) at;
    return TABLE[i] + (at - i) * (TABLE[i + 1] - TABLE[i]);
  }

  /** The published formula itself. */
  public static double exactRate(double celsius) {
    double kelvin = celsius + 273.15;
    return K0_PER_SECOND * Math.exp(-ACTIVATION_JOULE_PER_MOLE / (GAS_CONSTANT * kelvin));
  }

  /** Colour difference after a time at a steady surface temperature. */
  public static double differenceAfter(double seconds, double celsius) {
    return LIMIT * -Math.expm1(-exactRate(celsius) * seconds);
  }
}
