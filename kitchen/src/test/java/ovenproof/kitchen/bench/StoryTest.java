package ovenproof.kitchen.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import ovenproof.kitchen.Kitchen;
import ovenproof.kitchen.bench.RunResult.BatchResult;
import ovenproof.kitchen.bench.RunResult.PieceResult;
import ovenproof.kitchen.physics.Surface;

/** The story of the demo comes out of the physics. */
class StoryTest {

  private static Season season;

  @BeforeAll
  static void play() {
    season = Kitchen.demo().season();
  }

  private static HeatTruth heat(String oven) {
    return HeatTruth.of(season.noiseless(oven, TestKind.HEAT_UP), 220);
  }

  private static double lightness(String oven, TestKind test, int batch) {
    BatchResult result = season.noiseless(oven, test).batches().get(batch - 1);
    return test.colour().at(result.meanBrowning()).lightness();
  }

  @Test
  void theWeakOvenReachesTheCap() {
    for (int r = 1; r <= 3; r++) {
      assertThat(season.run("turkey-larch-" + r).stoppedByCap()).isTrue();
      assertThat(season.run("flatbread-larch-" + r).stoppedByCap()).isTrue();
    }
    assertThat(heat("larch").firstCrossing()).isNaN();
    assertThat(lightness("larch", TestKind.FLATBREAD, 1)).isGreaterThan(80);
  }

  @Test
  void noOtherOvenIsStoppedByTheTurkeysCapOnAnIdealDay() {
    for (var oven : season.ovens()) {
      if (!oven.id().equals("larch")) {
        assertThat(season.noiseless(oven.id(), TestKind.TURKEY).stoppedByCap())
            .as(oven.id())
            .isFalse();
      }
    }
  }

  @Test
  void oneCornerStaysCold() {
    List<PieceResult> cakes = season.noiseless("rowan", TestKind.CAKES).batches().get(0).pieces();
    double backLeft = cakes.get(0).top().mean();
    assertThat(cakes.get(0).position()).isEqualTo("r1c1");
    for (PieceResult cake : cakes.subList(1, cakes.size())) {
      assertThat(cake.top().mean()).isGreaterThan(backLeft);
    }
    assertThat(heat("rowan").spread()).isGreaterThan(10);
  }

  @Test
  void oneDialIs18KelvinOff() {
    assertThat(heat("plover").steadyMean() - 230).isCloseTo(18, within(1.0));
  }

  @Test
  void oneOvershootsMoreThanAllOthers() {
    double whimbrel = heat("whimbrel").overshoot();
    assertThat(whimbrel).isGreaterThan(25);
    season.ovens().stream()
        .filter(o -> !o.id().equals("whimbrel"))
        .forEach(o -> assertThat(heat(o.id()).overshoot()).isLessThan(whimbrel - 8));
  }

  /** Alder and Hornbeam are mirror images, so nothing can tell them apart but luck. */
  @Test
  void theTopTwoAreTrulyTied() {
    HeatTruth alder = heat("alder");
    HeatTruth hornbeam = heat("hornbeam");
    assertThat(hornbeam.firstCrossing()).isEqualTo(alder.firstCrossing());
    assertThat(hornbeam.spread()).isCloseTo(alder.spread(), within(1e-9));
    assertThat(season.presets().get("alder")).isEqualTo(season.presets().get("hornbeam"));
    for (TestKind test : TestKind.values()) {
      RunResult one = season.noiseless("alder", test);
      RunResult other = season.noiseless("hornbeam", test);
      assertThat(other.stops()).isEqualTo(one.stops());
      for (int b = 0; b < one.batches().size(); b++) {
        assertThat(other.batches().get(b).meanBrowning())
            .isCloseTo(one.batches().get(b).meanBrowning(), within(1e-9));
        assertThat(other.batches().get(b).lossShare())
            .isCloseTo(one.batches().get(b).lossShare(), within(1e-9));
      }
    }
  }

  @Test
  void lowMainsTouchOneDayOnly() {
    long touched =
        season.runs().stream()
            .filter(r -> r.plan().day().volts(600) < 222)
            .map(r -> r.plan().session().substring(0, 10))
            .distinct()
            .count();
    assertThat(touched).isEqualTo(1);
  }

  @Test
  void theChangedBreadBrownsFaster() {
    double before = mean("toast-alder-2");
    double after = mean("toast-alder-3");
    assertThat(after).isGreaterThan(before + 0.03);
  }

  private static double mean(String run) {
    return season.run(run).batches().get(0).meanBrowning();
  }

  @Test
  void theRedoFollowsARunWithoutFood() {
    assertThat(season.run("cakes-whimbrel-2").aborted()).isTrue();
    assertThat(season.run("cakes-whimbrel-2").batches()).isEmpty();
    assertThat(season.run("cakes-whimbrel-2b").batches()).hasSize(1);
  }

  @Test
  void aTimerDarkensTheSecondBatchAndCompensationDoesSoLess() {
    double timer = lightness("siskin", TestKind.TOAST, 1) - lightness("siskin", TestKind.TOAST, 2);
    double compensated =
        lightness("alder", TestKind.TOAST, 1) - lightness("alder", TestKind.TOAST, 2);
    assertThat(timer).isGreaterThan(compensated + 5);
    assertThat(compensated).isPositive();
  }

  @Test
  void theNumberOfHandsChangesNothing() {
    Season alone = Kitchen.demo().withThreads(1).season();
    RunResult one = alone.run("cakes-rowan-3");
    RunResult other = season.run("cakes-rowan-3");
    Surface a = one.batches().get(0).pieces().get(4).top();
    Surface b = other.batches().get(0).pieces().get(4).top();
    assertThat(a.browning()).containsExactly(b.browning());
    assertThat(one.events()).isEqualTo(other.events());
  }
}
