package ovenproof.kitchen.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProbeTest {

  private static Probe slow(double seconds) {
    return new Probe("p", seconds, 0, 0, 0);
  }

  /** A first-order sensor on a ramp lags by rate × τ: 12 K/min and 8 s make 1.6 K (closed form). */
  @Test
  void aRampIsReadLateByRateTimesTimeConstant() {
    double[] ramp = new double[600];
    for (int i = 0; i < ramp.length; i++) {
      ramp[i] = 20 + 0.2 * i;
    }
    double[] shown = slow(8).lagged(ramp);
    // steps of a second add half a step of the ramp
    assertThat(ramp[599] - shown[599]).isCloseTo(1.6, within(0.11));
  }

  /** 1/√(1 + (2πτ/P)²): τ 20 s and P 60 s show 43 % of the swing, τ 5 s shows 89 %. */
  @ParameterizedTest
  @CsvSource({"20, 60, 0.4309", "5, 60, 0.8862", "6, 120, 0.9540"})
  void aCycleIsShrunkByTheLag(double timeConstant, double period, double share) {
    double[] wave = new double[3600];
    for (int i = 0; i < wave.length; i++) {
      wave[i] = 200 + 10 * Math.sin(2 * Math.PI * i / period);
    }
    double[] shown = slow(timeConstant).lagged(wave);
    double high = 0;
    double low = 1e9;
    for (int i = 1800; i < 3600; i++) {
      high = Math.max(high, shown[i]);
      low = Math.min(low, shown[i]);
    }
    assertThat((high - low) / 20).isCloseTo(share, within(0.02));
  }
}
