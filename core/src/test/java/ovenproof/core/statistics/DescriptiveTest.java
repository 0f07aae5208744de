package ovenproof.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DescriptiveTest {

  /**
   * Certified values of NIST StRD, univariate summary statistics. The digits asked for are what
   * decimal inputs rounded to binary allow: numacc3 and numacc4 lose the rest before any
   * arithmetic.
   */
  @ParameterizedTest
  @CsvSource({
    "lew,      -177.435,         277.332168044316,     15, 14.9",
    "lottery,  518.958715596330, 291.699727470969,     14.5, 14.5",
    "mavro,    2.001856,         0.000429123454003053, 15, 12.9",
    "michelso, 299.8524,         0.0790105478190518,   15, 13.5",
    "numacc1,  10000002,         1,                    15, 15",
    "numacc2,  1.2,              0.1,                  15, 14.5",
    "numacc3,  1000000.2,        0.1,                  15, 9.4",
    "numacc4,  10000000.2,       0.1,                  15, 8.2",
  })
  void certifiedMeansAndDeviationsAreReached(
      String set, double mean, double deviation, double meanDigits, double deviationDigits) {
    Descriptive found =
        Descriptive.of(ReferenceData.read("statistics/strd/" + set + ".csv").numbers("y"));
    assertThat(ReferenceData.digits(found.mean(), mean)).isGreaterThanOrEqualTo(meanDigits);
    assertThat(ReferenceData.digits(found.standardDeviation(), deviation))
        .isGreaterThanOrEqualTo(deviationDigits);
  }

  @Test
  void oneNumberHasNoDeviation() {
    Descriptive one = Descriptive.of(7);
    assertThat(one.mean()).isEqualTo(7);
    assertThat(one.standardDeviation()).isNaN();
    assertThat(one.standardError()).isNaN();
  }

  @Test
  void equalNumbersHaveDeviationZero() {
    assertThat(Descriptive.of(0.1, 0.1, 0.1).standardDeviation()).isZero();
  }

  @Test
  void noNumbersAndNotANumberAreRefused() {
    assertThatThrownBy(Descriptive::of).hasMessageContaining("at least one");
    assertThatThrownBy(() -> Descriptive.of(1, Double.NaN)).hasMessageContaining("values[1]");
  }

  @Test
  void shiftingShiftsTheMeanAndLeavesTheDeviation() {
    java.util.Random random = new java.util.Random(20260101);
    for (int round = 0; round < 200; round++) {
      double[] values = random.doubles(2 + random.nextInt(20), 0, 10).toArray();
      double shift = random.nextInt(1000);
      double[] shifted = java.util.Arrays.stream(values).map(v -> v + shift).toArray();
      assertThat(Descriptive.of(shifted).mean())
          .isCloseTo(
              Descriptive.of(values).mean() + shift, org.assertj.core.data.Offset.offset(1e-11));
      assertThat(Descriptive.of(shifted).standardDeviation())
          .isCloseTo(
              Descriptive.of(values).standardDeviation(),
              org.assertj.core.data.Offset.offset(1e-11));
    }
  }
}
