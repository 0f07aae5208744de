package ovenproof.core.panel;

import ovenproof.core.statistics.Distributions;

/**
 * An F test.
 *
 * @param f statistic; NaN when it cannot be computed
 * @param numerator degrees of freedom
 * @param denominator degrees of freedom, a real number
 * @param p P(F ≥ f) when there is no effect; NaN when f is
 * @param against in words, what the effect was compared with
 */
record FTest(double f, double numerator, double denominator, double p, String against) {

  static FTest of(double f, double numerator, double denominator, String against) {
    boolean possible = Double.isFinite(f) && numerator > 0 && denominator > 0;
    double p = possible ? Distributions.fUpperTail(f, numerator, denominator) : Double.NaN;
    return new FTest(possible ? f : Double.NaN, numerator, denominator, p, against);
  }

  static FTest impossible(String why) {
    return new FTest(Double.NaN, 0, 0, Double.NaN, why);
  }
}
