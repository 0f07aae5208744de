package ovenproof.core.photo;

import java.util.List;

/**
 * The plane of L* over a piece by least squares: what is tilt, and what is left as mottle.
 *
 * @param acrossX change of L* from the left to the right edge of the piece
 * @param acrossY change of L* from the upper to the lower edge
 * @param residualSd standard deviation about the plane, n − 3 degrees of freedom; 0 below four
 *     blocks
 */
record ShadePlane(double acrossX, double acrossY, double residualSd) {

  static ShadePlane fit(List<double[]> blocks) {
    int n = blocks.size();
    if (n < 4) {
      return new ShadePlane(0, 0, 0);
    }
    double mx = mean(blocks, 0);
    double my = mean(blocks, 1);
    double ml = mean(blocks, 2);
    double sxx = 0;
    double syy = 0;
    double sxy = 0;
    double sxl = 0;
    double syl = 0;
    for (double[] b : blocks) {
      double x = b[0] - mx;
      double y = b[1] - my;
      double l = b[2] - ml;
      sxx += x * x;
      syy += y * y;
      sxy += x * y;
      sxl += x * l;
      syl += y * l;
    }
    double determinant = sxx * syy - sxy * sxy;
    if (determinant <= 1e-12 * sxx * syy || determinant == 0) {
      return new ShadePlane(0, 0, 0);
    }
    double gx = (sxl * syy - syl * sxy) / determinant;
    double gy = (syl * sxx - sxl * sxy) / determinant;
    double rest = 0;
    for (double[] b : blocks) {
      double r = b[2] - ml - gx * (b[0] - mx) - gy * (b[1] - my);
      rest += r * r;
    }
    return new ShadePlane(gx, gy, Math.sqrt(rest / (n - 3)));
  }

  private static double mean(List<double[]> blocks, int index) {
    return blocks.stream().mapToDouble(b -> b[index]).average().orElseThrow();
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
