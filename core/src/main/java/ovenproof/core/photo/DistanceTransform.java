package ovenproof.core.photo;

import java.util.Arrays;

/**
 * Squared Euclidean distance to the nearest cell outside a mask (P. Felzenszwalb, D. Huttenlocher,
 * "Distance Transforms of Sampled Functions", Theory of Computing 8, 2012). What lies beyond the
 * grid counts as outside.
 */
final class DistanceTransform {

  private static final float FAR = 1e12f;

  private DistanceTransform() {}

  static float[] squared(boolean[] inside, int width, int height) {
    return squared(inside, width, height, 0);
  }

  /** The same, but what lies beyond the grid does not count as outside. */
  static float[] squaredInside(boolean[] inside, int width, int height) {
    return squared(inside, width, height, FAR);
  }

  private static float[] squared(boolean[] inside, int width, int height, float beyond) {
    float[] distance = new float[inside.length];
    float[] column = new float[height + 2];
    float[] out = new float[Math.max(width, height) + 2];
    int[] v = new int[out.length];
    double[] z = new double[out.length + 1];
    for (int x = 0; x < width; x++) {
      for (int y = 0; y < height; y++) {
        column[y + 1] = inside[y * width + x] ? FAR : 0;
      }
      column[0] = beyond;
      column[height + 1] = beyond;
      line(column, height + 2, out, v, z);
      for (int y = 0; y < height; y++) {
        distance[y * width + x] = out[y + 1];
      }
    }
    float[] row = new float[width + 2];
    for (int y = 0; y < height; y++) {
      Arrays.fill(row, beyond);
      System.arraycopy(distance, y * width, row, 1, width);
      line(row, width + 2, out, v, z);
      System.arraycopy(out, 1, distance, y * width, width);
    }
    return distance;
  }

  /** Lower envelope of parabolas over one line; letters as in the paper. */
  private static void line(float[] f, int n, float[] d, int[] v, double[] z) {
    int k = 0;
    z[0] = Double.NEGATIVE_INFINITY;
    z[1] = Double.POSITIVE_INFINITY;
    for (int q = 1; q < n; q++) {
      double s = meet(f, q, v[k]);
      while (s <= z[k]) {
        k--;
        s = meet(f, q, v[k]);
      }
      k++;
      v[k] = q;
      z[k] = s;
      z[k + 1] = Double.POSITIVE_INFINITY;
    }
    k = 0;
    for (int q = 0; q < n; q++) {
      while (z[k + 1] < q) {
        k++;
      }
      d[q] = (float) ((double) (q - v[k]) * (q - v[k]) + f[v[k]]);
    }
  }

  private static double meet(float[] f, int q, int p) {
    return (((double) f[q] + (double) q * q) - ((double) f[p] + (double) p * p)) / (2.0 * (q - p));
  }
}
