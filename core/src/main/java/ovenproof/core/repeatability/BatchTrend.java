package ovenproof.core.repeatability;

import org.apache.commons.statistics.distribution.TDistribution;

/**
 * What back-to-back batches do: the change per batch at one and the same setting, from the residual
 * heat that each leaves to the next. Ordinary least squares over the number of the batch; the
 * interval is Student's, with as many degrees of freedom as batches less two.
 *
 * @param batches how many have a value, at least 3
 * @param slopePerBatch change from one batch to the next, in the unit of the values
 * @param slopeU standard uncertainty of the slope
 * @param secondMinusFirst second batch less first, NaN when one of them has no value
 */
public record BatchTrend(
    int batches, double slopePerBatch, double slopeU, double secondMinusFirst) {

  /** Fewer batches lie on a straight line whatever they do. */
  public static final int FEWEST = 3;

  /**
   * The trend of values in the order of their batches.
   *
   * @param values one per batch from the first; NaN where a batch has none
   * @throws IllegalArgumentException when fewer than {@value #FEWEST} are finite
   */
  public static BatchTrend of(double[] values) {
    int n = 0;
    double sumX = 0;
    double sumY = 0;
    for (int i = 0; i < values.length; i++) {
      if (Double.isFinite(values[i])) {
        n++;
        sumX += i + 1;
        sumY += values[i];
      }
    }
    if (n < FEWEST) {
      throw new IllegalArgumentException(
          "values has " + n + " finite ones, must have at least " + FEWEST);
    }
    return fit(values, n, sumX / n, sumY / n);
  }

  private static BatchTrend fit(double[] values, int n, double meanX, double meanY) {
    double sxx = 0;
    double sxy = 0;
    for (int i = 0; i < values.length; i++) {
      if (Double.isFinite(values[i])) {
        double x = i + 1 - meanX;
        sxx += x * x;
        sxy += x * (values[i] - meanY);
      }
    }
    double slope = sxy / sxx;
    double squares = 0;
    for (int i = 0; i < values.length; i++) {
      if (Double.isFinite(values[i])) {
        double residual = values[i] - meanY - slope * (i + 1 - meanX);
        squares += residual * residual;
      }
    }
    double u = Math.sqrt(squares / (n - 2) / sxx);
    return new BatchTrend(n, slope, u, values[1] - values[0]);
  }

  /**
   * Half the width of the interval about the slope.
   *
   * @param confidence between 0 and 1, such as 0.9
   */
  public double halfWidth(double confidence) {
    if (!(confidence > 0 && confidence < 1)) {
      throw new IllegalArgumentException("confidence is " + confidence + ", must be in (0, 1)");
    }
    double t = TDistribution.of(batches - 2).inverseCumulativeProbability((1 + confidence) / 2);
    return t * slopeU;
  }

  /** Whether the interval leaves zero out. */
  public boolean isClear(double confidence) {
    return Math.abs(slopePerBatch) > halfWidth(confidence);
  }
}
