package ovenproof.core.colour;

/**
 * The CIEDE2000 colour difference with kL = kC = kH = 1.
 *
 * <p>Source: CIE 142:2001 and ISO/CIE 11664-6:2014; the branches at hue gaps of 180° as in G.
 * Sharma, W. Wu, E. N. Dalal, Color Research and Application 30(1), 2005, pp. 21–30.
 *
 * <p>A difference of about 2 is just seen side by side in food, 5 by anyone (common practice). The
 * difference is no metric: the way over a third colour may be shorter.
 */
public final class Ciede2000 {

  private static final double POW_25_7 = 6103515625.0;

  private Ciede2000() {}

  /**
   * ΔE00 ≥ 0, symmetric in its arguments.
   *
   * @throws IllegalArgumentException if the colours refer to different whites
   */
  public static double between(Lab first, Lab second) {
    if (first.white() != second.white()) {
      throw new IllegalArgumentException(
          "both colours must refer to one white, found " + first.white() + ", " + second.white());
    }
    return between(
        first.lightness(), first.a(), first.b(), second.lightness(), second.a(), second.b());
  }

  // One derivation, in the order and with the letters of the paper: primes are dropped.
  static double between(double l1, double a1, double b1, double l2, double a2, double b2) {
    double meanChroma7 = Math.pow((Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2, 7);
    double g = 0.5 * (1 - Math.sqrt(meanChroma7 / (meanChroma7 + POW_25_7)));
    double a1p = (1 + g) * a1;
    double a2p = (1 + g) * a2;
    double c1 = Math.hypot(a1p, b1);
    double c2 = Math.hypot(a2p, b2);
    double h1 = hueDegrees(a1p, b1);
    double h2 = hueDegrees(a2p, b2);
    boolean grey = c1 * c2 == 0;

    double dh = grey ? 0 : hueStep(h1, h2);
    double deltaL = l2 - l1;
    double deltaC = c2 - c1;
    double deltaH = 2 * Math.sqrt(c1 * c2) * Math.sin(Math.toRadians(dh / 2));

    double l = (l1 + l2) / 2;
    double c = (c1 + c2) / 2;
    double h = grey ? h1 + h2 : meanHue(h1, h2);
    double sl = 1 + 0.015 * sq(l - 50) / Math.sqrt(20 + sq(l - 50));
    double sc = 1 + 0.045 * c;
    double sh = 1 + 0.015 * c * hueWeight(h);
    double c7 = Math.pow(c, 7);
    double rt =
        -Math.sin(Math.toRadians(60 * Math.exp(-sq((h - 275) / 25))))
            * 2
            * Math.sqrt(c7 / (c7 + POW_25_7));
    double lTerm = deltaL / sl;
    double cTerm = deltaC / sc;
    double hTerm = deltaH / sh;
    double sum = lTerm * lTerm + cTerm * cTerm + hTerm * hTerm + rt * cTerm * hTerm;
    return Math.sqrt(Math.max(0, sum)); // rounding may leave −1e-17 for equal colours
  }

  private static double hueDegrees(double a, double b) {
    if (a == 0 && b == 0) {
      return 0;
    }
    double degrees = Math.toDegrees(Math.atan2(b, a));
    return degrees < 0 ? degrees + 360 : degrees;
  }

  private static double hueStep(double h1, double h2) {
    double step = h2 - h1;
    if (step > 180) {
      return step - 360;
    }
    return step < -180 ? step + 360 : step;
  }

  private static double meanHue(double h1, double h2) {
    double sum = h1 + h2;
    if (Math.abs(h1 - h2) <= 180) {
      return sum / 2;
    }
    return sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
  }

  private static double hueWeight(double h) {
    return 1
        - 0.17 * Math.cos(Math.toRadians(h - 30))
        + 0.24 * Math.cos(Math.toRadians(2 * h))
        + 0.32 * Math.cos(Math.toRadians(3 * h + 6))
        - 0.20 * Math.cos(Math.toRadians(4 * h - 63));
  }

  private static double sq(double value) {
    return value * value;
  }
}
