package ovenproof.core.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import ovenproof.core.photo.CavityMap.Contrast;
import ovenproof.core.photo.CavityMap.Layout;
import ovenproof.core.photo.CavityMap.Observation;
import ovenproof.core.photo.CavityMap.Position;
import ovenproof.core.statistics.Distributions;

class CavityMapTest {

  private static final List<Position> SIX =
      List.of(
          new Position("1", 0, 0),
          new Position("2", 0.5, 0),
          new Position("3", 1, 0),
          new Position("4", 0, 1),
          new Position("5", 0.5, 1),
          new Position("6", 1, 1));

  /**
   * NIST Statistical Reference Datasets, SiRstv (silicon resistivity, five instruments with five
   * measurements each): certified F 1.18046237440255, residual SD 0.104076068334656, 20 degrees of
   * freedom. One batch, so that the model is the one-way analysis.
   */
  @Test
  void theCertifiedOneWayAnalysisComesOut() {
    double[][] instruments = {
      {196.3052, 196.1240, 196.1890, 196.2569, 196.3403},
      {196.3042, 196.3825, 196.1669, 196.3257, 196.0422},
      {196.1303, 196.2005, 196.2889, 196.0343, 196.1811},
      {196.2795, 196.1748, 196.1494, 196.1485, 195.9885},
      {196.2119, 196.1051, 196.1850, 196.0052, 196.2090}
    };
    List<Observation> data = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      Position position = new Position("i" + i, i / 4.0, 0.5);
      for (double value : instruments[i]) {
        data.add(new Observation(position, 1, null, Layout.AS_BAKED, value));
      }
    }
    CavityMap.Result result = CavityMap.fit(data);
    assertThat(result.degreesOfFreedom()).isEqualTo(20);
    assertThat(result.pieceSd()).isCloseTo(0.104076068334656, within(1e-10));
    assertThat(result.pattern())
        .isCloseTo(Distributions.fUpperTail(1.18046237440255, 4, 20), within(1e-7));
  }

  /** Balanced: the effect of a position is its mean less the grand mean, whatever the batches. */
  @Test
  void inABalancedPlanEffectsAreMeansLessTheGrandMean() {
    SplittableRandom random = new SplittableRandom(1);
    List<Observation> data = bake(random, 3, new double[] {5, 0, 4, -3, -4, -2}, 1);
    CavityMap.Result result = CavityMap.fit(data);
    double grand = data.stream().mapToDouble(Observation::lightness).average().orElseThrow();
    for (CavityMap.PositionEffect effect : result.effects()) {
      double mean =
          data.stream()
              .filter(o -> o.position().equals(effect.position()))
              .mapToDouble(Observation::lightness)
              .average()
              .orElseThrow();
      assertThat(effect.effect()).isCloseTo(mean - grand, within(1e-9));
      assertThat(effect.interval().contains(effect.effect())).isTrue();
    }
    assertThat(result.degreesOfFreedom()).isEqualTo(10);
  }

  @Test
  void oneTrayCannotSeparateThePieceFromTheOven() {
    CavityMap.Result result = CavityMap.fit(bake(new SplittableRandom(2), 1, new double[6], 1));
    assertThat(result.notes()).anyMatch(n -> n.contains("one tray cannot separate"));
    assertThat(result.pattern()).isNull();
    assertThat(result.effects()).allSatisfy(e -> assertThat(e.interval()).isNull());
  }

  @Test
  void aSecondBatchThatIsDarkerIsSaidWithItsInterval() {
    List<Observation> data = new ArrayList<>();
    for (Observation o : bake(new SplittableRandom(3), 3, new double[6], 1)) {
      double shift = o.batch() == 2 ? -8 : 0;
      data.add(new Observation(o.position(), o.batch(), null, o.layout(), o.lightness() + shift));
    }
    Contrast second = CavityMap.fit(data).batches().get(0);
    assertThat(second.question()).isEqualTo("batch 2 against batch 1");
    assertThat(second.p()).isLessThan(0.001);
    assertThat(second.interval().contains(-8)).isTrue();
  }

  @Test
  void traysPhotographedTheSameWayRoundAreSaidToHideTheLight() {
    List<Observation> data = new ArrayList<>();
    for (Observation o : bake(new SplittableRandom(4), 3, new double[6], 1)) {
      data.add(new Observation(o.position(), o.batch(), null, Layout.AS_BAKED, o.lightness()));
    }
    assertThat(CavityMap.fit(data).notes()).anyMatch(n -> n.contains("turn half of them"));
  }

  @Test
  void aRecurringLineageIsTakenOutOfTheResidual() {
    SplittableRandom random = new SplittableRandom(5);
    List<Observation> data = new ArrayList<>();
    for (int batch = 1; batch <= 4; batch++) {
      List<Integer> order = shuffled(random);
      for (int i = 0; i < 6; i++) {
        int slice = order.get(i);
        double l = 60 + 3 * slice + 0.3 * random.nextGaussian();
        data.add(new Observation(SIX.get(i), batch, "slice " + slice, Layout.AS_BAKED, l));
      }
    }
    assertThat(CavityMap.fit(data).pieceSd()).isLessThan(0.6);
  }

  @Test
  void fewerThanTwoPositionsAreNoMap() {
    assertThatThrownBy(
            () -> CavityMap.fit(List.of(new Observation(SIX.get(0), 1, null, Layout.AS_BAKED, 50))))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("two positions");
  }

  /** 300 simulations against exact binomial limits at 0.1 %. */
  @Test
  void paleCornersAreFoundAndEvenOvensAreLeftAlone() {
    simulate(300);
  }

  @Test
  @Tag("long")
  void paleCornersAreFoundAndEvenOvensAreLeftAloneInFull() {
    simulate(5000);
  }

  private static void simulate(int n) {
    SplittableRandom random = new SplittableRandom(20260101);
    int found = 0;
    int falseAlarms = 0;
    int covered = 0;
    double[] corners = {3.5, 0, 3.5, 3.5, 0, 3.5};
    for (int i = 0; i < n; i++) {
      Contrast corner = CavityMap.fit(bake(random, 3, corners, 1)).places().get(0);
      found += corner.p() < 0.05 && corner.estimate() > 0 ? 1 : 0;
      covered += corner.interval().contains(3.5) ? 1 : 0;
      CavityMap.Result even = CavityMap.fit(bake(random, 3, new double[6], 1));
      falseAlarms += even.places().stream().anyMatch(c -> c.p() < 0.05) ? 1 : 0;
    }
    // Not below 95 % found; false alarms not above 5 %; 90 % intervals cover 90 %.
    assertThat(Distributions.binomialUpperTail(n - found, n, 0.05)).isGreaterThan(0.001);
    assertThat(Distributions.binomialUpperTail(falseAlarms, n, 0.05)).isGreaterThan(0.001);
    assertThat(Distributions.binomialUpperTail(covered, n, 0.90)).isGreaterThan(0.0005);
    assertThat(Distributions.binomialUpperTail(n - covered, n, 0.10)).isGreaterThan(0.0005);
  }

  private static List<Observation> bake(
      SplittableRandom random, int batches, double[] oven, double pieceSd) {
    List<Observation> out = new ArrayList<>();
    for (int batch = 1; batch <= batches; batch++) {
      double level = 60 + 2 * random.nextGaussian();
      Layout layout = batch % 2 == 0 ? Layout.TURNED : Layout.AS_BAKED;
      for (int i = 0; i < oven.length; i++) {
        double l = level + oven[i] + pieceSd * random.nextGaussian();
        out.add(new Observation(SIX.get(i), batch, null, layout, l));
      }
    }
    return out;
  }

  private static List<Integer> shuffled(SplittableRandom random) {
    List<Integer> order = new ArrayList<>(List.of(0, 1, 2, 3, 4, 5));
    Collections.shuffle(order, new Random(random.nextLong()));
    return order;
  }
}
