package ovenproof.core.photo;

import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.QRDecomposition;
import org.jspecify.annotations.Nullable;

/**
 * A plane seen in perspective: chart coordinates to picture coordinates.
 *
 * <p>Source: R. Hartley, A. Zisserman, Multiple View Geometry, 2nd ed., section 4.1, with the last
 * coefficient fixed at 1 (the chart's origin is in view, so it is not 0).
 */
public final class Homography {

  private final double[] h;

  private Homography(double[] h) {
    this.h = h;
  }

  /**
   * Least squares over at least four pairs, no three of the four in line.
   *
   * @return null if the pairs do not determine a perspective
   */
  public static @Nullable Homography fit(List<PixelPoint> from, List<PixelPoint> to) {
    int n = from.size();
    if (n < 4 || n != to.size()) {
      throw new IllegalArgumentException(
          "at least four pairs are needed, found " + n + " and " + to.size());
    }
    double scale =
        to.stream()
            .mapToDouble(p -> Math.max(Math.abs(p.x()), Math.abs(p.y())))
            .max()
            .orElseThrow();
    double s = scale > 0 ? 1 / scale : 1;
    double[][] rows = new double[2 * n][];
    double[] right = new double[2 * n];
    for (int i = 0; i < n; i++) {
      double x = from.get(i).x();
      double y = from.get(i).y();
      double u = to.get(i).x() * s;
      double v = to.get(i).y() * s;
      rows[2 * i] = new double[] {x, y, 1, 0, 0, 0, -u * x, -u * y};
      rows[2 * i + 1] = new double[] {0, 0, 0, x, y, 1, -v * x, -v * y};
      right[2 * i] = u;
      right[2 * i + 1] = v;
    }
    var solver = new QRDecomposition(new Array2DRowRealMatrix(rows, false), 1e-9).getSolver();
    if (!solver.isNonSingular()) {
      return null;
    }
    double[] solved = solver.solve(new ArrayRealVector(right, false)).toArray();
    double[] h = new double[9];
    for (int i = 0; i < 6; i++) {
      h[i] = solved[i] * scale;
    }
    h[6] = solved[6];
    h[7] = solved[7];
    h[8] = 1;
    return new Homography(h);
  }

  /** A view without convergence: x′ = a x + b y + c, y′ = d x + e y + f. */
  static Homography affine(double a, double b, double c, double d, double e, double f) {
    return new Homography(new double[] {a, b, c, d, e, f, 0, 0, 1});
  }

  /** This view of a chart whose own coordinates are turned and shifted first. */
  Homography after(double a, double b, double c, double d, double e, double f) {
    double[] k = new double[9];
    for (int row = 0; row < 3; row++) {
      double p = h[3 * row];
      double q = h[3 * row + 1];
      k[3 * row] = p * a + q * d;
      k[3 * row + 1] = p * b + q * e;
      k[3 * row + 2] = p * c + q * f + h[3 * row + 2];
    }
    return new Homography(k);
  }

  /** Where a point of the chart lies in the picture. */
  public PixelPoint apply(double x, double y) {
    double w = h[6] * x + h[7] * y + h[8];
    return new PixelPoint((h[0] * x + h[1] * y + h[2]) / w, (h[3] * x + h[4] * y + h[5]) / w);
  }

  public PixelPoint apply(PixelPoint point) {
    return apply(point.x(), point.y());
  }

  /** Whether the points given stay on the visible side of the horizon. */
  boolean isInFrontOf(double width, double height) {
    return h[8] > 0
        && h[6] * width + h[8] > 0
        && h[7] * height + h[8] > 0
        && h[6] * width + h[7] * height + h[8] > 0;
  }

  /** The same with picture coordinates multiplied. */
  public Homography scaled(double factor) {
    double[] k = h.clone();
    for (int i = 0; i < 6; i++) {
      k[i] *= factor;
    }
    return new Homography(k);
  }

  /** The same with picture coordinates moved. */
  Homography shifted(double dx, double dy) {
    double[] k = h.clone();
    for (int i = 0; i < 3; i++) {
      k[i] += dx * k[6 + i];
      k[3 + i] += dy * k[6 + i];
    }
    return new Homography(k);
  }
}
