package ovenproof.core.random;

import org.apache.commons.rng.UniformRandomProvider;

/**
 * Standard normal numbers by 256 layers of equal area (Marsaglia and Tsang, Journal of Statistical
 * Software 5(8), 2000, in the form with full precision of Doornik, 2005): 98.9 % of them cost one
 * random word, one comparison and one product.
 *
 * <p>The loop keeps the generator's state (xoshiro256++) in local variables; what does not lie in
 * the plain part of a layer goes on with a second generator, so that the state need not leave them.
 */
final class NormalZiggurat {
  static final int LAYERS = 256;

  /** Where the tail begins. */
  static final double TAIL = 3.6541528853610088;

  /** Area of each layer, tail included in the lowest. */
  static final double AREA = 0.00492867323397465524494;

  private static final double UNIT = 0x1.0p-52;

  /** 1/1 … 1/8. */
  private static final double[] RECIPROCAL = new double[9];

  /** Right edge of each layer from the lowest; the last is 0. */
  private static final double[] EDGE = edges();

  private static final double[] HEIGHT = new double[LAYERS + 1];
  private static final double[] WIDTH = new double[LAYERS];
  private static final long[] PLAIN = new long[LAYERS];

  static {
    for (int i = 1; i < RECIPROCAL.length; i++) {
      RECIPROCAL[i] = 1.0 / i;
    }
    for (int i = 0; i <= LAYERS; i++) {
      HEIGHT[i] = density(EDGE[i]);
    }
    for (int i = 0; i < LAYERS; i++) {
      WIDTH[i] = EDGE[i] * UNIT;
      PLAIN[i] = (long) (EDGE[i + 1] / EDGE[i] / UNIT);
    }
  }

  private NormalZiggurat() {}

  static double[] edges() {
    double[] edges = new double[LAYERS + 1];
    edges[0] = AREA / density(TAIL);
    edges[1] = TAIL;
    for (int i = 2; i < LAYERS; i++) {
      double height = AREA / edges[i - 1] + density(edges[i - 1]);
      edges[i] = Math.sqrt(-2 * StrictMath.log(height));
    }
    return edges;
  }

  static double density(double x) {
    return StrictMath.exp(-0.5 * x * x);
  }

  /**
   * Fills the target.
   *
   * @param state four words of xoshiro256++, not all zero
   * @param rest a generator independent of that state
   * @return what no absolute value in the target exceeds
   */
  static double fill(double[] target, long[] state, UniformRandomProvider rest) {
    double[] width = WIDTH;
    long[] plain = PLAIN;
    long s0 = state[0];
    long s1 = state[1];
    long s2 = state[2];
    long s3 = state[3];
    double furthest = TAIL;
    for (int d = 0; d < target.length; d++) {
      long word = Long.rotateLeft(s0 + s3, 23) + s0;
      long t = s1 << 17;
      s2 ^= s0;
      s3 ^= s1;
      s1 ^= s2;
      s0 ^= s3;
      s2 ^= t;
      s3 = Long.rotateLeft(s3, 45);
      int layer = (int) word & (LAYERS - 1);
      long place = word >> 11;
      if (Math.abs(place) < plain[layer]) {
        target[d] = place * width[layer];
      } else {
        target[d] = unplain(layer, place, rest);
        furthest = Math.max(furthest, Math.abs(target[d]));
      }
    }
    return furthest;
  }

  private static double unplain(int layer, long place, UniformRandomProvider rest) {
    double x = place * WIDTH[layer];
    if (layer == 0) {
      return StrictMath.copySign(tail(rest), x);
    }
    double height = HEIGHT[layer] + rest.nextDouble() * (HEIGHT[layer + 1] - HEIGHT[layer]);
    double above = 0.5 * (EDGE[layer] * EDGE[layer] - x * x);
    return height < HEIGHT[layer] * exponential(above) ? x : again(rest);
  }

  /** eˣ for x from 0; eight terms are exact to the last digit where layers are thin. */
  static double exponential(double x) {
    if (x > 0.06) {
      return StrictMath.exp(x);
    }
    double sum = 1;
    for (int term = 8; term > 0; term--) {
      sum = 1 + x * RECIPROCAL[term] * sum;
    }
    return sum;
  }

  private static double again(UniformRandomProvider rest) {
    long word = rest.nextLong();
    int layer = (int) word & (LAYERS - 1);
    long place = word >> 11;
    return Math.abs(place) < PLAIN[layer] ? place * WIDTH[layer] : unplain(layer, place, rest);
  }

  /** Beyond the lowest layer's edge (Marsaglia, Technometrics 6, 1964). */
  private static double tail(UniformRandomProvider rest) {
    double beyond;
    double exponential;
    do {
      beyond = -StrictMath.log(1 - rest.nextDouble()) / TAIL;
      exponential = -StrictMath.log(1 - rest.nextDouble());
    } while (2 * exponential < beyond * beyond);
    return TAIL + beyond;
  }
}
