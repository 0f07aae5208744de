package ovenproof.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Deviation;
import ovenproof.campaign.Entry;
import ovenproof.core.scoring.ProductScore;
import ovenproof.core.scoring.Scoring;
import ovenproof.core.scoring.ScoringCase;
import ovenproof.core.scoring.ScoringResult;
import ovenproof.input.InputException;
import ovenproof.input.NearestWord;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.measure.Measured;
import ovenproof.method.Method;

/** Scores a campaign. Stateless; the same campaign and measurements give the same verdict. */
public final class VerdictService {
  private final int threads;

  /**
   * @param threads for the draws; does not change a digit
   */
  public VerdictService(int threads) {
    this.threads = threads;
  }

  /**
   * A verdict with what it was computed from, for the questions that go on from it.
   *
   * @param scoringCase what went in
   * @param result the numbers behind the verdict
   */
  public record Scored(ScoringCase scoringCase, ScoringResult result, Verdict verdict) {}

  /**
   * What the verdict of a campaign is computed from.
   *
   * @throws InputException with every problem that keeps it from being scored
   */
  public static ScoringCase scoringCase(Campaign campaign, Measured measured) {
    return new CaseBuilder(campaign, measured).build().scoringCase();
  }

  /**
   * The verdict of a campaign.
   *
   * @throws InputException with every problem that keeps it from being scored
   */
  public Verdict verdict(Campaign campaign, Measured measured) {
    return score(campaign, measured).verdict();
  }

  /** As {@link #verdict}, with the case and the numbers. */
  public Scored score(Campaign campaign, Measured measured) {
    CaseBuilder.Built built = new CaseBuilder(campaign, measured).build();
    return score(campaign, measured, built.scoringCase(), built.warnings());
  }

  /**
   * The verdict under the weights of another reader.
   *
   * @throws InputException if the method has no such profile
   */
  public Scored score(Campaign campaign, Measured measured, String profile) {
    CaseBuilder.Built built = new CaseBuilder(campaign, measured).build();
    Map<String, Integer> parts = profile(campaign.method(), profile).parts();
    ScoringCase weighted = built.scoringCase().withParts(parts);
    return score(campaign, measured, weighted, built.warnings());
  }

  private static Method.Profile profile(Method method, String id) {
    List<String> known = method.profiles().stream().map(Method.Profile::id).toList();
    return method.profiles().stream()
        .filter(p -> p.id().equals(id))
        .findFirst()
        .orElseThrow(
            () ->
                new InputException(
                    Problem.error(
                        Place.of("method.yaml"),
                        "no profile \"" + id + "\"",
                        known.isEmpty()
                            ? "a method with profiles"
                            : "one of " + String.join(", ", known),
                        NearestWord.remedy(id, known))));
  }

  private Scored score(
      Campaign campaign, Measured measured, ScoringCase scoringCase, List<String> made) {
    ScoringResult result = Scoring.score(scoringCase, threads);
    List<String> warnings = new ArrayList<>(measured.warnings());
    warnings.addAll(made);
    warnings.addAll(result.warnings());
    for (ProductScore product : result.products()) {
      product.warnings().forEach(w -> warnings.add(product.label() + ": " + w));
    }
    warnings.addAll(specimens(campaign));
    warnings.addAll(withoutDoubtfulRuns(campaign, scoringCase, result));
    Verdict verdict =
        new VerdictAssembly(campaign, measured, scoringCase, result).verdict(warnings);
    return new Scored(scoringCase, result, verdict);
  }

  private static List<String> specimens(Campaign campaign) {
    return campaign.method().scoring().unitToUnit() == null
        ? List.of(
            "one specimen each: intervals speak of the specimens tested, not of every one that is"
                + " sold")
        : List.of();
  }

  /** Class 2 deviations are analysed with and without: says what the runs concerned decide. */
  private List<String> withoutDoubtfulRuns(
      Campaign campaign, ScoringCase scoringCase, ScoringResult with) {
    Set<String> doubtful = new TreeSet<>();
    for (Deviation deviation : Entry.effective(campaign.deviations())) {
      if (deviation.deviationClass() == 2) {
        doubtful.add(deviation.run());
      }
    }
    ScoringCase less = scoringCase;
    for (String run : doubtful) {
      less = less.withoutRun(run);
    }
    if (less.equals(scoringCase)) {
      return List.of();
    }
    ScoringResult without = Scoring.score(less, threads);
    Map<String, String> moved = new TreeMap<>();
    for (ProductScore product : with.products()) {
      ProductScore other = without.product(product.id()).orElseThrow();
      if (!Objects.equals(product.tier(), other.tier())) {
        moved.put(product.label(), tier(product) + " with them, " + tier(other) + " without");
      }
    }
    String runs = String.join(", ", doubtful);
    return List.of(
        moved.isEmpty()
            ? "runs with a class 2 deviation (" + runs + ") do not move a tier"
            : "runs with a class 2 deviation (" + runs + ") decide tiers: " + moved);
  }

  private static String tier(ProductScore product) {
    return product.tier() == null ? "unranked" : "tier " + product.tier();
  }
}
