package ovenproof.core.trace;

import java.util.Arrays;

/** Medians of small arrays and the noise of a series. */
final class Medians {

  /** Factor from the median absolute deviation to the standard deviation of a normal variable. */
  static final double MAD_TO_SD = 1.4826;

  private Medians() {}

  /** The median; NaN when empty. Leaves the argument alone. */
  static double of(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return ofSorted(sorted, 0, sorted.length);
  }

  /** Standard error of the median of normal values, from their scatter; 0 for fewer than two. */
  static double standardError(double[] values) {
    int n = values.length;
    if (n < 2) {
      return 0;
    }
    double mean = Arrays.stream(values).sum() / n;
    double squares = Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum();
    return 1.2533 * Math.sqrt(squares / (n - 1) / n);
  }

  static double ofSorted(double[] sorted, int from, int to) {
    int n = to - from;
    if (n == 0) {
      return Double.NaN;
    }
    int middle = from + n / 2;
    return n % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
  }

  /**
   * Standard deviation of the noise of a smooth series, from the median of absolute second
   * differences (a second difference of white noise has 6 times its variance), so that a ramp does
   * not count as noise. 0 with fewer than three values; looks at 4,000 places at most.
   */
  static double noise(double[] values) {
    if (values.length < 3) {
      return 0;
    }
    int stride = Math.max(1, (values.length - 2) / 4000);
    double[] differences = new double[(values.length - 3) / stride + 1];
    int n = 0;
    for (int i = 1; i < values.length - 1; i += stride) {
      double d = Math.abs(values[i - 1] - 2 * values[i] + values[i + 1]);
      if (Double.isFinite(d)) {
        differences[n++] = d;
      }
    }
    if (n == 0) {
      return 0;
    }
    return MAD_TO_SD * of(Arrays.copyOf(differences, n)) / Math.sqrt(6);
  }
}
