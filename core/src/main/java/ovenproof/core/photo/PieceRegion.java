package ovenproof.core.photo;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import ovenproof.core.colour.Lab;

/** The cells of a piece that are measured. */
final class PieceRegion {

  /** Each cell is in one block: as many as there are independent observations. */
  static final int BESIDE = ShadeMap.CELLS_PER_BLOCK;

  /**
   * Blocks begin half a block from each other, so that what they say depends less on where the
   * first of them happens to begin.
   */
  static final int OVERLAPPING = ShadeMap.CELLS_PER_BLOCK / 2;

  private final ShadeMap map;
  private final boolean[] use;
  private final long pixels;

  private PieceRegion(ShadeMap map, boolean[] use) {
    this.map = map;
    this.use = use;
    long count = 0;
    for (int i = 0; i < use.length; i++) {
      count += use[i] ? map.pixels(i) : 0;
    }
    this.pixels = count;
  }

  /** Inside cells whose middle lies more than {@code margin} cells inside the outline. */
  static PieceRegion deeperThan(ShadeMap map, float[] depth, double margin) {
    boolean[] use = new boolean[map.size()];
    for (int i = 0; i < use.length; i++) {
      use[i] = depth[i] > margin;
    }
    return new PieceRegion(map, use);
  }

  boolean isEmpty() {
    return pixels == 0;
  }

  long pixels() {
    return pixels;
  }

  /** Mean over pixels. */
  Lab mean() {
    double l = 0;
    double a = 0;
    double b = 0;
    for (int i = 0; i < use.length; i++) {
      if (use[i]) {
        int n = map.pixels(i);
        l += (double) n * map.lightness(i);
        a += (double) n * map.a(i);
        b += (double) n * map.b(i);
      }
    }
    long n = Math.max(1, pixels);
    return Lab.d50(l / n, a / n, b / n);
  }

  /**
   * Block means as (x, y, L*), x and y from −½ to ½ over the piece; blocks less than half covered
   * are left out.
   *
   * @param step from one block to the next: {@link #BESIDE} or {@link #OVERLAPPING}
   */
  List<double[]> blocks(int step) {
    int side = ShadeMap.CELLS_PER_BLOCK;
    List<double[]> blocks = new ArrayList<>();
    for (int top = 0; top < map.rows(); top += step) {
      for (int left = 0; left < map.columns(); left += step) {
        addBlock(left, top, side, blocks);
      }
    }
    return blocks;
  }

  /** The plane through the cells; tilts are from edge to edge of the piece. */
  ShadePlane plane() {
    ShadePlane.Sums sums = new ShadePlane.Sums();
    for (int y = 0; y < map.rows(); y++) {
      for (int x = 0; x < map.columns(); x++) {
        int cell = y * map.columns() + x;
        if (use[cell]) {
          sums.add(
              (x + 0.5) / map.widthInCells() - 0.5,
              (y + 0.5) / map.heightInCells() - 0.5,
              map.lightness(cell),
              map.pixels(cell));
        }
      }
    }
    return sums.plane();
  }

  private void addBlock(int left, int top, int side, List<double[]> blocks) {
    int cells = 0;
    double n = 0;
    double sum = 0;
    for (int y = top; y < Math.min(top + side, map.rows()); y++) {
      for (int x = left; x < Math.min(left + side, map.columns()); x++) {
        int cell = y * map.columns() + x;
        if (use[cell]) {
          cells++;
          n += map.pixels(cell);
          sum += (double) map.pixels(cell) * map.lightness(cell);
        }
      }
    }
    if (2 * cells >= side * side) {
      double x = (left + side / 2.0) / map.widthInCells() - 0.5;
      double y = (top + side / 2.0) / map.heightInCells() - 0.5;
      blocks.add(new double[] {x, y, sum / n});
    }
  }

  float[] smoothed() {
    return map.smoothed(use);
  }

  /** Share of the measured pixels whose smoothed value lies in low…high, both inclusive. */
  double share(float[] values, double low, double high) {
    long n = 0;
    for (int i = 0; i < use.length; i++) {
      if (use[i] && values[i] >= low && values[i] <= high) {
        n += map.pixels(i);
      }
    }
    return pixels == 0 ? 0 : n / (double) pixels;
  }

  /** Largest connected (by edges) share with values in low…high. */
  double largestPatch(float[] values, double low, double high) {
    boolean[] open = new boolean[use.length];
    for (int i = 0; i < open.length; i++) {
      open[i] = use[i] && values[i] >= low && values[i] <= high;
    }
    long largest = 0;
    for (int i = 0; i < open.length; i++) {
      if (open[i]) {
        largest = Math.max(largest, flood(open, i));
      }
    }
    return pixels == 0 ? 0 : largest / (double) pixels;
  }

  private long flood(boolean[] open, int start) {
    ArrayDeque<Integer> queue = new ArrayDeque<>();
    queue.add(start);
    open[start] = false;
    long n = 0;
    int w = map.columns();
    while (!queue.isEmpty()) {
      int cell = queue.remove();
      n += map.pixels(cell);
      int x = cell % w;
      visit(open, queue, x > 0, cell - 1);
      visit(open, queue, x < w - 1, cell + 1);
      visit(open, queue, cell >= w, cell - w);
      visit(open, queue, cell + w < open.length, cell + w);
    }
    return n;
  }

  private static void visit(boolean[] open, ArrayDeque<Integer> queue, boolean exists, int cell) {
    if (exists && open[cell]) {
      open[cell] = false;
      queue.add(cell);
    }
  }

  /**
   * Mean L* of cells up to {@code rimDepth} deep minus that of the deeper ones; 0 if one is empty.
   */
  double rimDifference(float[] depth, double rimDepth) {
    double[] sum = new double[2];
    long[] n = new long[2];
    for (int i = 0; i < use.length; i++) {
      if (use[i]) {
        int part = depth[i] <= rimDepth ? 0 : 1;
        sum[part] += (double) map.pixels(i) * map.lightness(i);
        n[part] += map.pixels(i);
      }
    }
    return n[0] == 0 || n[1] == 0 ? 0 : sum[0] / n[0] - sum[1] / n[1];
  }
}
