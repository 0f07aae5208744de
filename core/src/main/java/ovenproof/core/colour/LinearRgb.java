package ovenproof.core.colour;

/**
 * Amounts of light of the three sRGB primaries, 1 being the white of the screen. Values below 0 and
 * above 1 are allowed: they lie outside what a screen shows. Light adds, so averages and mixtures
 * belong here and not in {@link Srgb}.
 */
public record LinearRgb(double red, double green, double blue) {

  /** Derived from the primaries and the white of IEC 61966-2-1:1999, not its rounded table. */
  private static final Matrix3 TO_XYZ_D65 = deriveFromPrimaries();

  private static final Matrix3 FROM_XYZ_D65 = TO_XYZ_D65.inverse();

  private static Matrix3 deriveFromPrimaries() {
    Xyz red = Xyz.ofChromaticity(0.64, 0.33, 1);
    Xyz green = Xyz.ofChromaticity(0.30, 0.60, 1);
    Xyz blue = Xyz.ofChromaticity(0.15, 0.06, 1);
    Matrix3 primaries =
        new Matrix3(
            red.x(), green.x(), blue.x(), red.y(), green.y(), blue.y(), red.z(), green.z(),
            blue.z());
    Xyz white = White.D65.xyz();
    double[] s = primaries.inverse().apply(white.x(), white.y(), white.z());
    return primaries.times(Matrix3.diagonal(s[0], s[1], s[2]));
  }

  /** Linear sRGB to XYZ adapted to the given white. */
  public static Matrix3 toXyzMatrix(White white) {
    return Bradford.adaptation(White.D65, white).times(TO_XYZ_D65);
  }

  public static LinearRgb ofXyzD65(Xyz xyz) {
    double[] v = FROM_XYZ_D65.apply(xyz.x(), xyz.y(), xyz.z());
    return new LinearRgb(v[0], v[1], v[2]);
  }

  /** XYZ under D65, the white of sRGB. */
  public Xyz toXyzD65() {
    double[] v = TO_XYZ_D65.apply(red, green, blue);
    return new Xyz(v[0], v[1], v[2]);
  }

  public Lab toLab(White white) {
    return toXyzD65().adapted(White.D65, white).toLab(white);
  }

  public LinearRgb times(double factor) {
    return new LinearRgb(red * factor, green * factor, blue * factor);
  }

  /** The nearest 8-bit sRGB, each channel clamped on its own. */
  public Srgb encode() {
    return new Srgb(toByte(red), toByte(green), toByte(blue));
  }

  private static int toByte(double linear) {
    double encoded = Srgb.encode(Math.min(1, Math.max(0, linear)));
    return (int) Math.round(255 * encoded);
  }
}
