package ovenproof.core.ranking;

import java.util.List;

/**
 * The field compared. Indices follow {@code ids}, the published order.
 *
 * @param margin the one margin
 * @param tiers tier of each product, from 1
 * @param ranks rank set of each
 * @param bestLow P(best) with the product at its lower bound and the others at their upper ones
 * @param bestHigh P(best) the other way round; equal to {@code bestLow} where nothing is bounded
 * @param pairs every pair
 * @param shrinkage how far probabilities were pulled towards the field, mean over draws: 0 not at
 *     all, 1 entirely
 */
public record Comparison(
    List<String> ids,
    Margin margin,
    List<Integer> tiers,
    List<RankSet> ranks,
    List<Double> bestLow,
    List<Double> bestHigh,
    Pairs pairs,
    double shrinkage) {

  public Comparison {
    ids = List.copyOf(ids);
    tiers = List.copyOf(tiers);
    ranks = List.copyOf(ranks);
    bestLow = List.copyOf(bestLow);
    bestHigh = List.copyOf(bestHigh);
  }

  /** Highest tier number, which is the number of tiers. */
  public int tierCount() {
    return tiers.stream().mapToInt(Integer::intValue).max().orElse(0);
  }
}
