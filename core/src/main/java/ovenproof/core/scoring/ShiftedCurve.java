package ovenproof.core.scoring;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import ovenproof.core.statistics.Interval;

/**
 * Mean score of a product's runs as a function of one error e that shifts them all: f(e) = Σ v(xᵢ +
 * e)/n. Piecewise linear; one pass finds the pieces, so that thousands of draws cost a few
 * operations each.
 */
final class ShiftedCurve {
  private static final int CELLS = 256;

  /** Breaks up to which bending a line costs less than looking pieces up. */
  private static final int FEW = 8;

  private final double[] breaks;
  private final double[] intercepts;
  private final double[] slopes;
  private final double[] bends;
  private final double[] jumps;
  private @Nullable Grid grid;
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
    bends = new double[events.length];
    jumps = new double[events.length];
    intercepts[0] = curve.start();
    for (int j = 0; j < events.length; j++) {
      breaks[j] = events[j][0];
      bends[j] = events[j][1];
      jumps[j] = events[j][2];
      slopes[j + 1] = slopes[j] + events[j][1];
      intercepts[j + 1] = intercepts[j] - events[j][1] * breaks[j] + events[j][2];
    }
    slopes[events.length] = 0;
    origin = breaks[0];
    double span = breaks[breaks.length - 1] - origin;
    cellsPerUnit = span > 0 ? CELLS / span : 0;
  }

  /**
   * Pieces by place.
   *
   * @param lines intercept and slope of each cell, NaN where a break lies in the cell or within a
   *     hair of it: rounding in the look-up never takes the wrong piece
   * @param firstPiece the piece that a search from the cell begins with
   */
  private record Grid(double[] lines, int[] firstPiece) {}

  private Grid grid() {
    Grid known = grid;
    if (known == null) {
      known = cells();
      grid = known;
    }
    return known;
  }

  private Grid cells() {
    double[] table = new double[2 * CELLS];
    int[] firstPiece = new int[CELLS];
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
    return new Grid(table, firstPiece);
  }

  double score(double error) {
    return score(error, 0);
  }

  private double score(double error, int from) {
    int piece = piece(error, from);
    return intercepts[piece] + slopes[piece] * error;
  }

  private int piece(double error, int from) {
    int piece = from;
    while (piece < breaks.length && error >= breaks[piece]) {
      piece++;
    }
    return piece;
  }

  /**
   * Scores of a block of errors; what happens beyond their reach costs nothing.
   *
   * @param reach what no absolute error exceeds
   */
  void score(double[] errors, double reach, double[] scores) {
    // A hair further: what adds up to the reach may have been rounded the other way.
    int first = piece(-reach * (1 + 1e-9), 0);
    int last = piece(reach * (1 + 1e-9), first);
    if (last - first <= FEW && continuous(first, last)) {
      bend(errors, scores, first, last);
    } else {
      lookUp(errors, scores);
    }
  }

  private boolean continuous(int first, int last) {
    for (int j = first; j < last; j++) {
      if (jumps[j] != 0) {
        return false;
      }
    }
    return true;
  }

  /**
   * A line, and at each break half its bend times e − b + |e − b|: loops that compilers turn into
   * vector code.
   */
  private void bend(double[] errors, double[] scores, int first, int last) {
    double level = intercepts[first];
    double slope = slopes[first];
    for (int j = first; j < last; j++) {
      level -= bends[j] / 2 * breaks[j];
      slope += bends[j] / 2;
    }
    for (int d = 0; d < errors.length; d++) {
      scores[d] = level + slope * errors[d];
    }
    for (int j = first; j < last; j++) {
      if (bends[j] != 0) {
        addDistance(errors, scores, breaks[j], bends[j] / 2);
      }
    }
  }

  private static void addDistance(double[] errors, double[] scores, double from, double times) {
    for (int d = 0; d < errors.length; d++) {
      scores[d] += times * Math.abs(errors[d] - from);
    }
  }

  private void lookUp(double[] errors, double[] scores) {
    if (cellsPerUnit == 0) {
      for (int d = 0; d < errors.length; d++) {
        scores[d] = score(errors[d]);
      }
      return;
    }
    Grid pieces = grid();
    double[] cells = pieces.lines();
    for (int d = 0; d < errors.length; d++) {
      double error = errors[d];
      int cell = Math.max(0, Math.min(CELLS - 1, (int) ((error - origin) * cellsPerUnit)));
      double intercept = cells[2 * cell];
      scores[d] =
          Double.isNaN(intercept)
              ? score(error, cell == 0 ? 0 : pieces.firstPiece()[cell])
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
