package ovenproof.kitchen.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import ovenproof.kitchen.physics.Chance;
import ovenproof.kitchen.physics.Probe;

class HeatUpTraceTest {

  @Test
  void theTraceIsTheProbeWithItsErrorAndNoise() {
    Probe probe = new Probe("p", 10, 1.5, 0.1, 0);
    HeatUpTrace trace =
        HeatUpTrace.of(Ovens.all().get(0), RunPlan.Day.NOMINAL, probe, 5, 220, Chance.ofSeed(3));
    assertThat(trace.seconds()).hasSize(720);
    double error = 0;
    for (int i = 0; i < 720; i++) {
      error += (trace.shownCelsius()[i] - trace.probeCelsius()[i]) / 720;
    }
    // 720 samples of 0.1 K: standard error 0.004 K
    assertThat(error).isCloseTo(1.5, within(0.02));
    double last = Arrays.stream(trace.airCelsius(), 480, 720).average().orElse(0);
    assertThat(trace.truth().steadyMean()).isCloseTo(last, within(0.2));
  }
}
