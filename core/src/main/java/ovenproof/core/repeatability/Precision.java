package ovenproof.core.repeatability;

import java.util.List;
import ovenproof.core.statistics.Descriptive;

/**
 * Repeatability and reproducibility after ISO 5725-2:1994, 7.4: groups are laboratories, kitchens
 * or sessions that measured the same thing.
 *
 * @param mean weighted by group size
 * @param repeatability s_r, within a group
 * @param between s_L, between groups; 0 when the estimate would be negative
 * @param reproducibility s_R = √(s_r² + s_L²)
 */
public record Precision(double mean, double repeatability, double between, double reproducibility) {

  /**
   * @param groups at least two groups with values, at least one of them with two
   */
  public static Precision of(List<double[]> groups) {
    double total = 0;
    double squaredSizes = 0;
    double sum = 0;
    for (double[] group : groups) {
      total += group.length;
      squaredSizes += (double) group.length * group.length;
      sum += Descriptive.sum(group);
    }
    PooledDeviation within = PooledDeviation.of(groups);
    if (groups.size() < 2 || !within.known()) {
      throw new IllegalArgumentException(
          "groups must be at least 2, one of them with 2 values, found " + groups.size());
    }
    double mean = sum / total;
    double betweenSquares = 0;
    for (double[] group : groups) {
      double off = Descriptive.of(group).mean() - mean;
      betweenSquares += group.length * off * off;
    }
    int p = groups.size();
    double meanSize = (total - squaredSizes / total) / (p - 1);
    double repeatabilityVariance = within.deviation() * within.deviation();
    double betweenVariance =
        Math.max(0, (betweenSquares / (p - 1) - repeatabilityVariance) / meanSize);
    return new Precision(
        mean,
        within.deviation(),
        Math.sqrt(betweenVariance),
        Math.sqrt(repeatabilityVariance + betweenVariance));
  }

  /** Difference that two single results within a group exceed in 5 % of cases: 2.8 s_r. */
  public double repeatabilityLimit() {
    return 2.8 * repeatability;
  }
}
