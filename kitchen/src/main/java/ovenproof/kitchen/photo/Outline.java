package ovenproof.kitchen.photo;

import ovenproof.kitchen.physics.Chance;

/** Radius of a piece in each direction, with the small accidents of a real edge. */
final class Outline {

  private static final int STEPS = 720;

  private final float[] radius = new float[STEPS + 1];

  Outline(PhotoScene.Shape shape, double width, double depth, Chance chance) {
    double[] phase = new double[9];
    double[] size = new double[9];
    double rough = shape == PhotoScene.Shape.SLICE || shape == PhotoScene.Shape.ROUND ? 1 : 1.4;
    for (int k = 2; k < 9; k++) {
      phase[k] = chance.uniform(0, 2 * Math.PI);
      size[k] = rough * chance.gaussian(0, 0.010) / Math.sqrt(k - 1.0);
    }
    for (int i = 0; i <= STEPS; i++) {
      double angle = 2 * Math.PI * i / STEPS - Math.PI;
      double wobble = 1;
      for (int k = 2; k < 9; k++) {
        wobble += size[k] * Math.sin(k * angle + phase[k]);
      }
      radius[i] = (float) (plain(shape, width / 2, depth / 2, angle) * wobble);
    }
  }

  private static double plain(PhotoScene.Shape shape, double a, double b, double angle) {
    double c = Math.abs(Math.cos(angle));
    double s = Math.abs(Math.sin(angle));
    return switch (shape) {
      case ROUND -> power(a, b, c, s, 2);
      case LOAF -> power(a, b, c, s, 2.6);
      case SLICE -> power(a, b, c, s, 5.5) * (Math.sin(angle) < 0 ? shoulder(angle) : 1);
      case CAPSULE -> capsule(a, b, c, s);
    };
  }

  private static double power(double a, double b, double c, double s, double n) {
    return Math.pow(Math.pow(c / a, n) + Math.pow(s / b, n), -1 / n);
  }

  /** The upper half of a loaf bulges over its tin. */
  private static double shoulder(double angle) {
    double off = Math.abs(Math.abs(angle) - Math.PI / 2) - 0.75;
    return 1 + 0.035 * Math.exp(-off * off / 0.05) + 0.02 * Math.exp(-off * off * 8);
  }

  private static double capsule(double a, double b, double c, double s) {
    double straight = a - b;
    if (s > 1e-6 && b / s * c <= straight) {
      return b / s;
    }
    double under = b * b - straight * straight * s * s;
    return straight * c + Math.sqrt(Math.max(0, under));
  }

  /** Radius towards (x, y). */
  float towards(float x, float y) {
    float at = (angle(y, x) + (float) Math.PI) * (STEPS / (2 * (float) Math.PI));
    int i = Math.min(STEPS - 1, Math.max(0, (int) at));
    return radius[i] + (at - i) * (radius[i + 1] - radius[i]);
  }

  float largest() {
    float largest = 0;
    for (float r : radius) {
      largest = Math.max(largest, r);
    }
    return largest;
  }

  /** atan2 to about 0.0001 rad: an odd polynomial in the smaller ratio. */
  private static float angle(float y, float x) {
    float ax = Math.abs(x);
    float ay = Math.abs(y);
    float z = Math.min(ax, ay) / Math.max(Math.max(ax, ay), 1e-9f);
    float q = z * z;
    float a = z * (0.99986f + q * (-0.3303f + q * (0.18014f + q * (-0.08513f + q * 0.020835f))));
    if (ay > ax) {
      a = (float) (Math.PI / 2) - a;
    }
    if (x < 0) {
      a = (float) Math.PI - a;
    }
    return y < 0 ? -a : a;
  }
}
