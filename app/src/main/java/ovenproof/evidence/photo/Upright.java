package ovenproof.evidence.photo;

import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.DataBuffer;
import java.awt.image.DataBufferByte;
import java.awt.image.Raster;
import java.util.stream.IntStream;
import ovenproof.core.photo.Picture;

/** Pixels of a decoded picture as sRGB, turned and mirrored upright. */
final class Upright {

  private static final int WHITE = 0xffffff;

  private Upright() {}

  /**
   * Copies the pixels.
   *
   * @param orientation EXIF 1…8 (CIPA DC-008, tag 274)
   */
  static Picture of(BufferedImage image, int orientation) {
    int w = image.getWidth();
    int h = image.getHeight();
    UprightPixels pixels = new UprightPixels(w, h, orientation);
    Rows rows = rows(image);
    IntStream.range(0, h)
        .parallel()
        .forEach(
            y -> {
              int[] line = new int[w];
              rows.read(y, line);
              pixels.put(y, line);
            });
    return pixels.picture();
  }

  /** One row of a picture as packed sRGB; called from several threads. */
  @FunctionalInterface
  private interface Rows {
    void read(int y, int[] line);
  }

  private static Rows rows(BufferedImage image) {
    if (image.getType() == BufferedImage.TYPE_3BYTE_BGR
        && image.getRaster().getDataBuffer() instanceof DataBufferByte bytes
        && bytes.getNumBanks() == 1
        && image.getRaster().getParent() == null) {
      return bgr(bytes.getData(), image.getWidth());
    }
    if (image.getColorModel().getColorSpace().getType() == ColorSpace.TYPE_GRAY) {
      return grey(image);
    }
    return (y, line) -> {
      image.getRGB(0, y, line.length, 1, line, 0, line.length);
      for (int x = 0; x < line.length; x++) {
        line[x] = onWhite(line[x]);
      }
    };
  }

  private static Rows bgr(byte[] data, int width) {
    return (y, line) -> {
      int o = 3 * y * width;
      for (int x = 0; x < line.length; x++, o += 3) {
        line[x] = (data[o + 2] & 0xff) << 16 | (data[o + 1] & 0xff) << 8 | data[o] & 0xff;
      }
    };
  }

  /**
   * Greys as they are written. {@code getRGB} would take them for linear light and brighten them.
   */
  private static Rows grey(BufferedImage image) {
    Raster raster = image.getRaster();
    int bits = image.getColorModel().getComponentSize(0);
    boolean wide = raster.getDataBuffer().getDataType() == DataBuffer.TYPE_USHORT;
    int bands = raster.getNumBands();
    int most = (1 << (wide ? 16 : bits)) - 1;
    return (y, line) -> {
      int[] samples = raster.getPixels(0, y, line.length, 1, new int[bands * line.length]);
      for (int x = 0; x < line.length; x++) {
        int v = (int) Math.round(255.0 * samples[bands * x] / most);
        double alpha = bands > 1 ? samples[bands * x + 1] / (double) most : 1;
        int g = (int) Math.round(alpha * v + (1 - alpha) * 255);
        line[x] = g << 16 | g << 8 | g;
      }
    };
  }

  /** What is transparent shows a white page. */
  private static int onWhite(int argb) {
    int alpha = argb >>> 24;
    if (alpha == 255) {
      return argb & WHITE;
    }
    int out = 0;
    for (int shift = 16; shift >= 0; shift -= 8) {
      int v = argb >> shift & 0xff;
      out |= (v * alpha + 255 * (255 - alpha) + 127) / 255 << shift;
    }
    return out;
  }
}
