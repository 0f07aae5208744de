package ovenproof.core.statistics;

import java.util.List;

/**
 * Analysis of variance of independent groups, sizes equal or not.
 *
 * @param groups number of groups with data
 * @param n number of values
 * @param betweenSumOfSquares between the group means
 * @param withinSumOfSquares within the groups
 * @param f ratio of the mean squares; NaN when nothing varies within the groups or n equals the
 *     number of groups
 * @param p P(F ≥ f) if all groups had one mean; NaN when f is
 */
public record OneWayAnova(
    int groups, int n, double betweenSumOfSquares, double withinSumOfSquares, double f, double p) {

  /**
   * @param groups values of each group; empty ones do not count; at least two must hold values
   */
  public static OneWayAnova of(List<double[]> groups) {
    List<double[]> filled = groups.stream().filter(g -> g.length > 0).toList();
    if (filled.size() < 2) {
      throw new IllegalArgumentException(
          "groups must hold at least two with values, found " + filled.size());
    }
    int n = filled.stream().mapToInt(g -> g.length).sum();
    double[] all = filled.stream().flatMapToDouble(java.util.Arrays::stream).toArray();
    double grandMean = Descriptive.of(all).mean();
    double[] between = new double[filled.size()];
    double[] within = new double[filled.size()];
    for (int i = 0; i < between.length; i++) {
      double[] group = filled.get(i);
      Descriptive one = Descriptive.of(group);
      double distance = one.mean() - grandMean;
      between[i] = group.length * distance * distance;
      double s = group.length == 1 ? 0 : one.standardDeviation();
      within[i] = (group.length - 1) * s * s;
    }
    return of(filled.size(), n, Descriptive.sum(between), Descriptive.sum(within));
  }

  private static OneWayAnova of(int groups, int n, double between, double within) {
    if (n == groups || within == 0) {
      return new OneWayAnova(groups, n, between, within, Double.NaN, Double.NaN);
    }
    double f = between / (groups - 1) / (within / (n - groups));
    double p = Distributions.fUpperTail(f, groups - 1, n - groups);
    return new OneWayAnova(groups, n, between, within, f, p);
  }

  public int betweenDegrees() {
    return groups - 1;
  }

  public int withinDegrees() {
    return n - groups;
  }
}
