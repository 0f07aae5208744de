package ovenproof.core.photo;

import java.util.Comparator;
import java.util.List;

/** Area of the convex hull by the monotone chain (A. M. Andrew, 1979). */
final class ConvexHull {

  private ConvexHull() {}

  static double area(List<PixelPoint> points) {
    if (points.size() < 3) {
      return 0;
    }
    List<PixelPoint> sorted =
        points.stream()
            .sorted(Comparator.comparingDouble(PixelPoint::x).thenComparingDouble(PixelPoint::y))
            .toList();
    PixelPoint[] hull = new PixelPoint[2 * sorted.size()];
    int n = 0;
    for (PixelPoint p : sorted) {
      while (n >= 2 && turn(hull[n - 2], hull[n - 1], p) <= 0) {
        n--;
      }
      hull[n++] = p;
    }
    int lower = n + 1;
    for (int i = sorted.size() - 2; i >= 0; i--) {
      PixelPoint p = sorted.get(i);
      while (n >= lower && turn(hull[n - 2], hull[n - 1], p) <= 0) {
        n--;
      }
      hull[n++] = p;
    }
    double twice = 0;
    for (int i = 0; i + 1 < n; i++) {
      twice += hull[i].x() * hull[i + 1].y() - hull[i + 1].x() * hull[i].y();
    }
    return Math.abs(twice) / 2;
  }

  private static double turn(PixelPoint o, PixelPoint a, PixelPoint b) {
    return (a.x() - o.x()) * (b.y() - o.y()) - (a.y() - o.y()) * (b.x() - o.x());
  }
}
