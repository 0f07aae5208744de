package ovenproof.kitchen.physics;

import ovenproof.core.colour.Lab;

/**
 * The way of a surface from raw to burnt, as CIELAB under D50 over its browning 0…1. The colour
 * difference from raw grows in proportion to browning, up to {@link BrowningKinetics#LIMIT}:
 * lighter gives way to golden, brown, dark; yellow rises and falls again.
 *
 * <p>Ranges after published oven trials of bread (L* 80 to 25, a* −0.5 to 15, b* 18 to 30 and back)
 * and bought bakery goods (J. Michalak and others 2019, Table 1); the stations between are judged
 * by eye.
 */
public final class CrustColour {

  public static final CrustColour BREAD =
      new CrustColour(
          new double[][] {
            {0, 81, 0, 18},
            {0.42, 65.5, 8, 31},
            {0.68, 51, 14, 30},
            {0.9, 37, 12.5, 17.5},
            {1, 31.5, 9, 10}
          });
  public static final CrustColour CAKE =
      new CrustColour(
          new double[][] {
            {0, 83, 1, 30},
            {0.42, 68.5, 9, 43},
            {0.68, 54, 15.5, 42},
            {0.9, 39, 14, 27},
            {1, 33, 10.5, 19}
          });
  public static final CrustColour FLATBREAD =
      new CrustColour(
          new double[][] {
            {0, 84, 1, 16},
            {0.42, 69, 7, 29},
            {0.68, 54.5, 13, 29},
            {0.9, 39, 12, 17},
            {1, 33.5, 8.5, 10}
          });
  public static final CrustColour BREADCRUMB =
      new CrustColour(
          new double[][] {
            {0, 79, 5, 34},
            {0.42, 64, 14, 47},
            {0.68, 50, 19, 44},
            {0.9, 36.5, 16, 25},
            {1, 31.5, 12, 17}
          });
  public static final CrustColour POULTRY =
      new CrustColour(
          new double[][] {
            {0, 74, 4, 16},
            {0.42, 60, 12.5, 30},
            {0.68, 46.5, 17, 29},
            {0.9, 32, 14, 17},
            {1, 26.5, 11, 10}
          });

  private static final int STEPS = 512;

  private final Lab[] table = new Lab[STEPS + 1];

  private CrustColour(double[][] stations) {
    for (int i = 0; i <= STEPS; i++) {
      double x = i / (double) STEPS;
      table[i] = Lab.d50(smooth(stations, x, 1), smooth(stations, x, 2), smooth(stations, x, 3));
    }
  }

  /** Cubic Hermite through the stations, slopes by finite differences. */
  private static double smooth(double[][] s, double x, int c) {
    int i = 0;
    while (i < s.length - 2 && x > s[i + 1][0]) {
      i++;
    }
    double h = s[i + 1][0] - s[i][0];
    double t = (x - s[i][0]) / h;
    double m0 = slope(s, i, c) * h;
    double m1 = slope(s, i + 1, c) * h;
    double t2 = t * t;
    double t3 = t2 * t;
    return (2 * t3 - 3 * t2 + 1) * s[i][c]
        + (t3 - 2 * t2 + t) * m0
        + (3 * t2 - 2 * t3) * s[i + 1][c]
        + (t3 - t2) * m1;
  }

  private static double slope(double[][] s, int i, int c) {
    int low = Math.max(0, i - 1);
    int high = Math.min(s.length - 1, i + 1);
    return (s[high][c] - s[low][c]) / (s[high][0] - s[low][0]);
  }

  /** Colour at a browning of 0…1; outside, of the nearest end. */
  public Lab at(double browning) {
    double position = Math.min(1, Math.max(0, browning)) * STEPS;
    int i = (int) Math.min(STEPS - 1, position);
    double part = position - i;
    Lab a = table[i];
    Lab b = table[i + 1];
    return Lab.d50(
        a.lightness() + part * (b.lightness() - a.lightness()),
        a.a() + part * (b.a() - a.a()),
        a.b() + part * (b.b() - a.b()));
  }

  /** The browning at which the surface has this lightness. */
  public double browningOf(double lightness) {
    double low = 0;
    double high = 1;
    for (int i = 0; i < 40; i++) {
      double middle = (low + high) / 2;
      if (at(middle).lightness() > lightness) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }
}
