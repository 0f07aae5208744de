package ovenproof.core.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import ovenproof.core.scoring.ValueCurve.Better;

class ValueCurveTest {
  private static final ValueCurve TIME =
      ValueCurve.lines(new double[] {300, 600, 1200}, new double[] {10, 6, 0});

  @Test
  void linesRunStraightBetweenAnchorsAndFlatOutside() {
    assertThat(TIME.score(300)).isEqualTo(10);
    assertThat(TIME.score(450)).isEqualTo(8);
    assertThat(TIME.score(900)).isEqualTo(3);
    assertThat(TIME.score(-5)).isEqualTo(10);
    assertThat(TIME.score(Double.POSITIVE_INFINITY)).isZero();
  }

  @Test
  void aWindowMayFallFasterOnOneSide() {
    ValueCurve shade = ValueCurve.window(40, 60, 66, 72);
    assertThat(shade.score(63)).isEqualTo(10);
    assertThat(shade.score(60)).isEqualTo(10);
    assertThat(shade.score(50)).isEqualTo(5);
    assertThat(shade.score(69)).isEqualTo(5);
    assertThat(shade.score(39)).isZero();
  }

  @Test
  void aWindowWithOneOpenSideNeverFallsThere() {
    ValueCurve curve = ValueCurve.window(Double.NEGATIVE_INFINITY, 0, 5, 15);
    assertThat(curve.score(-1e9)).isEqualTo(10);
    assertThat(curve.score(10)).isEqualTo(5);
    assertThat(ValueCurve.window(-10, 0, 0, 10).score(0)).isEqualTo(10);
  }

  @Test
  void aThresholdItselfCountsAsReached() {
    ValueCurve steps = ValueCurve.steps(0, new double[] {2, 4}, new double[] {5, 10});
    assertThat(steps.score(Math.nextDown(2.0))).isZero();
    assertThat(steps.score(2)).isEqualTo(5);
    assertThat(steps.score(3.9)).isEqualTo(5);
    assertThat(steps.score(4)).isEqualTo(10);
    assertThat(steps.image(1, 3).width()).isEqualTo(5);
  }

  @Test
  void ratedStepsAreScaledToTen() {
    assertThat(ValueCurve.points(4).score(3)).isEqualTo(7.5);
  }

  @Test
  void aPercentileCountsHalfOfEquals() {
    double[] pool = {10, 20, 20, 30};
    ValueCurve higher = ValueCurve.percentile(pool, Better.HIGHER);
    assertThat(higher.score(5)).isZero();
    assertThat(higher.score(20)).isEqualTo(5);
    assertThat(higher.score(25)).isEqualTo(7.5);
    assertThat(higher.score(99)).isEqualTo(10);
    assertThat(ValueCurve.percentile(pool, Better.LOWER).score(25)).isEqualTo(2.5);
  }

  @Test
  void aPoolOfOneHasNoPercentiles() {
    assertThatThrownBy(() -> ValueCurve.percentile(new double[] {3}, Better.HIGHER))
        .hasMessageContaining("at least 2");
  }

  @Test
  void curvesOutOfOrderAreRefusedInWords() {
    assertThatThrownBy(() -> ValueCurve.lines(new double[] {5, 3}, new double[] {0, 10}))
        .hasMessage("anchors must rise, found 5.0 before 3.0");
    assertThatThrownBy(() -> ValueCurve.lines(new double[] {1, Double.NaN}, new double[] {0, 10}))
        .hasMessageContaining("must be finite, found NaN");
    assertThatThrownBy(() -> ValueCurve.lines(new double[] {1, 2}, new double[] {0, 11}))
        .hasMessageContaining("0 … 10, found 11.0");
    assertThatThrownBy(() -> ValueCurve.lines(new double[0], new double[0]))
        .hasMessageContaining("at least one anchor");
    assertThatThrownBy(() -> TIME.score(Double.NaN)).hasMessageContaining("NaN");
  }

  @Test
  void theImageOfAnIntervalHoldsThePeakInside() {
    ValueCurve peak = ValueCurve.window(-10, 0, 0, 10);
    assertThat(peak.image(-2, 4).high()).isEqualTo(10);
    assertThat(peak.image(-2, 4).low()).isEqualTo(6);
    assertThat(peak.turnsWithin(-2, 4)).isTrue();
    assertThat(peak.turnsWithin(1, 4)).isFalse();
  }

  @Test
  void aCapBelowTheWorstAnchorHidesDifferences() {
    assertThat(TIME.changesAbove(900)).isTrue();
    assertThat(TIME.changesAbove(1200)).isFalse();
  }

  @Test
  void theExpectedScoreAtAPeakLosesTheMeanAbsoluteDeviation() {
    // E|Z| = √(2/π) for a standard normal Z (any textbook of probability).
    ValueCurve peak = ValueCurve.window(-10, 0, 0, 10);
    assertThat(peak.expected(0, 1)).isCloseTo(10 - Math.sqrt(2 / Math.PI), within(1e-9));
    assertThat(peak.expected(3, 0)).isEqualTo(7);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void theExpectedScoreIsTheMeanOfManyDraws(long seed) {
    Random random = new Random(seed);
    ValueCurve curve = random(random, seed % 2 == 0);
    double mean = random.nextGaussian() * 5;
    double deviation = 0.5 + random.nextDouble() * 4;
    double sum = 0;
    double squares = 0;
    int n = 40_000;
    for (int i = 0; i < n; i++) {
      double score = curve.score(mean + deviation * random.nextGaussian());
      sum += score;
      squares += score * score;
    }
    double error = Math.sqrt((squares / n - sum / n * sum / n) / n);
    assertThat(curve.expected(mean, deviation)).isCloseTo(sum / n, within(4.5 * error + 1e-9));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void shiftingAllRunsIsTheMeanOfTheShiftedScores(long seed) {
    Random random = new Random(seed);
    ValueCurve curve = random(random, seed % 2 == 0);
    double[] values = random.doubles(1 + (int) (seed % 4), -6, 6).toArray();
    ShiftedCurve shifted = new ShiftedCurve(curve, values);
    double[] errors = random.doubles(500, -30, 30).toArray();
    double[] scores = new double[500];
    shifted.score(errors, 30, scores);
    for (int d = 0; d < 500; d++) {
      double expected = 0;
      for (double value : values) {
        expected += curve.score(value + errors[d]) / values.length;
      }
      assertThat(scores[d]).isCloseTo(expected, within(1e-9));
      assertThat(shifted.score(errors[d])).isEqualTo(scores[d]);
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {11, 12, 13, 14})
  void everyScoreInsideAnIntervalLiesInItsImage(long seed) {
    Random random = new Random(seed);
    ValueCurve curve = random(random, seed % 2 == 0);
    double low = random.nextGaussian() * 5;
    double high = low + random.nextDouble() * 10;
    var image = curve.image(low, high);
    for (double x : random.doubles(2000, low, high).toArray()) {
      assertThat(curve.score(x)).isBetween(image.low() - 1e-12, image.high() + 1e-12);
    }
    assertThat(curve.score(curve.worst(low, high))).isGreaterThanOrEqualTo(image.low() - 1e-12);
    assertThat(curve.score(curve.best(low, high))).isLessThanOrEqualTo(image.high() + 1e-12);
  }

  private static ValueCurve random(Random random, boolean steps) {
    double[] anchors = random.doubles(5, -10, 10).sorted().toArray();
    double[] scores = random.doubles(5, 0, 10).toArray();
    return steps ? ValueCurve.steps(3, anchors, scores) : ValueCurve.lines(anchors, scores);
  }
}
