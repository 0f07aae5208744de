package ovenproof.kitchen.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import ovenproof.core.colour.Lab;

class BrowningKineticsTest {

  /**
   * B. Zanoni, C. Peri, D. Bruno 1995, Lebensm.-Wiss. u.-Technol. 28, 604–609: k0 42 000 s⁻¹, Ea 64
   * 151 J/mol, limit 52; table worked out from them with R = 8.314.
   */
  @ParameterizedTest
  @CsvSource({
    "140, 3.25336021e-04, 4.8354, 16.8072",
    "165, 9.44333838e-04, 12.8287, 35.2559",
    "185, 2.03702054e-03, 23.7770, 47.4876",
    "210, 4.86925413e-03, 39.9331, 51.8492",
    "250, 1.65109497e-02, 51.6329, 52.0000"
  })
  void theRateAndTheDifferenceAreThoseOfThePaper(
      double celsius, double perSecond, double after300, double after1200) {
    assertThat(BrowningKinetics.exactRate(celsius)).isCloseTo(perSecond, within(1e-8));
    assertThat(BrowningKinetics.differenceAfter(300, celsius)).isCloseTo(after300, within(1e-4));
    assertThat(BrowningKinetics.differenceAfter(1200, celsius)).isCloseTo(after1200, within(1e-4));
  }

  /** Linear reading between quarter kelvins loses next to nothing. */
  @Test
  void theTableOfRatesFollowsTheFormula() {
    for (double t = 20; t < 300; t += 0.37) {
      double exact = BrowningKinetics.exactRate(t);
      assertThat(BrowningKinetics.ratePerSecond(t)).isCloseTo(exact, within(1e-4 * exact));
    }
  }

  /** The path through colours keeps the meaning of browning: share of a difference of 52. */
  @Test
  void theColourDifferenceFromRawGrowsInProportionToBrowning() {
    Lab raw = CrustColour.BREAD.at(0);
    for (double x = 0.1; x <= 1; x += 0.05) {
      Lab now = CrustColour.BREAD.at(x);
      double dL = now.lightness() - raw.lightness();
      double da = now.a() - raw.a();
      double db = now.b() - raw.b();
      double difference = Math.sqrt(dL * dL + da * da + db * db);
      assertThat(difference).isCloseTo(BrowningKinetics.LIMIT * x, within(3.0));
    }
  }

  @Test
  void everyCrustGetsDarkerAllTheWay() {
    for (CrustColour colour :
        new CrustColour[] {
          CrustColour.BREAD,
          CrustColour.CAKE,
          CrustColour.FLATBREAD,
          CrustColour.BREADCRUMB,
          CrustColour.POULTRY
        }) {
      for (double x = 0.01; x <= 1; x += 0.01) {
        assertThat(colour.at(x).lightness()).isLessThan(colour.at(x - 0.01).lightness());
      }
    }
  }
}
