package ovenproof.evidence.photo;

import java.awt.Point;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ColorModel;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.DataBufferByte;
import java.awt.image.PixelInterleavedSampleModel;
import java.awt.image.Raster;
import java.awt.image.SampleModel;
import java.awt.image.WritableRaster;
import java.io.IOException;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import ovenproof.core.photo.Picture;

/**
 * Reads a JPEG of three channels line by line into the upright picture. The decoder's own picture,
 * 36 MB of a 12 megapixel photograph, is never held: each line goes where it belongs as it comes,
 * or into the sums of a smaller picture.
 */
final class JpegLines {

  private JpegLines() {}

  /**
   * Decodes it.
   *
   * @param reader with its input set, header read
   * @param orientation EXIF 1…8
   * @param factor each pixel is the mean of a factor × factor square, 1 for all pixels; what is
   *     left over at the right and lower edge of the stored picture is dropped
   */
  static Picture read(ImageReader reader, int orientation, int factor) throws IOException {
    int width = reader.getWidth(0);
    int height = reader.getHeight(0);
    UprightPixels pixels = new UprightPixels(width / factor, height / factor, orientation);
    Lines lines = factor == 1 ? pixels::putRgb : new Sums(width, height, factor, pixels);
    ImageReadParam parameters = reader.getDefaultReadParam();
    parameters.setDestination(passingOn(width, height, lines));
    reader.read(0, parameters);
    return pixels.picture();
  }

  /** Takes a line of red, green and blue bytes. */
  @FunctionalInterface
  private interface Lines {
    void take(int y, byte[] rgb);
  }

  /** An image that holds nothing and passes on each line that is written to it. */
  private static BufferedImage passingOn(int width, int height, Lines lines) {
    ColorModel colours =
        new ComponentColorModel(
            ColorSpace.getInstance(ColorSpace.CS_sRGB),
            false,
            false,
            ColorModel.OPAQUE,
            DataBuffer.TYPE_BYTE);
    SampleModel samples =
        new PixelInterleavedSampleModel(
            DataBuffer.TYPE_BYTE, width, height, 3, 3 * width, new int[] {0, 1, 2});
    return new BufferedImage(colours, new PassingRaster(samples, width, lines), false, null);
  }

  private static final class PassingRaster extends WritableRaster {
    private final Lines lines;

    PassingRaster(SampleModel samples, int width, Lines lines) {
      super(samples, new DataBufferByte(3 * width), new Point());
      this.lines = lines;
    }

    @Override
    public void setRect(int dx, int dy, Raster line) {
      lines.take(dy, ((DataBufferByte) line.getDataBuffer()).getData());
    }
  }

  /** Means of squares, complete with each factor-th line. */
  private static final class Sums implements Lines {
    private final int factor;
    private final int columns;
    private final int rows;
    private final int[] sums;
    private final int[] packed;
    private final UprightPixels out;

    Sums(int width, int height, int factor, UprightPixels out) {
      this.factor = factor;
      this.columns = width / factor;
      this.rows = height / factor;
      this.sums = new int[3 * columns];
      this.packed = new int[columns];
      this.out = out;
    }

    @Override
    public void take(int y, byte[] rgb) {
      int row = y / factor;
      if (row >= rows) {
        return;
      }
      int at = 0;
      for (int i = 0; i < sums.length; i += 3) {
        for (int k = 0; k < factor; k++) {
          sums[i] += rgb[at++] & 0xff;
          sums[i + 1] += rgb[at++] & 0xff;
          sums[i + 2] += rgb[at++] & 0xff;
        }
      }
      if (y % factor == factor - 1) {
        finish(row);
      }
    }

    private void finish(int row) {
      int n = factor * factor;
      int half = n / 2;
      for (int x = 0, i = 0; x < columns; x++, i += 3) {
        packed[x] =
            (sums[i] + half) / n << 16 | (sums[i + 1] + half) / n << 8 | (sums[i + 2] + half) / n;
      }
      java.util.Arrays.fill(sums, 0);
      out.put(row, packed);
    }
  }
}
