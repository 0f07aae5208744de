package ovenproof.core.scoring;

/**
 * What a gate did to a product.
 *
 * @param probability P(limit kept); a range where measurements are censored or missing
 * @param probabilityHigh upper end of that range; equal to {@code probability} otherwise
 * @param why in a sentence: estimate, limit, probability
 */
public record GateFinding(
    Gate gate, State state, Hangs hangs, double probability, double probabilityHigh, String why) {

  /** Whether the limit is kept. */
  public enum State {
    /** Kept: the gate did nothing. */
    PASSED,
    /** Not kept: the veto, ceiling or flag acts. */
    FIRED,
    /** A safety veto whose limit is not shown to be kept; acts like FIRED. */
    NOT_SHOWN,
    /** Nothing was measured to hold against the limit. */
    UNKNOWN
  }

  /** Whether the measurement's uncertainty could turn the finding. */
  public enum Hangs {
    /** P between 0.05 and 0.95: "hangs on the limit". */
    ON_THE_LIMIT,
    CLEAR
  }

  /** Whether the gate acts on the product. */
  public boolean acts() {
    return state == State.FIRED || state == State.NOT_SHOWN;
  }
}
