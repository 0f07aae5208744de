package ovenproof.core.photo;

import java.util.stream.IntStream;
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

  private static final float[] TO_LINEAR = toLinear();

  /** The curve is steep near black, so the table is finer there. */
  private static final float STEEP = 1 / 32f;

  private static final int STEPS = 4096;
  private static final byte[] ENCODED = table(1);
  private static final byte[] ENCODED_STEEP = table(STEEP);

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

  /** CIELAB under D50 to packed sRGB; what lies outside is cut. */
  private static int packed(float l, float a, float b) {
    float fy = (l + 16) / 116;
    float x = ratio(fy + a / 500);
    float y = ratio(fy);
    float z = ratio(fy - b / 200);
    float[] m = TO_LINEAR;
    return encoded(m[0] * x + m[1] * y + m[2] * z) << 16
        | encoded(m[3] * x + m[4] * y + m[5] * z) << 8
        | encoded(m[6] * x + m[7] * y + m[8] * z);
  }

  /** Tristimulus value over that of white; CIE 15, the inverse of CIELAB's function. */
  private static float ratio(float f) {
    return f > 6 / 29f ? f * f * f : (116 * f - 16) * (27 / 24389f);
  }

  private static int encoded(float linear) {
    float v = Math.max(0, Math.min(1, linear));
    return v < STEEP
        ? ENCODED_STEEP[(int) (v * (STEPS / STEEP) + 0.5f)] & 0xff
        : ENCODED[(int) (v * STEPS + 0.5f)] & 0xff;
  }

  private static byte[] table(float most) {
    byte[] table = new byte[STEPS + 1];
    for (int i = 0; i <= STEPS; i++) {
      table[i] = (byte) Math.round(255 * Srgb.encode(most * i / (double) STEPS));
    }
    return table;
  }

  /** From ratios to the white of D50, row by row. */
  private static float[] toLinear() {
    Xyz white = White.D50.xyz();
    Matrix3 m =
        LinearRgb.toXyzMatrix(White.D50)
            .inverse()
            .times(Matrix3.diagonal(white.x(), white.y(), white.z()));
    return new float[] {
      (float) m.m00(), (float) m.m01(), (float) m.m02(),
      (float) m.m10(), (float) m.m11(), (float) m.m12(),
      (float) m.m20(), (float) m.m21(), (float) m.m22()
    };
  }
}
