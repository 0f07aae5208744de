package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import ovenproof.core.colour.Srgb;

/**
 * What the camera made of each patch of the chart.
 *
 * @param patches 24, in the order of {@link ReferenceChart}
 */
record PatchSamples(List<Patch> patches) {

  /** The middle half of a patch is read: its edges mix with the border. */
  private static final double REACH = 0.24;

  private static final int MOST_POINTS = 40;
  private static final double TRIM = 0.2;
  private static final double CLIPPED_SHARE = 0.05;

  /**
   * One patch as light after undoing sRGB, 0…1.
   *
   * @param sd standard deviation of the pixels' green light
   * @param clipped more than a twentieth of its pixels have a channel at its end
   */
  record Patch(double red, double green, double blue, double sd, boolean clipped) {

    double channel(int index) {
      return switch (index) {
        case 0 -> red;
        case 1 -> green;
        default -> blue;
      };
    }
  }

  /** Reads all patches; the chart must lie inside the picture as a whole. */
  static PatchSamples read(Picture picture, ChartSighting sighting) {
    List<Patch> out = new ArrayList<>();
    int points = Math.max(4, Math.min(MOST_POINTS, (int) (2 * REACH * sighting.pitchPixels())));
    for (int patch = 0; patch < ReferenceChart.PATCHES; patch++) {
      out.add(read(picture, sighting, patch, points));
    }
    return new PatchSamples(out);
  }

  private static Patch read(Picture picture, ChartSighting sighting, int patch, int points) {
    int n = points * points;
    double[][] channels = new double[3][n];
    int clipped = 0;
    Homography view = java.util.Objects.requireNonNull(sighting.view());
    for (int i = 0; i < n; i++) {
      double x = REACH * (2.0 * (i % points) / (points - 1) - 1);
      double y = REACH * (2.0 * (i / points) / (points - 1) - 1);
      PixelPoint at =
          view.apply(
              patch % ReferenceChart.COLUMNS + 0.5 + x, patch / ReferenceChart.COLUMNS + 0.5 + y);
      int pixel = picture.at(clamp(at.x(), picture.width()), clamp(at.y(), picture.height()));
      int highest = 0;
      for (int c = 0; c < 3; c++) {
        int value = pixel >> (16 - 8 * c) & 0xff;
        highest = Math.max(highest, value);
        channels[c][i] = Srgb.linearOf(value);
      }
      clipped += highest >= 254 ? 1 : 0;
    }
    return new Patch(
        trimmedMean(channels[0]),
        trimmedMean(channels[1]),
        trimmedMean(channels[2]),
        sd(channels[1]),
        clipped > CLIPPED_SHARE * n);
  }

  private static int clamp(double coordinate, int size) {
    return Math.max(0, Math.min(size - 1, (int) Math.floor(coordinate)));
  }

  /** Mean without the lowest and highest fifth: dust and small highlights drop out. */
  private static double trimmedMean(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int cut = (int) (TRIM * sorted.length);
    return Arrays.stream(sorted, cut, sorted.length - cut).average().orElseThrow();
  }

  private static double sd(double[] values) {
    double mean = Arrays.stream(values).average().orElseThrow();
    double sum = 0;
    for (double v : values) {
      sum += (v - mean) * (v - mean);
    }
    return Math.sqrt(sum / Math.max(1, values.length - 1));
  }
}
