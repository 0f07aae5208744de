package ovenproof.core.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class SavitzkyGolayTest {

  /**
   * Savitzky and Golay, Anal. Chem. 36, 1964, with the corrections of Steinier et al., 44, 1972.
   */
  @ParameterizedTest
  @CsvFileSource(resources = "savitzky_golay.csv", numLinesToSkip = 1)
  void weightsAreThePublishedIntegers(
      int derivative, int degree, int window, long norm, String integers) {
    double[] weights = SavitzkyGolay.of(window, degree, derivative).weights();
    String[] published = integers.strip().split(" ");
    for (int i = 0; i < weights.length; i++) {
      assertThat(weights[i]).isCloseTo(Double.parseDouble(published[i]) / norm, within(1e-9));
    }
  }

  @Test
  void parabolaIsLeftAlone() {
    double[] y = new double[40];
    for (int i = 0; i < y.length; i++) {
      y[i] = 0.1 * i * i - 3 * i + 20;
    }
    assertThat(SavitzkyGolay.of(11, 2, 0).smooth(y)).containsExactly(y, within(1e-9));
  }
}
