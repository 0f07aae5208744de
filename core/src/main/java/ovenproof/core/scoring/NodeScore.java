package ovenproof.core.scoring;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import ovenproof.core.statistics.Interval;

/**
 * What one node of one product is worth.
 *
 * @param parts declared weight among its siblings
 * @param share weight that it had in fact, 0–1, after reweighting
 * @param displayedLow the digits shown; null when there is no score
 * @param displayedHigh equal to {@code displayedLow} unless something is censored or missing
 * @param low unrounded; NaN when there is no score
 * @param high unrounded
 * @param interval 90 % interval, holding the displayed score; null when there is none
 * @param standardError of the score: root mean square of the drawn errors for a group, a 90 %
 *     interval's width over 2 · 1.645 for a criterion; NaN when there is no interval
 * @param note why there is no score, no interval, or one that needs a word; null when all is plain
 */
public record NodeScore(
    String id,
    String label,
    int parts,
    double share,
    State state,
    @Nullable BigDecimal displayedLow,
    @Nullable BigDecimal displayedHigh,
    double low,
    double high,
    @Nullable Interval interval,
    double standardError,
    @Nullable String note,
    List<NodeScore> children) {

  /** What a score rests on. */
  public enum State {
    /** Measured, everything below it too. */
    SCORED,
    /** Something in it is censored or missing: low and high are bounds. */
    BOUNDED,
    /** Nothing was measured: bounds from 0 to 10. */
    MISSING,
    /** Not asked; its siblings took its weight. */
    NOT_ASKED,
    /** The product cannot do it; scores what the method declares. */
    CANNOT_DO,
    /** A veto took its points. */
    VETOED
  }

  public NodeScore {
    children = List.copyOf(children);
  }

  /** Whether the node has a score or bounds. */
  public boolean scored() {
    return displayedLow != null;
  }

  /** Whether the digits shown differ between the bounds. */
  public boolean bounded() {
    return displayedLow != null
        && displayedHigh != null
        && displayedLow.compareTo(displayedHigh) != 0;
  }

  /** This node and all below it. */
  public Stream<NodeScore> all() {
    return Stream.concat(Stream.of(this), children.stream().flatMap(NodeScore::all));
  }

  public Optional<NodeScore> find(String nodeId) {
    return all().filter(n -> n.id().equals(nodeId)).findFirst();
  }

  /** Middle of the displayed bounds, for the order of a table; NaN without a score. */
  double middle() {
    return displayedLow == null || displayedHigh == null
        ? Double.NaN
        : displayedLow.add(displayedHigh).doubleValue() / 2;
  }

  NodeScore with(@Nullable Interval newInterval, double newError, List<NodeScore> newChildren) {
    return new NodeScore(
        id,
        label,
        parts,
        share,
        state,
        displayedLow,
        displayedHigh,
        low,
        high,
        newInterval,
        newError,
        note,
        newChildren);
  }
}
