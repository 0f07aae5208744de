package ovenproof.core.photo;

import java.util.stream.IntStream;
import ovenproof.core.colour.Lab;
import ovenproof.core.colour.LinearRgb;
import ovenproof.core.colour.Matrix3;
import ovenproof.core.colour.Srgb;
import ovenproof.core.colour.White;
import ovenproof.core.colour.Xyz;

/**
 * A picture as all calibrated pictures look: the same surface has the same pixel value, whatever
 * camera and light. For strips and pages; measures are taken from the original.
 */
public final class CalibratedPicture {

  private static final Matrix3 TO_LINEAR = LinearRgb.toXyzMatrix(White.D50).inverse();
  private static final int STEPS = 4096;
  private static final byte[] ENCODED = new byte[STEPS + 1];

  static {
    for (int i = 0; i <= STEPS; i++) {
      ENCODED[i] = (byte) Math.round(255 * Srgb.encode(i / (double) STEPS));
    }
  }

  private CalibratedPicture() {}

  /** Converts every pixel through the reading and back to sRGB. */
  public static Picture of(Picture picture, PixelColours colours) {
    int w = picture.width();
    int[] out = new int[picture.pixels().length];
    IntStream.range(0, picture.height())
        .parallel()
        .forEach(
            y -> {
              float[] lab = new float[3 * w];
              colours.row(picture, y, 0, w, lab);
              for (int x = 0, o = 0; x < w; x++, o += 3) {
                out[y * w + x] = packed(lab[o], lab[o + 1], lab[o + 2]);
              }
            });
    return new Picture(w, picture.height(), out);
  }

  private static int packed(double l, double a, double b) {
    Xyz xyz = Lab.d50(l, a, b).toXyz();
    double[] rgb = TO_LINEAR.apply(xyz.x(), xyz.y(), xyz.z());
    return encoded(rgb[0]) << 16 | encoded(rgb[1]) << 8 | encoded(rgb[2]);
  }

  private static int encoded(double linear) {
    double v = Math.max(0, Math.min(1, linear));
    // Near black the curve is steep: the table would show steps there.
    return v < 0.02
        ? (int) Math.round(255 * Srgb.encode(v))
        : ENCODED[(int) Math.round(v * STEPS)] & 0xff;
  }
}
