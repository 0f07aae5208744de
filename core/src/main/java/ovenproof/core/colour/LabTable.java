package ovenproof.core.colour;

/**
 * Converts many pixels from linear light to CIELAB by table, within 0.001 of {@link Xyz#toLab} in
 * each coordinate over 0 ≤ light ≤ 2; darker and brighter light is computed directly.
 *
 * <p>The cube root dominates the cost of the direct way. Between 0 and 2 it is read from a table
 * with linear interpolation; the table step of 1/16384 keeps the worst error, which lies just above
 * the straight part, at 3·10⁻⁷ and so a* within 0.0003.
 */
public final class LabTable {

  private static final int STEPS_PER_UNIT = 16384;
  private static final int UPPER = 2;
  private static final float[] F = new float[UPPER * STEPS_PER_UNIT + 2];

  static {
    for (int i = 0; i < F.length; i++) {
      F[i] = (float) Xyz.f(i / (double) STEPS_PER_UNIT);
    }
  }

  private final float m00;
  private final float m01;
  private final float m02;
  private final float m10;
  private final float m11;
  private final float m12;
  private final float m20;
  private final float m21;
  private final float m22;

  private LabTable(Matrix3 m) {
    this.m00 = (float) m.m00();
    this.m01 = (float) m.m01();
    this.m02 = (float) m.m02();
    this.m10 = (float) m.m10();
    this.m11 = (float) m.m11();
    this.m12 = (float) m.m12();
    this.m20 = (float) m.m20();
    this.m21 = (float) m.m21();
    this.m22 = (float) m.m22();
  }

  /** For light of the sRGB primaries. */
  public static LabTable ofLinearSrgb(White white) {
    return ofXyz(LinearRgb.toXyzMatrix(white), white);
  }

  /** For light that {@code toXyz} takes to tristimulus values adapted to {@code white}. */
  public static LabTable ofXyz(Matrix3 toXyz, White white) {
    Xyz w = white.xyz();
    return new LabTable(Matrix3.diagonal(1 / w.x(), 1 / w.y(), 1 / w.z()).times(toXyz));
  }

  /**
   * Converts one pixel.
   *
   * @param lab receives L*, a*, b* at {@code offset}, {@code offset + 1}, {@code offset + 2}
   */
  public void convert(float red, float green, float blue, float[] lab, int offset) {
    ofRatios(
        m00 * red + m01 * green + m02 * blue,
        m10 * red + m11 * green + m12 * blue,
        m20 * red + m21 * green + m22 * blue,
        lab,
        offset);
  }

  /**
   * CIELAB of tristimulus values that are already divided by those of the white.
   *
   * @param lab receives L*, a*, b* at {@code offset}, {@code offset + 1}, {@code offset + 2}
   */
  public static void ofRatios(float x, float y, float z, float[] lab, int offset) {
    float fx = f(x);
    float fy = f(y);
    float fz = f(z);
    lab[offset] = 116 * fy - 16;
    lab[offset + 1] = 500 * (fx - fy);
    lab[offset + 2] = 200 * (fy - fz);
  }

  /**
   * Converts packed 8-bit sRGB pixels.
   *
   * @param packed {@code 0xRRGGBB}, from {@code from} (inclusive) to {@code to} (exclusive)
   * @param lab receives three values for each pixel, starting at index 0
   */
  public void convert(int[] packed, int from, int to, float[] lab) {
    float[] linear = SrgbLight.TABLE;
    for (int i = from, o = 0; i < to; i++, o += 3) {
      int p = packed[i];
      convert(linear[p >> 16 & 0xff], linear[p >> 8 & 0xff], linear[p & 0xff], lab, o);
    }
  }

  private static float f(float ratio) {
    if (ratio >= 0 && ratio < UPPER) {
      float position = ratio * STEPS_PER_UNIT;
      int index = (int) position;
      float low = F[index];
      return low + (position - index) * (F[index + 1] - low);
    }
    return (float) Xyz.f(ratio);
  }

  /** The 256 values of {@link Srgb#linearOf} as floats, for tight loops. */
  private static final class SrgbLight {
    static final float[] TABLE = new float[256];

    static {
      for (int i = 0; i < TABLE.length; i++) {
        TABLE[i] = (float) Srgb.linearOf(i);
      }
    }
  }
}
