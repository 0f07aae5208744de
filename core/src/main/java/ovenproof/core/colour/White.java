package ovenproof.core.colour;

/**
 * A reference white, by its CIE 1931 chromaticity as the standards give it to four digits, Y = 1.
 */
public enum White {
  /** Horizon light as graphic arts and charts use it: x 0.3457, y 0.3585. */
  D50(0.3457, 0.3585),
  /** Daylight as screens and sRGB use it: x 0.3127, y 0.3290. */
  D65(0.3127, 0.3290);

  private final Xyz xyz;

  White(double x, double y) {
    this.xyz = Xyz.ofChromaticity(x, y, 1);
  }

  public Xyz xyz() {
    return xyz;
  }
}
