package ovenproof.core.years;

/**
 * Charts against a standard that is known beforehand: a target and a deviation that were not
 * estimated from the values charted.
 *
 * @param target centre
 * @param deviation of a single value, above 0
 */
public record KnownStandardChart(double target, double deviation) {

  /** d₂ for moving ranges of two: 2/√π. */
  private static final double D2 = 2 / Math.sqrt(Math.PI);

  public KnownStandardChart {
    if (!(deviation > 0)) {
      throw new IllegalArgumentException("deviation must be above 0, found " + deviation);
    }
  }

  /** Centre and deviation of an individuals chart: mean, and mean moving range / d₂. */
  public static KnownStandardChart ofMovingRanges(double... values) {
    if (values.length < 2) {
      throw new IllegalArgumentException("values must be at least 2, found " + values.length);
    }
    double sum = values[0];
    double ranges = 0;
    for (int i = 1; i < values.length; i++) {
      sum += values[i];
      ranges += Math.abs(values[i] - values[i - 1]);
    }
    return new KnownStandardChart(sum / values.length, ranges / (values.length - 1) / D2);
  }

  /** Upper limit of a Shewhart chart of single values. */
  public double upper(double widths) {
    return target + widths * deviation;
  }

  /** Exponentially weighted moving averages, starting at the target. */
  public double[] ewma(double lambda, double... values) {
    double[] smoothed = new double[values.length];
    double last = target;
    for (int i = 0; i < values.length; i++) {
      last = lambda * values[i] + (1 - lambda) * last;
      smoothed[i] = last;
    }
    return smoothed;
  }

  /** Half width of the EWMA's limits after n values; infinite n gives the asymptote. */
  public double ewmaHalfWidth(double lambda, double widths, double n) {
    double start = Double.isInfinite(n) ? 1 : 1 - Math.pow(1 - lambda, 2 * n);
    return widths * deviation * Math.sqrt(lambda / (2 - lambda) * start);
  }

  /** Tabular CUSUM above the target, in the values' unit. */
  public double[] cusumAbove(double allowance, double... values) {
    double[] sums = new double[values.length];
    double last = 0;
    for (int i = 0; i < values.length; i++) {
      last = Math.max(0, last + values[i] - target - allowance);
      sums[i] = last;
    }
    return sums;
  }
}
