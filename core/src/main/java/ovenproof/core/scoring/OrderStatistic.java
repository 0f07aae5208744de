package ovenproof.core.scoring;

import java.util.Arrays;

/**
 * The k-th smallest of many scores from 0 to 10: one pass counts them in cells, the cell that holds
 * the k-th is sorted. Exact; several times faster than selection on a copy.
 */
final class OrderStatistic {
  private static final int CELLS = 2048;
  private static final double PER_POINT = (CELLS - 1) / ValueCurve.BEST;

  private OrderStatistic() {}

  /**
   * Several of one set: the scores are counted once.
   *
   * @param scores at least one; values outside 0–10 count in the outer cells
   * @param ranks each from 0
   */
  static double[] of(double[] scores, int... ranks) {
    int[] counts = new int[CELLS];
    for (double score : scores) {
      counts[cell(score)]++;
    }
    double[] found = new double[ranks.length];
    for (int r = 0; r < ranks.length; r++) {
      int cell = 0;
      int below = 0;
      while (below + counts[cell] <= ranks[r]) {
        below += counts[cell];
        cell++;
      }
      found[r] = members(scores, cell, counts[cell])[ranks[r] - below];
    }
    return found;
  }

  private static double[] members(double[] scores, int cell, int count) {
    double[] members = new double[count];
    int next = 0;
    // Scores well away from the cell are passed over by comparison alone.
    double low = (cell - 1) / PER_POINT;
    double high = (cell + 2) / PER_POINT;
    boolean outer = cell == 0 || cell == CELLS - 1;
    for (double score : scores) {
      if ((outer || score > low && score < high) && cell(score) == cell) {
        members[next++] = score;
      }
    }
    Arrays.sort(members);
    return members;
  }

  private static int cell(double score) {
    return Math.max(0, Math.min(CELLS - 1, (int) (score * PER_POINT)));
  }
}
