package ovenproof.core.ranking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import ovenproof.core.random.RandomStreams;

/**
 * Closed forms for independent normal scores: Φ(Δ/√(σ₁²+σ₂²)) for two, the orthant probability 1/4
 * + asin(ρ)/2π of the bivariate normal (Sheppard, 1899) for three of equal mean, one-dimensional
 * quadrature otherwise.
 */
class ProbabilityOfBestTest {
  private static final int BLOCKS = 200;
  private static final int DRAWS = BLOCKS * RandomStreams.BLOCK;
  private static final RandomStreams STREAMS = RandomStreams.of("closed forms");

  static double[] normal(String id, double mean, double deviation) {
    double[] all = new double[DRAWS];
    double[] one = new double[RandomStreams.BLOCK];
    for (int b = 0; b < BLOCKS; b++) {
      STREAMS.source(id).normal(b, one);
      for (int d = 0; d < one.length; d++) {
        all[b * one.length + d] = mean + deviation * one[d];
      }
    }
    return all;
  }

  static Comparison compare(FieldPooling pooling, double[] means, double[] deviations) {
    List<Contender> field = new ArrayList<>();
    for (int i = 0; i < means.length; i++) {
      double[] draws = normal("product " + i, means[i], deviations[i]);
      field.add(Contender.of("p" + i, means[i], draws));
    }
    return FieldComparison.compare(field, STREAMS, pooling, 2);
  }

  static List<Arguments> closedForms() {
    return List.of(
        Arguments.of(
            new double[] {1, 0},
            new double[] {1, 1},
            new double[] {0.760249938906523, 0.239750061093477}),
        Arguments.of(
            new double[] {2, 0},
            new double[] {3, 4},
            new double[] {0.655421741610324, 0.344578258389676}),
        Arguments.of(
            new double[] {0, 0, 0},
            new double[] {1, 1, 2},
            new double[] {0.301208191174783, 0.301208191174783, 0.397583617650433}),
        Arguments.of(
            new double[] {0, 0, 0},
            new double[] {1, 2, 3},
            new double[] {0.272583617650433, 0.332624670269284, 0.394791712080283}),
        Arguments.of(
            new double[] {1, 0, 0},
            new double[] {1, 1, 1},
            new double[] {0.63370204577808, 0.18314897711096, 0.18314897711096}),
        Arguments.of(
            new double[] {0.6, 0.4, 0.2, 0},
            new double[] {1, 1, 1, 1},
            new double[] {0.35812017252581, 0.27611985892699, 0.209498663842261, 0.15626130470494}),
        Arguments.of(
            new double[] {80, 78, 75},
            new double[] {2, 3, 1},
            new double[] {0.707851936051351, 0.288623958459463, 0.00352410548918602}));
  }

  @ParameterizedTest
  @MethodSource("closedForms")
  void unpooledProbabilitiesMeetTheClosedForms(double[] means, double[] sd, double[] expected) {
    Comparison comparison = compare(FieldPooling.NONE, means, sd);
    for (int i = 0; i < expected.length; i++) {
      double p = expected[i];
      assertThat(comparison.bestLow().get(i))
          .isCloseTo(p, within(4.5 * Math.sqrt(p * (1 - p) / DRAWS)));
    }
    assertThat(comparison.bestLow().stream().mapToDouble(p -> p).sum()).isCloseTo(1, within(1e-9));
  }

  @Test
  void anErrorThatBothShareCancels() {
    // Φ(1/√(2 − 2·0.8)) for unit deviations correlated by 0.8.
    double shared = Math.sqrt(0.8);
    double[] common = normal("common", 0, shared);
    List<Contender> field = new ArrayList<>();
    for (int i = 0; i < 2; i++) {
      double[] draws = normal("own " + i, 1 - i, Math.sqrt(0.2));
      for (int d = 0; d < DRAWS; d++) {
        draws[d] += common[d];
      }
      field.add(Contender.of("p" + i, 1 - i, draws));
    }
    Comparison unpooled = FieldComparison.compare(field, STREAMS, FieldPooling.NONE, 1);
    assertThat(unpooled.bestLow().get(0)).isCloseTo(0.943076850996671, within(0.0035));
    assertThat(unpooled.pairs().standardError(0, 1)).isCloseTo(Math.sqrt(0.4), within(0.01));
  }

  @Test
  void poolingPullsACloseFieldTogetherAndLeavesAClearOneAlone() {
    double[] ones = {1, 1, 1, 1, 1, 1, 1, 1};
    double[] close = {0.9, 0.6, 0.4, 0.2, -0.1, -0.4, -0.6, -0.9};
    double[] clear = {90, 60, 40, 20, -10, -40, -60, -90};
    double unpooled = compare(FieldPooling.NONE, close, ones).bestLow().get(0);
    Comparison pooled = compare(FieldPooling.PARTIAL, close, ones);
    assertThat(pooled.bestLow().get(0)).isLessThan(unpooled - 0.1);
    assertThat(pooled.shrinkage()).isGreaterThan(0.5);
    Comparison far = compare(FieldPooling.PARTIAL, clear, ones);
    assertThat(far.bestLow().get(0)).isEqualTo(1);
    assertThat(far.shrinkage()).isLessThan(0.01);
  }

  @Test
  void ofThreeEqualsEachHasAThird() {
    double[] zeros = {0, 0, 0};
    double[] ones = {1, 1, 1};
    for (FieldPooling pooling : FieldPooling.values()) {
      Comparison comparison = compare(pooling, zeros, ones);
      assertThat(comparison.bestLow())
          .allSatisfy(p -> assertThat(p).isCloseTo(1 / 3.0, within(0.007)));
      assertThat(comparison.tiers()).containsOnly(1);
      assertThat(comparison.ranks()).containsOnly(new RankSet(1, 3));
    }
  }

  @Test
  void theMarginOfIndependentNormalsIsTheStudentizedRange() {
    // 90 % point of the studentized range with infinite degrees of freedom, divided by √2:
    // Tukey's q(0.10; 3) = 2.902, q(0.10; 10) = 4.129 (R 4.2, qtukey).
    Comparison three = compare(FieldPooling.NONE, new double[3], new double[] {1, 1, 1});
    assertThat(three.margin().c()).isCloseTo(2.902 / Math.sqrt(2), within(0.02));
    double[] ones = new double[10];
    java.util.Arrays.fill(ones, 1);
    Comparison ten = compare(FieldPooling.NONE, new double[10], ones);
    assertThat(ten.margin().c()).isCloseTo(4.129 / Math.sqrt(2), within(0.02));
    assertThat(ten.margin().low()).isLessThan(ten.margin().c());
    assertThat(ten.margin().high()).isGreaterThan(ten.margin().c());
  }

  @Test
  void identicalProductsWithoutErrorTie() {
    List<Contender> field =
        List.of(
            Contender.of("a", 5, filled(5)),
            Contender.of("b", 5, filled(5)),
            Contender.of("c", 4, filled(4)));
    Comparison comparison = FieldComparison.compare(field, STREAMS, FieldPooling.PARTIAL, 2);
    assertThat(comparison.bestLow()).containsExactly(0.5, 0.5, 0.0);
    assertThat(comparison.pairs().probabilityLow(0, 1)).isEqualTo(0.5);
    assertThat(comparison.tiers()).containsExactly(1, 1, 2);
  }

  @Test
  void oneProductIsBestOfOne() {
    Comparison comparison =
        FieldComparison.compare(
            List.of(Contender.of("a", 5, filled(5))), STREAMS, FieldPooling.PARTIAL, 2);
    assertThat(comparison.bestLow()).containsExactly(1.0);
    assertThat(comparison.ranks()).containsExactly(new RankSet(1, 1));
    assertThat(comparison.margin().c()).isNaN();
  }

  @Test
  void boundedProductsSeparateOnlyIfTheyDoAtBothBounds() {
    double[] draws = normal("top", 9, 0.1);
    double[] low = normal("own", 3, 0.1);
    double[] high = low.clone();
    for (int d = 0; d < high.length; d++) {
      high[d] += 5.9;
    }
    List<Contender> field =
        List.of(Contender.of("top", 9, draws), new Contender("wide", 3, 8.9, low, high));
    Comparison comparison = FieldComparison.compare(field, STREAMS, FieldPooling.NONE, 1);
    assertThat(comparison.tiers()).containsExactly(1, 1);
    assertThat(comparison.bestLow().get(1)).isLessThan(0.01);
    assertThat(comparison.bestHigh().get(1)).isBetween(0.2, 0.3);
    assertThat(comparison.pairs().probabilityHigh(0, 1)).isEqualTo(1);
  }

  private static double[] filled(double value) {
    double[] draws = new double[DRAWS];
    java.util.Arrays.fill(draws, value);
    return draws;
  }
}
