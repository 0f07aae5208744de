package ovenproof.core.colour;

/**
 * An 8-bit sRGB colour as a picture file holds it (IEC 61966-2-1:1999).
 *
 * @param red 0…255
 * @param green 0…255
 * @param blue 0…255
 */
public record Srgb(int red, int green, int blue) {

  private static final double[] LINEAR = new double[256];

  static {
    for (int i = 0; i < 256; i++) {
      LINEAR[i] = decode(i / 255.0);
    }
  }

  public Srgb {
    if ((red | green | blue) < 0 || red > 255 || green > 255 || blue > 255) {
      throw new IllegalArgumentException(
          "channels must lie in 0…255, found " + red + ", " + green + ", " + blue);
    }
  }

  /** From {@code 0xRRGGBB}; higher bits are ignored. */
  public static Srgb ofPacked(int rgb) {
    return new Srgb(rgb >> 16 & 0xff, rgb >> 8 & 0xff, rgb & 0xff);
  }

  /** As {@code 0xRRGGBB}. */
  public int packed() {
    return red << 16 | green << 8 | blue;
  }

  public LinearRgb linear() {
    return new LinearRgb(LINEAR[red], LINEAR[green], LINEAR[blue]);
  }

  public Lab toLab(White white) {
    return linear().toLab(white);
  }

  /** As {@code #rrggbb}. */
  public String hex() {
    return String.format("#%06x", packed());
  }

  /** The light of an 8-bit channel value, 0…1. */
  public static double linearOf(int channel) {
    return LINEAR[channel];
  }

  /** Encoded value 0…1 to light 0…1. */
  public static double decode(double encoded) {
    return encoded <= 0.04045 ? encoded / 12.92 : Math.pow((encoded + 0.055) / 1.055, 2.4);
  }

  /** Light 0…1 to encoded value 0…1. */
  public static double encode(double linear) {
    return linear <= 0.0031308 ? 12.92 * linear : 1.055 * Math.pow(linear, 1 / 2.4) - 0.055;
  }
}
