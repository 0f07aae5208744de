package ovenproof.core.random;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.concurrent.atomic.AtomicIntegerArray;
import org.junit.jupiter.api.Test;

class RandomStreamsTest {
  private final RandomStreams streams = RandomStreams.of("20260101");

  private double[] normals(String id, int block) {
    double[] target = new double[RandomStreams.BLOCK];
    streams.source(id).normal(block, target);
    return target;
  }

  @Test
  void theSameNameIsTheSameError() {
    assertThat(normals("shared:probe:P3", 7)).isEqualTo(normals("shared:probe:P3", 7));
    assertThat(RandomStreams.of("20260101").source("a").generator(3).nextLong())
        .isEqualTo(streams.source("a").generator(3).nextLong());
  }

  @Test
  void anotherNameBlockOrSeedIsAnotherError() {
    double[] one = normals("a", 0);
    assertThat(one).isNotEqualTo(normals("b", 0)).isNotEqualTo(normals("a", 1));
    assertThat(streams.source("a").generator(0).nextLong())
        .isNotEqualTo(RandomStreams.of("20260102").source("a").generator(0).nextLong());
  }

  @Test
  void sourcesAndBlocksAreUncorrelated() {
    int blocks = 40;
    double sameSource = 0;
    double sameBlock = 0;
    for (int b = 0; b < blocks; b++) {
      double[] a = normals("a", b);
      double[] next = normals("a", b + 1);
      double[] other = normals("b", b);
      for (int d = 0; d < a.length; d++) {
        sameSource += a[d] * next[d];
        sameBlock += a[d] * other[d];
      }
    }
    // Sum of n products of independent standard normals has deviation √n; four of them.
    double limit = 4 * Math.sqrt(blocks * (double) RandomStreams.BLOCK);
    assertThat(sameSource).isBetween(-limit, limit);
    assertThat(sameBlock).isBetween(-limit, limit);
  }

  @Test
  void studentFactorMakesStudentsT() {
    // P(|t| with 4 degrees of freedom > 2.776) = 0.05: any table of Student's t.
    int beyond = 0;
    int n = 0;
    double[] factor = new double[RandomStreams.BLOCK];
    for (int b = 0; b < 80; b++) {
      double[] z = normals("z", b);
      streams.source("spread").studentFactor(b, 4, factor);
      for (int d = 0; d < z.length; d++) {
        beyond += Math.abs(z[d] * factor[d]) > 2.776 ? 1 : 0;
        n++;
      }
    }
    assertThat(beyond / (double) n).isCloseTo(0.05, within(4 * Math.sqrt(0.05 * 0.95 / n)));
  }

  @Test
  void infiniteDegreesLeaveNormalErrorsAsTheyAre() {
    double[] factor = new double[3];
    streams.source("spread").studentFactor(0, Double.POSITIVE_INFINITY, factor);
    assertThat(factor).containsOnly(1);
    assertThatThrownBy(() -> streams.source("spread").studentFactor(0, 0, factor))
        .hasMessageContaining("degrees of freedom");
  }

  @Test
  void everyBlockIsDoneOnceByOneOrManyThreads() {
    for (int threads : new int[] {1, 2, 5}) {
      AtomicIntegerArray done = new AtomicIntegerArray(17);
      Blocks.forEach(17, threads, done::incrementAndGet);
      for (int i = 0; i < 17; i++) {
        assertThat(done.get(i)).isEqualTo(1);
      }
    }
  }

  @Test
  void aFailureInABlockIsThrownToTheCaller() {
    assertThatThrownBy(
            () ->
                Blocks.forEach(
                    9,
                    3,
                    b -> {
                      throw new IllegalStateException("block " + b);
                    }))
        .isInstanceOf(IllegalStateException.class);
  }
}
