package ovenproof.kitchen.panel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import ovenproof.kitchen.panel.TastingPanel.Effects;
import ovenproof.kitchen.panel.TastingPanel.Given;
import ovenproof.kitchen.panel.TastingPanel.Sample;
import ovenproof.kitchen.physics.Chance;

class TastingPanelTest {

  /** E. J. Williams 1949: for even n every sample follows every other once in n rows. */
  @ParameterizedTest
  @ValueSource(ints = {4, 6, 8})
  void everySampleFollowsEveryOtherOnce(int n) {
    Set<String> pairs = new HashSet<>();
    for (int r = 0; r < n; r++) {
      int[] row = TastingPanel.williamsRow(n, r);
      for (int i = 1; i < n; i++) {
        assertThat(pairs.add(row[i - 1] + ">" + row[i])).isTrue();
      }
    }
    assertThat(pairs).hasSize(n * (n - 1));
  }

  @Test
  void withoutEffectsThePanelSaysTheTruth() {
    TastingPanel panel = TastingPanel.of(6, 0, new Effects(0, 0, 0, 0, 0), Chance.ofSeed(1));
    List<Sample> samples = List.of(new Sample("a", "a1", new double[] {6.5}));
    assertThat(panel.taste("s", List.of(samples))).extracting(Given::value).containsOnly(6.5);
  }

  @Test
  void theHarshTasterIsHarsh() {
    TastingPanel panel = TastingPanel.of(6, 4, Effects.USUAL, Chance.ofSeed(5));
    List<Sample> samples = new ArrayList<>();
    for (int i = 0; i < 300; i++) {
      samples.add(new Sample("p" + i, "b" + i, new double[] {5.5}));
    }
    List<Given> all = panel.taste("s", List.of(samples));
    double harsh = mean(all.stream().filter(g -> g.assessor().equals("taster-4")).toList());
    assertThat(harsh).isCloseTo(5.5 - 1.7, within(0.2));
    assertThat(panel.levels().get(3)).isEqualTo(-1.7);
  }

  private static double mean(List<Given> given) {
    return given.stream().mapToDouble(Given::value).average().orElse(Double.NaN);
  }
}
