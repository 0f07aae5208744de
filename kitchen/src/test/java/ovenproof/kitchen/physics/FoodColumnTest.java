package ovenproof.kitchen.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import ovenproof.kitchen.physics.FoodColumn.Heating;

class FoodColumnTest {

  private static final Dough DRY = new Dough(500, 1e-9, 2000, 0.5, 0.5, 0, 1, Dough.Frozen.NO);

  /**
   * Plane wall, both faces suddenly at 100 °C: middle at Fo = 0.5 of half thickness is 1 − (4/π)
   * e^(−π²Fo/4); the next term is 0.0005 % (F. P. Incropera and others, one-term solution, from
   * memory; closed form).
   */
  @Test
  void conductionFollowsThePlaneWall() {
    FoodColumn slab = new FoodColumn(DRY, 0.02, 41, 0);
    FoodColumn.Taken taken = new FoodColumn.Taken();
    double diffusivity = 0.5 / (500 * 2000);
    double seconds = 0.5 * 0.01 * 0.01 / diffusivity;
    Heating firm = Heating.contact(100, 2 * 0.5 / (0.02 / 41));
    for (double t = 0; t < seconds; t += 0.05) {
      slab.step(0.05, firm, firm, taken);
    }
    double expected = 100 * (1 - 4 / Math.PI * Math.exp(-Math.PI * Math.PI * 0.5 / 4));
    assertThat(slab.coreCelsius()).isCloseTo(expected, within(0.6));
  }

  /** Heat given = heat stored + water boiled away × 2 257 kJ/kg. */
  @Test
  void heatIsEitherStoredOrBoiledAway() {
    FoodColumn bread = new FoodColumn(Dough.SANDWICH_BREAD, 0.012, 12, 20);
    FoodColumn.Taken taken = new FoodColumn.Taken();
    Heating hot = new Heating(230, 20, 230, 3000);
    double given = 0;
    double before = bread.storedJoule();
    for (int i = 0; i < 600; i++) {
      bread.step(0.5, hot, hot, taken);
      given += taken.fromAir + taken.fromWall + taken.direct;
    }
    double gone = bread.lostKilogramPerSquareMetre();
    // water that leaves takes its sensible heat (at most 100 °C) with it
    double spent = bread.storedJoule() - before + gone * FoodColumn.EVAPORATION;
    assertThat(given - spent).isBetween(0.0, gone * 4_180 * 100 * 1.001);
    assertThat(gone).isGreaterThan(0.1);
  }

  /**
   * Latent heat of water at 100 °C, 2 257 kJ/kg or 0.63 Wh per gram (steam tables, from memory).
   */
  @Test
  void aGramOfWaterCosts063WattHours() {
    assertThat(FoodColumn.EVAPORATION / 1000 / 3600).isCloseTo(0.627, within(0.001));
  }

  /** Saturated vapour at 40 and 80 °C: 0.0511 and 0.2933 kg/m³ (steam tables, from memory). */
  @Test
  void vapourIsAsDenseAsTheTablesSay() {
    assertThat(FoodColumn.vapourDensity(40)).isCloseTo(0.0511, within(0.0005));
    assertThat(FoodColumn.vapourDensity(80)).isCloseTo(0.2933, within(0.006));
  }

  @Test
  void wetCrustStaysAtBoilingAndDoesNotBrown() {
    FoodColumn cake = new FoodColumn(Dough.CAKE, 0.024, 12, 20);
    FoodColumn.Taken taken = new FoodColumn.Taken();
    Heating mild = new Heating(175, 20, 170, 0);
    for (int i = 0; i < 120; i++) {
      cake.step(0.5, mild, mild, taken);
    }
    assertThat(cake.topCelsius()).isLessThanOrEqualTo(100);
    assertThat(cake.topBrown()).isLessThan(0.001);
  }

  @Test
  void iceHoldsTheCoreUntilItHasMelted() {
    FoodColumn croquette = new FoodColumn(Dough.CROQUETTE, 0.0125, 10, -18);
    FoodColumn.Taken taken = new FoodColumn.Taken();
    Heating hot = new Heating(200, 20, 190, 0);
    double last = -18;
    int held = 0;
    for (int i = 0; i < 1200; i++) {
      croquette.step(0.5, hot, hot, taken);
      held += Math.abs(croquette.coreCelsius() + 1) < 0.6 ? 1 : 0;
      assertThat(croquette.coreCelsius()).isGreaterThan(last - 0.5);
      last = croquette.coreCelsius();
    }
    assertThat(held).isGreaterThan(60);
  }

  /**
   * Long cylinder with a firm surface: at Fo 0.3 the axis has 1 − 1.6021 e^(−5.783·0.3) of the step
   * (F. P. Incropera and others, Table 5.1, Bi → ∞, from memory).
   */
  @Test
  void theJointConductsLikeALongCylinder() {
    Dough meat = new Dough(1000, 1e-9, 3500, 0.5, 0.5, 0.9, 1, Dough.Frozen.NO);
    double radius = 0.034;
    Joint joint = new Joint(meat, radius, 0.17, 4);
    double diffusivity = 0.5 / (1000 * 3500);
    double seconds = 0.3 * radius * radius / diffusivity;
    for (double t = 0; t < seconds; t += 0.5) {
      double firm = 0.5 / (radius / 40) * (95 - joint.surfaceCelsius()) * joint.surface();
      joint.step(0.5, firm, 0);
    }
    double expected = 4 + 91 * (1 - 1.6021 * Math.exp(-5.783 * 0.3));
    assertThat(joint.at(0)).isCloseTo(expected, within(1.0));
  }
}
