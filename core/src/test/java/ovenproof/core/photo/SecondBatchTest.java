package ovenproof.core.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import ovenproof.core.photo.CavityMap.Position;
import ovenproof.core.photo.SecondBatch.Pair;
import ovenproof.core.statistics.Distributions;

class SecondBatchTest {
  private static final List<Position> FOUR =
      List.of(
          new Position("back-left", 0, 0),
          new Position("back-right", 1, 0),
          new Position("front-left", 0, 1),
          new Position("front-right", 1, 1));

  /**
   * Student, The probable error of a mean, Biometrika 6 (1908), table of additional hours of sleep:
   * the differences 1.2, 2.4, 1.3, 1.3, 0.0, 1.0, 1.8, 0.8, 4.6, 1.4 have mean 1.58, t 4.0621 with
   * nine degrees of freedom, p 0.00283 (as every statistics package prints it).
   */
  @Test
  void theChangeIsStudentsPairedTest() {
    double[] hours = {1.2, 2.4, 1.3, 1.3, 0.0, 1.0, 1.8, 0.8, 4.6, 1.4};
    List<Pair> pairs = new ArrayList<>();
    for (int i = 0; i < hours.length; i++) {
      pairs.add(new Pair("run-" + i, FOUR.get(0), 60, 60 + hours[i]));
    }
    SecondBatch.Answer change = SecondBatch.of(pairs).change();
    assertThat(change.estimate()).isCloseTo(1.58, within(1e-9));
    assertThat(change.p()).isCloseTo(0.00283, within(5e-6));
    assertThat(change.runs()).isEqualTo(10);
    assertThat(SecondBatch.of(pairs).coldPlace()).isNull();
  }

  @Test
  void aColdPlaceThatStaysIsFoundAndOneThatGoesIsNot() {
    SecondBatch.Result stays = SecondBatch.of(bake(7, 6, 6, 6));
    assertThat(stays.coldPlace()).isEqualTo(FOUR.get(2));
    assertThat(stays.coldInLast().interval().low()).isGreaterThan(0);
    SecondBatch.Result goes = SecondBatch.of(bake(7, 6, 6, 0));
    assertThat(goes.coldPlace()).isEqualTo(FOUR.get(2));
    assertThat(goes.coldInFirst()).isGreaterThan(4);
    assertThat(goes.coldInLast().interval().contains(0)).isTrue();
  }

  /** Choosing on the first and judging on the last: an even oven is called uneven as promised. */
  @Test
  void choosingTheColdPlaceDoesNotFlatterTheAnswer() {
    int runs = 300;
    int called = 0;
    for (int i = 0; i < runs; i++) {
      Double p = SecondBatch.of(bake(1000 + i, 4, 0, 0)).coldInLast().p();
      called += p != null && p < 0.05 ? 1 : 0;
    }
    // exact binomial limit at 0.1 %: of 300 at 5 % more than 28 would be too many
    assertThat(Distributions.binomialUpperTail(called, runs, 0.05)).isGreaterThan(0.001);
  }

  @Test
  void oneRunGivesNoInterval() {
    SecondBatch.Result one = SecondBatch.of(bake(3, 1, 6, 6));
    assertThat(one.change().interval()).isNull();
    assertThat(one.change().runs()).isEqualTo(1);
  }

  @Test
  void withoutPairsThereIsNoAnswer() {
    assertThatThrownBy(() -> SecondBatch.of(List.of()))
        .isInstanceOf(IllegalArgumentException.class);
  }

  private static List<Pair> bake(long seed, int runs, double coldFirst, double coldLast) {
    SplittableRandom random = new SplittableRandom(seed);
    List<Pair> pairs = new ArrayList<>();
    for (int run = 0; run < runs; run++) {
      for (int i = 0; i < FOUR.size(); i++) {
        double first = 60 + (i == 2 ? coldFirst : 0) + random.nextGaussian();
        double last = 55 + (i == 2 ? coldLast : 0) + random.nextGaussian();
        pairs.add(new Pair("run-" + run, FOUR.get(i), first, last));
      }
    }
    return pairs;
  }
}
