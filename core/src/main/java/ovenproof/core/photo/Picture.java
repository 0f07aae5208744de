package ovenproof.core.photo;

/**
 * An upright picture of 8-bit sRGB pixels.
 *
 * <p>The array is shared, not copied: twelve million pixels are held once. Nothing here writes to
 * it.
 *
 * @param width pixels, at least 1
 * @param height pixels, at least 1
 * @param pixels {@code 0xRRGGBB}, row by row from the top left; higher bits are ignored
 */
@SuppressWarnings("ArrayRecordComponent") // a picture is its pixels; equality is never asked for
public record Picture(int width, int height, int[] pixels) {

  public Picture {
    if (width < 1 || height < 1) {
      throw new IllegalArgumentException(
          "width and height must be at least 1, found " + width + " × " + height);
    }
    if (pixels.length != (long) width * height) {
      throw new IllegalArgumentException(
          "pixels must hold width × height = "
              + (long) width * height
              + " values, found "
              + pixels.length);
    }
  }

  /** Packed value at a place inside the picture. */
  public int at(int x, int y) {
    return pixels[y * width + x];
  }

  /** Length of the longer side in pixels. */
  public int longSide() {
    return Math.max(width, height);
  }

  /** Pixel count in millions. */
  public double megapixels() {
    return (double) width * height / 1e6;
  }

  /**
   * The picture at 1/factor of its size, each pixel the mean of a factor × factor square; what is
   * left over at the right and lower edge is dropped.
   *
   * <p>Means are taken of encoded values: the copy serves finding things, never measuring.
   *
   * @param factor at least 1 and not larger than the shorter side
   */
  public Picture reduced(int factor) {
    return factor == 1 ? this : reduced(new PixelBox(0, 0, width, height), factor);
  }

  /**
   * A part of the picture at 1/factor of its size, as {@link #reduced(int)}.
   *
   * @param part inside the picture
   * @param factor at least 1 and not larger than the shorter side of the part
   */
  Picture reduced(PixelBox part, int factor) {
    if (factor < 1 || factor > Math.min(part.width(), part.height())) {
      throw new IllegalArgumentException(
          "factor must lie in 1…" + Math.min(part.width(), part.height()) + ", found " + factor);
    }
    int w = part.width() / factor;
    int h = part.height() / factor;
    int[] out = new int[w * h];
    java.util.stream.IntStream.range(0, h)
        .parallel()
        .forEach(row -> reduceRow(part, factor, row, w, out));
    return new Picture(w, h, out);
  }

  private void reduceRow(PixelBox part, int factor, int row, int w, int[] out) {
    int[] sums = new int[3 * w];
    for (int dy = 0; dy < factor; dy++) {
      int at = (part.top() + row * factor + dy) * width + part.left();
      for (int i = 0; i < sums.length; i += 3) {
        for (int dx = 0; dx < factor; dx++) {
          int p = pixels[at++];
          sums[i] += p >> 16 & 0xff;
          sums[i + 1] += p >> 8 & 0xff;
          sums[i + 2] += p & 0xff;
        }
      }
    }
    int n = factor * factor;
    int half = n / 2;
    for (int x = 0, i = 0; x < w; x++, i += 3) {
      out[row * w + x] =
          (sums[i] + half) / n << 16 | (sums[i + 1] + half) / n << 8 | (sums[i + 2] + half) / n;
    }
  }
}
