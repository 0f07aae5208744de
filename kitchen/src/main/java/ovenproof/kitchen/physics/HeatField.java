package ovenproof.kitchen.physics;

/**
 * How the plane of the rack differs from its centre. Coordinates run from −1 (left, front) to +1
 * (right, back). Differences of air temperature hold at a rise of 200 K over the room and grow with
 * the rise.
 *
 * @param rightKelvin right edge against the centre; the left is as much the other way
 * @param backKelvin back edge against the centre
 * @param cornerKelvin depth of a cold corner, at most 0
 * @param cornerX where it lies
 * @param cornerY where it lies
 * @param cornerReach how far it reaches, standard deviation of a bell
 * @param beam how much more radiation the middle gets than the rim, 0 for an even plane
 */
public record HeatField(
    double rightKelvin,
    double backKelvin,
    double cornerKelvin,
    double cornerX,
    double cornerY,
    double cornerReach,
    double beam) {

  private static final double STATED_RISE = 200;

  /** Air at a place minus air at the centre, K. */
  public double airKelvin(double x, double y, double riseKelvin) {
    double tilt = rightKelvin * x + backKelvin * y;
    return (tilt + corner(x, y) - corner(0, 0)) * riseKelvin / STATED_RISE;
  }

  private double corner(double x, double y) {
    double dx = (x - cornerX) / cornerReach;
    double dy = (y - cornerY) / cornerReach;
    return cornerKelvin * Math.exp(-(dx * dx + dy * dy) / 2);
  }

  /** Radiation at a place against the mean over the plane. */
  public double beamFactor(double x, double y) {
    double shade = corner(x, y) / 60;
    return Math.max(0.2, 1 + beam * (1.0 / 3 - (x * x + y * y) / 2) + shade);
  }

  /** Left and right exchanged. */
  public HeatField mirrored() {
    return new HeatField(
        -rightKelvin, backKelvin, cornerKelvin, -cornerX, cornerY, cornerReach, beam);
  }
}
