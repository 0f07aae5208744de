package ovenproof.kitchen.bench;

import ovenproof.kitchen.physics.Cavity;
import ovenproof.kitchen.physics.Oven;

/** The plane of the rack at one moment: what food at a place meets. */
final class OvenPlane {

  private static final double CAVITY_HEIGHT_METRE = 0.22;

  private final Oven oven;
  private final double area;
  private final double width;
  private final double depth;
  private double air;
  private double wall;
  private double rise;
  private double beamPerSquareMetre;
  private double contact = 60;

  OvenPlane(Oven oven) {
    this.oven = oven;
    this.area = oven.cabinet().litres() / 1000 / CAVITY_HEIGHT_METRE;
    this.width = Math.sqrt(area * 1.1);
    this.depth = area / width;
  }

  void now(Cavity cavity, double room) {
    air = cavity.air();
    wall = cavity.wall();
    rise = air - room;
    beamPerSquareMetre = cavity.beamWatts() / area;
  }

  void contact(double wattsPerSquareMetreKelvin) {
    contact = wattsPerSquareMetreKelvin;
  }

  double contact() {
    return contact;
  }

  double width() {
    return width;
  }

  double depth() {
    return depth;
  }

  double film() {
    return oven.airflow().filmWattsPerSquareMetreKelvin();
  }

  double topShare() {
    return oven.heater().topShare();
  }

  double wall() {
    return wall;
  }

  double airAt(double x, double y) {
    return air + oven.field().airKelvin(x, y, rise);
  }

  /** Air at a place against the centre, per kelvin of rise over the room. */
  double unevenPerKelvin(double x, double y) {
    return oven.field().airKelvin(x, y, 1);
  }

  double beamFactor(double x, double y) {
    return oven.field().beamFactor(x, y);
  }

  double air() {
    return air;
  }

  double rise() {
    return rise;
  }

  /** Radiation of the elements in the mean over the plane, both sides together, W/m². */
  double beam() {
    return beamPerSquareMetre;
  }
}
