package ovenproof.core.photo;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * How the light falls off over the frame: a quadratic surface of log(light), seen on an even ground
 * or a grey card that fills the frame, and 1 at the place where colours were calibrated.
 *
 * <p>Coordinates run from 0 to 1 along each side, so a field seen in a reduced picture holds for
 * the full one.
 */
public final class LightField {

  private static final int TERMS = 6;
  private static final int LEAST_POINTS = 200;
  private static final int CELLS = 6;
  private static final int LEAST_IN_CELL = 8;

  /** Points farther than this from the surface are shadow, crumb or shine, in log light. */
  private static final double OUTLIER_SDS = 2.5;

  private final double[] c;
  private final double residualSd;
  private final double misfit;
  private final double span;

  private LightField(double[] c, double residualSd, double misfit, double span) {
    this.c = c;
    this.residualSd = residualSd;
    this.misfit = misfit;
    this.span = span;
  }

  /**
   * Fits the surface.
   *
   * @param u places along the width, 0…1
   * @param v places along the height, 0…1
   * @param light luminance there, above 0
   * @param reference where the field is to be 1
   * @return null with fewer than 200 points or when they do not cover the frame
   */
  static @Nullable LightField fit(double[] u, double[] v, double[] light, double[] reference) {
    if (u.length < LEAST_POINTS) {
      return null;
    }
    boolean[] use = new boolean[u.length];
    Arrays.fill(use, true);
    double[] c = new double[TERMS];
    double sd = 0;
    for (int round = 0; round < 6; round++) {
      double[] fitted = fitOnce(u, v, light, use);
      if (fitted == null) {
        return null;
      }
      c = fitted;
      sd = residualSd(c, u, v, light, use);
      for (int i = 0; i < use.length; i++) {
        double r = Math.log(light[i]) - surface(c, u[i], v[i]);
        use[i] = Math.abs(r) <= OUTLIER_SDS * sd + 1e-6;
      }
    }
    double misfit = misfit(c, u, v, light, use);
    double at = surface(c, reference[0], reference[1]);
    c[0] -= at;
    return new LightField(c, sd, misfit, spanOf(c));
  }

  private static double @Nullable [] fitOnce(
      double[] u, double[] v, double[] light, boolean[] use) {
    double[][] design = new double[u.length][];
    double[] right = new double[u.length];
    int n = 0;
    for (int i = 0; i < u.length; i++) {
      if (use[i]) {
        design[n] = terms(u[i], v[i]);
        right[n++] = Math.log(light[i]);
      }
    }
    return n < LEAST_POINTS / 2
        ? null
        : LeastSquares.solve(Arrays.copyOf(design, n), Arrays.copyOf(right, n), 1e-9);
  }

  private static double residualSd(
      double[] c, double[] u, double[] v, double[] light, boolean[] use) {
    double sum = 0;
    int n = 0;
    for (int i = 0; i < u.length; i++) {
      if (use[i]) {
        double r = Math.log(light[i]) - surface(c, u[i], v[i]);
        sum += r * r;
        n++;
      }
    }
    return Math.sqrt(sum / Math.max(1, n - TERMS));
  }

  /** Root mean square of the residuals of cells, so that the grain of wood averages out. */
  private static double misfit(double[] c, double[] u, double[] v, double[] light, boolean[] use) {
    double[] sum = new double[CELLS * CELLS];
    int[] n = new int[CELLS * CELLS];
    for (int i = 0; i < u.length; i++) {
      if (use[i]) {
        int cell = cell(v[i]) * CELLS + cell(u[i]);
        sum[cell] += Math.log(light[i]) - surface(c, u[i], v[i]);
        n[cell]++;
      }
    }
    double squares = 0;
    int cells = 0;
    for (int cell = 0; cell < n.length; cell++) {
      if (n[cell] >= LEAST_IN_CELL) {
        squares += sum[cell] / n[cell] * sum[cell] / n[cell];
        cells++;
      }
    }
    return cells == 0 ? Double.POSITIVE_INFINITY : Math.sqrt(squares / cells);
  }

  private static int cell(double place) {
    return Math.max(0, Math.min(CELLS - 1, (int) (place * CELLS)));
  }

  private static double[] terms(double u, double v) {
    return new double[] {1, u, v, u * u, u * v, v * v};
  }

  private static double surface(double[] c, double u, double v) {
    return c[0] + c[1] * u + c[2] * v + c[3] * u * u + c[4] * u * v + c[5] * v * v;
  }

  private static double spanOf(double[] c) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = 0; i <= 8; i++) {
      for (int j = 0; j <= 8; j++) {
        double s = surface(c, i / 8.0, j / 8.0);
        low = Math.min(low, s);
        high = Math.max(high, s);
      }
    }
    return high - low;
  }

  /** Scatter of the ground about the surface, as a share of its light. */
  public double residualSd() {
    return residualSd;
  }

  /** How far parts of the ground lie from the surface, in log light; small for an even ground. */
  public double misfit() {
    return misfit;
  }

  /** log of the brightest over the darkest light in the frame. */
  public double span() {
    return span;
  }

  /** The light at a place (0…1 along each side) relative to the reference. */
  public double at(double u, double v) {
    return Math.exp(surface(c, u, v));
  }

  /** The field along one row of a picture. */
  Row row(Picture picture, int y) {
    double v = (y + 0.5) / picture.height();
    double width = picture.width();
    double offset = c[0] + c[2] * v + c[5] * v * v;
    double slope = (c[1] + c[4] * v) / width;
    double bend = c[3] / (width * width);
    return new Row(-offset, -slope, -bend);
  }

  /** Gain along a row: exp of a quadratic, what brings the place to the light of the reference. */
  record Row(double offset, double slope, double bend) {
    float gain(int x) {
      double at = x + 0.5;
      return (float) Math.exp(offset + (slope + bend * at) * at);
    }
  }
}
