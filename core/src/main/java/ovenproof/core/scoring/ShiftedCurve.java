package ovenproof.core.scoring;

import java.util.Arrays;
import ovenproof.core.statistics.Interval;

/**
 * Mean score of a product's runs as a function of one error e that shifts them all: f(e) = Σ v(xᵢ +
 * e)/n. Piecewise linear; one pass finds the pieces, so that thousands of draws cost a few
 * operations each.
 */
final class ShiftedCurve {
  private static final int CELLS = 256;

  private final double[] breaks;
  private final double[] intercepts;
  private final double[] slopes;
  private final double[] cells;
  private final int[] firstPiece = new int[CELLS];
  private final double origin;
  private final double cellsPerUnit;

  /**
   * @param curve the value curve
   * @param values finite measurements, at least one; for "average, then score" the mean alone
   */
  ShiftedCurve(ValueCurve curve, double[] values) {
    int knots = curve.size();
    int n = values.length;
    double[][] events = new double[knots * n][];
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < knots; k++) {
        double bend = curve.slopeBefore(k + 1) - curve.slopeBefore(k);
        events[i * knots + k] =
            new double[] {curve.anchor(k) - values[i], bend / n, curve.jump(k) / n};
      }
    }
    Arrays.sort(events, (p, q) -> Double.compare(p[0], q[0]));
    breaks = new double[events.length];
    intercepts = new double[events.length + 1];
    slopes = new double[events.length + 1];
    intercepts[0] = curve.start();
    for (int j = 0; j < events.length; j++) {
      breaks[j] = events[j][0];
      slopes[j + 1] = slopes[j] + events[j][1];
      intercepts[j + 1] = intercepts[j] - events[j][1] * breaks[j] + events[j][2];
    }
    slopes[events.length] = 0;
    origin = breaks[0];
    double span = breaks[breaks.length - 1] - origin;
    cellsPerUnit = span > 0 ? CELLS / span : 0;
    cells = span > 0 ? cells() : new double[0];
  }

  /**
   * Intercept and slope for each cell of a grid over the breaks, NaN where a break lies in the cell
   * or within a hair of it: rounding in the look-up never takes the wrong piece.
   */
  private double[] cells() {
    double[] table = new double[2 * CELLS];
    double hair = 1e-9 * (breaks[breaks.length - 1] - origin);
    int piece = 0;
    for (int c = 0; c < CELLS; c++) {
      double left = origin + c / cellsPerUnit - hair;
      double right = origin + (c + 1) / cellsPerUnit + hair;
      while (piece < breaks.length && breaks[piece] < left) {
        piece++;
      }
      firstPiece[c] = piece;
      // The outer cells reach to infinity, beyond the outer breaks.
      boolean broken = c == 0 || c == CELLS - 1 || piece < breaks.length && breaks[piece] <= right;
      table[2 * c] = broken ? Double.NaN : intercepts[piece];
      table[2 * c + 1] = slopes[piece];
    }
    return table;
  }

  double score(double error) {
    return score(error, 0);
  }

  private double score(double error, int from) {
    int piece = from;
    while (piece < breaks.length && error >= breaks[piece]) {
      piece++;
    }
    return intercepts[piece] + slopes[piece] * error;
  }

  /** Scores of a block of errors. */
  void score(double[] errors, double[] scores) {
    if (cells.length == 0) {
      for (int d = 0; d < errors.length; d++) {
        scores[d] = score(errors[d]);
      }
      return;
    }
    for (int d = 0; d < errors.length; d++) {
      double error = errors[d];
      int cell = Math.max(0, Math.min(CELLS - 1, (int) ((error - origin) * cellsPerUnit)));
      double intercept = cells[2 * cell];
      scores[d] =
          Double.isNaN(intercept)
              ? score(error, cell == 0 ? 0 : firstPiece[cell])
              : intercept + cells[2 * cell + 1] * error;
    }
  }

  /** Lowest and highest mean score while the error moves between the two. */
  Interval image(double low, double high) {
    double least = Math.min(score(low), score(high));
    double most = Math.max(score(low), score(high));
    for (int j = 0; j < breaks.length; j++) {
      if (breaks[j] > low && breaks[j] < high) {
        double before = intercepts[j] + slopes[j] * breaks[j];
        double after = intercepts[j + 1] + slopes[j + 1] * breaks[j];
        least = Math.min(least, Math.min(before, after));
        most = Math.max(most, Math.max(before, after));
      }
    }
    return new Interval(onScale(least), onScale(most));
  }

  /** Sums of shifted curves miss the ends of the scale by a rounding error, on either side. */
  private static double onScale(double points) {
    return Math.min(ValueCurve.BEST, Math.max(0, points));
  }
}
