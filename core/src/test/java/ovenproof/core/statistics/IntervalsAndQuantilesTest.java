package ovenproof.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.data.Offset.offset;

import org.junit.jupiter.api.Test;

class IntervalsAndQuantilesTest {

  /** Newcombe, Statistics in Medicine 17, 1998, 857–872, table I, method 3 (from memory). */
  @Test
  void wilsonIntervalsOfNewcombesExamples() {
    assertWilson(81, 263, 0.2553, 0.3662);
    assertWilson(15, 148, 0.0624, 0.1605);
    assertWilson(0, 20, 0, 0.1611);
    assertWilson(1, 29, 0.0061, 0.1718);
  }

  private static void assertWilson(int successes, int trials, double low, double high) {
    Interval interval = WilsonInterval.of(successes, trials, 0.95);
    assertThat(interval.low()).isCloseTo(low, offset(5e-5));
    assertThat(interval.high()).isCloseTo(high, offset(5e-5));
  }

  @Test
  void allOfThreeIsNoCertainty() {
    assertThat(WilsonInterval.of(3, 3, 0.95).high()).isEqualTo(1);
    assertThat(WilsonInterval.of(3, 3, 0.95).low()).isLessThan(0.5);
    assertThatThrownBy(() -> WilsonInterval.of(4, 3, 0.95)).hasMessageContaining("4 of 3");
  }

  /** Table values as in any textbook: z 1.959964, t 2.570582 (5), F 3.885294 (2, 12). */
  @Test
  void textbookQuantiles() {
    assertThat(Distributions.normalQuantile(0.975)).isCloseTo(1.959964, offset(1e-6));
    assertThat(Distributions.studentQuantile(0.975, 5)).isCloseTo(2.570582, offset(1e-6));
    assertThat(Distributions.fQuantile(0.95, 2, 12)).isCloseTo(3.885294, offset(1e-6));
    assertThat(Distributions.chiSquaredQuantile(0.95, 4)).isCloseTo(9.487729, offset(1e-6));
    assertThat(Distributions.fUpperTail(3.885294, 2, 12)).isCloseTo(0.05, offset(1e-6));
  }

  /** Hyndman and Fan's definition 7, by hand. */
  @Test
  void quantilesInterpolateBetweenOrderStatistics() {
    assertThat(Quantiles.of(0.25, 4, 1, 3, 2)).isEqualTo(1.75);
    assertThat(Quantiles.median(1, 2, 3, 10)).isEqualTo(2.5);
    assertThat(Quantiles.of(1, 5)).isEqualTo(5);
    assertThat(Quantiles.medianAbsoluteDeviation(1, 1, 2, 2, 4, 6, 9)).isEqualTo(1.4826);
  }
}
