package ovenproof.core.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuantityParserTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "230 °C|TEMPERATURE|230",
        "230°C|TEMPERATURE|230",
        "230C|TEMPERATURE|230",
        "446 °F|TEMPERATURE|230",
        "-18 °C|TEMPERATURE|-18",
        "−18 °C|TEMPERATURE|-18",
        "12 min 30 s|TIME|750",
        "12min30s|TIME|750",
        "12:30|TIME|750",
        "1:02:30|TIME|3750",
        "1 h 5 min|TIME|3900",
        "90 s|TIME|90",
        "1.5 h|TIME|5400",
        "38 g|MASS|38",
        "1,5 kg|MASS|1500",
        "1 lb 4 oz|MASS|566.99046250",
        "12 in|LENGTH|304.8",
        "5 K|TEMPERATURE_DIFFERENCE|5",
        "12 %|RATIO|12",
        "0.12|RATIO|12",
        "4|COUNT|4",
        "7.5|POINTS|7.5",
        "450 Wh|ENERGY|0.45",
        "0.45 kWh|ENERGY|0.45",
        "1.8 kW|POWER|1800",
      })
  void readsWhatPeopleWrite(String text, Dimension dimension, double contract) {
    assertThat(QuantityParser.parse(text, dimension).contract()).isCloseTo(contract, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2o0 °C|TEMPERATURE",
        "230|TEMPERATURE",
        "5 °C|TEMPERATURE_DIFFERENCE",
        "5 K|TEMPERATURE",
        "1,500 g|MASS",
        "12 parsecs|TIME",
        "30 s 12 min|TIME",
        "10 °C 5 °C|TEMPERATURE",
        "''|TIME",
        "fast|TIME",
        "NaN s|TIME",
        "1e400 s|TIME",
      })
  void refusesWhatItCannotBeSureOf(String text, Dimension dimension) {
    assertThatThrownBy(() -> QuantityParser.parse(text, dimension))
        .isInstanceOf(QuantityFormatException.class)
        .hasMessageContaining("expected");
  }

  @Test
  void aDifferenceInFahrenheitStepsIsSaidToBeWrittenInKelvin() {
    assertThatThrownBy(() -> QuantityParser.parse("18 °F", Dimension.TEMPERATURE_DIFFERENCE))
        .hasMessageContaining("written in K");
  }

  @Test
  void aToleranceTakesTheUnitBeforeIt() {
    ToleratedQuantity mass = QuantityParser.parseTolerated("38 g ± 2", Dimension.MASS);
    assertThat(mass.tolerance().contract()).isEqualTo(2.0);
    assertThat(mass.allows(Quantity.of(40, Unit.GRAM))).isTrue();
    assertThat(mass.allows(Quantity.of(40.1, Unit.GRAM))).isFalse();
  }

  @Test
  void aTemperatureToleranceInFahrenheitIsADifference() {
    ToleratedQuantity t = QuantityParser.parseTolerated("350 °F ± 5 °F", Dimension.TEMPERATURE);
    assertThat(t.tolerance().unit().dimension()).isEqualTo(Dimension.TEMPERATURE_DIFFERENCE);
    assertThat(t.tolerance().contract()).isCloseTo(25.0 / 9, within(1e-12));
  }

  @Test
  void readingDoesNotDependOnTheMachinesLanguage() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("tr-TR"));
      assertThat(QuantityParser.parse("12 MIN", Dimension.TIME).contract()).isEqualTo(720);
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void whatIsWrittenIsReadBack() {
    for (Unit unit : Unit.values()) {
      if (unit == Unit.KELVIN_ABSOLUTE || unit == Unit.FAHRENHEIT_DIFFERENCE) {
        continue;
      }
      Quantity quantity = Quantity.of(12.5, unit);
      assertThat(QuantityParser.parse(quantity.toString(), unit.dimension()).contract())
          .as(unit.symbol())
          .isCloseTo(quantity.contract(), within(1e-12));
    }
  }
}
