package ovenproof.kitchen.physics;

import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;

/**
 * One named stream of luck. Streams of different names are independent; adding a stream changes no
 * other. Not safe for use by several threads at once.
 */
public final class Chance {

  private final long seed;
  private final SplittableRandom random;
  private double spare = Double.NaN;

  private Chance(long seed) {
    this.seed = seed;
    this.random = new SplittableRandom(seed);
  }

  /** The root of all streams of a kitchen. */
  public static Chance ofSeed(long seed) {
    return new Chance(mixed(seed));
  }

  /** The stream of this name below this one; does not depend on what was drawn before. */
  public Chance named(String name) {
    long hash = 0xcbf29ce484222325L; // FNV-1a, 64 bit
    for (byte b : name.getBytes(StandardCharsets.UTF_8)) {
      hash = (hash ^ (b & 0xff)) * 0x100000001b3L;
    }
    return new Chance(mixed(seed ^ mixed(hash)));
  }

  private static long mixed(long z) {
    long a = (z ^ z >>> 30) * 0xbf58476d1ce4e5b9L; // finaliser of SplitMix64
    long b = (a ^ a >>> 27) * 0x94d049bb133111ebL;
    return b ^ b >>> 31;
  }

  /** Uniform in [from, to). */
  public double uniform(double from, double to) {
    return from + (to - from) * random.nextDouble();
  }

  /** Whole number in [0, bound). */
  public int below(int bound) {
    return random.nextInt(bound);
  }

  /** Standard normal, by the polar method: the same on every Java. */
  public double gaussian() {
    if (!Double.isNaN(spare)) {
      double kept = spare;
      spare = Double.NaN;
      return kept;
    }
    while (true) {
      double u = uniform(-1, 1);
      double v = uniform(-1, 1);
      double s = u * u + v * v;
      if (s > 0 && s < 1) {
        double factor = StrictMath.sqrt(-2 * StrictMath.log(s) / s);
        spare = v * factor;
        return u * factor;
      }
    }
  }

  public double gaussian(double mean, double deviation) {
    return mean + deviation * gaussian();
  }

  /** A factor around 1: e to a normal of this deviation. */
  public double factor(double deviation) {
    return StrictMath.exp(deviation * gaussian());
  }

  public void shuffle(List<?> list) {
    Collections.shuffle(list, new Random(random.nextLong()));
  }
}
