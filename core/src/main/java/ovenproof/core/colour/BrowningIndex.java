package ovenproof.core.colour;

/**
 * The browning index BI = 100 (x − 0.31) / 0.172 with x = (a + 1.75 L) / (5.645 L + a − 3.012 b).
 *
 * <p>Source: M. P. Buera, R. D. Lozano, C. Petriella, 1985/86, as quoted by R. Hirschler, 2012.
 *
 * <p><b>It is not monotone.</b> It rises with yellow and red and falls again once b* collapses:
 * golden 79, brown 108, burnt 47. Shown beside L*, never scored alone.
 */
public final class BrowningIndex {

  private BrowningIndex() {}

  /**
   * The index, without unit; about 0 for greys.
   *
   * @return NaN where the formula has no value (black, or a denominator of 0)
   */
  public static double of(Lab colour) {
    double denominator = 5.645 * colour.lightness() + colour.a() - 3.012 * colour.b();
    if (denominator == 0) {
      return Double.NaN;
    }
    double x = (colour.a() + 1.75 * colour.lightness()) / denominator;
    return 100 * (x - 0.31) / 0.172;
  }
}
