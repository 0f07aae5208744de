package ovenproof.core.statistics;

/**
 * Interval for a share from a count (Wilson, Journal of the American Statistical Association 22,
 * 1927, 209–212), without continuity correction. Unlike the textbook p ± z·√(p(1−p)/n) it never
 * leaves 0 … 1 and is not empty at 0 of n or n of n.
 */
public final class WilsonInterval {

  private WilsonInterval() {}

  /**
   * @param successes 0 … trials
   * @param trials independent trials, at least 1
   * @param confidence between 0 and 1, e.g. 0.95
   * @return shares from 0 to 1
   */
  public static Interval of(int successes, int trials, double confidence) {
    if (!(trials >= 1 && successes >= 0 && successes <= trials)) {
      throw new IllegalArgumentException(
          "successes must lie in 0 … trials and trials be at least 1, found "
              + successes
              + " of "
              + trials);
    }
    double z = Distributions.normalQuantile(0.5 + requireShare(confidence) / 2);
    double share = successes / (double) trials;
    double zz = z * z / trials;
    double centre = (share + zz / 2) / (1 + zz);
    double half = z / (1 + zz) * Math.sqrt(share * (1 - share) / trials + zz / trials / 4);
    double low = successes == 0 ? 0 : Math.max(0, centre - half);
    double high = successes == trials ? 1 : Math.min(1, centre + half);
    return new Interval(low, high);
  }

  private static double requireShare(double confidence) {
    if (!(confidence > 0 && confidence < 1)) {
      throw new IllegalArgumentException(
          "confidence must lie between 0 and 1, found " + confidence);
    }
    return confidence;
  }
}
