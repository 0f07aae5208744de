package ovenproof.core.ranking;

import java.util.Arrays;

/** Who was above whom, and who was best, in one block of draws. Confined to one thread. */
final class BlockCounts {
  final int[] balance;
  final double[] bestLow;
  final double[] bestHigh;
  private final int columns;
  private final int indexBits;
  private final long[] keys;
  private final int[][] ranks;
  private int[] rank;
  private int waiting;
  private boolean ties;

  BlockCounts(int columns, int products) {
    this.columns = columns;
    balance = new int[columns * columns];
    bestLow = new double[products];
    bestHigh = new double[products];
    keys = new long[columns];
    ranks = new int[4][columns];
    rank = ranks[0];
    indexBits = Math.max(1, 32 - Integer.numberOfLeadingZeros(columns - 1));
  }

  /**
   * Adds one draw. {@code balance[i,j]}, j above i, counts +1 when i is above j, −1 when below, 0
   * when tied; it is brought up to date every four draws.
   */
  void add(double[] score, int[] lowColumn, int[] highColumn) {
    rank = ranks[waiting];
    rank(score);
    best(bestLow, lowColumn, highColumn);
    if (bestHigh.length == columns) {
      System.arraycopy(bestLow, 0, bestHigh, 0, bestHigh.length);
    } else {
      best(bestHigh, highColumn, lowColumn);
    }
    waiting++;
    if (waiting == ranks.length) {
      for (int i = 0; i < columns; i++) {
        if (ties) {
          compare(balance, i, ranks[0], ranks[1], ranks[2], ranks[3]);
        } else {
          compareUntied(balance, i, ranks[0], ranks[1], ranks[2], ranks[3]);
        }
      }
      waiting = 0;
      ties = false;
    }
  }

  /** Signs of differences in integers: a plain loop that compilers turn into vector code. */
  private static void compare(int[] balance, int i, int[] a, int[] b, int[] c, int[] d) {
    int offset = i * a.length;
    int ai = a[i];
    int bi = b[i];
    int ci = c[i];
    int di = d[i];
    for (int j = i + 1; j < a.length; j++) {
      int above =
          ((a[j] - ai) >>> 31) + ((b[j] - bi) >>> 31) + ((c[j] - ci) >>> 31) + ((d[j] - di) >>> 31);
      int below =
          ((ai - a[j]) >>> 31) + ((bi - b[j]) >>> 31) + ((ci - c[j]) >>> 31) + ((di - d[j]) >>> 31);
      balance[offset + j] += above - below;
    }
  }

  /** The same where no two scores of a draw are equal: who is not below is above. */
  private static void compareUntied(int[] balance, int i, int[] a, int[] b, int[] c, int[] d) {
    int offset = i * a.length;
    int ai = a[i];
    int bi = b[i];
    int ci = c[i];
    int di = d[i];
    for (int j = i + 1; j < a.length; j++) {
      int above =
          ((a[j] - ai) >>> 31) + ((b[j] - bi) >>> 31) + ((c[j] - ci) >>> 31) + ((d[j] - di) >>> 31);
      balance[offset + j] += 2 * above - 4;
    }
  }

  /**
   * Ranks from 0 for the lowest; equal scores share a rank. The last bits of the score give way to
   * the index, so scores that agree in about 13 digits are ties.
   */
  private void rank(double[] score) {
    long mask = (1L << indexBits) - 1;
    for (int i = 0; i < columns; i++) {
      long bits = Double.doubleToLongBits(score[i] + 0.0);
      long sortable = bits ^ ((bits >> 63) & Long.MAX_VALUE);
      keys[i] = (sortable & ~mask) | i;
    }
    Arrays.sort(keys);
    int current = 0;
    for (int k = 0; k < columns; k++) {
      boolean higher = k > 0 && (keys[k] & ~mask) != (keys[k - 1] & ~mask);
      ties |= k > 0 && !higher;
      current = higher ? k : current;
      rank[(int) (keys[k] & mask)] = current;
    }
  }

  /** One win per draw, shared by those who tie for it. */
  private void best(double[] wins, int[] own, int[] others) {
    int products = wins.length;
    int first = -1;
    int second = -1;
    int holder = -1;
    for (int p = 0; p < products; p++) {
      int r = rank[others[p]];
      if (r > first) {
        second = first;
        first = r;
        holder = p;
      } else if (r > second) {
        second = r;
      }
    }
    for (int p = 0; p < products; p++) {
      int rival = p == holder ? second : first;
      int mine = rank[own[p]];
      if (mine > rival) {
        wins[p] += 1;
      } else if (mine == rival) {
        wins[p] += 1.0 / (1 + tied(others, p, mine));
      }
    }
  }

  private int tied(int[] others, int except, int mine) {
    int tied = 0;
    for (int p = 0; p < others.length; p++) {
      tied += p != except && rank[others[p]] == mine ? 1 : 0;
    }
    return tied;
  }
}
