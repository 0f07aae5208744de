package ovenproof.core.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static ovenproof.core.scoring.Cases.field;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The questions that a lead asks. */
class QuestionsTest {

  private static Cases two() {
    return field()
        .criterion("toast", 60)
        .criterion("cakes", 40)
        .runs("alder", "toast", 8, 8)
        .runs("alder", "cakes", 5, 5)
        .runs("birch", "toast", 6, 6)
        .runs("birch", "cakes", 7, 7);
  }

  @Test
  void equalAdvantagesNeedEqualWeights() {
    // Alder leads by 2·0.6 − 2·0.4; level at half and half: one tenth of all weight moves.
    Unseating.Change change = Unseating.change(two().build(), "alder", "birch");
    assertThat(change.how()).isEqualTo(Unseating.How.LINEAR_PROGRAM);
    assertThat(change.moved()).isCloseTo(0.1, within(1e-9));
    assertThat(change.after().get("toast")).isCloseTo(0.5, within(1e-9));
  }

  @Test
  void aGeometricTreeIsExactInLogarithms() {
    // (8/6)^w = (7/5)^(1−w) at w = ln 1.4 / (ln 1.4 + ln 1.3333).
    double w = Math.log(1.4) / (Math.log(1.4) + Math.log(4 / 3.0));
    Unseating.Change change =
        Unseating.change(two().combination(Combination.GEOMETRIC).build(), "alder", "birch");
    assertThat(change.how()).isEqualTo(Unseating.How.LINEAR_PROGRAM);
    assertThat(change.after().get("toast")).isCloseTo(w, within(1e-9));
  }

  @Test
  void aFloorIsSearchedAndSaidSo() {
    ValueNode mixed =
        new ValueNode.Group(
            "mixed",
            "mixed",
            30,
            Combination.FLOOR,
            List.of(
                ValueNode.Criterion.of(
                    "cakes", 1, "cakes", Cases.IDENTITY, RunAggregation.AVERAGE_THEN_SCORE)));
    ScoringCase scoringCase =
        field()
            .criterion("toast", 70)
            .node(mixed)
            .variable(Variable.pooled("cakes"))
            .runs("alder", "toast", 8, 8)
            .runs("alder", "cakes", 5, 5)
            .runs("birch", "toast", 6, 6)
            .runs("birch", "cakes", 7, 7)
            .build();
    Unseating.Change change = Unseating.change(scoringCase, "alder", "birch");
    assertThat(change.how()).isEqualTo(Unseating.How.SEARCH);
    assertThat(change.moved()).isCloseTo(0.2, within(1e-6));
  }

  @Test
  void whoIsWorseEverywhereIsNeverFirst() {
    ScoringCase scoringCase = two().runs("poor", "toast", 1, 1).runs("poor", "cakes", 2, 2).build();
    Unseating.Change change = Unseating.change(scoringCase, "alder", "poor");
    assertThat(change.how()).isEqualTo(Unseating.How.IMPOSSIBLE);
    assertThat(change.moved()).isNaN();
    assertThat(Unseating.smallest(scoringCase, "alder").orElseThrow().rival()).isEqualTo("birch");
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void theLinearProgramAgreesWithTakingFromTheWinnersBestFirst(long seed) {
    // With one balance constraint the optimum moves weight from where the winner gains most to
    // where the rival gains most, best exchange first: an independent way to the same number.
    Random random = new Random(seed);
    Cases cases = field();
    int n = 5;
    double[] parts = new double[n];
    double[] advantage = new double[n];
    for (int k = 0; k < n; k++) {
      parts[k] = 1 + random.nextInt(30);
      double a = Math.round(random.nextDouble() * 100) / 10.0;
      double b = Math.round(random.nextDouble() * 100) / 10.0;
      advantage[k] = b - a;
      cases.criterion("c" + k, (int) parts[k]).runs("a", "c" + k, a, a).runs("b", "c" + k, b, b);
    }
    double sum = Arrays.stream(parts).sum();
    double deficit = 0;
    for (int k = 0; k < n; k++) {
      deficit += parts[k] / sum * advantage[k];
    }
    String winner = deficit < 0 ? "a" : "b";
    int sign = deficit < 0 ? 1 : -1;
    Unseating.Change change =
        Unseating.change(cases.build(), winner, winner.equals("a") ? "b" : "a");
    double best = Arrays.stream(advantage).map(d -> sign * d).max().orElseThrow();
    List<Integer> order =
        java.util.stream.IntStream.range(0, n)
            .boxed()
            .sorted(Comparator.comparingDouble(k -> sign * advantage[k]))
            .toList();
    double needed = Math.abs(deficit);
    double moved = 0;
    for (int k : order) {
      double gain = best - sign * advantage[k];
      double move = gain <= 0 ? 0 : Math.min(parts[k] / sum, needed / gain);
      moved += move;
      needed -= move * gain;
    }
    if (needed > 1e-9) {
      assertThat(change.how()).isEqualTo(Unseating.How.IMPOSSIBLE);
    } else {
      assertThat(change.moved()).isCloseTo(moved, within(1e-7));
    }
  }

  @Test
  void acceptabilityMeetsTheBetaDistribution() {
    // Toast's share is Beta(30·0.6, 30·0.4); alder is first when it exceeds one half.
    double expected = 1 - org.hipparchus.special.Beta.regularizedBeta(0.5, 18, 12);
    RankAcceptability ranks = RankAcceptability.of(two().build(), 30, 20_000);
    assertThat(ranks.places().get(0).get(0))
        .isCloseTo(expected, within(4 * Math.sqrt(expected * (1 - expected) / 20_000)));
    assertThat(ranks.places())
        .allSatisfy(
            places ->
                assertThat(places.stream().mapToDouble(p -> p).sum()).isCloseTo(1, within(1e-9)));
  }

  @Test
  void whatMovedAddsUpToTheDisplayedDifference() {
    ScoringCase before = two().build();
    ScoringCase after =
        field()
            .criterion("toast", 50)
            .criterion("cakes", 50)
            .runs("alder", "toast", 8.4, 8.4)
            .runs("alder", "cakes", 4, 4.1)
            .runs("birch", "toast", 6, 6)
            .runs("birch", "cakes", 7, 7)
            .build();
    Attribution attribution = Attribution.of(before, after, "alder");
    assertThat(attribution.causes().stream().map(Attribution.Cause::what))
        .containsExactly("toast", "cakes", "method");
    double sum = attribution.causes().stream().mapToDouble(Attribution.Cause::points).sum();
    assertThat(sum)
        .isCloseTo(attribution.after().subtract(attribution.before()).doubleValue(), within(1e-12));
    assertThat(attribution.before()).hasToString("6.8");
    assertThat(attribution.after()).hasToString("6.3");
    // Toast rose, cakes fell, and weight went to the weaker of the two.
    assertThat(attribution.causes().get(0).points()).isPositive();
    assertThat(attribution.causes().get(1).points()).isNegative();
    assertThat(attribution.causes().get(2).points()).isNegative();
  }

  @Test
  void nothingChangedIsNothingMoved() {
    assertThat(Attribution.of(two().build(), two().build(), "birch").causes()).isEmpty();
  }

  @Test
  void fourTimesTheRunsHalveTheStandardError() {
    Cases cases = field().criterion("a", 1);
    cases.runs("alder", "a", 5, 6, 7).runs("birch", "a", 4.9, 5.9, 6.9);
    MoreRuns more = MoreRuns.toSplit(cases.build(), "alder", "birch", 1);
    assertThat(more.better()).isEqualTo("alder");
    double now = more.steps().get(0).standardError();
    // Three runs and one more: √(3/4).
    assertThat(more.steps().get(1).standardError() / now).isCloseTo(Math.sqrt(0.75), within(0.02));
    assertThat(more.runs()).isEqualTo(-1);
  }

  @Test
  void fewestRunsAreFoundAndEnough() {
    Cases cases = field().criterion("a", 1);
    cases.runs("alder", "a", 6.5, 7, 7.5).runs("birch", "a", 5.6, 6.1, 6.6);
    MoreRuns more = MoreRuns.toSplit(cases.build(), "birch", "alder", 1);
    assertThat(more.runs()).isBetween(1, 40);
    MoreRuns.Step enough =
        more.steps().stream().filter(s -> s.runs() == more.runs()).findFirst().orElseThrow();
    assertThat(enough.needed()).isLessThanOrEqualTo(more.gap());
    assertThat(more.steps().stream().filter(s -> s.runs() < more.runs()))
        .allSatisfy(s -> assertThat(s.needed()).isGreaterThan(more.gap()));
  }

  @Test
  void aTestThatSeparatesIsWorthMoreThanItsTwin() {
    Cases cases = field().criterion("toast", 1).criterion("twin", 1).criterion("flat", 1);
    double[] levels = {9, 7, 5, 3};
    for (int p = 0; p < levels.length; p++) {
      cases
          .runs("p" + p, "toast", levels[p], levels[p] + 0.1)
          .runs("p" + p, "twin", levels[p], levels[p] + 0.1)
          .runs("p" + p, "flat", 5, 5.1);
    }
    List<TestWorth> worth = TestWorth.of(cases.build(), Map.of("toast", 90.0), 1);
    assertThat(worth.get(0).repeats()).isEqualTo("twin");
    assertThat(worth.get(0).rankCorrelation()).isCloseTo(1, within(1e-9));
    assertThat(worth.get(0).minutes()).isEqualTo(90);
    assertThat(worth.get(1).minutes()).isNaN();
    assertThat(worth.get(2).separationsLost()).isLessThanOrEqualTo(0);
  }

  @Test
  void aRunThatDecidesIsFound() {
    Cases cases = field().criterion("a", 1);
    cases.runs("alder", "a", 6, 6.1, 6.2).runs("birch", "a", 5.9, 6, 9).runs("cedar", "a", 2, 2.1);
    List<LeaveOneOut.Outcome> outcomes = LeaveOneOut.runs(cases.build(), 1);
    assertThat(outcomes).hasSize(8);
    LeaveOneOut.Outcome lucky =
        outcomes.stream().filter(o -> o.without().equals("birch-a-3")).findFirst().orElseThrow();
    assertThat(lucky.winner()).isEqualTo(LeaveOneOut.Winner.CHANGES);
    assertThat(lucky.first()).isEqualTo("alder");
  }

  @Test
  void theFrontHoldsWhoIsNotBeatenForLess() {
    ScoringResult result =
        field()
            .criterion("a", 1)
            .runs("dear", "a", 8, 8)
            .runs("fair", "a", 7, 7)
            .runs("poor", "a", 4, 4)
            .runs("cheap", "a", 4, 4)
            .runs("unpriced", "a", 9, 9)
            .score();
    Map<String, Double> prices = Map.of("dear", 300.0, "fair", 150.0, "poor", 180.0, "cheap", 60.0);
    Map<String, PriceFront.Value> values =
        PriceFront.of(result, prices).stream()
            .collect(java.util.stream.Collectors.toMap(PriceFront.Value::product, v -> v));
    assertThat(values.get("dear").place()).isEqualTo(PriceFront.Place.ON_THE_FRONT);
    assertThat(values.get("cheap").place()).isEqualTo(PriceFront.Place.ON_THE_FRONT);
    assertThat(values.get("poor").place()).isEqualTo(PriceFront.Place.DEARER_THAN_AS_GOOD);
    assertThat(values.get("poor").beatenBy()).isEqualTo("cheap");
    assertThat(values.get("poor").tiesAt()).isEqualTo(60);
    assertThat(values.get("unpriced").place()).isEqualTo(PriceFront.Place.NOT_COMPARED);
  }

  @Test
  void aListRefusesWhatTheTiersDoNotSupport() {
    ScoringCase close =
        field()
            .criterion("a", 1)
            .runs("alder", "a", 6, 7, 8)
            .runs("birch", "a", 5.8, 6.8, 7.8)
            .build();
    SuitedTo.Result refused = SuitedTo.of(close, List.of(new SuitedTo.FirstTier("a")), 1);
    assertThat(refused.suited()).isEmpty();
    assertThat(refused.refused().get("alder")).isEqualTo("nothing is separated at a");
    ScoringCase clear =
        field().criterion("a", 1).runs("alder", "a", 8, 8.1).runs("birch", "a", 5, 5.1).build();
    assertThat(SuitedTo.of(clear, List.of(new SuitedTo.FirstTier("a")), 1).suited())
        .containsExactly("alder");
    SuitedTo.Result threshold = SuitedTo.of(clear, List.of(new SuitedTo.AtLeast("total", 5)), 1);
    assertThat(threshold.suited()).containsExactly("alder");
    assertThat(threshold.refused().get("birch")).contains("5.1 at total could be");
    assertThatThrownBy(() -> SuitedTo.of(clear, List.of(new SuitedTo.AtLeast("x", 5)), 1))
        .hasMessage("no node \"x\"");
  }
}
