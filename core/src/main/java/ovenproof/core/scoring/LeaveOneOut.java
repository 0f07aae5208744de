package ovenproof.core.scoring;

import java.util.ArrayList;
import java.util.HashSet;
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
   * @param tiers tier before and after of the products whose tier moves ("1 → 2"); numbers shift
   *     below a boundary that goes, so {@code joined} and {@code split} say what happened
   * @param joined neighbours in the published order that are in two tiers with it and in one
   *     without
   * @param split neighbours that are in one tier with it and in two without
   * @param separated pairs that are separated then
   * @param winner whether the first place stays
   */
  public record Outcome(
      String without,
      String first,
      Map<String, String> tiers,
      List<Neighbours> joined,
      List<Neighbours> split,
      int separated,
      Winner winner) {

    /** Whether a tier boundary, a rank or the first place depends on what was left out. */
    public boolean decides() {
      return !tiers.isEmpty() || !joined.isEmpty() || !split.isEmpty() || winner == Winner.CHANGES;
    }
  }

  /** What became of a tier boundary. */
  private enum Boundary {
    GONE,
    NEW
  }

  /** Two products, one below the other. */
  public record Neighbours(String above, String below) {}

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

  /** Without each run. Facts about a product are no runs. */
  public static List<Outcome> runs(ScoringCase scoringCase, int threads) {
    Set<String> runs = new TreeSet<>();
    Set<String> facts = new HashSet<>();
    for (Variable variable : scoringCase.variables()) {
      if (variable.repeatability() == Variable.Repeatability.EXACT) {
        facts.add(variable.id());
      }
    }
    for (Candidate product : scoringCase.products()) {
      for (Map.Entry<String, Answer> answer : product.answers().entrySet()) {
        if (answer.getValue() instanceof Answer.Measured measured
            && !facts.contains(answer.getKey())) {
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
        boundaries(all, result, Boundary.GONE),
        boundaries(all, result, Boundary.NEW),
        separated(result),
        first.equals(first(all)) ? Winner.STAYS : Winner.CHANGES);
  }

  private static List<Neighbours> boundaries(
      ScoringResult all, ScoringResult result, Boundary kind) {
    boolean gone = kind == Boundary.GONE;
    List<Neighbours> found = new ArrayList<>();
    List<ProductScore> ranked = all.products().stream().filter(p -> p.tier() != null).toList();
    for (int i = 1; i < ranked.size(); i++) {
      String above = ranked.get(i - 1).id();
      String below = ranked.get(i).id();
      Integer tierAbove = result.product(above).map(ProductScore::tier).orElse(null);
      Integer tierBelow = result.product(below).map(ProductScore::tier).orElse(null);
      boolean before = !Objects.equals(ranked.get(i - 1).tier(), ranked.get(i).tier());
      boolean after = !Objects.equals(tierAbove, tierBelow);
      if (tierAbove != null && tierBelow != null && before == gone && after != gone) {
        found.add(new Neighbours(above, below));
      }
    }
    return found;
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
