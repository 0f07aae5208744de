package ovenproof.core.repeatability;

import ovenproof.core.statistics.Distributions;

/**
 * Combined standard uncertainty and effective degrees of freedom (JCGM 100:2008, 5.1 and G.4).
 *
 * @param uncertainty root of the summed squares, k = 1
 * @param degreesOfFreedom Welch–Satterthwaite; infinite when no part has finite degrees
 */
public record CombinedUncertainty(double uncertainty, double degreesOfFreedom) {

  /**
   * Combines independent parts.
   *
   * @param parts standard uncertainties, sign ignored
   * @param degreesOfFreedom of each part, infinite where it is not estimated from few values
   */
  public static CombinedUncertainty of(double[] parts, double[] degreesOfFreedom) {
    if (parts.length != degreesOfFreedom.length) {
      throw new IllegalArgumentException(
          "every part needs its degrees of freedom, found "
              + parts.length
              + " parts and "
              + degreesOfFreedom.length);
    }
    double variance = 0;
    double fourth = 0;
    for (int i = 0; i < parts.length; i++) {
      double square = parts[i] * parts[i];
      variance += square;
      fourth += square * square / degreesOfFreedom[i];
    }
    double degrees = fourth == 0 ? Double.POSITIVE_INFINITY : variance * variance / fourth;
    return new CombinedUncertainty(Math.sqrt(variance), degrees);
  }

  /** Half width of the interval that holds the value with the probability given, such as 0.9. */
  public double halfWidth(double probability) {
    return uncertainty == 0
        ? 0
        : uncertainty
            * Distributions.studentQuantile(0.5 + probability / 2, Math.min(degreesOfFreedom, 1e7));
  }
}
