package ovenproof.ranking;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import ovenproof.core.scoring.NodeScore;
import ovenproof.core.scoring.Scoring;
import ovenproof.core.scoring.ScoringCase;
import ovenproof.publish.figure.Scores;
import ovenproof.verdict.Verdict;
import ovenproof.verdict.VerdictService.Scored;

/**
 * Totals under a reader's own parts, answered while a slider moves: no draws, so no intervals. What
 * differs in truth is a matter of the verdict under the method's own parts.
 *
 * @param name of the product
 * @param method its total as published
 * @param yours under the other parts
 */
public record OtherParts(String name, String method, String yours) {

  /** The published order, nothing changed. */
  static List<OtherParts> asPublished(Verdict verdict) {
    return verdict.products().stream()
        .map(p -> new OtherParts(p.name(), Scores.words(p.score()), Scores.words(p.score())))
        .toList();
  }

  /** Best first. */
  static List<OtherParts> of(Scored scored, Map<String, Integer> parts) {
    ScoringCase changed = scored.scoringCase().withParts(known(scored.scoringCase(), parts));
    List<NodeScore> totals = Scoring.points(changed);
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < totals.size(); i++) {
      order.add(i);
    }
    order.sort(Comparator.comparingDouble(i -> -middle(totals.get(i))));
    return order.stream()
        .map(
            i ->
                new OtherParts(
                    changed.products().get(i).label(),
                    scored
                        .verdict()
                        .product(changed.products().get(i).id())
                        .map(p -> Scores.words(p.score()))
                        .orElse("–"),
                    words(totals.get(i))))
        .toList();
  }

  /** Tests without criteria have no node to weigh. */
  private static Map<String, Integer> known(ScoringCase scoringCase, Map<String, Integer> parts) {
    Map<String, Integer> known = new java.util.LinkedHashMap<>(parts);
    known.keySet().removeIf(id -> scoringCase.node(id).isEmpty());
    return known;
  }

  private static double middle(NodeScore total) {
    BigDecimal low = total.displayedLow();
    BigDecimal high = total.displayedHigh();
    return low == null || high == null ? -1 : low.add(high).doubleValue() / 2;
  }

  private static String words(NodeScore total) {
    BigDecimal low = total.displayedLow();
    if (low == null) {
      return "no score";
    }
    return total.bounded() ? low + " to " + total.displayedHigh() + ", open" : low.toString();
  }
}
