package ovenproof.core.scoring;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import ovenproof.core.scoring.ValueNode.Group;

/** What becomes of a verdict without one test or one run. */
public final class LeaveOneOut {

  private LeaveOneOut() {}

  /**
   * The verdict without one thing.
   *
   * @param without the test or run that is left out
   * @param first who comes first then, by published order; empty text when nobody has a score
   * @param tiers tier before and after of the products whose tier moves ("1 → 2")
   * @param separated pairs that are separated then
   * @param winner whether the first place stays
   */
  public record Outcome(
      String without, String first, Map<String, String> tiers, int separated, Winner winner) {}

  /** Whether the first place stays. */
  public enum Winner {
    STAYS,
    CHANGES
  }

  /** Without each part of the first level of the tree that weighs. */
  public static List<Outcome> tests(ScoringCase scoringCase, int threads) {
    List<Outcome> outcomes = new ArrayList<>();
    ScoringResult all = Scoring.score(scoringCase, threads);
    if (scoringCase.root() instanceof Group root) {
      List<ValueNode> weighing = root.children().stream().filter(c -> c.parts() > 0).toList();
      for (ValueNode test : weighing) {
        if (weighing.size() > 1) {
          outcomes.add(outcome(test.id(), all, scoringCase.without(test.id()), threads));
        }
      }
    }
    return outcomes;
  }

  /** Without each run. */
  public static List<Outcome> runs(ScoringCase scoringCase, int threads) {
    Set<String> runs = new TreeSet<>();
    for (Candidate product : scoringCase.products()) {
      for (Answer answer : product.answers().values()) {
        if (answer instanceof Answer.Measured measured) {
          measured.observations().forEach(o -> runs.add(o.run()));
        }
      }
    }
    ScoringResult all = Scoring.score(scoringCase, threads);
    return runs.stream()
        .map(run -> outcome(run, all, scoringCase.withoutRun(run), threads))
        .toList();
  }

  /** Compares a changed case with the verdict it came from. */
  public static Outcome outcome(
      String without, ScoringResult all, ScoringCase changed, int threads) {
    ScoringResult result = Scoring.score(changed, threads);
    Map<String, String> tiers = new LinkedHashMap<>();
    for (ProductScore before : all.products()) {
      Integer after = result.product(before.id()).map(ProductScore::tier).orElse(null);
      if (!Objects.equals(before.tier(), after)) {
        tiers.put(before.id(), tier(before.tier()) + " → " + tier(after));
      }
    }
    String first = first(result);
    return new Outcome(
        without,
        first,
        tiers,
        separated(result),
        first.equals(first(all)) ? Winner.STAYS : Winner.CHANGES);
  }

  private static String tier(@org.jspecify.annotations.Nullable Integer tier) {
    return tier == null ? "unranked" : String.valueOf(tier);
  }

  private static String first(ScoringResult result) {
    return result.products().stream()
        .filter(p -> p.total().scored())
        .findFirst()
        .map(ProductScore::id)
        .orElse("");
  }

  /** How many pairs of products are separated. */
  static int separated(ScoringResult result) {
    return result
        .compared()
        .map(
            comparison -> {
              int separated = 0;
              for (int a = 0; a < comparison.ids().size(); a++) {
                for (int b = 0; b < comparison.ids().size(); b++) {
                  boolean pair = a != b && comparison.pairs().separation(a, b).separated();
                  separated += pair ? 1 : 0;
                }
              }
              return separated;
            })
        .orElse(0);
  }
}
