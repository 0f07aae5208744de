package ovenproof.verdict;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.Measurement;

/**
 * Scores with intervals, ranks and tiers of a campaign.
 *
 * @param method id and version: {@code countertop-ovens 3.2}
 * @param version short fingerprint of everything the verdict was computed from
 * @param seed of the draws
 * @param draws number of draws
 * @param margin smallest difference in points that separates two products of this field, at equal
 *     standard errors; null when nothing can be separated (one run each)
 * @param products in published order: by score, then by name
 * @param pairs P(first better than second), for every ordered pair that could be computed
 * @param warnings sentences for the reader
 */
public record Verdict(
    String method,
    String version,
    long seed,
    int draws,
    @Nullable Double margin,
    List<ProductVerdict> products,
    List<Pair> pairs,
    List<String> warnings) {

  public Verdict {
    products = List.copyOf(products);
    pairs = List.copyOf(pairs);
    warnings = List.copyOf(warnings);
  }

  public Optional<ProductVerdict> product(String id) {
    return products.stream().filter(p -> p.id().equals(id)).findFirst();
  }

  /** Products of one tier, best first. */
  public List<ProductVerdict> tier(int tier) {
    return products.stream().filter(p -> p.tier() != null && p.tier() == tier).toList();
  }

  /** P(better) of two products, after partial pooling over the field. */
  public record Pair(String better, String worse, double probability) {}

  /**
   * A score as shown.
   *
   * @param value as displayed, or null when there is none
   * @param low lower end of the 90 % interval, or the lowest value that is possible
   * @param high upper end likewise
   * @param known what value, low and high mean
   * @param standardError of the score in points, or null when unknown
   * @param note why there is no value or no interval, in words
   */
  public record Score(
      @Nullable BigDecimal value,
      @Nullable BigDecimal low,
      @Nullable BigDecimal high,
      Known known,
      @Nullable Double standardError,
      @Nullable String note) {

    /** What the interval of a score means. */
    public enum Known {
      /** A value with its 90 % interval. */
      INTERVAL,
      /** A value without interval: one run, nothing pooled or declared. */
      VALUE_ONLY,
      /** A censored run: the value is the best that is possible. */
      AT_MOST,
      /** A censored run: the value is the least that is possible. */
      AT_LEAST,
      /** Something is missing: anything from low to high. */
      BOUNDS,
      /** Cannot do it; the method's points for that. */
      CANNOT_DO,
      /** Not asked of this product. */
      NOT_ASKED,
      /** No score: a veto, or nothing measured. */
      NONE
    }
  }

  /** Places a product may hold: 1 + products separated above … P − products separated below. */
  public record RankSet(int low, int high) {}

  /**
   * One product.
   *
   * @param rank null when unranked
   * @param probabilityBest at least so probable: with this product at the lower bound of what is
   *     not known, and the others at their upper one
   * @param probabilityBestAtMost the other way round; the same where nothing is open
   * @param tier from 1; null when unranked
   * @param tests the first level of the value tree, in the method's order
   */
  public record ProductVerdict(
      String id,
      String name,
      Score score,
      @Nullable RankSet rank,
      @Nullable Double probabilityBest,
      @Nullable Double probabilityBestAtMost,
      @Nullable Integer tier,
      List<Node> tests,
      List<GateOutcome> gates,
      List<String> missing) {
    public ProductVerdict {
      tests = List.copyOf(tests);
      gates = List.copyOf(gates);
      missing = List.copyOf(missing);
    }

    public Optional<Node> test(String testId) {
      return tests.stream().filter(t -> t.id().equals(testId)).findFirst();
    }
  }

  /**
   * A node of the value tree: a test, a group or a criterion.
   *
   * @param parts weight in whole parts
   * @param score in points 0–10
   * @param place place among the products at this node (1 = best, ties share), for tests; else null
   * @param measure id of the measure's use, for criteria
   * @param measurement the product's value of it (mean over its runs), for criteria
   * @param runs number of runs behind it
   */
  public record Node(
      String id,
      String name,
      int parts,
      Score score,
      @Nullable Integer place,
      @Nullable String measure,
      @Nullable Measurement measurement,
      int runs,
      List<Node> children) {
    public Node {
      children = List.copyOf(children);
    }
  }

  /** What a gate said. */
  public record GateOutcome(
      String id,
      String name,
      String test,
      ovenproof.method.Gate.Kind kind,
      State state,
      @Nullable Double probabilityMeets,
      String words) {

    /** What a gate can say. */
    public enum State {
      PASSED,
      FIRED,
      /** A safety veto without evidence enough. */
      NOT_SHOWN,
      /** Between 5 and 95 %. */
      HANGS_ON_THE_LIMIT,
      /** Nothing measured. */
      NOT_MEASURED
    }
  }
}
