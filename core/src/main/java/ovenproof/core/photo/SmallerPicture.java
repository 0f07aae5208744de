package ovenproof.core.photo;

import java.util.stream.IntStream;

/**
 * A picture at a smaller size: each new pixel is the mean of the area that it covers, so that fine
 * patterns go grey instead of turning into coarse ones. Means are of encoded values, for showing,
 * never for measuring.
 */
public final class SmallerPicture {
  /** Weights along a side are whole numbers that sum to this; so all sums stay below 2³¹. */
  private static final int WHOLE = 1 << 11;

  private SmallerPicture() {}

  /**
   * The picture with its longer side at most {@code longest}; the same one if it is not longer.
   *
   * @param longest pixels, at least 1
   */
  public static Picture of(Picture picture, int longest) {
    if (longest < 1) {
      throw new IllegalArgumentException("longest must be at least 1, found " + longest);
    }
    int side = picture.longSide();
    if (side <= longest) {
      return picture;
    }
    int whole = Math.max(1, Math.min(side / (2 * longest), shortSide(picture)));
    Picture near = picture.reduced(whole);
    double factor = longest / (double) side;
    int width = Math.max(1, (int) Math.round(picture.width() * factor));
    int height = Math.max(1, (int) Math.round(picture.height() * factor));
    return meant(near, Math.min(width, near.width()), Math.min(height, near.height()));
  }

  private static int shortSide(Picture picture) {
    return Math.min(picture.width(), picture.height());
  }

  private static Picture meant(Picture picture, int width, int height) {
    Cover columns = Cover.of(picture.width(), width);
    Cover rows = Cover.of(picture.height(), height);
    int[] out = new int[width * height];
    IntStream.range(0, height).parallel().forEach(y -> row(picture, columns, rows, y, out));
    return new Picture(width, height, out);
  }

  private static void row(Picture picture, Cover columns, Cover rows, int y, int[] out) {
    int old = picture.width();
    int[] red = new int[old];
    int[] green = new int[old];
    int[] blue = new int[old];
    for (int j = 0; j < rows.count; j++) {
      int weight = rows.weights[y * rows.count + j];
      if (weight > 0) {
        add(picture.pixels(), (rows.first[y] + j) * old, weight, red, green, blue);
      }
    }
    int width = columns.first.length;
    for (int x = 0; x < width; x++) {
      int r = 0;
      int g = 0;
      int b = 0;
      for (int i = 0; i < columns.count; i++) {
        int weight = columns.weights[x * columns.count + i];
        int at = Math.min(columns.first[x] + i, old - 1);
        r += weight * red[at];
        g += weight * green[at];
        b += weight * blue[at];
      }
      out[y * width + x] = level(r) << 16 | level(g) << 8 | level(b);
    }
  }

  private static void add(int[] pixels, int from, int weight, int[] red, int[] green, int[] blue) {
    for (int x = 0; x < red.length; x++) {
      int p = pixels[from + x];
      red[x] += weight * (p >> 16 & 0xff);
      green[x] += weight * (p >> 8 & 0xff);
      blue[x] += weight * (p & 0xff);
    }
  }

  private static int level(int sum) {
    return (sum + WHOLE * WHOLE / 2) / (WHOLE * WHOLE);
  }

  /** Which old pixels of a row or column a new one covers, and how much of each. */
  private static final class Cover {
    private final int count;
    private final int[] first;
    private final int[] weights;

    private Cover(int count, int[] first, int[] weights) {
      this.count = count;
      this.first = first;
      this.weights = weights;
    }

    static Cover of(int from, int to) {
      double step = from / (double) to;
      int count = (int) Math.ceil(step) + 1;
      int[] first = new int[to];
      int[] weights = new int[to * count];
      for (int i = 0; i < to; i++) {
        first[i] = (int) (i * step);
        int left = WHOLE;
        for (int k = 0; k < count; k++) {
          int old = first[i] + k;
          double part = Math.min(old + 1, (i + 1) * step) - Math.max(old, i * step);
          int weight = Math.min(left, (int) Math.round(Math.max(0, part) / step * WHOLE));
          weights[i * count + k] = weight;
          left -= weight;
        }
        // What rounding left over goes to the first, which is always covered.
        weights[i * count] += left;
      }
      return new Cover(count, first, weights);
    }
  }
}
