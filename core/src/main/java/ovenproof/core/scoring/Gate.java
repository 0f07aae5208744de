package ovenproof.core.scoring;

/**
 * A limit outside the weighing.
 *
 * @param variable id of the variable that is held against the limit
 * @param atLeast lower limit; −∞ for none
 * @param atMost upper limit; ∞ for none
 * @param ceiling highest score left when the limit is not kept, for CEILING; else NaN
 * @param unit symbol of the variable's unit for sentences; empty for a plain number
 * @param node id of the node it acts on
 */
public record Gate(
    String id,
    String label,
    Kind kind,
    Reason reason,
    Runs runs,
    String variable,
    double atLeast,
    double atMost,
    double ceiling,
    String unit,
    String node) {

  /** What happens when the limit is not kept. */
  public enum Kind {
    /** No score, no rank. */
    VETO,
    /** The node's score is at most the ceiling. */
    CEILING,
    /** Said beside the score, nothing else. */
    FLAG
  }

  /** Why there is a limit. */
  public enum Reason {
    /** A veto passes only when it is shown to: P(meets) ≥ 0.95. */
    SAFETY,
    /** Acts on the estimate, and within each draw. */
    QUALITY
  }

  /** What must keep the limit. */
  public enum Runs {
    /** The mean of the runs. */
    MEAN,
    /** Every single run, within its own uncertainty. */
    EVERY
  }

  public Gate {
    if (!(atLeast <= atMost)) {
      throw new IllegalArgumentException(
          id + ": the lower limit must not exceed the upper, found " + atLeast + ", " + atMost);
    }
    if (kind == Kind.CEILING && !(ceiling >= 0 && ceiling <= ValueCurve.BEST)) {
      throw new IllegalArgumentException(id + ": ceiling must lie in 0 … 10, found " + ceiling);
    }
  }

  boolean meets(double value) {
    return value >= atLeast && value <= atMost;
  }
}
