package ovenproof.core.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Exact factors: A. Thompson, B. N. Taylor, NIST SP 811 (2008), appendix B.8 (printed factors from
 * memory, each re-derived from its definition). Temperatures: exact definition of the degree
 * Fahrenheit.
 */
class UnitConversionTest {

  @ParameterizedTest
  @CsvSource({
    "POUND, KILOGRAM, 0.45359237",
    "OUNCE, GRAM, 28.349523125",
    "INCH, CENTIMETRE, 2.54",
    "CUBIC_FOOT, LITRE, 28.316846592",
    "QUART, LITRE, 0.946352946",
    "WATT_HOUR, JOULE, 3600",
    "KILOWATT_HOUR, JOULE, 3600000",
    "FAHRENHEIT_DIFFERENCE, KELVIN, 0.5555555555555556",
    "KILOWATT, WATT, 1000",
    "HOUR, SECOND, 3600",
  })
  void factorsAreTheExactOnes(Unit from, Unit to, double factor) {
    assertThat(Quantity.of(1, from).to(to).value()).isCloseTo(factor, within(factor * 1e-15));
  }

  @ParameterizedTest
  @CsvSource({
    "-40, -40",
    "0, -17.7777777778",
    "32, 0",
    "140, 60",
    "145, 62.7777777778",
    "165, 73.8888888889",
    "350, 176.6666666667",
    "446, 230"
  })
  void fahrenheitConvertsByItsDefinition(double fahrenheit, double celsius) {
    assertThat(Quantity.of(fahrenheit, Unit.FAHRENHEIT).to(Unit.CELSIUS).value())
        .isCloseTo(celsius, within(1e-10));
    assertThat(Quantity.of(celsius, Unit.CELSIUS).to(Unit.FAHRENHEIT).value())
        .isCloseTo(fahrenheit, within(1e-9));
  }

  @Test
  void aDifferenceNeverGains32() {
    assertThat(Quantity.of(10, Unit.KELVIN).to(Unit.FAHRENHEIT_DIFFERENCE).value())
        .isCloseTo(18.0, within(1e-12));
    assertThatThrownBy(() -> Quantity.of(10, Unit.KELVIN).to(Unit.CELSIUS))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest
  @CsvSource({
    "HALF_UP, 2.675, 2, 2.68",
    "HALF_UP, 0.25, 1, 0.3",
    "HALF_UP, -0.25, 1, −0.3",
    "HALF_UP, -0.04, 1, 0.0",
    "FLOOR_UP, 73.8888888889, 0, 74",
    "FLOOR_UP, 62.7777777778, 0, 63",
    "FLOOR_UP, 74.00000000001, 0, 74",
    "LIMIT_DOWN, 90.7, 0, 90",
  })
  void publishedDigitsAreDecidedOnDecimals(
      Rounding rounding, double value, int places, String text) {
    assertThat(rounding.text(value, places)).isEqualTo(text);
  }
}
