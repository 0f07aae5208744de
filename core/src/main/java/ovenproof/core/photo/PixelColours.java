package ovenproof.core.photo;

import java.util.List;
import ovenproof.core.colour.Lab;

/**
 * How the pixels of one picture become CIELAB under D50: the plain sRGB reading, or a camera
 * correction, with or without a correction of the light over the frame. Safe to use from several
 * threads.
 */
public interface PixelColours {

  /**
   * Converts a part of one row.
   *
   * @param fromX first pixel, inclusive
   * @param toX last pixel, exclusive
   * @param lab receives L*, a*, b* of each pixel, from index 0
   */
  void row(Picture picture, int y, int fromX, int toX, float[] lab);

  /** The same with the light over the frame evened out. */
  PixelColours under(LightField field);

  /** The colour of one pixel. */
  default Lab at(Picture picture, int x, int y) {
    float[] lab = new float[3];
    row(picture, y, x, x + 1, lab);
    return Lab.d50(lab[0], lab[1], lab[2]);
  }

  /** The picture read as the sRGB it says it is: what a camera made of the light. */
  static PixelColours uncorrected() {
    return GainedColours.neutral(List.of(1.0, 1.0, 1.0));
  }
}
