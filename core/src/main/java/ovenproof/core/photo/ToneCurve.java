package ovenproof.core.photo;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Undoes what a camera does to the steps between dark and light beyond sRGB, by the six greys of
 * the chart: log(light) = a + b·log(value) + c·log²(value) for each channel, value being the light
 * that sRGB would mean.
 */
final class ToneCurve {

  /** How much freedom the curve has. */
  enum Kind {
    /** The file is what sRGB says. */
    SRGB(0),
    /** A power of it: one exponent for each channel. */
    POWER(1),
    /** A bent power: shoulders and toes of a camera's own curve. */
    BENT_POWER(2);

    private final int degree;

    Kind(int degree) {
      this.degree = degree;
    }
  }

  private static final double DARKEST = 2e-3;
  private static final int CHECKS = 60;

  private final double[][] coefficients;

  private ToneCurve(double[][] coefficients) {
    this.coefficients = coefficients;
  }

  /**
   * Fits the curve to the greys.
   *
   * @param use which of the 24 patches may be used
   * @param grey published light of the six greys, 0…1
   * @return null if the greys do not carry this kind of curve, or it would not rise throughout
   */
  static @Nullable ToneCurve fit(Kind kind, PatchSamples samples, boolean[] use, double[] grey) {
    double[][] all = new double[3][];
    for (int channel = 0; channel < 3; channel++) {
      double[] fitted = fitChannel(kind, samples, use, grey, channel);
      if (fitted == null || !rises(fitted)) {
        return null;
      }
      all[channel] = fitted;
    }
    return new ToneCurve(all);
  }

  private static double @Nullable [] fitChannel(
      Kind kind, PatchSamples samples, boolean[] use, double[] grey, int channel) {
    if (kind == Kind.SRGB) {
      return new double[] {0, 1, 0};
    }
    int n = 0;
    double[][] design = new double[grey.length][];
    double[] right = new double[grey.length];
    for (int i = 0; i < grey.length; i++) {
      int patch = ReferenceChart.FIRST_GREY + i;
      double value = samples.patches().get(patch).channel(channel);
      if (use[patch] && value > DARKEST) {
        double x = Math.log(value);
        design[n] = kind.degree == 1 ? new double[] {1, x} : new double[] {1, x, x * x};
        right[n++] = Math.log(grey[i]);
      }
    }
    if (n < kind.degree + 2) {
      return null;
    }
    double[] solved = LeastSquares.solve(Arrays.copyOf(design, n), Arrays.copyOf(right, n), 1e-9);
    return solved == null ? null : Arrays.copyOf(solved, 3);
  }

  private static boolean rises(double[] c) {
    double before = light(c, DARKEST);
    for (int i = 1; i <= CHECKS; i++) {
      double value = DARKEST * Math.pow(1.05 / DARKEST, i / (double) CHECKS);
      double now = light(c, value);
      if (!(now > before)) {
        return false;
      }
      before = now;
    }
    return true;
  }

  /** Light for a value; below the darkest grey of use it falls to zero in a straight line. */
  double light(int channel, double value) {
    return light(coefficients[channel], value);
  }

  private static double light(double[] c, double value) {
    if (c[0] == 0 && c[1] == 1 && c[2] == 0) {
      return value;
    }
    if (value < DARKEST) {
      return value / DARKEST * light(c, DARKEST);
    }
    double x = Math.log(value);
    return Math.exp(c[0] + c[1] * x + c[2] * x * x);
  }
}
