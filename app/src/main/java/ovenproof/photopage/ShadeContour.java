package ovenproof.photopage;

import ovenproof.core.photo.PixelPoint;
import ovenproof.core.photo.ShadeMap;

/** Lines around what is too dark (ink) and too pale (white) on a shade map. */
final class ShadeContour {
  private static final int INK = 0x0f2229;
  private static final int WHITE = 0xffffff;
  private static final int THICK = 2;

  private final ShadeMap map;
  private final double wanted;
  private final double beyond;

  ShadeContour(ShadeMap map, double wanted, double beyond) {
    this.map = map;
    this.wanted = wanted;
    this.beyond = beyond;
  }

  /**
   * Draws them.
   *
   * @param factor pixels of the photograph to one of the drawing
   */
  void draw(int[] pixels, int width, int height, int factor) {
    for (int row = 0; row < map.rows(); row++) {
      for (int column = 0; column < map.columns(); column++) {
        int side = side(column, row);
        if (side != 0) {
          edges(pixels, width, height, factor, column, row, side);
        }
      }
    }
  }

  private void edges(
      int[] pixels, int width, int height, int factor, int column, int row, int side) {
    PixelPoint at = map.place(column, row);
    double half = map.cellPixels() / 2;
    int left = (int) Math.floor((at.x() - half) / factor);
    int right = (int) Math.ceil((at.x() + half) / factor);
    int top = (int) Math.floor((at.y() - half) / factor);
    int bottom = (int) Math.ceil((at.y() + half) / factor);
    int colour = side > 0 ? WHITE : INK;
    if (side(column - 1, row) != side) {
      fill(pixels, width, height, left, top, left + THICK, bottom, colour);
    }
    if (side(column + 1, row) != side) {
      fill(pixels, width, height, right - THICK, top, right, bottom, colour);
    }
    if (side(column, row - 1) != side) {
      fill(pixels, width, height, left, top, right, top + THICK, colour);
    }
    if (side(column, row + 1) != side) {
      fill(pixels, width, height, left, bottom - THICK, right, bottom, colour);
    }
  }

  private static void fill(
      int[] pixels, int width, int height, int left, int top, int right, int bottom, int colour) {
    for (int y = Math.max(0, top); y < Math.min(height, bottom); y++) {
      for (int x = Math.max(0, left); x < Math.min(width, right); x++) {
        pixels[y * width + x] = colour;
      }
    }
  }

  /** 1 too pale, −1 too dark, 0 neither or outside; over nine cells, as shares are counted. */
  private int side(int column, int row) {
    if (!holds(column, row)) {
      return 0;
    }
    double sum = 0;
    int n = 0;
    for (int y = row - 1; y <= row + 1; y++) {
      for (int x = column - 1; x <= column + 1; x++) {
        if (holds(x, y)) {
          sum += map.lightness(x, y);
          n++;
        }
      }
    }
    double off = sum / n - wanted;
    return off > beyond ? 1 : off < -beyond ? -1 : 0;
  }

  private boolean holds(int column, int row) {
    return column >= 0
        && row >= 0
        && column < map.columns()
        && row < map.rows()
        && map.isInside(column, row);
  }
}
