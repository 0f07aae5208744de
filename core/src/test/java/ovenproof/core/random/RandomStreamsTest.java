package ovenproof.core.random;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.concurrent.atomic.AtomicIntegerArray;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
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

  /** Chi-square over 40 cells of equal probability; edges from commons-statistics. */
  @Test
  void normalErrorsAreNormalInEveryPart() {
    int cells = 40;
    NormalDistribution normal = NormalDistribution.of(0, 1);
    double[] edges = new double[cells - 1];
    for (int k = 1; k < cells; k++) {
      edges[k - 1] = normal.inverseCumulativeProbability(k / (double) cells);
    }
    int blocks = 1000;
    long[] counts = new long[cells];
    double fourth = 0;
    long inTheTail = 0;
    for (int b = 0; b < blocks; b++) {
      for (double z : normals("normal", b)) {
        int cell = Arrays.binarySearch(edges, z);
        counts[cell < 0 ? -cell - 1 : cell]++;
        fourth += z * z * z * z;
        inTheTail += Math.abs(z) > 3.7 ? 1 : 0;
      }
    }
    double n = blocks * (double) RandomStreams.BLOCK;
    double chiSquare = 0;
    for (long count : counts) {
      chiSquare += (count - n / cells) * (count - n / cells) / (n / cells);
    }
    // 0.9999 quantile of chi-square with 39 degrees of freedom, computed by commons-statistics.
    assertThat(chiSquare)
        .isLessThan(ChiSquaredDistribution.of(39).inverseCumulativeProbability(0.9999));
    // E z⁴ = 3 with variance 96 (moments of the normal distribution); the far tail.
    assertThat(fourth / n).isCloseTo(3, within(4 * Math.sqrt(96 / n)));
    double tail = 2 * normal.survivalProbability(3.7);
    assertThat(inTheTail / n).isCloseTo(tail, within(4 * Math.sqrt(tail / n)));
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
