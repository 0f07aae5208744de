package ovenproof.core.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static ovenproof.core.scoring.Cases.field;
import static ovenproof.core.scoring.Cases.product;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import ovenproof.core.measure.Component;
import ovenproof.core.scoring.ProductScore.Standing;
import ovenproof.core.scoring.ValueNode.Criterion;
import ovenproof.core.scoring.ValueNode.Group;

class ScoringTest {

  private static String shown(ProductScore product) {
    NodeScore total = product.total();
    return total.bounded()
        ? total.displayedLow() + "…" + total.displayedHigh()
        : String.valueOf(total.displayedLow());
  }

  @Test
  void offsetsOfMinusSixZeroAndSixAreTenOrSix() {
    ValueCurve window = ValueCurve.window(-10, 0, 0, 10);
    ScoringResult scoredFirst =
        field()
            .criterion("offset", 1, window, RunAggregation.SCORE_THEN_AVERAGE)
            .runs("alder", "offset", -6, 0, 6)
            .score();
    ScoringResult averagedFirst =
        field()
            .criterion("offset", 1, window, RunAggregation.AVERAGE_THEN_SCORE)
            .runs("alder", "offset", -6, 0, 6)
            .score();
    assertThat(shown(product(scoredFirst, "alder"))).isEqualTo("6.0");
    assertThat(shown(product(averagedFirst, "alder"))).isEqualTo("10.0");
  }

  @Test
  void theTotalFollowsFromTheDisplayedSubScores() {
    // Hidden digits 6.64 and 7.14 give 6.89; the displayed 6.6 and 7.1 give 6.85, which is 6.9.
    ScoringResult result =
        field()
            .criterion("a", 1)
            .criterion("b", 1)
            .runs("alder", "a", 6.64, 6.64)
            .runs("alder", "b", 7.14, 7.14)
            .runs("birch", "a", 6.55, 6.55)
            .runs("birch", "b", 6.55, 6.55)
            .score();
    NodeScore total = product(result, "alder").total();
    assertThat(total.displayedLow()).hasToString("6.9");
    assertThat(total.low()).isCloseTo(6.89, within(1e-12));
    assertThat(product(result, "birch").total().displayedLow()).hasToString("6.6");
  }

  @Test
  void everyIntervalHoldsItsScore() {
    ScoringResult result = threeCriteria().score();
    for (ProductScore product : result.products()) {
      product
          .total()
          .all()
          .filter(NodeScore::scored)
          .forEach(
              node -> {
                assertThat(node.interval()).isNotNull();
                assertThat(node.interval().contains(node.low())).isTrue();
                assertThat(node.interval().contains(node.high())).isTrue();
              });
    }
  }

  private static Cases threeCriteria() {
    return field()
        .criterion("a", 2)
        .criterion("b", 3, ValueCurve.window(0, 5, 5, 10), RunAggregation.SCORE_THEN_AVERAGE)
        .criterion(
            "c",
            1,
            ValueCurve.steps(0, new double[] {3, 6}, new double[] {5, 10}),
            RunAggregation.SCORE_THEN_AVERAGE)
        .runs("alder", "a", 6, 7, 8)
        .runs("alder", "b", 4, 5, 6)
        .runs("alder", "c", 5, 7, 6)
        .runs("birch", "a", 3, 4, 4)
        .runs("birch", "b", 5, 5, 5.5)
        .runs("birch", "c", 2, 2, 4);
  }

  @Test
  void whatIsMissingGivesBounds() {
    // Bounds [Σ w·v, Σ w·v + 10·Σ w missing]: 3/4·8 = 6.0 and 6.0 + 2.5.
    ScoringResult result =
        field()
            .criterion("a", 3)
            .criterion("b", 1)
            .runs("alder", "a", 8, 8)
            .runs("birch", "a", 7, 7)
            .runs("birch", "b", 4, 4)
            .answer("alder", "b", new Answer.Missing("the tray broke"))
            .score();
    ProductScore alder = product(result, "alder");
    assertThat(shown(alder)).isEqualTo("6.0…8.5");
    assertThat(alder.missing()).containsExactly("b: missing: the tray broke");
    assertThat(alder.total().state()).isEqualTo(NodeScore.State.BOUNDED);
    assertThat(alder.total().interval().contains(6)).isTrue();
    assertThat(alder.total().interval().contains(8.5)).isTrue();
  }

  @Test
  void aVariableWithoutAnswerIsMissingNeverZero() {
    ScoringResult result =
        field().criterion("a", 1).criterion("b", 1).runs("alder", "a", 8, 8).score();
    assertThat(shown(product(result, "alder"))).isEqualTo("4.0…9.0");
    assertThat(result.warnings()).contains("b: no product has a measurement");
  }

  @Test
  void whatWasNotAskedLeavesItsWeightToItsSiblings() {
    ScoringResult result =
        field()
            .criterion("a", 3)
            .criterion("b", 1)
            .runs("alder", "a", 8, 8)
            .answer("alder", "b", new Answer.NotAsked("it has no grill"))
            .runs("birch", "a", 7, 7)
            .runs("birch", "b", 4, 4)
            .score();
    ProductScore alder = product(result, "alder");
    assertThat(shown(alder)).isEqualTo("8.0");
    assertThat(alder.total().find("b").orElseThrow().state()).isEqualTo(NodeScore.State.NOT_ASKED);
    assertThat(alder.total().find("a").orElseThrow().share()).isEqualTo(1);
    assertThat(alder.missing()).isEmpty();
  }

  @Test
  void whatWasNotAskedAndIsNotReweightedStaysOpen() {
    Criterion strict =
        new Criterion(
            "b",
            "b",
            1,
            "b",
            Cases.IDENTITY,
            RunAggregation.AVERAGE_THEN_SCORE,
            0,
            Criterion.NotAsked.BOUNDS);
    ScoringResult result =
        field()
            .criterion("a", 1)
            .criterion(strict, Variable.pooled("b"))
            .runs("alder", "a", 8, 8)
            .answer("alder", "b", new Answer.NotAsked("it has no grill"))
            .score();
    assertThat(shown(product(result, "alder"))).isEqualTo("4.0…9.0");
  }

  @Test
  void whatAProductCannotDoScoresWhatTheMethodDeclares() {
    ScoringResult result =
        field()
            .criterion("a", 3)
            .criterion("b", 1)
            .runs("alder", "a", 8, 8)
            .answer("alder", "b", new Answer.CannotDo("the tray does not fit"))
            .score();
    assertThat(shown(product(result, "alder"))).isEqualTo("6.0");
    assertThat(product(result, "alder").missing()).isEmpty();
  }

  @Test
  void theCapIsABoundNotAValue() {
    ValueCurve time = ValueCurve.lines(new double[] {10, 60}, new double[] {10, 0});
    ScoringResult result =
        field()
            .criterion("minutes", 1, time, RunAggregation.AVERAGE_THEN_SCORE)
            .answer(
                "weak",
                "minutes",
                Answer.Measured.of(Observation.above("w1", 45), Observation.above("w2", 45)))
            .runs("fast", "minutes", 20, 22)
            .score();
    // At 45 min 3.0 points, at any later time down to 0.
    assertThat(shown(product(result, "weak"))).isEqualTo("0.0…3.0");
    assertThat(product(result, "weak").tier()).isEqualTo(2);
  }

  @Test
  void aCapAtTheWorstAnchorLeavesNothingOpen() {
    ValueCurve time = ValueCurve.lines(new double[] {10, 45}, new double[] {10, 0});
    ScoringResult result =
        field()
            .criterion("minutes", 1, time, RunAggregation.AVERAGE_THEN_SCORE)
            .answer("weak", "minutes", Answer.Measured.of(Observation.above("w1", 45)))
            .runs("fast", "minutes", 20, 22)
            .score();
    assertThat(shown(product(result, "weak"))).isEqualTo("0.0");
  }

  @Test
  void censoredRunsAddNothingToThePooledDeviation() {
    ScoringResult result =
        field()
            .criterion("minutes", 1)
            .answer(
                "weak",
                "minutes",
                Answer.Measured.of(
                    Observation.of("w1", 5), Observation.of("w2", 7), Observation.above("w3", 45)))
            .runs("fast", "minutes", 1, 3)
            .score();
    assertThat(result.spreads().get("minutes").degreesOfFreedom()).isEqualTo(2);
    assertThat(result.spreads().get("minutes").deviation()).isCloseTo(Math.sqrt(2), within(1e-12));
  }

  @Test
  void oneRunOfEverythingHasNoIntervalAndNoRank() {
    ScoringResult result =
        field().criterion("a", 1).runs("alder", "a", 8).runs("birch", "a", 4).score();
    ProductScore alder = product(result, "alder");
    assertThat(shown(alder)).isEqualTo("8.0");
    assertThat(alder.standing()).isEqualTo(Standing.NO_INTERVAL);
    assertThat(alder.total().interval()).isNull();
    assertThat(alder.rank()).isNull();
    assertThat(alder.why()).contains("one run only of a");
    assertThat(result.compared()).isEmpty();
  }

  @Test
  void oneRunUsesWhatTheFieldOrTheMethodSaysOfRuns() {
    ScoringResult pooled =
        field().criterion("a", 1).runs("alder", "a", 8).runs("birch", "a", 4, 5).score();
    assertThat(product(pooled, "alder").standing()).isEqualTo(Standing.RANKED);
    ScoringResult declared =
        field()
            .criterion(
                Criterion.of("a", 1, "a", Cases.IDENTITY, RunAggregation.AVERAGE_THEN_SCORE),
                Variable.declared("a", 0.5))
            .runs("alder", "a", 6)
            .runs("birch", "a", 4)
            .score();
    // 6 ± 1.645·0.5 and 4 ± 1.645·0.5.
    assertThat(product(declared, "alder").total().find("a").orElseThrow().interval().low())
        .isCloseTo(6 - 1.644854 * 0.5, within(1e-5));
    assertThat(product(declared, "birch").tier()).isEqualTo(2);
  }

  @Test
  void aSharedCalibrationErrorWidensScoresAndCancelsInComparisons() {
    Component probe = Component.shared("probe:P3@2026-03-02", 1.5);
    ScoringResult shared = twoWithComponents(probe, probe);
    ScoringResult apart =
        twoWithComponents(Component.shared("probe:P3", 1.5), Component.shared("probe:P4", 1.5));
    assertThat(shared.compared().orElseThrow().pairs().standardError(0, 1)).isLessThan(0.2);
    assertThat(apart.compared().orElseThrow().pairs().standardError(0, 1)).isGreaterThan(2);
    double width = product(shared, "alder").total().interval().width();
    assertThat(width).isCloseTo(product(apart, "alder").total().interval().width(), within(0.2));
    assertThat(width).isGreaterThan(4.5);
    assertThat(product(shared, "birch").tier()).isEqualTo(2);
    assertThat(product(apart, "birch").tier()).isEqualTo(1);
  }

  private static ScoringResult twoWithComponents(Component first, Component second) {
    return field()
        .criterion("a", 1)
        .answer("alder", "a", runs("alder", first, 5.9, 6.0, 6.1))
        .answer("birch", "a", runs("birch", second, 4.9, 5.0, 5.1))
        .score();
  }

  private static Answer runs(String product, Component component, double... values) {
    return new Answer.Measured(
        java.util.Arrays.stream(values)
            .mapToObj(v -> Observation.of(product + v, v, component))
            .toList());
  }

  @Test
  void componentsOfTheRunAreNeverAddedToTheDeviationBetweenRuns() {
    ScoringResult with =
        field()
            .criterion("a", 1)
            .answer("alder", "a", runs("alder", Component.run(3), 5.9, 6.0, 6.1))
            .runs("birch", "a", 4.9, 5.0, 5.1)
            .score();
    assertThat(product(with, "alder").total().interval().width()).isLessThan(0.5);
  }

  private static Gate gate(Gate.Kind kind, Gate.Reason reason, double atMost, double ceiling) {
    return new Gate(
        "skin",
        "Skin temperature",
        kind,
        reason,
        Gate.Runs.MEAN,
        "skin",
        Double.NEGATIVE_INFINITY,
        atMost,
        ceiling,
        "°C",
        "total");
  }

  private static ScoringResult skin(Gate gate, double value, double deviation) {
    return field()
        .criterion("a", 1)
        .variable(Variable.declared("skin", deviation))
        .gate(gate)
        .runs("alder", "a", 7.9, 8.1)
        .runs("birch", "a", 5.9, 6.1)
        .runs("alder", "skin", value)
        .runs("birch", "skin", 60)
        .score();
  }

  @Test
  void eightyEightPlusMinusTwoAgainstNinetyIsExceededWithSixteenPercent() {
    // Φ(−1) = 0.1587.
    ScoringResult result = skin(gate(Gate.Kind.CEILING, Gate.Reason.QUALITY, 90, 5), 88, 2);
    GateFinding finding = product(result, "alder").gates().get(0);
    assertThat(finding.probability()).isCloseTo(1 - 0.158655, within(1e-5));
    assertThat(finding.hangs()).isEqualTo(GateFinding.Hangs.ON_THE_LIMIT);
    assertThat(finding.state()).isEqualTo(GateFinding.State.PASSED);
    assertThat(finding.why())
        .isEqualTo("88 ± 2 °C against at most 90 °C: P(kept) = 84 %, hangs on the limit");
    // It acts within each draw: the interval reaches down to the ceiling.
    assertThat(product(result, "alder").total().interval().low()).isEqualTo(5);
    assertThat(shown(product(result, "alder"))).isEqualTo("8.0");
  }

  @Test
  void aCeilingHoldsTheTotalDown() {
    ScoringResult result = skin(gate(Gate.Kind.CEILING, Gate.Reason.QUALITY, 90, 5), 99, 2);
    assertThat(shown(product(result, "alder"))).isEqualTo("5.0");
    assertThat(product(result, "alder").gates().get(0).state()).isEqualTo(GateFinding.State.FIRED);
    assertThat(result.products().get(0).id()).isEqualTo("birch");
  }

  @Test
  void aFlagOnlySays() {
    ScoringResult result = skin(gate(Gate.Kind.FLAG, Gate.Reason.QUALITY, 90, Double.NaN), 99, 2);
    assertThat(shown(product(result, "alder"))).isEqualTo("8.0");
    assertThat(product(result, "alder").gates().get(0).acts()).isTrue();
  }

  @Test
  void aSafetyVetoPassesOnlyWhenShown() {
    Gate veto = gate(Gate.Kind.VETO, Gate.Reason.SAFETY, 90, Double.NaN);
    // P(kept) = Φ(1.645) = 0.95 at 1.645 deviations below the limit.
    assertThat(product(skin(veto, 90 - 2 * 1.645, 2), "alder").standing())
        .isEqualTo(Standing.RANKED);
    ProductScore notShown = product(skin(veto, 90 - 2 * 1.64, 2), "alder");
    assertThat(notShown.standing()).isEqualTo(Standing.VETOED);
    assertThat(notShown.gates().get(0).state()).isEqualTo(GateFinding.State.NOT_SHOWN);
    assertThat(notShown.total().displayedLow()).isNull();
    assertThat(notShown.rank()).isNull();
    assertThat(product(skin(veto, 95, 2), "alder").gates().get(0).state())
        .isEqualTo(GateFinding.State.FIRED);
  }

  @Test
  void aSafetyVetoWithoutMeasurementIsNotShown() {
    Gate veto = gate(Gate.Kind.VETO, Gate.Reason.SAFETY, 90, Double.NaN);
    ScoringResult result =
        field()
            .criterion("a", 1)
            .variable(Variable.pooled("skin"))
            .gate(veto)
            .runs("alder", "a", 7.9, 8.1)
            .score();
    assertThat(product(result, "alder").standing()).isEqualTo(Standing.VETOED);
    assertThat(product(result, "alder").why()).contains("nothing was measured");
  }

  @Test
  void everyRunMustKeepASafetyLimit() {
    Gate floor =
        new Gate(
            "core",
            "Core temperature",
            Gate.Kind.VETO,
            Gate.Reason.SAFETY,
            Gate.Runs.EVERY,
            "core",
            74,
            Double.POSITIVE_INFINITY,
            Double.NaN,
            "°C",
            "total");
    ScoringResult result =
        field()
            .criterion("a", 1)
            .variable(Variable.pooled("core"))
            .gate(floor)
            .runs("alder", "a", 7.9, 8.1)
            .runs("birch", "a", 5.9, 6.1)
            .answer("alder", "core", runs("alder", Component.run(0.5), 80, 72))
            .answer("birch", "core", runs("birch", Component.run(0.5), 78, 76))
            .score();
    assertThat(product(result, "alder").standing()).isEqualTo(Standing.VETOED);
    assertThat(product(result, "birch").standing()).isEqualTo(Standing.RANKED);
    assertThat(product(result, "birch").rank().low()).isEqualTo(1);
  }

  @Test
  void aGroupOfGroupsIsRoundedLevelByLevel() {
    Group inner =
        new Group(
            "inner",
            "inner",
            1,
            Combination.ARITHMETIC,
            List.of(
                Criterion.of("a", 1, "a", Cases.IDENTITY, RunAggregation.AVERAGE_THEN_SCORE),
                Criterion.of("b", 1, "b", Cases.IDENTITY, RunAggregation.AVERAGE_THEN_SCORE)));
    ScoringResult result =
        field()
            .node(inner)
            .variable(Variable.exact("a"))
            .variable(Variable.exact("b"))
            .criterion(
                Criterion.of("c", 1, "c", Cases.IDENTITY, RunAggregation.AVERAGE_THEN_SCORE),
                Variable.exact("c"))
            .runs("alder", "a", 7.0)
            .runs("alder", "b", 7.1)
            .runs("alder", "c", 6.0)
            .score();
    // inner = 7.05 → 7.1; total = (7.1 + 6.0)/2 = 6.55 → 6.6; from hidden digits it would be 6.5.
    assertThat(product(result, "alder").total().find("inner").orElseThrow().displayedLow())
        .hasToString("7.1");
    assertThat(shown(product(result, "alder"))).isEqualTo("6.6");
  }

  @Test
  void threadsDoNotChangeADigit() {
    ScoringCase large = threeCriteria().rules(ScoringRules.of("threads")).build();
    assertThat(Scoring.score(large, 2))
        .usingRecursiveComparison()
        .isEqualTo(Scoring.score(large, 1));
    assertThat(Scoring.score(large, 5))
        .usingRecursiveComparison()
        .isEqualTo(Scoring.score(large, 2));
  }

  @Test
  void aProductThatJoinsDoesNotMoveTheScoresOfOthers() {
    ScoringResult two = threeCriteria().score();
    ScoringResult three =
        threeCriteria().runs("cedar", "a", 9, 9, 9).runs("cedar", "b", 5, 5, 5).score();
    assertThat(product(three, "alder").total().displayedLow())
        .isEqualTo(product(two, "alder").total().displayedLow());
  }

  @Test
  void identicalProductsShareTierRankAndProbability() {
    ScoringResult result =
        field()
            .criterion("a", 1)
            .runs("alder", "a", 5, 6, 7)
            .runs("birch", "a", 5, 6, 7)
            .runs("cedar", "a", 5, 6, 7)
            .score();
    assertThat(result.products()).allSatisfy(p -> assertThat(p.tier()).isEqualTo(1));
    assertThat(result.products()).allSatisfy(p -> assertThat(p.rank()).hasToString("1–3"));
    assertThat(result.products().stream().map(ProductScore::id))
        .containsExactly("alder", "birch", "cedar");
  }

  @Test
  void unequalSpreadsAreSaid() {
    ScoringResult result =
        field()
            .criterion("a", 1)
            .runs("alder", "a", 5.0, 5.1, 5.2)
            .runs("birch", "a", 6.0, 6.1, 6.2)
            .runs("cedar", "a", 7.0, 7.1, 7.2)
            .runs("wild", "a", 1, 5, 9)
            .score();
    assertThat(result.warnings()).anyMatch(w -> w.contains("the runs of wild spread more"));
  }

  @Test
  void aShrunkenSpreadGivesTheWildOneAWiderInterval() {
    Cases cases = field().criterion("a", 1);
    for (int p = 0; p < 8; p++) {
      cases.runs("p" + p, "a", 5 + p * 0.1, 5.1 + p * 0.1, 5.2 + p * 0.1);
    }
    cases.runs("wild", "a", 4, 5, 6).runs("tame", "a", 5, 5.02, 5.04);
    ScoringRules rules = ScoringRules.of("s").withDraws(4000);
    ScoringResult pooled = cases.rules(rules).score();
    ScoringResult shrunken = cases.rules(rules.withSpread(ScoringRules.Spread.SHRUNKEN)).score();
    assertThat(product(shrunken, "wild").total().interval().width())
        .isGreaterThan(1.5 * product(pooled, "wild").total().interval().width());
    assertThat(product(shrunken, "tame").total().interval().width())
        .isLessThan(product(pooled, "tame").total().interval().width());
  }

  @Test
  void allProblemsAreSaidAtOnce() {
    Group empty = new Group("nothing", "nothing", 1, Combination.ARITHMETIC, List.of());
    ScoringCase broken =
        field()
            .node(empty)
            .node(
                Criterion.of(
                    "x", 0, "unmeasured", Cases.IDENTITY, RunAggregation.AVERAGE_THEN_SCORE))
            .gate(gate(Gate.Kind.FLAG, Gate.Reason.QUALITY, 90, Double.NaN))
            .build();
    assertThatThrownBy(() -> Scoring.score(broken, 1))
        .isInstanceOfSatisfying(
            InvalidCaseException.class,
            e ->
                assertThat(e.problems().stream().map(CaseProblem::place))
                    .contains("field", "nothing", "x", "gate skin"))
        .hasMessageContaining("weights that sum to nothing")
        .hasMessageContaining("which nothing measures");
  }

  @Test
  void otherWeightsAndFewerTestsAreOtherCases() {
    ScoringCase base = threeCriteria().build();
    assertThat(Scoring.points(base.withParts(Map.of("b", 0, "c", 0))).get(0).displayedLow())
        .hasToString("7.0");
    assertThat(Scoring.points(base.without("b")).get(0).find("b")).isEmpty();
    assertThat(Scoring.points(base.withoutRun("alder-a-1")).get(0).find("a").orElseThrow().low())
        .isCloseTo(7.5, within(1e-12));
    assertThat(base.at("b").root().id()).isEqualTo("b");
    assertThat(Scoring.score(base.at("b"), 1).products()).hasSize(2);
  }
}
