package ovenproof.core.repeatability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BatchTrendTest {

  /** By hand: slope 3/2, residuals 1/6, −1/3, 1/6, their squares 1/6 on one degree of freedom. */
  @Test
  void threeBatchesByHand() {
    BatchTrend trend = BatchTrend.of(new double[] {1, 2, 4});
    assertThat(trend.slopePerBatch()).isCloseTo(1.5, within(1e-12));
    assertThat(trend.slopeU()).isCloseTo(Math.sqrt(1.0 / 12), within(1e-12));
    // Student's t, one degree of freedom, 95 %: 6.3138 (any table).
    assertThat(trend.halfWidth(0.9)).isCloseTo(6.3138 * Math.sqrt(1.0 / 12), within(1e-4));
    assertThat(trend.isClear(0.9)).isFalse();
    assertThat(trend.secondMinusFirst()).isEqualTo(1);
  }

  @Test
  void aBatchWithoutValueIsLeftOutAndTheOthersKeepTheirNumbers() {
    BatchTrend trend = BatchTrend.of(new double[] {10, Double.NaN, 14, 16});
    assertThat(trend.batches()).isEqualTo(3);
    assertThat(trend.slopePerBatch()).isCloseTo(2, within(1e-12));
    assertThat(trend.secondMinusFirst()).isNaN();
  }

  @Test
  void twoBatchesHaveNoSlopeWithAnInterval() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> BatchTrend.of(new double[] {1, 2, Double.NaN}))
        .withMessageContaining("at least 3");
  }

  /** 300 drawn campaigns; the exact binomial 0.1 % limits about 90 % are 83.7 % and 95.3 %. */
  @ParameterizedTest
  @ValueSource(ints = {3, 4, 6})
  void theNinetyPerCentIntervalHoldsTheTrueSlope(int batches) {
    UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(20260314L + batches);
    ZigguratSampler.NormalizedGaussian noise = ZigguratSampler.NormalizedGaussian.of(random);
    int held = 0;
    int simulations = 300;
    for (int s = 0; s < simulations; s++) {
      double[] values = new double[batches];
      for (int i = 0; i < batches; i++) {
        values[i] = 50 - 1.2 * i + 0.8 * noise.sample();
      }
      BatchTrend trend = BatchTrend.of(values);
      held += Math.abs(trend.slopePerBatch() + 1.2) <= trend.halfWidth(0.9) ? 1 : 0;
    }
    assertThat((double) held / simulations).isBetween(0.837, 0.953);
  }
}
