package ovenproof.core.repeatability;

import java.util.List;
import ovenproof.core.statistics.Descriptive;
import ovenproof.core.statistics.Distributions;

/**
 * Cochran's test for one spread that is too large and Grubbs's for one value that lies too far out
 * (ISO 5725-2:1994, 7.3). Both say that something stands out, never that it may be thrown away.
 */
public final class OutlierTests {

  private OutlierTests() {}

  /**
   * Result of a test.
   *
   * @param statistic Cochran's C or Grubbs's G
   * @param critical value that is exceeded with the given probability if nothing stands out
   * @param index which group or value is the farthest, in the order given
   */
  public record Outlier(double statistic, double critical, int index) {
    public boolean standsOut() {
      return statistic > critical;
    }
  }

  /**
   * Cochran's C = largest variance / sum of variances.
   *
   * <p>For groups of unequal size the mean size counts, as ISO 5725-2 allows when most are equal.
   *
   * @param groups at least two groups of at least two values; the caller leaves smaller ones out
   * @param significance such as 0.01
   */
  public static Outlier cochran(List<double[]> groups, double significance) {
    if (groups.size() < 2) {
      throw new IllegalArgumentException("groups must be at least 2, found " + groups.size());
    }
    double sum = 0;
    double largest = -1;
    int index = 0;
    double sizes = 0;
    for (int i = 0; i < groups.size(); i++) {
      double s = Descriptive.of(groups.get(i)).standardDeviation();
      double variance = s * s;
      sum += variance;
      sizes += groups.get(i).length;
      if (variance > largest) {
        largest = variance;
        index = i;
      }
    }
    double statistic = sum == 0 ? 0 : largest / sum;
    double critical = cochranCritical(groups.size(), sizes / groups.size(), significance);
    return new Outlier(statistic, critical, index);
  }

  /**
   * Critical value of Cochran's C from the F quantile at {@code significance}/groups; exact above
   * 0.5, slightly conservative below.
   *
   * @param groups at least 2
   * @param size values per group, at least 2, may be a mean
   */
  public static double cochranCritical(int groups, double size, double significance) {
    double f =
        Distributions.fQuantile(1 - significance / groups, size - 1, (groups - 1) * (size - 1));
    return f / (f + groups - 1);
  }

  /**
   * Grubbs's G = |farthest value − mean| / s, either side.
   *
   * @param values at least three
   */
  public static Outlier grubbs(double[] values, double significance) {
    if (values.length < 3) {
      throw new IllegalArgumentException("values must be at least 3, found " + values.length);
    }
    Descriptive all = Descriptive.of(values);
    int index = 0;
    for (int i = 1; i < values.length; i++) {
      if (Math.abs(values[i] - all.mean()) > Math.abs(values[index] - all.mean())) {
        index = i;
      }
    }
    double g =
        all.standardDeviation() == 0
            ? 0
            : Math.abs(values[index] - all.mean()) / all.standardDeviation();
    return new Outlier(g, grubbsCritical(values.length, significance / 2), index);
  }

  /** Critical value of G for one side; halve the significance for either side. */
  public static double grubbsCritical(int n, double significance) {
    double t = Distributions.studentQuantile(1 - significance / n, n - 2);
    return (n - 1) / Math.sqrt(n) * Math.sqrt(t * t / (n - 2 + t * t));
  }
}
