package ovenproof.core.photo;

import java.util.List;

/** How nearly an outline is a quadrilateral: a sheet, tray or board in any perspective. */
final class Corners {

  private Corners() {}

  /**
   * Area of the quadrilateral between four corners over that of the outline, at most 1: the two
   * points farthest apart, and the farthest from their line on either side.
   */
  static double shareOf(Outline outline) {
    List<PixelPoint> points = outline.points();
    PixelPoint from = farthest(points, outline.centroid());
    PixelPoint to = farthest(points, from);
    double left = 0;
    double right = 0;
    for (PixelPoint p : points) {
      double side =
          (to.x() - from.x()) * (p.y() - from.y()) - (to.y() - from.y()) * (p.x() - from.x());
      left = Math.max(left, side);
      right = Math.max(right, -side);
    }
    double area = outline.area();
    return area == 0 ? 0 : Math.min(1, (left + right) / 2 / area);
  }

  private static PixelPoint farthest(List<PixelPoint> points, PixelPoint from) {
    PixelPoint best = from;
    for (PixelPoint p : points) {
      best = p.distanceTo(from) > best.distanceTo(from) ? p : best;
    }
    return best;
  }
}
