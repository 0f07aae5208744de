package ovenproof.core.photo;

import java.util.List;

/** Camera noise at the size of a block, seen on the chart's even patches. */
final class ChartNoise {

  /** Patches neither very dark nor saturated: skins, light greys, foliage. */
  private static final List<Integer> PATCHES = List.of(0, 1, 2, 3, 4, 19, 20, 21, 22);

  private static final double REACH = 0.3;
  private static final double FLOOR = 0.05;

  private ChartNoise() {}

  /**
   * Standard deviation of block means of L* within patches, pooled.
   *
   * @param blockPixels side of a block; when fewer than nine fit into a patch, smaller blocks are
   *     read and the noise is scaled by their side, as for independent pixels
   */
  static double ofBlocks(
      Picture picture, ChartSighting chart, PixelColours colours, double blockPixels) {
    double room = 2 * REACH * chart.pitchPixels();
    double side = Math.max(1, Math.min(blockPixels, room / 3));
    double sum = 0;
    int degrees = 0;
    for (int patch : PATCHES) {
      ShadeMap map = ShadeMap.of(picture, square(chart, patch), colours, side);
      double mean = 0;
      int n = 0;
      for (int i = 0; i < map.size(); i++) {
        if (map.inside(i)) {
          mean += map.lightness(i);
          n++;
        }
      }
      mean /= Math.max(1, n);
      for (int i = 0; i < map.size(); i++) {
        if (map.inside(i)) {
          sum += (map.lightness(i) - mean) * (map.lightness(i) - mean);
        }
      }
      degrees += Math.max(0, n - 1);
    }
    double sd = degrees == 0 ? 0.5 : Math.sqrt(sum / degrees);
    return Math.max(FLOOR, sd * side / Math.max(side, blockPixels));
  }

  private static Outline square(ChartSighting chart, int patch) {
    Homography view = java.util.Objects.requireNonNull(chart.view());
    double x = patch % ReferenceChart.COLUMNS + 0.5;
    double y = patch / ReferenceChart.COLUMNS + 0.5;
    return new Outline(
        List.of(
            view.apply(x - REACH, y - REACH),
            view.apply(x + REACH, y - REACH),
            view.apply(x + REACH, y + REACH),
            view.apply(x - REACH, y + REACH)));
  }
}
