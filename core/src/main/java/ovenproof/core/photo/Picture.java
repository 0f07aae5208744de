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
    if (factor < 1 || factor > Math.min(width, height)) {
      throw new IllegalArgumentException(
          "factor must lie in 1…" + Math.min(width, height) + ", found " + factor);
    }
    if (factor == 1) {
      return this;
    }
    int w = width / factor;
    int h = height / factor;
    int[] out = new int[w * h];
    java.util.stream.IntStream.range(0, h)
        .parallel()
        .forEach(row -> reduceRow(factor, row, w, out));
    return new Picture(w, h, out);
  }

  private void reduceRow(int factor, int row, int w, int[] out) {
    int[] red = new int[w];
    int[] green = new int[w];
    int[] blue = new int[w];
    for (int dy = 0; dy < factor; dy++) {
      int at = (row * factor + dy) * width;
      for (int column = 0; column < w; column++) {
        int r = 0;
        int g = 0;
        int b = 0;
        for (int dx = 0; dx < factor; dx++) {
          int p = pixels[at++];
          r += p >> 16 & 0xff;
          g += p >> 8 & 0xff;
          b += p & 0xff;
        }
        red[column] += r;
        green[column] += g;
        blue[column] += b;
      }
    }
    int n = factor * factor;
    int half = n / 2;
    for (int column = 0; column < w; column++) {
      out[row * w + column] =
          (red[column] + half) / n << 16
              | (green[column] + half) / n << 8
              | (blue[column] + half) / n;
    }
  }
}
