package ovenproof.core.photo;

/**
 * Area of the convex hull of rows of pixels: the monotone chain (A. M. Andrew, 1979) down the left
 * ends and up the right ends, which come sorted.
 */
final class ConvexHull {

  private final double[] x;
  private final double[] y;
  private int n;

  private ConvexHull(int rows) {
    this.x = new double[4 * rows];
    this.y = new double[4 * rows];
  }

  /**
   * Hull of pixels as unit squares.
   *
   * @param first left end of each row, inclusive
   * @param last right end of each row, exclusive; a row with last ≤ first is empty
   */
  static double area(int[] first, int[] last) {
    ConvexHull hull = new ConvexHull(first.length);
    for (int row = 0; row < first.length; row++) {
      if (last[row] > first[row]) {
        hull.add(first[row], row, 0);
        hull.add(first[row], row + 1.0, 0);
      }
    }
    int bottom = hull.n;
    for (int row = first.length - 1; row >= 0; row--) {
      if (last[row] > first[row]) {
        hull.add(last[row], row + 1.0, bottom);
        hull.add(last[row], row, bottom);
      }
    }
    return hull.area();
  }

  private void add(double px, double py, int base) {
    while (n >= base + 2 && turn(px, py) >= 0) {
      n--;
    }
    x[n] = px;
    y[n++] = py;
  }

  private double turn(double px, double py) {
    double ox = x[n - 2];
    double oy = y[n - 2];
    return (x[n - 1] - ox) * (py - oy) - (y[n - 1] - oy) * (px - ox);
  }

  private double area() {
    double twice = 0;
    for (int i = 0, j = n - 1; i < n; j = i++) {
      twice += x[j] * y[i] - x[i] * y[j];
    }
    return Math.abs(twice) / 2;
  }
}
