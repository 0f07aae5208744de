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
    int[] cells = new int[ranks.length];
    int[] below = new int[ranks.length];
    for (int r = 0; r < ranks.length; r++) {
      while (below[r] + counts[cells[r]] <= ranks[r]) {
        below[r] += counts[cells[r]];
        cells[r]++;
      }
    }
    double[][] members = members(scores, cells, counts);
    for (int r = 0; r < ranks.length; r++) {
      found[r] = members[r][ranks[r] - below[r]];
    }
    return found;
  }

  /** The scores of each wanted cell, sorted; one pass for all. */
  private static double[][] members(double[] scores, int[] cells, int[] counts) {
    double[][] members = new double[cells.length][];
    boolean[] wanted = new boolean[CELLS];
    int[] next = new int[cells.length];
    for (int r = 0; r < cells.length; r++) {
      members[r] = new double[counts[cells[r]]];
      wanted[cells[r]] = true;
    }
    for (double score : scores) {
      int cell = cell(score);
      if (wanted[cell]) {
        for (int r = 0; r < cells.length; r++) {
          if (cells[r] == cell) {
            members[r][next[r]++] = score;
          }
        }
      }
    }
    for (double[] one : members) {
      Arrays.sort(one);
    }
    return members;
  }

  private static int cell(double score) {
    return Math.max(0, Math.min(CELLS - 1, (int) (score * PER_POINT)));
  }
}
