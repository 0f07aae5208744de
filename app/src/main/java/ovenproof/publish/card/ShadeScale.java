package ovenproof.publish.card;

import java.util.Locale;

/**
 * The colour of a crust of a given lightness, from the eight crust colours of the look, L* 89 to
 * 18, joined by straight lines.
 */
public final class ShadeScale {
  private static final double[] LIGHTNESS = {89, 79, 69, 59, 48, 38, 28, 18};
  private static final int[] COLOUR = {
    0xece0bc, 0xdac18c, 0xc7a26a, 0xb18651, 0x976b41, 0x795239, 0x5a3c2e, 0x3c2721
  };

  private ShadeScale() {}

  /** As {@code #rrggbb}; held at the ends. */
  public static String colour(double lightness) {
    double held = Math.max(LIGHTNESS[7], Math.min(LIGHTNESS[0], lightness));
    int i = 0;
    while (i < 6 && held < LIGHTNESS[i + 1]) {
      i++;
    }
    double t = (LIGHTNESS[i] - held) / (LIGHTNESS[i] - LIGHTNESS[i + 1]);
    int mixed = 0;
    for (int shift = 16; shift >= 0; shift -= 8) {
      int a = COLOUR[i] >> shift & 255;
      int b = COLOUR[i + 1] >> shift & 255;
      mixed = mixed << 8 | (int) Math.round(a + t * (b - a));
    }
    return String.format(Locale.ROOT, "#%06x", mixed);
  }
}
