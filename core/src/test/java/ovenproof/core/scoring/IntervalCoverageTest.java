package ovenproof.core.scoring;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import ovenproof.core.measure.Component;
import ovenproof.core.statistics.Distributions;

/**
 * How often 90 % intervals hold the truth. Six products, three runs each, one probe whose
 * calibration error all share. What is true is the score of the true mean (average, then score) or
 * the mean score of many runs (score, then average).
 */
class IntervalCoverageTest {
  private static final int PRODUCTS = 6;

  /** What is scored. */
  enum Situation {
    /** Straight curve, averaged first. */
    STRAIGHT(RunAggregation.AVERAGE_THEN_SCORE, 0.87, 0.93),
    /** Straight curve, scored first. */
    STRAIGHT_SCORED_FIRST(RunAggregation.SCORE_THEN_AVERAGE, 0.87, 0.93),
    /** On the peak of a window, averaged first: the image over-covers. */
    PEAK(RunAggregation.AVERAGE_THEN_SCORE, 0.87, 1),
    /**
     * On the peak of a window, runs scored first: the interval allows for the deviation's own
     * uncertainty and over-covers.
     */
    PEAK_SCORED_FIRST(RunAggregation.SCORE_THEN_AVERAGE, 0.87, 1);

    private final RunAggregation runs;
    private final double least;
    private final double most;

    Situation(RunAggregation runs, double least, double most) {
      this.runs = runs;
      this.least = least;
      this.most = most;
    }

    private boolean peak() {
      return this == PEAK || this == PEAK_SCORED_FIRST;
    }

    private ValueCurve curve() {
      return peak()
          ? ValueCurve.window(-20, 0, 0, 20)
          : ValueCurve.lines(new double[] {-20, 20}, new double[] {0, 10});
    }
  }

  @ParameterizedTest
  @EnumSource(Situation.class)
  void intervalsCoverWithinTheBinomialLimits(Situation situation) {
    int simulations = 300;
    int held = held(situation, simulations);
    report(situation, held, simulations);
    double atMostSo = 1 - Distributions.binomialUpperTail(held + 1, simulations, 0.90);
    assertThat(atMostSo).isGreaterThan(0.0005);
    if (situation.most < 1) {
      double atLeastSo = Distributions.binomialUpperTail(held, simulations, 0.90);
      assertThat(atLeastSo).isGreaterThan(0.0005);
    }
  }

  @Tag("long")
  @ParameterizedTest
  @EnumSource(Situation.class)
  void intervalsCoverEightySevenToNinetyThreePercent(Situation situation) {
    int simulations = 2_000;
    int held = held(situation, simulations);
    report(situation, held, simulations);
    assertThat(held / (double) simulations).isBetween(situation.least, situation.most);
  }

  private static void report(Situation situation, int held, int simulations) {
    System.out.printf(
        Locale.ROOT,
        "90 %% interval, %s: %.1f %% of %d%n",
        situation.name().toLowerCase(Locale.ROOT).replace('_', ' '),
        100.0 * held / simulations,
        simulations);
  }

  /** One product of each field is asked, so that simulations are independent. */
  private static int held(Situation situation, int simulations) {
    Random random = new Random(2028);
    double probe = 0.5;
    double deviation = 2;
    int held = 0;
    for (int s = 0; s < simulations; s++) {
      double shared = probe * random.nextGaussian();
      List<Candidate> products = new ArrayList<>();
      for (int p = 0; p < PRODUCTS; p++) {
        double truth = p == 0 ? 0 : 2.0 * p - 5;
        List<Observation> runs = new ArrayList<>();
        for (int r = 0; r < 3; r++) {
          double value = truth + shared + deviation * random.nextGaussian();
          runs.add(Observation.of("p" + p + r, value, Component.shared("probe:P1", probe)));
        }
        Map<String, Answer> answers = new LinkedHashMap<>();
        answers.put("x", new Answer.Measured(runs));
        products.add(Candidate.of("p" + p, answers));
      }
      ValueNode leaf = ValueNode.Criterion.of("x", 1, "x", situation.curve(), situation.runs);
      ValueNode root =
          new ValueNode.Group("total", "Total", 1, Combination.ARITHMETIC, List.of(leaf));
      ScoringCase scoringCase =
          new ScoringCase(
              root,
              List.of(Variable.pooled("x")),
              List.of(),
              products,
              ScoringRules.of("s" + s).withDraws(500));
      NodeScore asked = Scoring.points(scoringCase).get(0).find("x").orElseThrow();
      double truth =
          situation.runs == RunAggregation.SCORE_THEN_AVERAGE
              ? situation.curve().expected(0, deviation)
              : situation.curve().score(0);
      held += asked.interval().contains(truth) ? 1 : 0;
    }
    return held;
  }
}
