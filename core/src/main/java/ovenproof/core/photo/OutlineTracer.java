package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.List;

/** The edge of a mask as a smooth polygon: cracks between pixels, followed and averaged. */
final class OutlineTracer {

  private static final int MOST_POINTS = 160;
  private static final int SMOOTHING = 3;

  private OutlineTracer() {}

  /** The outer edge of a connected mask with at least one pixel. */
  static Outline trace(Mask mask) {
    List<PixelPoint> cracks = cracks(mask);
    for (int i = 0; i < SMOOTHING && cracks.size() > 12; i++) {
      cracks = averaged(cracks);
    }
    return new Outline(thinned(cracks));
  }

  /** Walks with the inside on the right, along pixel corners. */
  private static List<PixelPoint> cracks(Mask mask) {
    int start = 0;
    while (!mask.set()[start]) {
      start++;
    }
    int x = start % mask.width();
    int y = start / mask.width();
    int startX = x;
    int startY = y;
    int dx = 1;
    int dy = 0;
    List<PixelPoint> out = new ArrayList<>();
    do {
      out.add(new PixelPoint(x, y));
      x += dx;
      y += dy;
      // Ahead-left pixel set: turn left; else ahead-right set: straight; else turn right.
      if (at(mask, x, y, dx, dy, -1)) {
        int t = dx;
        dx = dy;
        dy = -t;
      } else if (!at(mask, x, y, dx, dy, 1)) {
        int t = dx;
        dx = -dy;
        dy = t;
      }
    } while (x != startX || y != startY);
    return out;
  }

  /** The pixel ahead of a corner, on the left (−1) or right (1) of the direction. */
  private static boolean at(Mask mask, int x, int y, int dx, int dy, int side) {
    double px = x + 0.5 * dx - 0.5 * side * dy;
    double py = y + 0.5 * dy + 0.5 * side * dx;
    int ix = (int) Math.floor(px);
    int iy = (int) Math.floor(py);
    return ix >= 0
        && iy >= 0
        && ix < mask.width()
        && iy < mask.height()
        && mask.set()[iy * mask.width() + ix];
  }

  private static List<PixelPoint> averaged(List<PixelPoint> points) {
    int n = points.size();
    List<PixelPoint> out = new ArrayList<>(n);
    for (int i = 0; i < n; i++) {
      PixelPoint p = points.get((i + n - 1) % n);
      PixelPoint q = points.get(i);
      PixelPoint r = points.get((i + 1) % n);
      out.add(new PixelPoint((p.x() + 2 * q.x() + r.x()) / 4, (p.y() + 2 * q.y() + r.y()) / 4));
    }
    return out;
  }

  private static List<PixelPoint> thinned(List<PixelPoint> points) {
    int n = Math.min(MOST_POINTS, points.size());
    List<PixelPoint> out = new ArrayList<>(n);
    for (int i = 0; i < n; i++) {
      out.add(points.get((int) ((long) i * points.size() / n)));
    }
    return out;
  }
}
