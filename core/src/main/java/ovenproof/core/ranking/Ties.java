package ovenproof.core.ranking;

/**
 * Counts equal levels of pairs of columns. Each draw's levels go into a table by their digits, so
 * that a draw without ties costs a step per column, not per pair. Confined to one thread.
 */
final class Ties {
  private static final int GOLDEN = 0x9e3779b9;

  private final int columns;
  private final int[] holder;
  private final int[] drawOfSlot;
  private final int shift;
  private int[] counts = new int[0];
  private int draw;

  Ties(int columns) {
    this.columns = columns;
    int bits = 32 - Integer.numberOfLeadingZeros(4 * columns);
    shift = 32 - bits;
    holder = new int[1 << bits];
    drawOfSlot = new int[1 << bits];
  }

  void add(int[] level) {
    draw++;
    for (int i = 0; i < columns; i++) {
      int slot = level[i] * GOLDEN >>> shift;
      while (drawOfSlot[slot] == draw && level[holder[slot]] != level[i]) {
        slot = slot + 1 & holder.length - 1;
      }
      if (drawOfSlot[slot] == draw) {
        count(level, i);
      } else {
        drawOfSlot[slot] = draw;
        holder[slot] = i;
      }
    }
  }

  private void count(int[] level, int last) {
    if (counts.length == 0) {
      counts = new int[columns * columns];
    }
    for (int i = 0; i < last; i++) {
      counts[i * columns + last] += level[i] == level[last] ? 1 : 0;
    }
  }

  /** Draws in which columns i and j, j after i, were level. */
  int of(int i, int j) {
    return counts.length == 0 ? 0 : counts[i * columns + j];
  }
}
