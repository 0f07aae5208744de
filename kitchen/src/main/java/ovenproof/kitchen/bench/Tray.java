package ovenproof.kitchen.bench;

/** A sheet of aluminium between the lower elements and the food. */
final class Tray {

  private static final double SQUARE_METRE = 0.062;
  private static final double JOULE_PER_KELVIN = 420;
  private static final double BOLTZMANN = 5.670374e-8;
  private static final double EMISSIVITY = 0.55;

  private double celsius;
  private final double loadedSquareMetre;

  Tray(double startCelsius, double loadedSquareMetre) {
    this.celsius = startCelsius;
    this.loadedSquareMetre = Math.min(SQUARE_METRE, loadedSquareMetre);
  }

  double celsius() {
    return celsius;
  }

  /** Heat from below and from its bare top; {@code given} J went into the food. */
  void step(double dt, OvenPlane plane, double given, HeatAccount heat) {
    double bare = SQUARE_METRE - loadedSquareMetre;
    double film = plane.film() * (SQUARE_METRE + bare);
    double byAir = film * (plane.airAt(0, 0) - celsius) * dt;
    double w = plane.wall() + 273.15;
    double s = celsius + 273.15;
    double byWall =
        EMISSIVITY * BOLTZMANN * (w * w * w * w - s * s * s * s) * (SQUARE_METRE + bare) * dt;
    double beam = plane.beam() * EMISSIVITY * dt;
    double direct = beam * ((1 - plane.topShare()) * SQUARE_METRE + plane.topShare() * bare);
    heat.fromAir += byAir;
    heat.fromWall += byWall;
    heat.direct += direct;
    celsius += (byAir + byWall + direct - given) / JOULE_PER_KELVIN;
  }
}
