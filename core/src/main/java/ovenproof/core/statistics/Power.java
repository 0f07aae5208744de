package ovenproof.core.statistics;

/**
 * What a comparison of two means can see.
 *
 * <p>The detectable difference is (t<sub>1−α/2</sub> + t<sub>power</sub>) · standard error of the
 * difference, both quantiles at the degrees of freedom of the error (for instance Zar,
 * Biostatistical Analysis, "minimum detectable difference"; section number from memory). It differs
 * from the exact noncentral t by less than 1 % from 5 degrees of freedom on.
 */
public final class Power {

  /** The usual chance of a false alarm, 5 %. */
  public static final double SIGNIFICANCE = 0.05;

  /** The usual chance of seeing a difference that is there, 80 %. */
  public static final double USUAL_POWER = 0.8;

  private Power() {}

  /**
   * The true difference that a two-sided test at 5 % finds with 80 % chance.
   *
   * @param standardErrorOfDifference not negative
   * @param degreesOfFreedom of that standard error, above 0
   */
  public static double detectableDifference(
      double standardErrorOfDifference, double degreesOfFreedom) {
    return standardErrorOfDifference
        * (Distributions.studentQuantile(1 - SIGNIFICANCE / 2, degreesOfFreedom)
            + Distributions.studentQuantile(USUAL_POWER, degreesOfFreedom));
  }

  /** As above for all pairs among {@code groups} means at once (Tukey). */
  public static double detectableDifference(
      double standardErrorOfDifference, double degreesOfFreedom, int groups) {
    double critical =
        StudentizedRange.of(groups, degreesOfFreedom).criticalValue(SIGNIFICANCE) / Math.sqrt(2);
    return standardErrorOfDifference
        * (critical + Distributions.studentQuantile(USUAL_POWER, degreesOfFreedom));
  }
}
