package ovenproof.core.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import ovenproof.core.quantity.Unit;
import ovenproof.core.safety.CoreSafety.Record;
import ovenproof.core.safety.CoreSafety.State;
import ovenproof.core.trace.Trace;

class LethalityTest {

  private static Trace hold(double celsius, double seconds) {
    int n = 201;
    double[] t = new double[n];
    double[] v = new double[n];
    for (int i = 0; i < n; i++) {
      t[i] = seconds * i / (n - 1);
      v[i] = celsius;
    }
    return new Trace("core", t, v, Unit.CELSIUS);
  }

  /** UK Food Standards Agency pairs; F70 in minutes as this program's two slopes value them. */
  @ParameterizedTest
  @CsvSource({"60, 45, 0.97", "65, 10, 1.47", "70, 2, 2.00", "75, 0.5, 2.00", "80, 0.1, 1.60"})
  void publishedPairsAreValuedOnTheCautiousSide(double celsius, double minutes, double f70) {
    assertThat(Lethality.seconds(hold(celsius, 60 * minutes), 0) / 60)
        .isCloseTo(f70, within(0.006));
  }

  /** 10^(2/6) = 2.15: a probe 2 K high below 70 °C more than doubles what was really done. */
  @Test
  void twoKelvinOfUncertaintyCostMoreThanHalf() {
    double without = Lethality.seconds(hold(66, 600), 0);
    double with = Lethality.seconds(hold(66, 600), 2);
    assertThat(without / with).isCloseTo(2.1544, within(1e-3));
  }

  @Test
  void nothingCountsBelowSixty() {
    assertThat(Lethality.seconds(hold(59.99, 36_000), 0)).isZero();
  }

  /**
   * USDA FSIS, Cooking Guideline (Revised Appendix A), December 2021, Table 3. A table is tested as
   * a table: hotter never takes longer, and where a hold is printed (at 70 °C and below 7 min are
   * asked of the fattest bird) it is never instantaneous below 165 °F.
   */
  @ParameterizedTest
  @CsvFileSource(resources = "fsis_chicken_7log_time_temperature.csv", numLinesToSkip = 1)
  void everyRowOfTheChickenTableGrowsMoreLethalWithTemperature(
      double fahrenheit, double printed, double fat, String time, String unit, double seconds) {
    double celsius = (fahrenheit - 32) * 5 / 9;
    assertThat(celsius).isCloseTo(printed, within(0.11));
    assertThat(Lethality.rate(celsius + 0.5)).isGreaterThanOrEqualTo(Lethality.rate(celsius));
  }

  /** Same document, Table 2: the slope of the meat column is z = 10 °F (5.6 K), below our 6.0. */
  @ParameterizedTest
  @CsvSource({"146, 156"})
  void slopeBelowSeventyIsGentlerThanTheMeatTable(double lowFahrenheit, double highFahrenheit) {
    double ratio =
        Lethality.rate((highFahrenheit - 32) / 1.8) / Lethality.rate((lowFahrenheit - 32) / 1.8);
    assertThat(ratio).isLessThan(10).isGreaterThan(7);
  }

  @Test
  void coldestProbeDecides() {
    List<Trace> cores = List.of(hold(75, 300), hold(68, 300), hold(74, 300));
    CoreSafety judged =
        CoreSafety.judge(new Criterion.EquivalentTime(120), cores, 0, Record.FINISHED);
    assertThat(judged.lethalitySeconds()).isCloseTo(300 * Math.pow(10, -2 / 6.0), within(0.01));
    assertThat(judged.state()).isEqualTo(State.REACHED);
  }

  @Test
  void whatOnlyTheUncertaintyForbidsIsNotShown() {
    Criterion floor = new Criterion.FloorWithRest(73.9, 0);
    assertThat(CoreSafety.judge(floor, List.of(hold(74.5, 60)), 1.5, Record.FINISHED).state())
        .isEqualTo(State.NOT_SHOWN);
    assertThat(CoreSafety.judge(floor, List.of(hold(76, 60)), 1.5, Record.FINISHED).state())
        .isEqualTo(State.REACHED);
    assertThat(CoreSafety.judge(floor, List.of(hold(70, 60)), 1.5, Record.FINISHED).state())
        .isEqualTo(State.NOT_REACHED);
    assertThat(CoreSafety.judge(floor, List.of(hold(70, 60)), 1.5, Record.RUNNING).state())
        .isEqualTo(State.NOT_YET);
    assertThat(CoreSafety.judge(floor, List.of(), 1.5, Record.FINISHED).state())
        .isEqualTo(State.NOT_SHOWN);
  }

  @Test
  void floorWithoutItsRestIsNotEnough() {
    Criterion floor = new Criterion.FloorWithRest(62.8, 180);
    assertThat(CoreSafety.judge(floor, List.of(hold(65, 170)), 1, Record.FINISHED).state())
        .isEqualTo(State.NOT_REACHED);
    assertThat(CoreSafety.judge(floor, List.of(hold(65, 181)), 1, Record.FINISHED).state())
        .isEqualTo(State.REACHED);
  }

  @Test
  void handThermometerNeedsThreeNamedPlacesAndATimedRest() {
    Criterion.FloorWithRest floor = new Criterion.FloorWithRest(62.8, 180);
    var two =
        List.of(
            new HandThermometer.Place("thick end", 66), new HandThermometer.Place("middle", 66));
    var three = List.of(two.get(0), two.get(1), new HandThermometer.Place("bone", 64.5));
    assertThat(new HandThermometer(two, 1, 180).judge(floor).state()).isEqualTo(State.NOT_SHOWN);
    assertThat(new HandThermometer(three, 1, 180).judge(floor).state()).isEqualTo(State.REACHED);
    assertThat(new HandThermometer(three, 2, 180).judge(floor).state()).isEqualTo(State.NOT_SHOWN);
    assertThat(new HandThermometer(three, 1, Double.NaN).judge(floor).state())
        .isEqualTo(State.NOT_SHOWN);
  }

  /** USDA FSIS chart: a floor in °C is never below the floor in °F. */
  @Test
  void floorsInCelsiusAreRoundedUp() {
    for (PublishedFloor floor : PublishedFloor.all()) {
      if (!Double.isNaN(floor.fahrenheit())) {
        assertThat(floor.celsius()).isGreaterThanOrEqualTo((floor.fahrenheit() - 32) / 1.8 - 1e-9);
      }
    }
  }
}
