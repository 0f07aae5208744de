package ovenproof.publish;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.QuantityParser;
import ovenproof.core.quantity.Rounding;
import ovenproof.core.quantity.Unit;
import ovenproof.publish.figure.Figures;

class FiguresTest {

  /**
   * Exact factors of NIST SP 811 (2008), appendix B.8; temperatures by its section B.8 formulas.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "165 °F | 165 °F (74 °C)",
        "350 °F | 350 °F (177 °C)",
        "230 °C | 230 °C (446 °F)",
        "5 K    | 5.0 K (9.0 °F difference)",
        "18 K   | 18 K (32 °F difference)",
        "38 g   | 38 g (1.3 oz)",
        "900 g  | 900 g (1.98 lb)",
        "1500 g | 1.50 kg (3.31 lb)",
        "12 mm  | 12 mm (0.47 in)",
        "254 mm | 254 mm (10.0 in)",
        "2 L    | 2.0 L (2.1 qt)",
        "20 L   | 20.0 L (0.71 cu ft)",
        "1 lb   | 1.00 lb (454 g)",
        "1800 W | 1800 W",
        "391 s  | 6 min 31 s",
        "3910 s | 1 h 5 min 10 s",
        "3600 s | 1 h",
        "3610 s | 1 h 10 s",
        "720 s | 12 min",
        "0.45 kWh | 0.45 kWh"
      })
  void aFigureIsConvertedOnceAndRoundedLast(String written, String printed) {
    Quantity quantity = QuantityParser.parseAny(written);
    assertThat(Figures.dual(quantity, Rounding.HALF_UP).toString().replace('\u00a0', ' '))
        .isEqualTo(printed);
  }

  /** 74.4 °C is 165.92 °F; through the printed 74 °C it would be 165. */
  @ParameterizedTest
  @CsvSource({"74.4, 166", "73.6, 164", "176.667, 350"})
  void theSecondSystemDoesNotComeFromThePrintedFirst(double celsius, String fahrenheit) {
    assertThat(Figures.dual(celsius, Unit.CELSIUS).second()).isEqualTo(fahrenheit + "\u00a0°F");
  }

  /**
   * One decimal of a colour is what a reader can see; near nothing there are not suddenly three.
   */
  @ParameterizedTest
  @CsvSource({"-0.024, 0.0 L*", "0.06, 0.1 L*", "-0.06, −0.1 L*", "13.44, 13.4 L*"})
  void aColourHasOneDecimal(double value, String printed) {
    assertThat(Figures.dual(value, Unit.LIGHTNESS).first().replace('\u00a0', ' '))
        .isEqualTo(printed);
  }

  /** USDA FSIS floors: 145, 160, 165 °F are 62.8, 71.1, 73.9 °C. */
  @ParameterizedTest
  @CsvSource({"145, 63", "160, 72", "165, 74"})
  void floorsAreRoundedUp(double fahrenheit, String celsius) {
    assertThat(Figures.dual(new Quantity(fahrenheit, Unit.FAHRENHEIT), Rounding.FLOOR_UP).second())
        .isEqualTo(celsius + "\u00a0°C");
  }

  /**
   * JCGM 100:2008, 7.2.6: at most two significant digits of the uncertainty (example 10.057 62 Ω).
   */
  @ParameterizedTest
  @CsvSource({
    "10.05762, 0.027, 10.058 ± 0.027 V",
    "215.94, 2.2, 215.9 ± 2.2 V",
    "391.2, 14, 391 ± 14 V"
  })
  void aValueEndsWhereItsUncertaintyEnds(double value, double u, String printed) {
    assertThat(Figures.withUncertainty(value, u, Unit.VOLT).replace('\u00a0', ' '))
        .isEqualTo(printed);
  }

  /** 0.000076 × 3600 = 0.2736 and 0.000064 × 3600 = 0.2304, by hand. */
  @Test
  void aDriftIsPrintedPerHour() {
    assertThat(Figures.withUncertainty(0.000076, 0.000064, Unit.KELVIN_PER_SECOND))
        .isEqualTo("0.27 ± 0.23\u00a0K/h");
    assertThat(Figures.uncertainty(0.000064, Unit.KELVIN_PER_SECOND)).isEqualTo("0.23\u00a0K/h");
    assertThat(Figures.text(0.000076, Unit.KELVIN_PER_SECOND)).isEqualTo("0.3\u00a0K/h");
  }
}
