package ovenproof.core.repeatability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RepeatabilityTest {

  /**
   * 5 % column: National Measurement System, "Cochran test" (2009); 1 % column: van Belle, Fisher,
   * Heagerty and Lumley, Biostatistics, table of Cochran's test. Both agree with the F quantile.
   */
  @ParameterizedTest
  @CsvSource({
    "2, 2, 0.998, 0.9999",
    "2, 3, 0.975, 0.995",
    "2, 4, 0.939, 0.9794",
    "2, 5, 0.906, 0.9586"
  })
  void cochransCriticalValues(int groups, int size, double fivePercent, double onePercent) {
    assertThat(OutlierTests.cochranCritical(groups, size, 0.05))
        .isCloseTo(fivePercent, within(5e-4));
    assertThat(OutlierTests.cochranCritical(groups, size, 0.01))
        .isCloseTo(onePercent, within(5e-5));
  }

  /** One-sided 5 % and 1 %: Harvey, Analytical Chemistry, two-sided 5 % and 1 % there. */
  @ParameterizedTest
  @CsvSource({
    "3, 1.155, 1.155",
    "5, 1.715, 1.764",
    "8, 2.126, 2.274",
    "10, 2.290, 2.482",
    "14, 2.507, 2.755"
  })
  void grubbssCriticalValues(int n, double fivePercent, double onePercent) {
    assertThat(OutlierTests.grubbsCritical(n, 0.025)).isCloseTo(fivePercent, within(0.001));
    assertThat(OutlierTests.grubbsCritical(n, 0.005)).isCloseTo(onePercent, within(0.001));
  }

  @Test
  void theUraniumOutlierOfTheHandbook() {
    // NIST/SEMATECH e-Handbook 1.3.5.17.1 (Tietjen and Moore, 1972): G 2.4687, one-sided 2.032.
    double[] mass = {199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57};
    OutlierTests.Outlier outlier = OutlierTests.grubbs(mass, 0.05);
    assertThat(outlier.statistic()).isCloseTo(2.4687, within(1e-4));
    assertThat(outlier.index()).isEqualTo(7);
    assertThat(outlier.standsOut()).isTrue();
    assertThat(OutlierTests.grubbsCritical(8, 0.05)).isCloseTo(2.032, within(5e-4));
  }

  private static List<double[]> glucoseA() {
    // ASTM E691-99, table 1, glucose in serum, material A; laboratory 1 reads 41.03, 41.45, 41.37.
    return List.of(
        new double[] {41.03, 41.45, 41.37},
        new double[] {41.17, 42.00, 41.15},
        new double[] {41.01, 40.68, 42.66},
        new double[] {39.37, 42.37, 42.63},
        new double[] {41.88, 41.19, 41.32},
        new double[] {43.28, 40.50, 42.28},
        new double[] {41.08, 41.27, 39.02},
        new double[] {43.36, 42.65, 41.72});
  }

  @Test
  void repeatabilityAndReproducibilityOfGlucoseInSerum() {
    // ASTM E691-99 material A: mean 41.5183, s_r 1.0632, s_R 1.0632 (published, from memory;
    // computed 1.06322426295365), Cochran's C 0.362968887643887.
    Precision precision = Precision.of(glucoseA());
    assertThat(precision.mean()).isCloseTo(41.5183333333333, within(1e-9));
    assertThat(precision.repeatability()).isCloseTo(1.06322426295365, within(1e-9));
    assertThat(precision.between()).isZero();
    assertThat(precision.reproducibility()).isCloseTo(1.06322426295365, within(1e-9));
    assertThat(precision.repeatabilityLimit()).isCloseTo(2.97702793627022, within(1e-9));
    assertThat(OutlierTests.cochran(glucoseA(), 0.01).statistic())
        .isCloseTo(0.362968887643887, within(1e-9));
  }

  @Test
  void unequalCellsOfTheCoalExample() {
    // ISO 5725-2:1994 annex B.1, sulfur in coal, level 1 (from memory): 0.690, 0.015, 0.026.
    List<double[]> coal =
        List.of(
            new double[] {0.71, 0.71, 0.70, 0.71},
            new double[] {0.69, 0.67, 0.68},
            new double[] {0.66, 0.65, 0.69},
            new double[] {0.67, 0.65, 0.66},
            new double[] {0.70, 0.69, 0.66, 0.71, 0.69},
            new double[] {0.73, 0.74, 0.73},
            new double[] {0.71, 0.71, 0.69},
            new double[] {0.70, 0.65, 0.68});
    Precision precision = Precision.of(coal);
    assertThat(precision.mean()).isCloseTo(0.69037037037037, within(1e-9));
    assertThat(precision.repeatability()).isCloseTo(0.0151165066046962, within(1e-9));
    assertThat(precision.between()).isCloseTo(0.0215995546347233, within(1e-9));
    assertThat(precision.reproducibility()).isCloseTo(0.0263637920707212, within(1e-9));
  }

  @Test
  void endGaugeOfTheGuide() {
    // JCGM 100:2008 H.1: d from 5.8 (24), 3.9 (5), 6.7 (8) has u 9.7 nm and 25.6 degrees of
    // freedom; with 25 (18), 2.9 (50) and 16.6 (2) the length has u 32 nm, 16 degrees of freedom.
    CombinedUncertainty d =
        CombinedUncertainty.of(new double[] {5.8, 3.9, 6.7}, new double[] {24, 5, 8});
    assertThat(d.uncertainty()).isCloseTo(9.7, within(0.05));
    assertThat(d.degreesOfFreedom()).isCloseTo(25.4472507773627, within(1e-9));
    CombinedUncertainty length =
        CombinedUncertainty.of(
            new double[] {25, 9.68194195396771, 2.8867873148699, 16.5990270605019},
            new double[] {18, 25.4472507773627, 50, 2});
    assertThat(length.uncertainty()).isCloseTo(31.6638791110086, within(1e-9));
    assertThat(Math.floor(length.degreesOfFreedom())).isEqualTo(16);
    assertThat(length.degreesOfFreedom()).isCloseTo(16.7518557376272, within(1e-8));
  }

  @Test
  void fourNormalsAddToTwo() {
    // JCGM 101:2008, 9.2.2: four standard normals, 95 % interval ± 3.92.
    CombinedUncertainty sum =
        CombinedUncertainty.of(
            new double[] {1, 1, 1, 1},
            new double[] {
              Double.POSITIVE_INFINITY,
              Double.POSITIVE_INFINITY,
              Double.POSITIVE_INFINITY,
              Double.POSITIVE_INFINITY
            });
    assertThat(sum.halfWidth(0.95)).isCloseTo(3.91992796908011, within(1e-5));
  }

  @Test
  void poolingWeighsByDegreesOfFreedom() {
    PooledDeviation pooled =
        PooledDeviation.of(List.of(new double[] {1, 3}, new double[] {5}, new double[] {2, 4, 6}));
    // (1·2 + 2·4)/3.
    assertThat(pooled.deviation()).isCloseTo(Math.sqrt(10 / 3.0), within(1e-12));
    assertThat(pooled.degreesOfFreedom()).isEqualTo(3);
    assertThat(PooledDeviation.of(List.of(new double[] {5})).known()).isFalse();
    // χ² with 3 degrees: 5 % 0.3518, 95 % 7.8147 (table).
    assertThat(pooled.interval(0.9).low()).isCloseTo(Math.sqrt(10 / 7.8147), within(1e-4));
    assertThat(pooled.interval(0.9).high()).isCloseTo(Math.sqrt(10 / 0.3518), within(1e-3));
  }

  @Test
  void shrinkageFindsThePriorThatMadeTheSpreads() {
    // Variances from s0² d0/χ²(d0) with d0 = 8, s0 = 2: the moments find them again.
    Random random = new Random(7);
    List<double[]> field = new ArrayList<>();
    for (int p = 0; p < 4000; p++) {
      double chi = 0;
      for (int k = 0; k < 8; k++) {
        double z = random.nextGaussian();
        chi += z * z;
      }
      double sigma = 2 * Math.sqrt(8 / chi);
      field.add(random.doubles(4).map(u -> sigma * gaussian(u)).toArray());
    }
    ShrunkenDeviation shrunken = ShrunkenDeviation.of(field);
    assertThat(shrunken.prior()).isCloseTo(2, within(0.1));
    assertThat(shrunken.priorDegreesOfFreedom()).isBetween(6.0, 11.0);
    double own = PooledDeviation.of(List.of(field.get(0))).deviation();
    double pulled = shrunken.products().get(0).deviation();
    assertThat(Math.abs(pulled - shrunken.prior())).isLessThan(Math.abs(own - shrunken.prior()));
  }

  private static double gaussian(double uniform) {
    return ovenproof.core.statistics.Distributions.normalQuantile(uniform);
  }
}
