package ovenproof.core.statistics;

import java.util.Collection;

/**
 * Mean, standard deviation and range of a few numbers.
 *
 * <p>The mean is a compensated sum (Neumaier) corrected once by the mean of the deviations; the
 * deviation is the corrected two-pass formula (Chan, Golub and LeVeque, The American Statistician
 * 37, 1983, 242–247), so that numbers that agree in their first nine digits keep the digits they
 * have.
 *
 * @param n how many numbers; at least 1
 * @param mean arithmetic mean
 * @param standardDeviation with divisor n − 1; NaN for a single number, because one number has no
 *     spread to speak of; 0 for numbers that are all equal
 * @param minimum smallest number
 * @param maximum largest number
 */
public record Descriptive(
    int n, double mean, double standardDeviation, double minimum, double maximum) {

  /**
   * Describes the numbers, which are not changed.
   *
   * @throws IllegalArgumentException if there is none, or one is not finite
   */
  public static Descriptive of(double... values) {
    requireFinite(values);
    double minimum = Double.POSITIVE_INFINITY;
    double maximum = Double.NEGATIVE_INFINITY;
    for (double value : values) {
      minimum = Math.min(minimum, value);
      maximum = Math.max(maximum, value);
    }
    double mean = mean(values);
    double variance =
        values.length == 1 ? Double.NaN : sumOfSquares(values, mean) / (values.length - 1);
    return new Descriptive(values.length, mean, Math.sqrt(variance), minimum, maximum);
  }

  /** As {@link #of(double...)}. */
  public static Descriptive of(Collection<? extends Number> values) {
    return of(values.stream().mapToDouble(Number::doubleValue).toArray());
  }

  /** Standard deviation of the mean, s/√n; NaN for a single number. */
  public double standardError() {
    return standardDeviation / Math.sqrt(n);
  }

  /** Largest minus smallest number. */
  public double range() {
    return maximum - minimum;
  }

  /** Sum without the drift of a plain loop (Neumaier's compensated summation). 0 for no numbers. */
  public static double sum(double... values) {
    double sum = 0;
    double lost = 0;
    for (double value : values) {
      double next = sum + value;
      lost += Math.abs(sum) >= Math.abs(value) ? (sum - next) + value : (value - next) + sum;
      sum = next;
    }
    return sum + lost;
  }

  private static double mean(double[] values) {
    double first = sum(values) / values.length;
    return first + sum(deviations(values, first)) / values.length;
  }

  private static double sumOfSquares(double[] values, double mean) {
    double[] deviations = deviations(values, mean);
    double rest = sum(deviations);
    double[] squares = new double[deviations.length];
    for (int i = 0; i < squares.length; i++) {
      squares[i] = deviations[i] * deviations[i];
    }
    return Math.max(0, sum(squares) - rest * rest / values.length);
  }

  private static double[] deviations(double[] values, double from) {
    double[] deviations = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      deviations[i] = values[i] - from;
    }
    return deviations;
  }

  private static void requireFinite(double[] values) {
    if (values.length == 0) {
      throw new IllegalArgumentException("values must hold at least one number, found none");
    }
    for (int i = 0; i < values.length; i++) {
      if (!Double.isFinite(values[i])) {
        throw new IllegalArgumentException("values[" + i + "] must be finite, found " + values[i]);
      }
    }
  }
}
