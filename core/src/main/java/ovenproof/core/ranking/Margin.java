package ovenproof.core.ranking;

/**
 * How many standard errors of a difference two products must lie apart.
 *
 * @param c the 90 % quantile over draws of the largest |error difference|/SEd of any pair; NaN for
 *     a field of one
 * @param low c less three Monte Carlo standard errors
 * @param high c plus three Monte Carlo standard errors
 */
public record Margin(double c, double low, double high) {
  /** Chance that nothing at all is split in a field of equals. */
  public static final double CONFIDENCE = 0.90;
}
