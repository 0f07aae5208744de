package ovenproof.core.ranking;

/** Who was above whom, and who was best, in one block of draws. Confined to one thread. */
final class BlockCounts {
  /** Whole steps from the centre, so that differences fit an int. */
  private static final double FURTHEST = (1 << 30) - 1;

  final double[] bestLow;
  final double[] bestHigh;
  private final int columns;
  private final double centre;
  private final double stepsPerPoint;
  private final int[] above;
  private final Ties ties;
  private final int[][] levels;
  private int[] level;
  private int waiting;
  private int draws;

  /**
   * @param centre middle of the scores
   * @param reach largest distance of a score from it; pooled scores may lie up to four times as far
   */
  BlockCounts(int columns, int products, double centre, double reach) {
    this.columns = columns;
    this.centre = centre;
    stepsPerPoint = reach > 0 ? Math.scalb(1.0, 27 - Math.getExponent(reach)) : 1;
    above = new int[columns * columns];
    ties = new Ties(columns);
    bestLow = new double[products];
    bestHigh = new double[products];
    levels = new int[4][columns];
    level = levels[0];
  }

  /** Adds one draw; their number must be a multiple of four when they are read. */
  void add(double[] score, int[] lowColumn, int[] highColumn) {
    level = levels[waiting];
    quantise(score);
    ties.add(level);
    draws++;
    best(bestLow, lowColumn, highColumn);
    if (bestHigh.length == columns) {
      System.arraycopy(bestLow, 0, bestHigh, 0, bestHigh.length);
    } else {
      best(bestHigh, highColumn, lowColumn);
    }
    waiting++;
    if (waiting == levels.length) {
      for (int i = 0; i < columns; i++) {
        compare(above, i, levels[0], levels[1], levels[2], levels[3]);
      }
      waiting = 0;
    }
  }

  /**
   * For j after i, how often i was above j less how often it was below: those above are counted,
   * ties found on the side, the rest was below.
   */
  int balance(int i, int j) {
    return 2 * above[i * columns + j] - draws + ties.of(i, j);
  }

  /** Signs of differences in integers: a plain loop that compilers turn into vector code. */
  private static void compare(int[] above, int i, int[] a, int[] b, int[] c, int[] d) {
    int offset = i * a.length;
    int ai = a[i];
    int bi = b[i];
    int ci = c[i];
    int di = d[i];
    for (int j = i + 1; j < a.length; j++) {
      above[offset + j] +=
          (((a[j] - ai) >>> 31) + ((b[j] - bi) >>> 31))
              + (((c[j] - ci) >>> 31) + ((d[j] - di) >>> 31));
    }
  }

  /** Scores as whole steps, at least 2²⁷ for the reach; those that share a step are tied. */
  private void quantise(double[] score) {
    for (int i = 0; i < columns; i++) {
      double steps = Math.rint((score[i] - centre) * stepsPerPoint);
      level[i] = (int) Math.max(-FURTHEST, Math.min(FURTHEST, steps));
    }
  }

  /** One win per draw, shared by those who tie for it. */
  private void best(double[] wins, int[] own, int[] others) {
    int products = wins.length;
    int first = Integer.MIN_VALUE;
    int second = Integer.MIN_VALUE;
    int holder = -1;
    for (int p = 0; p < products; p++) {
      int l = level[others[p]];
      if (l > first) {
        second = first;
        first = l;
        holder = p;
      } else if (l > second) {
        second = l;
      }
    }
    for (int p = 0; p < products; p++) {
      int rival = p == holder ? second : first;
      int mine = level[own[p]];
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
      tied += p != except && level[others[p]] == mine ? 1 : 0;
    }
    return tied;
  }
}
