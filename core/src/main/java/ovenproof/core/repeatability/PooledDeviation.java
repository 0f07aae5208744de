package ovenproof.core.repeatability;

import java.util.List;
import ovenproof.core.statistics.Descriptive;
import ovenproof.core.statistics.Distributions;
import ovenproof.core.statistics.Interval;

/**
 * Standard deviation between runs of the same product, pooled over the field: s² = Σ(nᵢ − 1)sᵢ² /
 * Σ(nᵢ − 1).
 *
 * @param deviation s in the unit of the values; NaN when no product has two runs
 * @param degreesOfFreedom Σ(nᵢ − 1); 0 when no product has two runs; infinite for a declared value
 * @param products how many products contributed
 */
public record PooledDeviation(double deviation, double degreesOfFreedom, int products) {

  /**
   * Pools the groups; groups of one run say nothing and are passed over.
   *
   * @param runsByProduct finite values of each product's runs, censored ones left out
   */
  public static PooledDeviation of(List<double[]> runsByProduct) {
    double squares = 0;
    int degrees = 0;
    int products = 0;
    for (double[] runs : runsByProduct) {
      if (runs.length > 1) {
        double s = Descriptive.of(runs).standardDeviation();
        squares += (runs.length - 1) * s * s;
        degrees += runs.length - 1;
        products++;
      }
    }
    double deviation = degrees == 0 ? Double.NaN : Math.sqrt(squares / degrees);
    return new PooledDeviation(deviation, degrees, products);
  }

  /** A deviation that the method declares, or 0 for what has no run-to-run deviation. */
  public static PooledDeviation declared(double deviation) {
    if (!(deviation >= 0 && deviation < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "a declared deviation must be 0 or more, found " + deviation);
    }
    return new PooledDeviation(deviation, Double.POSITIVE_INFINITY, 0);
  }

  /** Whether there is a deviation to speak of. */
  public boolean known() {
    return degreesOfFreedom > 0;
  }

  /**
   * Interval that holds the true deviation with the probability given: s√(ν/χ²). A declared
   * deviation is taken as it is.
   *
   * @throws IllegalStateException if no deviation is known
   */
  public Interval interval(double probability) {
    if (!known()) {
      throw new IllegalStateException("no deviation is known");
    }
    if (Double.isInfinite(degreesOfFreedom) || deviation == 0) {
      return new Interval(deviation, deviation);
    }
    double tail = (1 - probability) / 2;
    double most = Distributions.chiSquaredQuantile(1 - tail, degreesOfFreedom);
    double least = Distributions.chiSquaredQuantile(tail, degreesOfFreedom);
    return new Interval(
        deviation * Math.sqrt(degreesOfFreedom / most),
        deviation * Math.sqrt(degreesOfFreedom / least));
  }
}
