package ovenproof.core.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import ovenproof.core.quantity.Unit;

/** A needle on its way in or out says nothing of the food. */
class FoodContactTest {

  private static Trace record(double seconds, DoubleUnaryOperator celsius) {
    int n = (int) (seconds / 2);
    double[] t = new double[n];
    double[] v = new double[n];
    for (int i = 0; i < n; i++) {
      t[i] = 2.0 * i;
      v[i] = celsius.applyAsDouble(t[i]);
    }
    return new Trace("core-1", t, v, Unit.CELSIUS);
  }

  private static double core(double seconds) {
    return 80 - 76 * Math.exp(-seconds / 1500);
  }

  @Test
  void theHotAirBeforeTheFoodIsLeftOut() {
    // 30 s in oven air of 180 °C, then the needle takes the food's temperature with τ = 4 s.
    Trace record = record(3000, t -> t < 30 ? 180 : core(t - 30) + 176 * Math.exp(-(t - 30) / 4));
    Trace food = FoodContact.of(record);
    assertThat(Highest.of(food)).isLessThan(80);
    assertThat(food.seconds()[0]).isBetween(40.0, 80.0);
  }

  @Test
  void theHotAirAfterTheFoodIsLeftOut() {
    Trace record =
        record(
            3000, t -> t < 2980 ? core(t) : 180 - (180 - core(2980)) * Math.exp(-(t - 2980) / 4));
    assertThat(Highest.of(FoodContact.of(record))).isLessThan(core(2985) + 0.5);
  }

  @Test
  void aCoreThatWarmsInPeaceIsKeptWhole() {
    Trace record = record(3000, FoodContactTest::core);
    assertThat(FoodContact.of(record).size()).isEqualTo(record.size());
  }

  @Test
  void theRestAfterTheOvenIsFood() {
    // Carry-over and cooling: the peak lies in the rest and is kept.
    Trace record = record(3000, t -> t < 2400 ? core(t) : core(2400) - (t - 2400) / 200);
    assertThat(Highest.of(FoodContact.of(record))).isGreaterThan(core(2390));
  }

  @Test
  void nothingStaysNothing() {
    Trace none = new Trace("core-1", new double[0], new double[0], Unit.CELSIUS);
    assertThat(FoodContact.of(none).size()).isZero();
  }
}
