package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The edge of a piece: a closed polygon in picture coordinates, found or drawn by a person. The
 * inside follows the even–odd rule.
 *
 * @param points at least three corners; the last is joined to the first
 */
public record Outline(List<PixelPoint> points) {

  public Outline {
    points = List.copyOf(points);
    if (points.size() < 3) {
      throw new IllegalArgumentException(
          "an outline needs at least three points, found " + points.size());
    }
  }

  /** The four corners of a box. */
  public static Outline of(PixelBox box) {
    return new Outline(
        List.of(
            new PixelPoint(box.left(), box.top()),
            new PixelPoint(box.right(), box.top()),
            new PixelPoint(box.right(), box.bottom()),
            new PixelPoint(box.left(), box.bottom())));
  }

  /** Area in square pixels, 0 for a degenerate polygon. */
  public double area() {
    double twice = 0;
    for (int i = 0, j = points.size() - 1; i < points.size(); j = i++) {
      PixelPoint p = points.get(j);
      PixelPoint q = points.get(i);
      twice += p.x() * q.y() - q.x() * p.y();
    }
    return Math.abs(twice) / 2;
  }

  /** Whether the points go round clockwise as seen on a screen. */
  boolean isClockwise() {
    double twice = 0;
    for (int i = 0, j = points.size() - 1; i < points.size(); j = i++) {
      PixelPoint p = points.get(j);
      PixelPoint q = points.get(i);
      twice += p.x() * q.y() - q.x() * p.y();
    }
    return twice > 0;
  }

  /** The smallest box of whole pixels around it; may reach beyond the picture. */
  public PixelBox box() {
    int left = (int) Math.floor(points.stream().mapToDouble(PixelPoint::x).min().orElseThrow());
    int top = (int) Math.floor(points.stream().mapToDouble(PixelPoint::y).min().orElseThrow());
    int right = (int) Math.ceil(points.stream().mapToDouble(PixelPoint::x).max().orElseThrow());
    int bottom = (int) Math.ceil(points.stream().mapToDouble(PixelPoint::y).max().orElseThrow());
    return new PixelBox(left, top, Math.max(1, right - left), Math.max(1, bottom - top));
  }

  /** Mean of the corners of its area; the mean of its points when the area is 0. */
  public PixelPoint centroid() {
    double twice = 0;
    double x = 0;
    double y = 0;
    for (int i = 0, j = points.size() - 1; i < points.size(); j = i++) {
      PixelPoint p = points.get(j);
      PixelPoint q = points.get(i);
      double cross = p.x() * q.y() - q.x() * p.y();
      twice += cross;
      x += (p.x() + q.x()) * cross;
      y += (p.y() + q.y()) * cross;
    }
    if (twice == 0) {
      return new PixelPoint(
          points.stream().mapToDouble(PixelPoint::x).average().orElseThrow(),
          points.stream().mapToDouble(PixelPoint::y).average().orElseThrow());
    }
    return new PixelPoint(x / (3 * twice), y / (3 * twice));
  }

  public Outline shifted(double dx, double dy) {
    return new Outline(points.stream().map(p -> new PixelPoint(p.x() + dx, p.y() + dy)).toList());
  }

  /** The same in pixels of a picture that is so many times larger. */
  public Outline times(double factor) {
    return new Outline(points.stream().map(p -> p.times(factor)).toList());
  }

  /**
   * Where a horizontal line runs inside, as sorted pairs of from and to.
   *
   * @param y height of the line; use the pixel centre, row + 0.5
   */
  public double[] crossings(double y) {
    List<Double> at = new ArrayList<>();
    for (int i = 0, j = points.size() - 1; i < points.size(); j = i++) {
      PixelPoint p = points.get(j);
      PixelPoint q = points.get(i);
      if (p.y() <= y != q.y() <= y) {
        at.add(p.x() + (y - p.y()) / (q.y() - p.y()) * (q.x() - p.x()));
      }
    }
    double[] sorted = at.stream().mapToDouble(Double::doubleValue).toArray();
    Arrays.sort(sorted);
    return sorted;
  }
}
