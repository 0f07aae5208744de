package ovenproof.core.photo;

/**
 * How the pixels of one picture become CIELAB under D50: the plain sRGB reading, or a camera
 * correction with or without a correction of the light over the frame. Safe to use from several
 * threads.
 */
@FunctionalInterface
public interface PixelColours {

  /**
   * Converts a part of one row.
   *
   * @param fromX first pixel, inclusive
   * @param toX last pixel, exclusive
   * @param lab receives L*, a*, b* of each pixel, from index 0
   */
  void row(Picture picture, int y, int fromX, int toX, float[] lab);

  /** The picture read as the sRGB it says it is: what a camera made of the light. */
  static PixelColours uncorrected() {
    ovenproof.core.colour.LabTable table =
        ovenproof.core.colour.LabTable.ofLinearSrgb(ovenproof.core.colour.White.D50);
    return (picture, y, fromX, toX, lab) -> {
      int at = y * picture.width();
      table.convert(picture.pixels(), at + fromX, at + toX, lab);
    };
  }
}
