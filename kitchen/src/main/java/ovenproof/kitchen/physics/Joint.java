package ovenproof.kitchen.physics;

/**
 * A tied joint of meat as a long cylinder in shells: conduction inwards, evaporation where it gets
 * to 100 °C.
 */
public final class Joint {

  private static final double WATER_HEAT = 4_180;
  private static final int SHELLS = 20;

  private final double radius;
  private final double dr;
  private final double length;
  private final Dough dough;
  private final double[] celsius = new double[SHELLS];
  private final double[] water = new double[SHELLS];
  private final double[] waterAtStart = new double[SHELLS];
  private double lostKilogram;

  public Joint(Dough dough, double radiusMetre, double lengthMetre, double startCelsius) {
    this.dough = dough;
    this.radius = radiusMetre;
    this.length = lengthMetre;
    this.dr = radiusMetre / SHELLS;
    for (int i = 0; i < SHELLS; i++) {
      celsius[i] = startCelsius;
      water[i] = dough.waterKilogramPerCubicMetre() * volume(i);
      waterAtStart[i] = water[i];
    }
  }

  /** Shell 0 is the core. */
  private double volume(int i) {
    return Math.PI * dr * dr * (2 * i + 1) * length;
  }

  /**
   * @param surfaceWatts heat into the whole surface
   * @param film W/(m² K), for drying below boiling
   */
  public void step(double dt, double surfaceWatts, double film) {
    double inner = 0;
    double here = celsius[0];
    for (int i = 0; i < SHELLS; i++) {
      double outer = i == SHELLS - 1 ? surfaceWatts : conducted(i, here);
      double next = i == SHELLS - 1 ? 0 : celsius[i + 1];
      celsius[i] = heated(i, here, (outer - inner) * dt);
      inner = outer;
      here = next;
    }
    dry(dt, film);
  }

  /** W from shell i + 1 into shell i. */
  private double conducted(int i, double here) {
    double wet = water[i + 1] / waterAtStart[i + 1];
    double k = dough.dryConductivity() + wet * (dough.wetConductivity() - dough.dryConductivity());
    return 2 * Math.PI * dr * (i + 1) * length * k * (celsius[i + 1] - here) / dr;
  }

  private double capacity(int i) {
    return dough.dryKilogramPerCubicMetre() * dough.dryJoulePerKilogramKelvin() * volume(i)
        + WATER_HEAT * water[i];
  }

  private double heated(int i, double from, double joule) {
    double capacity = capacity(i);
    double to = from + joule / capacity;
    if (to > 100 && water[i] > 0) {
      double gone = Math.min(water[i], (to - 100) * capacity / FoodColumn.EVAPORATION);
      water[i] -= gone;
      lostKilogram += gone;
      to -= gone * FoodColumn.EVAPORATION / capacity;
    }
    return to;
  }

  private void dry(double dt, double film) {
    int i = SHELLS - 1;
    if (water[i] <= 0 || celsius[i] < 25) {
      return;
    }
    double activity = water[i] / waterAtStart[i];
    double rate = film / 1_100 * activity * FoodColumn.vapourDensity(celsius[i]) * surface();
    double gone = Math.min(water[i], rate * dt);
    water[i] -= gone;
    lostKilogram += gone;
    celsius[i] -= gone * FoodColumn.EVAPORATION / capacity(i);
  }

  /** Area of the round side, m². */
  public double surface() {
    return 2 * Math.PI * radius * length;
  }

  public double surfaceCelsius() {
    return celsius[SHELLS - 1];
  }

  /** Temperature at a distance from the axis. */
  public double at(double metreFromAxis) {
    double shell = Math.min(SHELLS - 1.001, Math.max(0, metreFromAxis / dr - 0.5));
    int i = (int) shell;
    return celsius[i] + (shell - i) * (celsius[i + 1] - celsius[i]);
  }

  public double lostGram() {
    return 1000 * lostKilogram;
  }

  public double gramAtStart() {
    return 1000 * dough.density() * Math.PI * radius * radius * length;
  }
}
