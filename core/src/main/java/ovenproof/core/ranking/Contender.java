package ovenproof.core.ranking;

/**
 * A product in the comparison.
 *
 * @param id key
 * @param low unrounded score at the lower bound
 * @param high unrounded score at the upper bound; equal to {@code low} unless something is censored
 *     or missing
 * @param lowDraws draws of the score at the lower bound
 * @param highDraws draws at the upper bound; the same array when there is one score only
 */
public record Contender(String id, double low, double high, double[] lowDraws, double[] highDraws) {

  public Contender {
    if (!(low <= high)) {
      throw new IllegalArgumentException(
          id + ": low must not exceed high, found " + low + " and " + high);
    }
    if (lowDraws.length != highDraws.length) {
      throw new IllegalArgumentException(id + ": both bounds need the same number of draws");
    }
  }

  /** A product whose score is one number. */
  public static Contender of(String id, double score, double[] draws) {
    return new Contender(id, score, score, draws, draws);
  }

  boolean bounded() {
    return lowDraws != highDraws;
  }
}
