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
  private final byte[] firstPiece;
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
    firstPiece = breaks.length < Byte.MAX_VALUE && span > 0 ? cells() : new byte[0];
  }

  /**
   * For each cell of a grid over the breaks, the piece at its left edge. A hair is taken off the
   * edge, so that rounding in the look-up never skips a break.
   */
  private byte[] cells() {
    byte[] first = new byte[CELLS];
    double hair = 1e-9 * (breaks[breaks.length - 1] - origin);
    int piece = 0;
    for (int c = 1; c < CELLS; c++) {
      double edge = origin + c / cellsPerUnit - hair;
      while (piece < breaks.length && breaks[piece] <= edge) {
        piece++;
      }
      first[c] = (byte) piece;
    }
    return first;
  }

  double score(double error) {
    int piece = 0;
    while (piece < breaks.length && error >= breaks[piece]) {
      piece++;
    }
    return intercepts[piece] + slopes[piece] * error;
  }

  /** Scores of a block of errors. */
  void score(double[] errors, double[] scores) {
    if (firstPiece.length == 0) {
      for (int d = 0; d < errors.length; d++) {
        scores[d] = score(errors[d]);
      }
      return;
    }
    for (int d = 0; d < errors.length; d++) {
      double error = errors[d];
      int cell = Math.max(0, Math.min(CELLS - 1, (int) ((error - origin) * cellsPerUnit)));
      int piece = firstPiece[cell];
      while (piece < breaks.length && error >= breaks[piece]) {
        piece++;
      }
      scores[d] = intercepts[piece] + slopes[piece] * error;
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
