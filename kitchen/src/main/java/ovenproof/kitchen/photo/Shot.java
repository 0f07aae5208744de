package ovenproof.kitchen.photo;

import java.util.List;

/**
 * A picture and the truth about it.
 *
 * @param rgb 0xRRGGBB, row by row
 */
public record Shot(int width, int height, int[] rgb, List<PieceTruth> pieces) {

  public Shot {
    pieces = List.copyOf(pieces);
  }

  /**
   * What a piece truly is and where it lies.
   *
   * @param x left edge of a box around it, pixels
   * @param meanLab mean over its whole outline, CIELAB D50
   * @param insideLab mean without a margin of 2 mm
   * @param seenLab the same as it looks from above: bumps and roundness catch more or less light
   * @param insideDeviation standard deviation of L* there, pixel by pixel
   * @param pixels area of its outline
   */
  public record PieceTruth(
      String id,
      int x,
      int y,
      int width,
      int height,
      double[] meanLab,
      double[] insideLab,
      double[] seenLab,
      double insideDeviation,
      int pixels) {}
}
