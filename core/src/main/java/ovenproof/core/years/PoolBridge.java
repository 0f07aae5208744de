package ovenproof.core.years;

import java.util.Optional;
import ovenproof.core.statistics.Descriptive;
import ovenproof.core.statistics.Distributions;
import ovenproof.core.statistics.Interval;

/**
 * Joins two pools or method versions by specimens that were tested in both: new = old + offset. The
 * offset is the mean difference; its uncertainty is shared by everything that crosses.
 *
 * @param offset new less old
 * @param uncertainty standard uncertainty of the offset, s_d/√m
 * @param scatter s_d: how differently the re-tested specimens moved
 * @param specimens m
 * @param interval 90 % interval of the offset, by Student's t with m − 1 degrees of freedom
 */
public record PoolBridge(
    double offset, double uncertainty, double scatter, int specimens, Interval interval) {

  /** Fewer re-tested specimens make no bridge. */
  public static final int FEWEST = 3;

  /**
   * The bridge; empty when it does not hold: fewer than three specimens, or an interval whose half
   * width exceeds what is allowed. Then products of the other pool stay unranked.
   *
   * @param old values of the specimens in the old pool
   * @param current values of the same specimens, in the same order, in the new one
   * @param allowedHalfWidth in the unit of the values, above 0
   */
  public static Optional<PoolBridge> of(double[] old, double[] current, double allowedHalfWidth) {
    if (old.length != current.length || !(allowedHalfWidth > 0)) {
      throw new IllegalArgumentException(
          "both pools need the same specimens and a half width above 0, found "
              + old.length
              + ", "
              + current.length
              + " and "
              + allowedHalfWidth);
    }
    if (old.length < FEWEST) {
      return Optional.empty();
    }
    double[] moved = new double[old.length];
    for (int i = 0; i < moved.length; i++) {
      moved[i] = current[i] - old[i];
    }
    Descriptive differences = Descriptive.of(moved);
    double u = differences.standardError();
    double half = u * Distributions.studentQuantile(0.95, old.length - 1);
    if (half > allowedHalfWidth) {
      return Optional.empty();
    }
    double mean = differences.mean();
    return Optional.of(
        new PoolBridge(
            mean,
            u,
            differences.standardDeviation(),
            old.length,
            new Interval(mean - half, mean + half)));
  }

  /** An old value on the new scale. */
  public double cross(double old) {
    return old + offset;
  }

  /**
   * Its standard uncertainty there: its own, the offset's and the scatter with which single
   * specimens move.
   */
  public double uncertainty(double own) {
    return Math.sqrt(own * own + uncertainty * uncertainty + scatter * scatter);
  }
}
