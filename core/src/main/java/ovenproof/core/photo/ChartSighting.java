package ovenproof.core.photo;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What was seen of a 24-patch chart.
 *
 * @param status whole, part or nothing
 * @param view chart coordinates (6 × 4 pitches, see {@link ReferenceChart}) to picture coordinates;
 *     null when nothing was seen
 * @param patchesInFrame how many patches lie inside the picture, 0…24
 * @param match mean ΔE00 of the patches after a plain 3×3 fit, the three worst left out: how sure
 *     it is that this is the chart; 0 when nothing was seen
 */
public record ChartSighting(
    Status status, @Nullable Homography view, int patchesInFrame, double match) {

  /** How much of the chart is in the picture. */
  public enum Status {
    WHOLE,
    PART,
    NONE
  }

  static final ChartSighting NOTHING = new ChartSighting(Status.NONE, null, 0, 0);

  public boolean isWhole() {
    return status == Status.WHOLE;
  }

  /**
   * Corners of the grid of patches, starting at dark skin and going round by bluish green, black
   * and white; empty when nothing was seen.
   */
  public List<PixelPoint> corners() {
    return ring(0);
  }

  /** Corners of the chart with its border, which is about a third of a pitch wide. */
  List<PixelPoint> outerCorners() {
    return ring(0.45);
  }

  private List<PixelPoint> ring(double beyond) {
    if (view == null) {
      return List.of();
    }
    double right = ReferenceChart.COLUMNS + beyond;
    double lower = ReferenceChart.ROWS + beyond;
    return List.of(
        view.apply(-beyond, -beyond),
        view.apply(right, -beyond),
        view.apply(right, lower),
        view.apply(-beyond, lower));
  }

  /** In a picture of so many times the size. */
  ChartSighting scaled(double factor) {
    return view == null ? this : with(view.scaled(factor));
  }

  /** In a picture whose upper left corner lies elsewhere. */
  ChartSighting shifted(double dx, double dy) {
    return view == null ? this : with(view.shifted(dx, dy));
  }

  private ChartSighting with(Homography other) {
    return new ChartSighting(status, other, patchesInFrame, match);
  }

  /** Middle of a patch, 0…23. */
  public PixelPoint centre(int patch) {
    if (view == null) {
      throw new IllegalArgumentException("no chart was seen, so patch " + patch + " has no place");
    }
    return view.apply(patch % ReferenceChart.COLUMNS + 0.5, patch / ReferenceChart.COLUMNS + 0.5);
  }

  /** Pixels from patch to patch, averaged over the chart. */
  public double pitchPixels() {
    List<PixelPoint> c = corners();
    double along = c.get(0).distanceTo(c.get(1)) + c.get(3).distanceTo(c.get(2));
    double across = c.get(0).distanceTo(c.get(3)) + c.get(1).distanceTo(c.get(2));
    return (along / (2 * ReferenceChart.COLUMNS) + across / (2 * ReferenceChart.ROWS)) / 2;
  }
}
