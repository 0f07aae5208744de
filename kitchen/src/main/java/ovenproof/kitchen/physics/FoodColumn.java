package ovenproof.kitchen.physics;

/**
 * A square metre of food, cut into layers from top to bottom: heat is conducted, ice melts, water
 * boils away at 100 °C from wherever it is hot enough, dry crust gets hotter and browns.
 *
 * <p>Explicit finite volumes. A layer that would pass 100 °C while it holds water spends the
 * surplus on evaporation (2 257 kJ/kg); so the wet front moves inwards and heat is kept in balance.
 * Below boiling a wet surface dries by mass transfer in proportion to the film coefficient (Lewis
 * number 1).
 */
public final class FoodColumn {

  /** Latent heat of boiling water at 100 °C, J/kg. */
  public static final double EVAPORATION = 2_257_000;

  private static final double FUSION = 334_000;
  private static final double WATER_HEAT = 4_180;
  private static final double BOLTZMANN = 5.670374e-8;
  private static final double ICE_POINT = -1;
  private static final double BOILING = 100;
  private static final double AIR_HEAT_PER_CUBIC_METRE = 1_100;
  private static final double[] VAPOUR = vapourTable();

  private final Dough dough;
  private final double dx;
  private final double[] celsius;
  private final double[] water;
  private final double[] ice;
  private final double dryHeat;
  private final double waterAtStart;
  private final double dryConductance;
  private final double conductancePerWater;
  private double lostKilogram;
  private double topBrown;
  private double bottomBrown;

  /**
   * @param layers at least 3
   */
  public FoodColumn(Dough dough, double thicknessMetre, int layers, double startCelsius) {
    this.dough = dough;
    this.dx = thicknessMetre / layers;
    this.celsius = new double[layers];
    this.water = new double[layers];
    this.ice = new double[layers];
    this.dryHeat = dough.dryKilogramPerCubicMetre() * dough.dryJoulePerKilogramKelvin() * dx;
    this.waterAtStart = dough.waterKilogramPerCubicMetre() * dx;
    this.dryConductance = dough.dryConductivity() / dx;
    this.conductancePerWater =
        (dough.wetConductivity() - dough.dryConductivity()) / dx / (2 * waterAtStart);
    for (int i = 0; i < layers; i++) {
      celsius[i] = startCelsius;
      water[i] = waterAtStart;
      ice[i] = dough.frozen() == Dough.Frozen.YES ? waterAtStart : 0;
    }
  }

  /**
   * What heats a face.
   *
   * @param airCelsius air near it
   * @param film W/(m² K)
   * @param wallCelsius what it sees; NaN where it sees nothing
   * @param directWattsPerSquareMetre radiation of the elements
   */
  public record Heating(
      double airCelsius, double film, double wallCelsius, double directWattsPerSquareMetre) {

    /** A face in contact: no wall, no element. */
    public static Heating contact(double celsius, double wattsPerSquareMetreKelvin) {
      return new Heating(celsius, wattsPerSquareMetreKelvin, Double.NaN, 0);
    }
  }

  /** Heat taken during a step, J/m². */
  public static final class Taken {
    public double fromAir;
    public double fromWall;
    public double direct;
    public double byContact;

    void clear() {
      byContact = 0;
      fromAir = 0;
      fromWall = 0;
      direct = 0;
    }
  }

  /** Moves on by {@code dt} seconds (at most 0.6 s for layers of a millimetre). */
  public void step(double dt, Heating top, Heating bottom, Taken taken) {
    taken.clear();
    int last = celsius.length - 1;
    double topFlux = flux(top, celsius[0], dt, taken);
    double bottomFlux = flux(bottom, celsius[last], dt, taken);
    double above = topFlux;
    double here = celsius[0];
    for (int i = 0; i <= last; i++) {
      double below = i == last ? -bottomFlux : conductance(i) * (here - celsius[i + 1]);
      double next = i == last ? 0 : celsius[i + 1];
      celsius[i] = heated(i, here, (above - below) * dt);
      above = below;
      here = next;
    }
    dryFace(0, top, dt);
    if (!Double.isNaN(bottom.wallCelsius())) {
      dryFace(last, bottom, dt);
    }
    topBrown = browned(topBrown, 0, dt);
    bottomBrown = browned(bottomBrown, last, dt);
  }

  private double flux(Heating heating, double surface, double dt, Taken taken) {
    double byAir = heating.film() * (heating.airCelsius() - surface);
    if (Double.isNaN(heating.wallCelsius())) {
      taken.byContact += byAir * dt;
      return byAir;
    }
    double w = heating.wallCelsius() + 273.15;
    double s = surface + 273.15;
    double byWall = dough.emissivity() * BOLTZMANN * (w * w * w * w - s * s * s * s);
    double direct = dough.emissivity() * heating.directWattsPerSquareMetre();
    taken.fromAir += byAir * dt;
    taken.fromWall += byWall * dt;
    taken.direct += direct * dt;
    return byAir + byWall + direct;
  }

  private double conductance(int i) {
    return dryConductance + (water[i] + water[i + 1]) * conductancePerWater;
  }

  private double heated(int i, double from, double joule) {
    double capacity = dryHeat + WATER_HEAT * water[i] * (ice[i] > 0 ? 0.5 : 1);
    double to = from + joule / capacity;
    if (ice[i] > 0 && to > ICE_POINT) {
      double melted = Math.min(ice[i], (to - ICE_POINT) * capacity / FUSION);
      ice[i] -= melted;
      to -= melted * FUSION / capacity;
    }
    if (to > BOILING && water[i] > 0) {
      double gone = Math.min(water[i], (to - BOILING) * capacity / EVAPORATION);
      water[i] -= gone;
      lostKilogram += gone;
      to -= gone * EVAPORATION / capacity;
    }
    return to;
  }

  /** Drying below boiling: ṁ = h/(ρ c) · activity · ρ_vapour(surface). */
  private void dryFace(int i, Heating heating, double dt) {
    if (water[i] <= 0 || ice[i] > 0 || celsius[i] < 25) {
      return;
    }
    double activity = water[i] / waterAtStart;
    double rate = heating.film() / AIR_HEAT_PER_CUBIC_METRE * activity * vapourDensity(celsius[i]);
    double gone = Math.min(water[i], rate * dt);
    double capacity = dryHeat + WATER_HEAT * water[i];
    water[i] -= gone;
    lostKilogram += gone;
    celsius[i] -= gone * EVAPORATION / capacity;
  }

  /** Saturated vapour, kg/m³: Magnus formula over the ideal gas; fair to 5 % up to 100 °C. */
  static double vapourDensity(double celsius) {
    double t = Math.min(100, celsius);
    int i = (int) Math.max(0, Math.min(2 * t, VAPOUR.length - 2.0));
    return VAPOUR[i] + (2 * t - i) * (VAPOUR[i + 1] - VAPOUR[i]);
  }

  private static double[] vapourTable() {
    double[] table = new double[202];
    for (int i = 0; i < table.length; i++) {
      double t = i / 2.0;
      double pascal = 611.2 * Math.exp(17.62 * t / (243.12 + t));
      table[i] = pascal / (461.5 * (t + 273.15));
    }
    return table;
  }

  /** Browning waits for the surface to be dry: water holds back the reactions. */
  private double browned(double extent, int i, double dt) {
    double dry = 1 - water[i] / waterAtStart;
    double rate = BrowningKinetics.ratePerSecond(celsius[i]) * dough.browning() * dry * dry;
    return extent + (1 - extent) * Math.min(1, rate * dt);
  }

  /** Browning of the top, 0 raw to 1 burnt: share of {@link BrowningKinetics#LIMIT}. */
  public double topBrown() {
    return topBrown;
  }

  public double bottomBrown() {
    return bottomBrown;
  }

  /** Top and bottom change places. */
  public void turnOver() {
    int n = celsius.length;
    for (int i = 0; i < n / 2; i++) {
      swap(celsius, i, n - 1 - i);
      swap(water, i, n - 1 - i);
      swap(ice, i, n - 1 - i);
    }
    double kept = topBrown;
    topBrown = bottomBrown;
    bottomBrown = kept;
  }

  private static void swap(double[] values, int i, int j) {
    double kept = values[i];
    values[i] = values[j];
    values[j] = kept;
  }

  /** Water that left, kg/m². */
  public double lostKilogramPerSquareMetre() {
    return lostKilogram;
  }

  public double massPerSquareMetre() {
    return dough.density() * dx * celsius.length;
  }

  /** Temperature of the layer in the middle. */
  public double coreCelsius() {
    return celsius[celsius.length / 2];
  }

  public double topCelsius() {
    return celsius[0];
  }

  /** Thickness of crust with less than half its water, both faces, m. */
  public double crustMetre() {
    int dry = 0;
    for (double w : water) {
      dry += w < waterAtStart / 2 ? 1 : 0;
    }
    return dry * dx;
  }

  /** Heat stored above 0 °C with ice as a debt, J/m²; for balances. */
  public double storedJoule() {
    double sum = 0;
    for (int i = 0; i < celsius.length; i++) {
      sum += (dryHeat + WATER_HEAT * water[i]) * celsius[i] - FUSION * ice[i];
    }
    return sum;
  }
}
