package ovenproof.method;

import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Quantity;

/**
 * A limit outside the weighing.
 *
 * @param measure id of a {@link MeasureUse} of the same test
 * @param atLeast lower limit, or null
 * @param atMost upper limit, or null
 * @param ceiling highest score that is left for a CEILING; null otherwise
 * @param scope what the gate acts on
 */
public record Gate(
    String id,
    String name,
    Kind kind,
    Reason reason,
    String measure,
    @Nullable Quantity atLeast,
    @Nullable Quantity atMost,
    @Nullable Double ceiling,
    Scope scope,
    @Nullable String why) {

  /** What happens when the limit is not kept. */
  public enum Kind {
    /** No score. */
    VETO,
    /** The score is at most {@code ceiling}. */
    CEILING,
    /** Said beside the score. */
    FLAG
  }

  /** A safety veto passes only at P(meets) ≥ 0.95; others act on the estimate. */
  public enum Reason {
    SAFETY,
    QUALITY
  }

  /** What the gate acts on. */
  public enum Scope {
    TEST,
    TOTAL
  }
}
