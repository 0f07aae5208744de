package ovenproof.kitchen.photo;

import ovenproof.core.colour.Lab;
import ovenproof.core.colour.LinearRgb;

/**
 * The 24 patches, CIELAB D50, four rows of six. Source: X-Rite, new colour specifications for its
 * 24-patch and SG charts (after November 2014), as given in the public data module of the
 * colour-science project (BSD-3).
 */
final class ColourChart {

  static final int COLUMNS = 6;
  static final int ROWS = 4;

  private static final double[][] LAB = {
    {37.54, 14.37, 14.92}, {64.66, 19.27, 17.50}, {49.32, -3.82, -22.54},
    {43.46, -12.74, 22.72}, {54.94, 9.61, -24.79}, {70.48, -32.26, -0.37},
    {62.73, 35.83, 56.50}, {39.43, 10.75, -45.17}, {50.57, 48.64, 16.67},
    {30.10, 22.54, -20.87}, {71.77, -24.13, 58.19}, {71.51, 18.24, 67.37},
    {28.37, 15.42, -49.80}, {54.38, -39.72, 32.27}, {42.43, 51.05, 28.62},
    {81.80, 2.67, 80.41}, {50.63, 51.28, -14.12}, {49.57, -29.71, -28.32},
    {95.19, -1.03, 2.93}, {81.29, -0.57, 0.44}, {66.89, -0.75, -0.06},
    {50.76, -0.13, 0.14}, {35.63, -0.46, -0.48}, {20.64, 0.07, -0.46}
  };
  private static final float[] FRAME = linear(Lab.d50(16, 0, 0));
  private static final float[][] PATCHES = patches();
  private static final double PATCH_SHARE = 0.41;

  private ColourChart() {}

  private static float[][] patches() {
    float[][] all = new float[LAB.length][];
    for (int i = 0; i < LAB.length; i++) {
      all[i] = linear(Lab.d50(LAB[i][0], LAB[i][1], LAB[i][2]));
    }
    return all;
  }

  static float[] linear(Lab lab) {
    LinearRgb rgb = lab.toLinearRgb();
    return new float[] {(float) rgb.red(), (float) rgb.green(), (float) rgb.blue()};
  }

  /**
   * Light of the chart at a place in pitches from its middle; null outside its frame, which is a
   * third of a pitch wide.
   */
  static float @org.jspecify.annotations.Nullable [] at(double u, double v) {
    double column = u + COLUMNS / 2.0;
    double row = v + ROWS / 2.0;
    if (column < -0.33 || row < -0.33 || column > COLUMNS + 0.33 || row > ROWS + 0.33) {
      return null;
    }
    int i = (int) Math.floor(column);
    int j = (int) Math.floor(row);
    boolean onGrid = i >= 0 && i < COLUMNS && j >= 0 && j < ROWS;
    boolean onPatch =
        onGrid && Math.abs(column - i - 0.5) < PATCH_SHARE && Math.abs(row - j - 0.5) < PATCH_SHARE;
    return onPatch ? PATCHES[j * COLUMNS + i] : FRAME;
  }
}
