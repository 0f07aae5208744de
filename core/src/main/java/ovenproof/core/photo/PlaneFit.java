package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Fits a grid seen in perspective to found places, without those that do not fit. Few places
 * determine an affine view only; it is then written as a perspective without convergence.
 */
final class PlaneFit {

  private static final int ENOUGH_FOR_PERSPECTIVE = 8;
  private static final double OUTLIER_PITCHES = 0.2;

  private PlaneFit() {}

  static @Nullable Homography fit(List<PixelPoint> grid, List<PixelPoint> places) {
    List<PixelPoint> from = new ArrayList<>(grid);
    List<PixelPoint> to = new ArrayList<>(places);
    for (int round = 0; round < 4; round++) {
      Homography fitted = once(from, to);
      if (fitted == null || !dropWorst(fitted, from, to)) {
        return fitted;
      }
    }
    return once(from, to);
  }

  private static boolean dropWorst(Homography h, List<PixelPoint> from, List<PixelPoint> to) {
    double pitch = h.apply(0, 0).distanceTo(h.apply(1, 0));
    int worst = -1;
    double distance = OUTLIER_PITCHES * pitch;
    for (int i = 0; i < from.size(); i++) {
      double d = h.apply(from.get(i)).distanceTo(to.get(i));
      if (d > distance) {
        distance = d;
        worst = i;
      }
    }
    if (worst < 0 || from.size() <= 5) {
      return false;
    }
    from.remove(worst);
    to.remove(worst);
    return true;
  }

  private static @Nullable Homography once(List<PixelPoint> from, List<PixelPoint> to) {
    if (from.size() < 3) {
      return null;
    }
    if (from.size() >= ENOUGH_FOR_PERSPECTIVE && spans(from)) {
      return Homography.fit(from, to);
    }
    return affine(from, to);
  }

  /** At least three different columns and rows, else convergence is a guess. */
  private static boolean spans(List<PixelPoint> from) {
    long columns = from.stream().mapToDouble(PixelPoint::x).distinct().count();
    long rows = from.stream().mapToDouble(PixelPoint::y).distinct().count();
    return columns >= 3 && rows >= 3;
  }

  private static @Nullable Homography affine(List<PixelPoint> from, List<PixelPoint> to) {
    double[][] design = new double[from.size()][];
    double[] x = new double[from.size()];
    double[] y = new double[from.size()];
    for (int i = 0; i < design.length; i++) {
      design[i] = new double[] {from.get(i).x(), from.get(i).y(), 1};
      x[i] = to.get(i).x();
      y[i] = to.get(i).y();
    }
    double[] ax = LeastSquares.solve(design, x, 1e-9);
    double[] ay = LeastSquares.solve(design, y, 1e-9);
    if (ax == null || ay == null || Math.abs(ax[0] * ay[1] - ax[1] * ay[0]) < 1e-6) {
      return null;
    }
    return Homography.affine(ax[0], ax[1], ax[2], ay[0], ay[1], ay[2]);
  }
}
