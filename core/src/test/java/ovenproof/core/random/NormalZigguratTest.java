package ovenproof.core.random;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

class NormalZigguratTest {
  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  /** Area of a layer is R·f(R) + √2π·(1 − Φ(R)); computed here with commons-statistics. */
  @Test
  void theLowestLayerHasTheAreaOfTheOthers() {
    double r = NormalZiggurat.TAIL;
    double area =
        r * NormalZiggurat.density(r) + Math.sqrt(2 * Math.PI) * NORMAL.survivalProbability(r);
    assertThat(NormalZiggurat.AREA).isCloseTo(area, within(1e-15));
  }

  @Test
  void theTopLayerEndsAtTheTopOfTheCurve() {
    double[] edges = NormalZiggurat.edges();
    double top = edges[NormalZiggurat.LAYERS - 1];
    double height = NormalZiggurat.AREA / top + NormalZiggurat.density(top);
    assertThat(height).isCloseTo(1, within(1e-9));
  }

  @Test
  void theShortSeriesIsTheExponentialFunction() {
    for (double x = 0; x < 0.1; x += 0.001) {
      assertThat(NormalZiggurat.exponential(x)).isCloseTo(StrictMath.exp(x), within(3e-16));
    }
  }

  /** Chi-squared over 200 cells of equal probability against its 0.1 % limits, Wilson–Hilferty. */
  @Test
  void twoMillionNumbersFollowTheNormalCurve() {
    long[] seen = new long[200];
    double[] block = new double[500];
    ErrorSource source = RandomStreams.of("ziggurat").source("normal");
    int blocks = 4000;
    for (int b = 0; b < blocks; b++) {
      source.normal(b, block);
      for (double x : block) {
        seen[(int) Math.min(199, 200 * NORMAL.cumulativeProbability(x))]++;
      }
    }
    double expected = blocks * 500.0 / 200;
    double statistic = 0;
    for (long count : seen) {
      statistic += (count - expected) * (count - expected) / expected;
    }
    double z = (Math.cbrt(statistic / 199) - (1 - 2.0 / (9 * 199))) / Math.sqrt(2.0 / (9 * 199));
    assertThat(z).isBetween(-3.3, 3.3);
  }

  /** Beyond the lowest layer: 2·(1 − Φ(R)) = 2.6e-4 of all, and of those the tail's own shape. */
  @Test
  void theTailHasItsShareAndItsShape() {
    double[] block = new double[500];
    ErrorSource source = RandomStreams.of("ziggurat").source("tail");
    int beyond = 0;
    int far = 0;
    int blocks = 20_000;
    for (int b = 0; b < blocks; b++) {
      source.normal(b, block);
      for (double x : block) {
        beyond += Math.abs(x) > NormalZiggurat.TAIL ? 1 : 0;
        far += Math.abs(x) > 4 ? 1 : 0;
      }
    }
    double n = blocks * 500.0;
    assertPoisson(beyond, 2 * n * NORMAL.survivalProbability(NormalZiggurat.TAIL));
    assertPoisson(far, 2 * n * NORMAL.survivalProbability(4));
  }

  private static void assertPoisson(int seen, double expected) {
    assertThat((double) seen).isCloseTo(expected, within(3.3 * Math.sqrt(expected)));
  }

  @Test
  void neighbouringNumbersAndBlocksAreUncorrelated() {
    double[] block = new double[500];
    double[] next = new double[500];
    ErrorSource source = RandomStreams.of("ziggurat").source("pairs");
    double inside = 0;
    double across = 0;
    double squares = 0;
    int blocks = 2000;
    for (int b = 0; b < blocks; b++) {
      source.normal(b, block);
      source.normal(b + 1, next);
      for (int d = 0; d + 1 < 500; d++) {
        inside += block[d] * block[d + 1];
        across += block[d] * next[d];
        squares += block[d] * block[d] * block[d + 1] * block[d + 1];
      }
    }
    double limit = 3.3 / Math.sqrt(blocks * 499.0);
    double n = blocks * 499.0;
    assertThat(inside / n).isBetween(-limit, limit);
    assertThat(across / n).isBetween(-limit, limit);
    assertThat(squares / n).isCloseTo(1, within(3.3 * Math.sqrt(8 / n)));
  }
}
