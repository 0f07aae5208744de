package ovenproof.core.statistics;

import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.FDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * The tables in the back of a textbook, from Apache Commons Statistics. Degrees of freedom are real
 * numbers above 0 (Satterthwaite gives 3.7 of them) and may be infinite for Student's t and the
 * denominator of F.
 */
public final class Distributions {

  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  private Distributions() {}

  /** z with P(Z ≤ z) = {@code probability}. */
  public static double normalQuantile(double probability) {
    return NORMAL.inverseCumulativeProbability(requireProbability(probability));
  }

  /** P(Z ≤ z) of the standard normal distribution. */
  public static double normalCumulative(double z) {
    return NORMAL.cumulativeProbability(z);
  }

  /** t with P(T ≤ t) = {@code probability}. */
  public static double studentQuantile(double probability, double degreesOfFreedom) {
    requireDegrees(degreesOfFreedom);
    return TDistribution.of(degreesOfFreedom)
        .inverseCumulativeProbability(requireProbability(probability));
  }

  /** P(|T| ≥ |t|), the two-sided p value. */
  public static double studentTwoSided(double t, double degreesOfFreedom) {
    requireDegrees(degreesOfFreedom);
    return Math.min(1, 2 * TDistribution.of(degreesOfFreedom).survivalProbability(Math.abs(t)));
  }

  /** P(F ≥ f). An infinite denominator is the chi-squared limit. */
  public static double fUpperTail(double f, double numerator, double denominator) {
    requireDegrees(numerator);
    requireDegrees(denominator);
    if (denominator > 1e7) {
      return chiSquaredUpperTail(f * numerator, numerator);
    }
    return f <= 0 ? 1 : FDistribution.of(numerator, denominator).survivalProbability(f);
  }

  /** f with P(F ≤ f) = {@code probability}. */
  public static double fQuantile(double probability, double numerator, double denominator) {
    requireDegrees(numerator);
    requireDegrees(denominator);
    return FDistribution.of(numerator, Math.min(denominator, 1e7))
        .inverseCumulativeProbability(requireProbability(probability));
  }

  /** P(χ² ≥ x). */
  public static double chiSquaredUpperTail(double x, double degreesOfFreedom) {
    requireDegrees(degreesOfFreedom);
    return x <= 0 ? 1 : ChiSquaredDistribution.of(degreesOfFreedom).survivalProbability(x);
  }

  /** x with P(χ² ≤ x) = {@code probability}. */
  public static double chiSquaredQuantile(double probability, double degreesOfFreedom) {
    requireDegrees(degreesOfFreedom);
    return ChiSquaredDistribution.of(degreesOfFreedom)
        .inverseCumulativeProbability(requireProbability(probability));
  }

  /** P(X ≥ {@code successes}) of {@code trials} with chance {@code probability} each. */
  public static double binomialUpperTail(int successes, int trials, double probability) {
    return successes <= 0
        ? 1
        : BinomialDistribution.of(trials, requireProbability(probability))
            .survivalProbability(successes - 1);
  }

  private static double requireProbability(double probability) {
    if (!(probability >= 0 && probability <= 1)) {
      throw new IllegalArgumentException("probability must lie in 0 … 1, found " + probability);
    }
    return probability;
  }

  private static void requireDegrees(double degreesOfFreedom) {
    if (!(degreesOfFreedom > 0)) {
      throw new IllegalArgumentException(
          "degrees of freedom must be above 0, found " + degreesOfFreedom);
    }
  }
}
