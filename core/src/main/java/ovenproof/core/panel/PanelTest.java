package ovenproof.core.panel;

import java.util.List;

/**
 * One test or coefficient of one attribute.
 *
 * @param name what was tested: {@code product}, {@code product × assessor}, {@code batch}, {@code
 *     friedman}, {@code kendall-w}, {@code permutation}, {@code position}, {@code previous}, {@code
 *     ICC(1,1)} …
 * @param attribute of which attribute
 * @param statistic F, χ², W or coefficient; NaN when it cannot be computed
 * @param df degrees of freedom, numerator first; empty when the test has none
 * @param p probability of such a statistic or a larger one without effect; NaN when unknown
 * @param method in words, with what was compared with what
 */
public record PanelTest(
    String name, String attribute, double statistic, List<Double> df, double p, String method) {

  public PanelTest {
    df = List.copyOf(df);
  }

  static PanelTest of(String name, String attribute, FTest test) {
    return new PanelTest(
        name,
        attribute,
        test.f(),
        List.of(test.numerator(), test.denominator()),
        test.p(),
        "F against " + test.against());
  }
}
