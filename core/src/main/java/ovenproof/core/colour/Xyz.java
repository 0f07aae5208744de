package ovenproof.core.colour;

/**
 * CIE 1931 tristimulus values; a perfect white has y = 1. Which white they are adapted to is known
 * by the one who made them.
 */
public record Xyz(double x, double y, double z) {

  /** CIE 15:2018, the limit between the cube root and the straight part: (6/29)³. */
  static final double EPSILON = 216.0 / 24389.0;

  /** CIE 15:2018, the slope of the straight part: (29/3)³. */
  static final double KAPPA = 24389.0 / 27.0;

  /** Bradford cone responses (published to four digits; used by ICC.1 for its own adaptation). */
  private static final Matrix3 BRADFORD =
      new Matrix3(0.8951, 0.2664, -0.1614, -0.7502, 1.7135, 0.0367, 0.0389, -0.0685, 1.0296);

  private static final Matrix3 D65_TO_D50 = bradford(White.D65, White.D50);
  private static final Matrix3 D50_TO_D65 = bradford(White.D50, White.D65);

  /** From chromaticity and luminance; {@code y} of the chromaticity must not be 0. */
  public static Xyz ofChromaticity(double x, double y, double luminance) {
    return new Xyz(x / y * luminance, luminance, (1 - x - y) / y * luminance);
  }

  /** The matrix that takes colours seen under one white to the other (Bradford, linear). */
  public static Matrix3 adaptation(White from, White to) {
    if (from == to) {
      return Matrix3.IDENTITY;
    }
    return from == White.D65 ? D65_TO_D50 : D50_TO_D65;
  }

  private static Matrix3 bradford(White from, White to) {
    double[] source = BRADFORD.apply(from.xyz().x, from.xyz().y, from.xyz().z);
    double[] target = BRADFORD.apply(to.xyz().x, to.xyz().y, to.xyz().z);
    Matrix3 gains =
        Matrix3.diagonal(target[0] / source[0], target[1] / source[1], target[2] / source[2]);
    return BRADFORD.inverse().times(gains).times(BRADFORD);
  }

  /** The same colour for an eye adapted to another white. */
  public Xyz adapted(White from, White to) {
    double[] v = adaptation(from, to).apply(x, y, z);
    return new Xyz(v[0], v[1], v[2]);
  }

  /** CIELAB against a white (CIE 15:2018); no adaptation takes place. */
  public Lab toLab(White white) {
    double fx = f(x / white.xyz().x);
    double fy = f(y / white.xyz().y);
    double fz = f(z / white.xyz().z);
    return new Lab(116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz), white);
  }

  static double f(double ratio) {
    return ratio > EPSILON ? Math.cbrt(ratio) : (KAPPA * ratio + 16) / 116;
  }

  static double inverseF(double f) {
    double cube = f * f * f;
    return cube > EPSILON ? cube : (116 * f - 16) / KAPPA;
  }
}
