package ovenproof.core.scoring;

/**
 * How a case is drawn and shown.
 *
 * @param seed stored seed of every draw
 * @param draws number of draws; rounded up to whole blocks of 500
 * @param decimals digits of displayed scores, 0–3
 * @param unitToUnit declared standard deviation between specimens of one product in points of the
 *     total; 0 when intervals speak of the specimen only
 * @param spread how deviations between runs are estimated
 */
public record ScoringRules(String seed, int draws, int decimals, double unitToUnit, Spread spread) {

  /** How deviations between runs are estimated. */
  public enum Spread {
    /** One deviation per variable, pooled over the field. */
    POOLED,
    /** Each product's own, pulled towards the field by empirical Bayes. */
    SHRUNKEN
  }

  public ScoringRules {
    if (draws < 1 || draws > 1_000_000) {
      throw new IllegalArgumentException("draws must lie in 1 … 1000000, found " + draws);
    }
    if (decimals < 0 || decimals > 3) {
      throw new IllegalArgumentException("decimals must lie in 0 … 3, found " + decimals);
    }
    if (!(unitToUnit >= 0 && unitToUnit <= ValueCurve.BEST)) {
      throw new IllegalArgumentException("unitToUnit must lie in 0 … 10, found " + unitToUnit);
    }
  }

  public static ScoringRules of(String seed) {
    return new ScoringRules(seed, 20_000, 1, 0, Spread.POOLED);
  }

  public ScoringRules withDraws(int newDraws) {
    return new ScoringRules(seed, newDraws, decimals, unitToUnit, spread);
  }

  public ScoringRules withSpread(Spread newSpread) {
    return new ScoringRules(seed, draws, decimals, unitToUnit, newSpread);
  }
}
