package ovenproof.photopage;

import java.util.Arrays;
import java.util.List;
import ovenproof.core.photo.CalibratedPicture;
import ovenproof.core.photo.Outline;
import ovenproof.core.photo.PhotoAnalysis;
import ovenproof.core.photo.Picture;
import ovenproof.core.photo.PixelBox;
import ovenproof.measure.PhotoReading;

/**
 * The pieces of one photograph cut out, calibrated and laid side by side on the ground of all
 * pictures of food: surroundings shift how brown an eye takes a brown.
 */
final class PieceStrip {
  private static final int TABLE = 0x5f7680;
  private static final int MOST_IN_A_ROW = 4;
  private static final int MOST_ACROSS = 8;
  private static final double FILLED = 0.94;

  private PieceStrip() {}

  /**
   * Draws it; the largest piece fills its cell.
   *
   * @param side width in pixels
   */
  static Picture of(Picture picture, PhotoReading reading, int side) {
    List<PhotoAnalysis.Piece> pieces = reading.analysis().pieces();
    int across = across(pieces.size());
    int cell = Math.max(8, side / across);
    int down = Math.max(1, (pieces.size() + across - 1) / across);
    int[] pixels = new int[across * cell * down * cell];
    Arrays.fill(pixels, TABLE);
    double largest =
        pieces.stream()
            .map(p -> p.shade().outline().box())
            .mapToDouble(b -> Math.max(b.width(), b.height()))
            .max()
            .orElse(1);
    int factor = Math.max(1, (int) Math.floor(largest / cell));
    factor = Math.min(factor, Math.min(picture.width(), picture.height()));
    Picture small =
        CalibratedPicture.of(picture.reduced(factor), reading.analysis().calibration().colours());
    double step = largest / (cell * FILLED);
    for (int i = 0; i < pieces.size(); i++) {
      int left = i % across * cell;
      int top = i / across * cell;
      paint(
          pixels,
          across * cell,
          left,
          top,
          cell,
          pieces.get(i).shade().outline(),
          small,
          factor,
          step);
    }
    return new Picture(across * cell, down * cell, pixels);
  }

  /** A row of a few, a block of many. */
  private static int across(int pieces) {
    return pieces <= MOST_IN_A_ROW
        ? Math.max(1, pieces)
        : Math.min(MOST_ACROSS, (int) Math.ceil(Math.sqrt(pieces)));
  }

  private static void paint(
      int[] pixels,
      int width,
      int left,
      int top,
      int cell,
      Outline outline,
      Picture small,
      int factor,
      double step) {
    PixelBox box = outline.box();
    double middleX = box.left() + box.width() / 2.0;
    double middleY = box.top() + box.height() / 2.0;
    for (int y = 0; y < cell; y++) {
      double fullY = middleY + (y + 0.5 - cell / 2.0) * step;
      double[] crossings = outline.crossings(fullY);
      for (int x = 0; x < cell; x++) {
        double fullX = middleX + (x + 0.5 - cell / 2.0) * step;
        int sx = (int) (fullX / factor);
        int sy = (int) (fullY / factor);
        if (isInside(crossings, fullX)
            && sx >= 0
            && sy >= 0
            && sx < small.width()
            && sy < small.height()) {
          pixels[(top + y) * width + left + x] = small.at(sx, sy);
        }
      }
    }
  }

  private static boolean isInside(double[] crossings, double x) {
    for (int i = 0; i + 1 < crossings.length; i += 2) {
      if (x >= crossings[i] && x < crossings[i + 1]) {
        return true;
      }
    }
    return false;
  }
}
