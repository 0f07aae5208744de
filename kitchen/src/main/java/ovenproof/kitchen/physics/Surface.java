package ovenproof.kitchen.physics;

/**
 * How brown a face is over its area, on a square grid.
 *
 * @param columns across, left to right
 * @param rows from back to front
 * @param browning row by row; NaN where there is no food
 */
public record Surface(int columns, int rows, double[] browning) {

  /** One even face. */
  public static Surface even(double browning) {
    return new Surface(1, 1, new double[] {browning});
  }

  /** Browning at a place, u and v from −1 (left, back) to 1 (right, front), smoothly between. */
  public double at(double u, double v) {
    double x = Math.min(columns - 1.0, Math.max(0, (u + 1) / 2 * columns - 0.5));
    double y = Math.min(rows - 1.0, Math.max(0, (v + 1) / 2 * rows - 0.5));
    int i = Math.min(Math.max(0, columns - 2), (int) x);
    int j = Math.min(Math.max(0, rows - 2), (int) y);
    int right = Math.min(columns - 1, i + 1);
    int down = Math.min(rows - 1, j + 1);
    double fx = ease(x - i);
    double fy = ease(y - j);
    double above = cell(i, j) * (1 - fx) + cell(right, j) * fx;
    double below = cell(i, down) * (1 - fx) + cell(right, down) * fx;
    return above * (1 - fy) + below * fy;
  }

  private static double ease(double t) {
    double c = Math.min(1, Math.max(0, t));
    return c * c * (3 - 2 * c);
  }

  private double cell(int i, int j) {
    return browning[j * columns + i];
  }

  public double mean() {
    double sum = 0;
    for (double b : browning) {
      sum += b;
    }
    return sum / browning.length;
  }

  /** As seen from the other side: left and right exchanged. */
  public Surface flipped() {
    double[] other = new double[browning.length];
    for (int j = 0; j < rows; j++) {
      for (int i = 0; i < columns; i++) {
        other[j * columns + i] = cell(columns - 1 - i, j);
      }
    }
    return new Surface(columns, rows, other);
  }
}
