package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.List;

/**
 * Even, compact areas of a picture that may be patches of a chart: connected pixels without a step
 * to their neighbours.
 */
final class FlatRegions {

  /** A parallelogram covers 1.0 of what its second moments say, a disc 1.047. */
  private static final double LEAST_FILL = 0.86;

  private static final double MOST_FILL = 1.12;
  private static final double MOST_ELONGATED = 2.2;
  private static final int SMALLEST_AREA = 30;

  private FlatRegions() {}

  /**
   * One candidate.
   *
   * @param side square root of its area in pixels
   */
  record Region(double x, double y, double side, double red, double green, double blue) {
    double distanceTo(Region other) {
      return Math.hypot(x - other.x, y - other.y);
    }
  }

  /**
   * Largest step of any channel to the right or lower neighbour, per pixel. Two neighbours apart,
   * so that a soft edge still shows.
   */
  static int[] steps(Picture picture) {
    int w = picture.width();
    int h = picture.height();
    int[] p = picture.pixels();
    int[] out = new int[w * h];
    java.util.stream.IntStream.range(1, Math.max(1, h - 1))
        .parallel()
        .forEach(
            y -> {
              for (int x = 1; x < w - 1; x++) {
                int i = y * w + x;
                out[i] = Math.max(difference(p[i - 1], p[i + 1]), difference(p[i - w], p[i + w]));
              }
            });
    return out;
  }

  private static int difference(int p, int q) {
    int r = Math.abs((p >> 16 & 0xff) - (q >> 16 & 0xff));
    int g = Math.abs((p >> 8 & 0xff) - (q >> 8 & 0xff));
    int b = Math.abs((p & 0xff) - (q & 0xff));
    return Math.max(r, Math.max(g, b));
  }

  /** Compact regions whose steps stay below the limit. */
  static List<Region> find(Picture picture, int[] steps, int limit) {
    int w = picture.width();
    int h = picture.height();
    int most = w * h / 40;
    boolean[] seen = new boolean[w * h];
    int[] stack = new int[w * h];
    List<Region> out = new ArrayList<>();
    for (int y = 1; y < h - 1; y++) {
      for (int x = 1; x < w - 1; x++) {
        int i = y * w + x;
        if (!seen[i] && steps[i] < limit) {
          Region region = flood(picture, steps, limit, i, seen, stack, most);
          if (region != null) {
            out.add(region);
          }
        }
      }
    }
    return out;
  }

  private static @org.jspecify.annotations.Nullable Region flood(
      Picture picture, int[] steps, int limit, int start, boolean[] seen, int[] stack, int most) {
    int w = picture.width();
    int h = picture.height();
    int top = 0;
    stack[top++] = start;
    seen[start] = true;
    long n = 0;
    double sx = 0;
    double sy = 0;
    double sxx = 0;
    double syy = 0;
    double sxy = 0;
    double red = 0;
    double green = 0;
    double blue = 0;
    while (top > 0) {
      int i = stack[--top];
      int x = i % w;
      int y = i / w;
      n++;
      sx += x;
      sy += y;
      sxx += (double) x * x;
      syy += (double) y * y;
      sxy += (double) x * y;
      int p = picture.pixels()[i];
      red += p >> 16 & 0xff;
      green += p >> 8 & 0xff;
      blue += p & 0xff;
      if (x > 1 && !seen[i - 1] && steps[i - 1] < limit) {
        seen[i - 1] = true;
        stack[top++] = i - 1;
      }
      if (x < w - 2 && !seen[i + 1] && steps[i + 1] < limit) {
        seen[i + 1] = true;
        stack[top++] = i + 1;
      }
      if (y > 1 && !seen[i - w] && steps[i - w] < limit) {
        seen[i - w] = true;
        stack[top++] = i - w;
      }
      if (y < h - 2 && !seen[i + w] && steps[i + w] < limit) {
        seen[i + w] = true;
        stack[top++] = i + w;
      }
    }
    if (n < SMALLEST_AREA || n > most) {
      return null;
    }
    double mx = sx / n;
    double my = sy / n;
    double vxx = sxx / n - mx * mx + 1 / 12.0;
    double vyy = syy / n - my * my + 1 / 12.0;
    double vxy = sxy / n - mx * my;
    return compact(vxx, vyy, vxy, n)
        ? new Region(mx + 0.5, my + 0.5, Math.sqrt(n), red / n, green / n, blue / n)
        : null;
  }

  private static boolean compact(double vxx, double vyy, double vxy, long n) {
    double determinant = vxx * vyy - vxy * vxy;
    if (determinant <= 0) {
      return false;
    }
    double fill = n / (12 * Math.sqrt(determinant));
    double half = (vxx + vyy) / 2;
    double root = Math.sqrt(Math.max(0, half * half - determinant));
    double elongation = Math.sqrt((half + root) / Math.max(1e-9, half - root));
    return fill > LEAST_FILL && fill < MOST_FILL && elongation < MOST_ELONGATED;
  }
}
