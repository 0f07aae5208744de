package ovenproof.core.random;

import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.core.source64.XoShiRo256PlusPlus;
import org.apache.commons.rng.sampling.distribution.AhrensDieterMarsagliaTsangGammaSampler;
import org.apache.commons.rng.sampling.distribution.SharedStateContinuousSampler;

/**
 * The stream of one source of error: xoshiro256++ (Blackman and Vigna, 2019), restarted for every
 * block of {@link RandomStreams#BLOCK} draws. Immutable; may be used by several threads.
 */
public final class ErrorSource {
  private static final long STEP = 0x9e3779b97f4a7c15L;
  private static final long REST = 0xd1342543de82ef95L;

  private final long a;
  private final long b;
  private final long c;
  private final long d;

  ErrorSource(long a, long b, long c, long d) {
    this.a = a;
    this.b = b;
    this.c = c;
    this.d = d;
  }

  /** A generator at the start of a block; for sampling that is not by the block. */
  public UniformRandomProvider generator(int block) {
    long[] state = state(block, STEP);
    return new XoShiRo256PlusPlus(state[0], state[1], state[2], state[3]);
  }

  private long[] state(int block, long stride) {
    long step = stride * (block + 1L);
    return new long[] {mix(a + step), mix(b ^ step), mix(c - step), mix(d + 3 * step)};
  }

  /**
   * Fills a block with standard normal errors (a ziggurat of 256 layers).
   *
   * @return what none of them exceeds in absolute value
   */
  public double normal(int block, double[] target) {
    long[] rest = state(block, REST);
    return NormalZiggurat.fill(
        target, state(block, STEP), new XoShiRo256PlusPlus(rest[0], rest[1], rest[2], rest[3]));
  }

  /** Fills a block with numbers between 0 (inclusive) and 1 (exclusive). */
  public void uniform(int block, double[] target) {
    UniformRandomProvider generator = generator(block);
    for (int i = 0; i < target.length; i++) {
      target[i] = generator.nextDouble();
    }
  }

  /**
   * Fills a block with √(ν/χ²ν), the factor that turns a normal error into Student's t. Errors that
   * share a deviation share the factor.
   *
   * @param degreesOfFreedom ν above 0; infinite gives 1 everywhere
   */
  public void studentFactor(int block, double degreesOfFreedom, double[] target) {
    if (!(degreesOfFreedom > 0)) {
      throw new IllegalArgumentException(
          "degrees of freedom must be above 0, found " + degreesOfFreedom);
    }
    if (Double.isInfinite(degreesOfFreedom)) {
      java.util.Arrays.fill(target, 1);
      return;
    }
    SharedStateContinuousSampler half =
        AhrensDieterMarsagliaTsangGammaSampler.of(generator(block), degreesOfFreedom / 2, 1);
    for (int i = 0; i < target.length; i++) {
      target[i] = Math.sqrt(degreesOfFreedom / (2 * half.sample()));
    }
  }

  /** Finaliser of SplitMix64 (Steele, Lea and Flood, 2014). */
  private static long mix(long z) {
    z = (z ^ (z >>> 30)) * 0xbf58476d1ce4e5b9L;
    z = (z ^ (z >>> 27)) * 0x94d049bb133111ebL;
    return z ^ (z >>> 31);
  }
}
