package ovenproof.core.thermocouple;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/**
 * Expected values: NIST Monograph 175 (ITS-90 thermocouple reference functions) and IAPWS
 * R7-97(2012) with the ISO 2533 atmosphere, computed from the published coefficients independently
 * of this program; the three-decimal column is the printed table.
 */
class ReferenceTablesTest {

  @ParameterizedTest
  @CsvFileSource(resources = "its90_thermocouple_checkpoints.csv", numLinesToSkip = 1)
  void forcesAndTheirInverseAreThoseOfTheTables(
      ThermocoupleType type,
      double celsius,
      double millivolt,
      double printed,
      String status,
      double back) {
    assertThat(type.millivolt(celsius)).isCloseTo(millivolt, within(1e-6));
    assertThat(type.millivolt(celsius)).isCloseTo(printed, within(0.00051));
    assertThat(type.celsius(millivolt)).isCloseTo(back, within(1e-4));
    assertThat(type.celsius(millivolt)).isCloseTo(celsius, within(0.06));
  }

  @ParameterizedTest
  @CsvFileSource(resources = "its90_thermocouple_kitchen_points.csv", numLinesToSkip = 1)
  void kitchenTemperaturesComeBack(
      ThermocoupleType type, double celsius, double millivolt, double back) {
    assertThat(type.millivolt(celsius)).isCloseTo(millivolt, within(1e-6));
    assertThat(type.celsius(millivolt)).isCloseTo(back, within(1e-4));
  }

  @ParameterizedTest
  @CsvFileSource(resources = "its90_cold_junction.csv", numLinesToSkip = 1)
  void forcesAddAndTemperaturesDoNot(
      ThermocoupleType type,
      double measured,
      double reference,
      double referenceForce,
      double total,
      double inverse,
      double exact,
      double wrong) {
    assertThat(type.celsius(measured, reference)).isCloseTo(inverse, within(1e-3));
    assertThat(type.celsius(measured) + reference).isCloseTo(wrong, within(1e-2));
  }

  @ParameterizedTest
  @CsvFileSource(resources = "water_boiling_vs_altitude.csv", numLinesToSkip = 1)
  void waterBoilsLowerUpTheMountain(double metres, double pascal, double celsius) {
    assertThat(BoilingPoint.pascalAtAltitude(metres)).isCloseTo(pascal, within(0.06));
    assertThat(BoilingPoint.celsiusAtAltitude(metres)).isCloseTo(celsius, within(1e-3));
  }

  @ParameterizedTest
  @CsvFileSource(resources = "water_boiling_vs_pressure.csv", numLinesToSkip = 1)
  void saturationFollowsTheIndustrialFormulation(double kilopascal, double celsius) {
    assertThat(BoilingPoint.celsiusAtPressure(1000 * kilopascal)).isCloseTo(celsius, within(1e-3));
  }
}
