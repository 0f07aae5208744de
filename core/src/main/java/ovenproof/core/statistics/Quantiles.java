package ovenproof.core.statistics;

import java.util.Arrays;

/**
 * Quantiles by linear interpolation between order statistics, (n − 1)p + 1 counted from the
 * smallest: definition 7 of Hyndman and Fan, The American Statistician 50, 1996, 361–365. The
 * median of an even number of values is the mean of the two in the middle.
 */
public final class Quantiles {

  private Quantiles() {}

  /**
   * @param probability 0 (smallest) … 1 (largest)
   * @param values at least one, none NaN; not changed
   */
  public static double of(double probability, double... values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return ofSorted(probability, sorted);
  }

  /** As {@link #of}, for values already in ascending order. */
  public static double ofSorted(double probability, double[] ascending) {
    if (ascending.length == 0) {
      throw new IllegalArgumentException("values must hold at least one number, found none");
    }
    if (!(probability >= 0 && probability <= 1)) {
      throw new IllegalArgumentException("probability must lie in 0 … 1, found " + probability);
    }
    if (Double.isNaN(ascending[ascending.length - 1])) {
      throw new IllegalArgumentException("values must be numbers, found NaN");
    }
    double position = (ascending.length - 1) * probability;
    int below = (int) Math.floor(position);
    int above = Math.min(below + 1, ascending.length - 1);
    double weight = position - below;
    return weight == 0
        ? ascending[below]
        : ascending[below] + weight * (ascending[above] - ascending[below]);
  }

  public static double median(double... values) {
    return of(0.5, values);
  }

  /**
   * Median of the distances from the median, times 1.4826 so that it estimates the standard
   * deviation of normal data.
   */
  public static double medianAbsoluteDeviation(double... values) {
    double median = median(values);
    double[] distances = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      distances[i] = Math.abs(values[i] - median);
    }
    return 1.4826 * median(distances);
  }
}
