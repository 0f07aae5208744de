package ovenproof.core.scoring;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import ovenproof.core.statistics.Interval;

/**
 * "Suited to …" lists by declared rules. A list refuses what the numbers do not support: the first
 * tier at a node instead of its highest digit, a score whose whole interval reaches the threshold
 * instead of its estimate.
 */
public final class SuitedTo {

  private SuitedTo() {}

  /** One condition. */
  public sealed interface Condition {
    String node();
  }

  /** In the first tier at a node of the tree, of at least two tiers. */
  public record FirstTier(String node) implements Condition {}

  /** At least so many points at a node, with 95 % confidence. */
  public record AtLeast(String node, double points) implements Condition {}

  /** No gate acts on the product; {@code node} is the root. */
  public record NoGate(String node) implements Condition {}

  /**
   * Who is on the list, and why the others are not.
   *
   * @param suited ids in published order
   * @param refused reason by id
   */
  public record Result(List<String> suited, Map<String, String> refused) {}

  /**
   * Applies all conditions.
   *
   * @throws IllegalArgumentException if a condition names an unknown node
   */
  public static Result of(ScoringCase scoringCase, List<Condition> conditions, int threads) {
    Map<String, ScoringResult> results = new LinkedHashMap<>();
    ScoringResult total = Scoring.score(scoringCase, threads);
    for (Condition condition : conditions) {
      if (condition instanceof FirstTier tier) {
        results.computeIfAbsent(tier.node(), node -> Scoring.score(scoringCase.at(node), threads));
      } else if (scoringCase.node(condition.node()).isEmpty()) {
        throw new IllegalArgumentException("no node \"" + condition.node() + "\"");
      }
    }
    List<String> suited = new ArrayList<>();
    Map<String, String> refused = new LinkedHashMap<>();
    for (ProductScore product : total.products()) {
      List<String> reasons = new ArrayList<>();
      for (Condition condition : conditions) {
        String reason = reason(condition, product, results);
        if (!reason.isEmpty()) {
          reasons.add(reason);
        }
      }
      if (reasons.isEmpty()) {
        suited.add(product.id());
      } else {
        refused.put(product.id(), String.join("; ", reasons));
      }
    }
    return new Result(List.copyOf(suited), refused);
  }

  /** Empty when the condition holds. */
  private static String reason(
      Condition condition, ProductScore product, Map<String, ScoringResult> results) {
    if (condition instanceof NoGate) {
      return product.gates().stream()
          .filter(GateFinding::acts)
          .findFirst()
          .map(g -> g.gate().label() + ": " + g.why())
          .orElse("");
    }
    if (condition instanceof AtLeast atLeast) {
      return threshold(atLeast, product);
    }
    ScoringResult result = results.get(condition.node());
    if (result == null) {
      return "not compared at " + condition.node();
    }
    boolean split = result.compared().map(c -> c.tierCount() > 1).orElse(false);
    if (!split) {
      return "nothing is separated at " + condition.node();
    }
    Integer tier = result.product(product.id()).map(ProductScore::tier).orElse(null);
    return tier != null && tier == 1
        ? ""
        : "not in the first tier at " + condition.node() + (tier == null ? "" : ": tier " + tier);
  }

  private static String threshold(AtLeast atLeast, ProductScore product) {
    NodeScore node = product.total().find(atLeast.node()).orElse(null);
    BigDecimal shown = node == null ? null : node.displayedLow();
    if (node == null || shown == null) {
      return "no score at " + atLeast.node();
    }
    Interval interval = node.interval();
    if (interval == null) {
      return shown + " at " + atLeast.node() + ", without interval";
    }
    return interval.low() >= atLeast.points()
        ? ""
        : String.format(
            java.util.Locale.ROOT, "%s at %s could be %.1f", shown, atLeast.node(), interval.low());
  }
}
