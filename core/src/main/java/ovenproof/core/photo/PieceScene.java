package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A reduced picture in which pieces are looked for.
 *
 * @param lab its colours
 * @param excluded the chart: not food, nor is what it covers
 * @param unit pixels that stand for a 240th of the width, at least 1: reaches are multiples of it
 * @param leastArea pixels of the smallest piece
 */
record PieceScene(LabPlanes lab, Mask excluded, double unit, int leastArea) {

  private static final double LEAST_AREA_SHARE = 0.0015;

  /**
   * Its colours and the chart's place.
   *
   * @param work the picture at 1/factor of its size
   * @param chart as seen in the whole picture
   */
  static PieceScene of(Picture work, PixelColours colours, ChartSighting chart, int factor) {
    LabPlanes lab = LabPlanes.of(work, colours);
    double unit = Math.max(1, lab.width() / 240.0);
    return new PieceScene(
        lab,
        chartIn(lab, chart, factor, unit),
        unit,
        Math.max(12, (int) (LEAST_AREA_SHARE * lab.size())));
  }

  /** The chart with its border and a little more. */
  static Mask chartIn(LabPlanes lab, ChartSighting chart, int factor, double unit) {
    List<PixelPoint> corners = chart.outerCorners();
    return corners.isEmpty()
        ? Mask.empty(lab.width(), lab.height())
        : Mask.inside(new Outline(corners).times(1.0 / factor), lab.width(), lab.height())
            .dilated(2 * unit);
  }

  int width() {
    return lab.width();
  }

  int height() {
    return lab.height();
  }

  /** Everything but the chart. */
  Mask allowed() {
    return excluded.inverted();
  }

  /** Pixels along the edge of a domain: they show its ground. */
  int[] borderOf(Mask domain) {
    Mask ring =
        domain.count() > 0.8 * lab.size()
            ? alongFrame(domain)
            : domain.and(domain.eroded(4 * unit).inverted());
    boolean[] set = ring.set();
    return IntStream.range(0, set.length).filter(i -> set[i]).toArray();
  }

  private Mask alongFrame(Mask domain) {
    Mask ring = Mask.empty(width(), height());
    int margin = (int) Math.ceil(4 * unit);
    for (int i = 0; i < lab.size(); i++) {
      int x = i % width();
      int y = i / width();
      boolean edge = x < margin || y < margin || x >= width() - margin || y >= height() - margin;
      ring.set()[i] = edge && domain.set()[i];
    }
    return ring;
  }

  /**
   * Every fourth pixel that is neither food nor in the shadow beside it, as shares of width and
   * height.
   */
  List<PixelPoint> ground(List<PieceCandidate> pieces) {
    Mask food = excluded.dilated(2 * unit);
    for (PieceCandidate c : pieces) {
      food = food.or(c.mask().dilated(6 * unit));
    }
    List<PixelPoint> out = new ArrayList<>();
    int step = 4;
    for (int y = 2; y < height(); y += step) {
      for (int x = 2; x < width(); x += step) {
        if (!food.set()[y * width() + x]) {
          out.add(new PixelPoint((x + 0.5) / width(), (y + 0.5) / height()));
        }
      }
    }
    return out;
  }
}
