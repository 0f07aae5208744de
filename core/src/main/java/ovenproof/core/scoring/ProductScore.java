package ovenproof.core.scoring;

import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.core.ranking.RankSet;

/**
 * A product in the verdict.
 *
 * @param total the root of its value tree
 * @param rank places it may hold; null unless it is ranked
 * @param tier from 1; null unless it is ranked
 * @param bestLow P(best) at its lower bound; null unless it is ranked
 * @param bestHigh P(best) at its upper bound; equal to {@code bestLow} where nothing is bounded
 * @param missing what was asked and not measured, with the reason
 * @param standing whether it is ranked, and {@code why} not
 * @param warnings about this product's score
 */
public record ProductScore(
    String id,
    String label,
    NodeScore total,
    Standing standing,
    @Nullable String why,
    @Nullable RankSet rank,
    @Nullable Integer tier,
    @Nullable Double bestLow,
    @Nullable Double bestHigh,
    List<GateFinding> gates,
    List<String> missing,
    List<String> warnings) {

  /** Where a product stands. */
  public enum Standing {
    RANKED,
    /** Scored without an interval: nothing says how runs differ. */
    NO_INTERVAL,
    /** A veto on the total: no score, no rank. */
    VETOED,
    /** Nothing was asked of it. */
    NOT_SCORED
  }

  public ProductScore {
    gates = List.copyOf(gates);
    missing = List.copyOf(missing);
    warnings = List.copyOf(warnings);
  }
}
