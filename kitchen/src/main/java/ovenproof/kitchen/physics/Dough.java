package ovenproof.kitchen.physics;

/**
 * What a food is made of.
 *
 * @param dryKilogramPerCubicMetre density without water
 * @param waterKilogramPerCubicMetre water at the start
 * @param dryJoulePerKilogramKelvin heat capacity without water
 * @param wetConductivity W/(m K) with all its water
 * @param dryConductivity W/(m K) without
 * @param emissivity for the heat of walls and elements
 * @param browning how much faster than dried crumb it browns: sugar, egg, milk, age
 * @param frozen whether the water is ice at the start
 */
public record Dough(
    double dryKilogramPerCubicMetre,
    double waterKilogramPerCubicMetre,
    double dryJoulePerKilogramKelvin,
    double wetConductivity,
    double dryConductivity,
    double emissivity,
    double browning,
    Frozen frozen) {

  /** Whether ice has to melt first. */
  public enum Frozen {
    YES,
    NO
  }

  /** Sandwich bread, 36 % water. */
  public static final Dough SANDWICH_BREAD =
      new Dough(160, 92, 1700, 0.17, 0.055, 0.9, 1.0, Frozen.NO);

  /** Sweet batter in paper cups. */
  public static final Dough CAKE = new Dough(430, 250, 2000, 0.28, 0.10, 0.9, 1.1, Frozen.NO);

  /** Rolled dough, 38 % water. */
  public static final Dough FLATBREAD = new Dough(430, 265, 1800, 0.30, 0.10, 0.9, 1.0, Frozen.NO);

  /** Breaded mashed potato, frozen through. */
  public static final Dough CROQUETTE = new Dough(330, 600, 1800, 0.50, 0.10, 0.9, 2.3, Frozen.YES);

  /** Turkey breast with its skin. */
  public static final Dough TURKEY = new Dough(300, 760, 1900, 0.48, 0.18, 0.9, 1.05, Frozen.NO);

  public Dough withBrowning(double factor) {
    return new Dough(
        dryKilogramPerCubicMetre,
        waterKilogramPerCubicMetre,
        dryJoulePerKilogramKelvin,
        wetConductivity,
        dryConductivity,
        emissivity,
        browning * factor,
        frozen);
  }

  public double density() {
    return dryKilogramPerCubicMetre + waterKilogramPerCubicMetre;
  }
}
