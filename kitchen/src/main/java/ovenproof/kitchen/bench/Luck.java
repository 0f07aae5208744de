package ovenproof.kitchen.bench;

import ovenproof.kitchen.physics.Chance;

/** Deviations of pieces and people: drawn, or all at their mean for the noiseless truth. */
public final class Luck {

  private final Chance chance;
  private final double scale;

  private Luck(Chance chance, double scale) {
    this.chance = chance;
    this.scale = scale;
  }

  public static Luck of(Chance chance) {
    return new Luck(chance, 1);
  }

  /** Everything at its mean. */
  public static Luck none() {
    return new Luck(Chance.ofSeed(0), 0);
  }

  double normal(double deviation) {
    return scale * deviation * chance.gaussian();
  }

  double factor(double deviation) {
    return StrictMath.exp(scale * deviation * chance.gaussian());
  }

  /** Seconds that a person needs, never below {@code least}. */
  double seconds(double mean, double deviation, double least) {
    return Math.max(least, mean + normal(deviation));
  }
}
