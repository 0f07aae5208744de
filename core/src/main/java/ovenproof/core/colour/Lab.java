package ovenproof.core.colour;

/**
 * A colour in CIELAB (CIE 15:2018).
 *
 * @param lightness L*, 0 for black to 100 for white
 * @param a a*, positive towards red, negative towards green
 * @param b b*, positive towards yellow, negative towards blue
 * @param white the white that the values refer to
 */
public record Lab(double lightness, double a, double b, White white) {

  public static Lab d50(double lightness, double a, double b) {
    return new Lab(lightness, a, b, White.D50);
  }

  public static Lab d65(double lightness, double a, double b) {
    return new Lab(lightness, a, b, White.D65);
  }

  /** C*, distance from grey. */
  public double chroma() {
    return Math.hypot(a, b);
  }

  /** Hue angle in degrees, 0 ≤ h &lt; 360; 0 for a grey. */
  public double hueDegrees() {
    double degrees = Math.toDegrees(Math.atan2(b, a));
    return degrees < 0 ? degrees + 360 : degrees;
  }

  /** Tristimulus values adapted to this colour's own white. */
  public Xyz toXyz() {
    double fy = (lightness + 16) / 116;
    Xyz w = white.xyz();
    return new Xyz(
        w.x() * Xyz.inverseF(fy + a / 500),
        w.y() * Xyz.inverseF(fy),
        w.z() * Xyz.inverseF(fy - b / 200));
  }

  /** The same colour against another white, by Bradford adaptation. */
  public Lab to(White target) {
    return target == white ? this : toXyz().adapted(white, target).toLab(target);
  }

  /** Light of the sRGB primaries; outside 0…1 when the colour is outside the gamut. */
  public LinearRgb toLinearRgb() {
    return LinearRgb.ofXyzD65(toXyz().adapted(white, White.D65));
  }

  /** The nearest 8-bit sRGB, each channel clamped on its own. */
  public Srgb toSrgb() {
    return toLinearRgb().encode();
  }
}
