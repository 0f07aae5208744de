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

  /** From chromaticity and luminance; {@code y} of the chromaticity must not be 0. */
  public static Xyz ofChromaticity(double x, double y, double luminance) {
    return new Xyz(x / y * luminance, luminance, (1 - x - y) / y * luminance);
  }

  /** The same colour for an eye adapted to another white. */
  public Xyz adapted(White from, White to) {
    double[] v = Bradford.adaptation(from, to).apply(x, y, z);
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
