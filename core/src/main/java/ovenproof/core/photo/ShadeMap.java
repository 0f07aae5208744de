package ovenproof.core.photo;

import java.util.Arrays;

/**
 * The colours of one piece as a grid of small cells, a quarter of a block wide each. Averages over
 * cells are averages over pixels; geometry, patches and pictures work on cells.
 */
public final class ShadeMap {

  /** Cells along the side of a block. */
  static final int CELLS_PER_BLOCK = 4;

  private static final double HALF_COVERED = 0.5;

  private final int columns;
  private final int rows;
  private final double left;
  private final double top;
  private final double cellPixels;
  private final double widthInCells;
  private final double heightInCells;
  private final float[] lightness;
  private final float[] a;
  private final float[] b;
  private final int[] pixelCounts;
  private final int insideLimit;

  private ShadeMap(PixelBox box, double cellPixels) {
    this.left = box.left();
    this.top = box.top();
    this.cellPixels = cellPixels;
    this.widthInCells = box.width() / cellPixels;
    this.heightInCells = box.height() / cellPixels;
    this.columns = (int) Math.ceil(widthInCells);
    this.rows = (int) Math.ceil(heightInCells);
    this.lightness = new float[columns * rows];
    this.a = new float[columns * rows];
    this.b = new float[columns * rows];
    this.pixelCounts = new int[columns * rows];
    this.insideLimit = (int) Math.ceil(HALF_COVERED * cellPixels * cellPixels);
  }

  /**
   * Converts every pixel inside the outline and averages them by cell.
   *
   * @param cellPixels side of a cell in pixels, at least 1
   */
  static ShadeMap of(Picture picture, Outline outline, PixelColours colours, double cellPixels) {
    PixelBox box = clip(outline.box(), picture);
    ShadeMap map = new ShadeMap(box, Math.max(1, cellPixels));
    int[] columnOf = new int[box.width()];
    for (int x = 0; x < columnOf.length; x++) {
      columnOf[x] = (int) ((x + 0.5) / map.cellPixels);
    }
    float[] lab = new float[3 * box.width()];
    for (int y = box.top(); y < box.bottom(); y++) {
      double[] at = outline.crossings(y + 0.5);
      for (int i = 0; i + 1 < at.length; i += 2) {
        int from = Math.max(box.left(), (int) Math.ceil(at[i] - 0.5));
        int to = Math.min(box.right(), (int) Math.ceil(at[i + 1] - 0.5));
        if (from < to) {
          colours.row(picture, y, from, to, lab);
          map.addRow(y - box.top(), columnOf, from - box.left(), to - from, lab);
        }
      }
    }
    map.divide();
    return map;
  }

  private static PixelBox clip(PixelBox box, Picture picture) {
    int left = Math.min(picture.width() - 1, Math.max(0, box.left()));
    int top = Math.min(picture.height() - 1, Math.max(0, box.top()));
    int right = Math.max(left + 1, Math.min(picture.width(), box.right()));
    int bottom = Math.max(top + 1, Math.min(picture.height(), box.bottom()));
    return new PixelBox(left, top, right - left, bottom - top);
  }

  private void addRow(int y, int[] columnOf, int x, int count, float[] lab) {
    int row = (int) ((y + 0.5) / cellPixels) * columns;
    for (int i = 0, o = 0; i < count; i++, o += 3) {
      int cell = row + columnOf[x + i];
      lightness[cell] += lab[o];
      a[cell] += lab[o + 1];
      b[cell] += lab[o + 2];
      pixelCounts[cell]++;
    }
  }

  private void divide() {
    for (int i = 0; i < pixelCounts.length; i++) {
      int n = pixelCounts[i];
      if (n > 0) {
        lightness[i] /= n;
        a[i] /= n;
        b[i] /= n;
      }
    }
  }

  public int columns() {
    return columns;
  }

  public int rows() {
    return rows;
  }

  /** The piece's own width; the last column may hang over. */
  double widthInCells() {
    return widthInCells;
  }

  double heightInCells() {
    return heightInCells;
  }

  /** Side of a cell in pixels of the picture. */
  public double cellPixels() {
    return cellPixels;
  }

  /** Middle of a cell in the picture. */
  public PixelPoint place(int column, int row) {
    return new PixelPoint(left + (column + 0.5) * cellPixels, top + (row + 0.5) * cellPixels);
  }

  /** Whether at least half of the cell lies inside the outline. */
  public boolean isInside(int column, int row) {
    return inside(row * columns + column);
  }

  boolean inside(int cell) {
    return pixelCounts[cell] >= insideLimit;
  }

  /** Mean L* of a cell; 0 outside. */
  public double lightness(int column, int row) {
    return lightness[row * columns + column];
  }

  float lightness(int cell) {
    return lightness[cell];
  }

  float a(int cell) {
    return a[cell];
  }

  float b(int cell) {
    return b[cell];
  }

  int pixels(int cell) {
    return pixelCounts[cell];
  }

  int size() {
    return pixelCounts.length;
  }

  /**
   * Distance of each cell's middle from the outline, in cells; 0 outside. Exact Euclidean distance
   * between cell centres (P. Felzenszwalb, D. Huttenlocher, Theory of Computing 8, 2012), less the
   * half cell between the centre of an outside cell and its edge.
   */
  float[] depth() {
    boolean[] inside = new boolean[size()];
    for (int i = 0; i < inside.length; i++) {
      inside[i] = inside(i);
    }
    float[] squared = DistanceTransform.squared(inside, columns, rows);
    float[] depth = new float[squared.length];
    for (int i = 0; i < depth.length; i++) {
      depth[i] = inside[i] ? (float) Math.sqrt(squared[i]) - 0.5f : 0;
    }
    return depth;
  }

  /**
   * L* averaged over the block around each cell, of cells that {@code use} allows; NaN elsewhere.
   */
  float[] smoothed(boolean[] use) {
    int w = columns + 1;
    double[] sum = new double[w * (rows + 1)];
    double[] count = new double[w * (rows + 1)];
    for (int y = 0; y < rows; y++) {
      for (int x = 0; x < columns; x++) {
        int cell = y * columns + x;
        double n = use[cell] ? pixelCounts[cell] : 0;
        int at = (y + 1) * w + x + 1;
        sum[at] = sum[at - 1] + sum[at - w] - sum[at - w - 1] + n * lightness[cell];
        count[at] = count[at - 1] + count[at - w] - count[at - w - 1] + n;
      }
    }
    float[] out = new float[size()];
    Arrays.fill(out, Float.NaN);
    for (int y = 0; y < rows; y++) {
      for (int x = 0; x < columns; x++) {
        if (use[y * columns + x]) {
          out[y * columns + x] = (float) (window(sum, w, x, y) / window(count, w, x, y));
        }
      }
    }
    return out;
  }

  private double window(double[] table, int w, int x, int y) {
    int half = CELLS_PER_BLOCK / 2;
    int x0 = Math.max(0, x - half);
    int y0 = Math.max(0, y - half);
    int x1 = Math.min(columns, x + half);
    int y1 = Math.min(rows, y + half);
    return table[y1 * w + x1] - table[y0 * w + x1] - table[y1 * w + x0] + table[y0 * w + x0];
  }
}
