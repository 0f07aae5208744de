package ovenproof.core.photo;

import java.util.List;

/**
 * The plane of L* over a piece by least squares: what is tilt, and what is left as mottle. It is
 * fitted to cells, each by its pixels, so that it does not depend on where blocks happen to begin.
 *
 * @param middleX weighted mean of the places across, −½…½ over the piece
 * @param middleY the same of the places from top to bottom
 * @param middleLightness weighted mean of L*
 * @param acrossX change of L* from the left to the right edge of the piece
 * @param acrossY change of L* from the upper to the lower edge
 */
record ShadePlane(
    double middleX, double middleY, double middleLightness, double acrossX, double acrossY) {

  /** Three numbers are fitted. */
  private static final int FITTED = 3;

  /** Sums over cells, each with its place, its L* and its weight. */
  static final class Sums {
    private double n;
    private double x;
    private double y;
    private double l;
    private double xx;
    private double yy;
    private double xy;
    private double xl;
    private double yl;

    void add(double atX, double atY, double lightness, double weight) {
      n += weight;
      x += weight * atX;
      y += weight * atY;
      l += weight * lightness;
      xx += weight * atX * atX;
      yy += weight * atY * atY;
      xy += weight * atX * atY;
      xl += weight * atX * lightness;
      yl += weight * atY * lightness;
    }

    /** The plane; level where the cells lie in one line or there are none. */
    ShadePlane plane() {
      if (n == 0) {
        return new ShadePlane(0, 0, 0, 0, 0);
      }
      double sxx = xx - x * x / n;
      double syy = yy - y * y / n;
      double sxy = xy - x * y / n;
      double sxl = xl - x * l / n;
      double syl = yl - y * l / n;
      double determinant = sxx * syy - sxy * sxy;
      boolean line = determinant <= 1e-12 * sxx * syy || determinant == 0;
      return new ShadePlane(
          x / n,
          y / n,
          l / n,
          line ? 0 : (sxl * syy - syl * sxy) / determinant,
          line ? 0 : (syl * sxx - sxl * sxy) / determinant);
    }
  }

  /**
   * Standard deviation of block means about the plane.
   *
   * @param blocks as of {@link PieceRegion#blocks}
   * @return 0 below four blocks
   */
  double residualSd(List<double[]> blocks) {
    if (blocks.size() <= FITTED) {
      return 0;
    }
    double rest = 0;
    for (double[] b : blocks) {
      double r = b[2] - middleLightness - acrossX * (b[0] - middleX) - acrossY * (b[1] - middleY);
      rest += r * r;
    }
    return Math.sqrt(rest / (blocks.size() - FITTED));
  }

  /** L* at the front edge minus L* at the back edge. */
  double frontBack(ShadeSettings.Front front) {
    return switch (front) {
      case BOTTOM -> acrossY;
      case TOP -> -acrossY;
      case LEFT -> -acrossX;
      case RIGHT -> acrossX;
    };
  }

  /** L* at the right edge minus L* at the left edge, as seen from the front. */
  double leftRight(ShadeSettings.Front front) {
    return switch (front) {
      case BOTTOM -> acrossX;
      case TOP -> -acrossX;
      case LEFT -> acrossY;
      case RIGHT -> -acrossY;
    };
  }
}
