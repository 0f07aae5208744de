package ovenproof.kitchen.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import ovenproof.kitchen.bench.Ovens;
import ovenproof.kitchen.physics.Cavity.Demand;
import ovenproof.kitchen.physics.Cavity.Door;
import ovenproof.kitchen.physics.Cavity.FoodHeat;

class CavityTest {

  /** P ∝ V² for a resistive heater: 2000 W at 230 V (definition; IEC voltages). */
  @ParameterizedTest
  @CsvSource({"207, 1620.0", "220, 1829.8677", "240, 2177.6938", "253, 2420.0"})
  void powerGoesWithTheSquareOfTheVoltage(double volts, double watts) {
    assertThat(Mains.watts(2000, volts)).isCloseTo(watts, within(1e-3));
  }

  /**
   * One body: T = T0 + P/UA (1 − e^(−t/τ)); fractions of the step after 1, 2, 3 τ (closed form).
   */
  @Test
  void anOvenOfOneNodeHeatsLikeTheTextbooksLump() {
    Oven lump =
        new Oven(
            "lump",
            "Lump",
            new Oven.Cabinet(20, 5000, 1, 1e-9, 1e-9, 5, 0.3),
            new Oven.Heater(1000, 1000, 1, 0, 0.5, 1),
            new Oven.Thermostat(Oven.Thermostat.Control.HYSTERESIS, 0, 5, 10, 0, 0),
            new HeatField(0, 0, 0, 0, 0, 1, 0),
            new Oven.Airflow(10),
            new Oven.ToastProgram(300, 20, Oven.ToastProgram.ResidualHeat.IGNORED));
    Cavity cavity = new Cavity(lump, 20);
    double[] fractions = {0.63212056, 0.86466472, 0.95021293};
    for (double fraction : fractions) {
      heat(cavity, 1000);
      assertThat((cavity.air() - 20) / 200).isCloseTo(fraction, within(0.001));
    }
  }

  private static void heat(Cavity cavity, int seconds) {
    for (int i = 0; i < 2 * seconds; i++) {
      cavity.step(0.5, Demand.FULL, 0, 230, 20, Door.SHUT, FoodHeat.NONE);
    }
  }

  /** The network's resistances in closed form against three hours at full power. */
  @Test
  void fullPowerEndsAtTheHighestRiseOfTheNetwork() {
    for (Oven oven : Ovens.all()) {
      Cavity cavity = new Cavity(oven, 20);
      heat(cavity, 10 * 3600);
      double rise = oven.highestRiseKelvin(230);
      assertThat(cavity.air() - 20).as(oven.id()).isCloseTo(rise, within(0.005 * rise));
    }
  }

  /** ΔT∞ ∝ V²: the weak oven loses a tenth of its reach when the mains lose 5 %. */
  @Test
  void lowMainsLowerTheCeilingWithTheSquareOfTheVoltage() {
    Oven oven = Ovens.all().get(0);
    double ratio = oven.highestRiseKelvin(218.5) / oven.highestRiseKelvin(230);
    assertThat(ratio).isCloseTo(0.9025, within(1e-9));
  }

  /** What goes in either stays or leaves: energy balance over an hour. */
  @Test
  void energyIsKept() {
    Oven oven = Ovens.all().get(2);
    Cavity cavity = new Cavity(oven, 21);
    double in = 0;
    double out = 0;
    for (int i = 0; i < 7200; i++) {
      out += 0.5 * oven.cabinet().lossWattsPerKelvin() * (cavity.wall() - 21);
      out += 0.5 * oven.cabinet().leakWattsPerKelvin() * (cavity.air() - 21);
      cavity.step(0.5, Demand.HOLD, 200, 230, 21, Door.SHUT, FoodHeat.NONE);
      in += 0.5 * cavity.drawnWatts();
    }
    double stored =
        oven.cabinet().airHeatCapacity() * (cavity.air() - 21)
            + oven.cabinet().wallHeatCapacity() * (cavity.wall() - 21);
    double inElements = oven.heater().lagSeconds() * oven.heater().ratedWatts();
    assertThat(in - out - stored).isBetween(-0.1 * inElements, 1.1 * inElements);
  }

  @Test
  void theFactorySetsEveryDialAsOrdered() {
    for (Oven oven : Ovens.all()) {
      double expected =
          switch (oven.id()) {
            case "alder", "hornbeam" -> 231;
            case "siskin" -> 226;
            case "rowan" -> 233;
            case "plover" -> 248;
            case "whimbrel" -> 232;
            case "dunnock" -> 223;
            default -> Double.NaN;
          };
      if (!Double.isNaN(expected)) {
        double steady = Factory.steadyAir(oven, 230, 230);
        assertThat(steady).as(oven.id()).isCloseTo(expected, within(1.0));
      }
    }
  }
}
