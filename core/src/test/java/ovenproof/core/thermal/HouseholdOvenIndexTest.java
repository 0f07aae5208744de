package ovenproof.core.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Formula of (EU) 66/2014, Annex II: SEC = 0.0042 V + 0.55 in kWh, two decimals; index 100 E / SEC,
 * one decimal (65/2014, Annex II). Values worked by hand from the published formula.
 */
class HouseholdOvenIndexTest {

  @ParameterizedTest
  @CsvSource({"20, 0.63", "35, 0.70", "65, 0.82", "71, 0.85", "100, 0.97"})
  void theStandardFollowsTheVolume(double litre, double kilowattHour) {
    assertThat(HouseholdOvenIndex.standardKilowattHour(litre)).isEqualTo(kilowattHour);
  }

  @ParameterizedTest
  @CsvSource({"0.79, 65, 96.3", "0.82, 65, 100.0", "0.69, 71, 81.2"})
  void theIndexIsTheShareOfTheStandard(double kilowattHour, double litre, double index) {
    assertThat(HouseholdOvenIndex.index(kilowattHour, litre)).isEqualTo(index);
  }

  /** Published fiches of the EU product register (1302342, 1078583, one of two cavities). */
  @ParameterizedTest
  @CsvSource({"0.78, 65, 95.1", "0.76, 40, 105.6", "0.80, 70, 95.2"})
  void publishedFichesComeOut(double kilowattHour, double litre, double index) {
    assertThat(HouseholdOvenIndex.index(kilowattHour, litre)).isEqualTo(index);
  }

  /**
   * Useful heat in the wetted brick is about 0.08 kWh: a small cavity on the standard uses an
   * eighth.
   */
  @Test
  void aSmallCavityExactlyOnTheStandardPutsAboutAnEighthIntoTheLoad() {
    double wettedBrickKilowattHour = (1.05 * 4186 + 0.92 * 850) * 55 / 3.6e6;
    double share = wettedBrickKilowattHour / HouseholdOvenIndex.standardKilowattHour(20);
    assertThat(share).isBetween(0.12, 0.13);
  }

  @Test
  void nothingIsComputedForACavityWithoutVolume() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> HouseholdOvenIndex.standardKilowattHour(0))
        .withMessageContaining("volumeLitre");
  }
}
