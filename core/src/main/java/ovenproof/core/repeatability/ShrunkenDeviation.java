package ovenproof.core.repeatability;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.special.Gamma;
import ovenproof.core.statistics.Descriptive;

/**
 * Deviations of single products, pulled towards the field by empirical Bayes: s̃² = (d₀s₀² +
 * dᵢsᵢ²)/(d₀ + dᵢ), with prior degrees d₀ and prior s₀ from the moments of log sᵢ² (Smyth,
 * Statistical Applications in Genetics and Molecular Biology 3, 2004, article 3, section 6.2).
 *
 * @param prior prior deviation s₀
 * @param priorDegreesOfFreedom d₀; infinite when the spreads differ no more than chance makes them,
 *     then every product gets s₀
 * @param products deviation and degrees of freedom d₀ + dᵢ of each product, in the order given
 */
public record ShrunkenDeviation(
    double prior, double priorDegreesOfFreedom, List<PooledDeviation> products) {

  public ShrunkenDeviation {
    products = List.copyOf(products);
  }

  /**
   * Shrinks the deviations of the groups.
   *
   * @param runsByProduct values of each product's runs; groups of one get the prior; at least three
   *     groups of two or more that are not all equal, otherwise there is nothing to learn the prior
   *     from and every product gets the pooled deviation
   */
  public static ShrunkenDeviation of(List<double[]> runsByProduct) {
    PooledDeviation pooled = PooledDeviation.of(runsByProduct);
    List<double[]> informative =
        runsByProduct.stream()
            .filter(runs -> runs.length > 1 && Descriptive.of(runs).standardDeviation() > 0)
            .toList();
    if (informative.size() < 3) {
      return same(pooled, runsByProduct.size());
    }
    double mean = 0;
    double chance = 0;
    List<Double> e = new ArrayList<>();
    for (double[] runs : informative) {
      double s = Descriptive.of(runs).standardDeviation();
      double half = (runs.length - 1) / 2.0;
      double value = 2 * Math.log(s) - Gamma.digamma(half) + Math.log(half);
      e.add(value);
      mean += value / informative.size();
      chance += Gamma.trigamma(half) / informative.size();
    }
    double spread = 0;
    for (double value : e) {
      spread += (value - mean) * (value - mean) / (informative.size() - 1);
    }
    double excess = spread - chance;
    if (excess <= 0) {
      double prior = Math.sqrt(Math.exp(mean));
      return same(
          new PooledDeviation(prior, Double.POSITIVE_INFINITY, informative.size()),
          runsByProduct.size());
    }
    double half = inverseTrigamma(excess);
    double prior = Math.sqrt(Math.exp(mean + Gamma.digamma(half) - Math.log(half)));
    return shrunk(prior, 2 * half, runsByProduct);
  }

  private static ShrunkenDeviation same(PooledDeviation deviation, int products) {
    return new ShrunkenDeviation(
        deviation.deviation(),
        deviation.degreesOfFreedom(),
        java.util.Collections.nCopies(products, deviation));
  }

  private static ShrunkenDeviation shrunk(
      double prior, double priorDegrees, List<double[]> runsByProduct) {
    List<PooledDeviation> products = new ArrayList<>();
    for (double[] runs : runsByProduct) {
      double s = runs.length > 1 ? Descriptive.of(runs).standardDeviation() : 0;
      double own = Math.max(0, runs.length - 1);
      double variance = (priorDegrees * prior * prior + own * s * s) / (priorDegrees + own);
      products.add(new PooledDeviation(Math.sqrt(variance), priorDegrees + own, 1));
    }
    return new ShrunkenDeviation(prior, priorDegrees, products);
  }

  /** y with trigamma(y) = x, by bisection: trigamma falls from infinity to 0. */
  static double inverseTrigamma(double x) {
    double low = 1e-8;
    double high = 1e8;
    for (int i = 0; i < 200; i++) {
      double middle = Math.sqrt(low * high);
      if (Gamma.trigamma(middle) > x) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return Math.sqrt(low * high);
  }
}
