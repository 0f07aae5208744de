package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Outlines the one piece that a person framed with a box. Knowing where to look makes this simple
 * and fast: what lies outside every box is ground, and a piece is the part of its box that is far
 * from the ground's colours.
 *
 * <p>Where the box holds nothing that can be told from the ground, the largest ellipse inside it is
 * taken: what a person frames is round or rounded more often than not, and its corners show the
 * ground.
 */
final class BoxOutliner {
  private static final int LONG_SIDE = 480;
  private static final int ELLIPSE_POINTS = 64;
  private static final double MARGIN_SHARE = 0.06;
  private static final double LEAST_FILLED = 0.35;
  private static final double LEAST_SOLID = 0.85;
  private static final double SHADOW_UNITS = 12;
  private static final int LEAST_GROUND = 50;

  private final Picture work;
  private final LabPlanes lab;
  private final Mask chart;
  private final int factor;
  private final double unit;

  private BoxOutliner(Picture picture, PixelColours colours, ChartSighting sighting) {
    int wanted = Math.max(1, (int) Math.ceil(picture.longSide() / (double) LONG_SIDE));
    factor = Math.min(wanted, Math.min(picture.width(), picture.height()));
    work = picture.reduced(factor);
    lab = LabPlanes.of(work, colours);
    unit = Math.max(1, lab.width() / 240.0);
    chart = PieceScene.chartIn(lab, sighting, factor, unit);
  }

  /**
   * One outline a box, in the order of the boxes, with the ground for evening out the light.
   *
   * @param boxes in pixels of the whole picture; what hangs over the edge is cut
   * @param others where more food lies, which is neither measured nor ground
   */
  static PieceFinder.Found find(
      Picture picture,
      PixelColours colours,
      ChartSighting chart,
      List<PixelBox> boxes,
      List<PixelBox> others) {
    return new BoxOutliner(picture, colours, chart).find(boxes, others);
  }

  /**
   * Outlines that a person drew, with the ground around them for evening out the light.
   *
   * @param outlines in pixels of the whole picture
   * @param others where more food lies, which is neither measured nor ground
   */
  static PieceFinder.Found around(
      Picture picture,
      PixelColours colours,
      ChartSighting chart,
      List<Outline> outlines,
      List<PixelBox> others) {
    BoxOutliner around = new BoxOutliner(picture, colours, chart);
    Mask framed = around.with(others);
    for (Outline outline : outlines) {
      framed = framed.or(around.filled(around.reduced(outline.box())));
    }
    return new PieceFinder.Found(
        outlines, around.groundPoints(framed), around.work, around.factor, List.of());
  }

  /** The chart and food that is not measured. */
  private Mask with(List<PixelBox> others) {
    Mask out = chart;
    for (PixelBox other : others) {
      out = out.or(filled(reduced(other)));
    }
    return out;
  }

  private PieceFinder.Found find(List<PixelBox> boxes, List<PixelBox> others) {
    List<PixelBox> reduced = boxes.stream().map(this::reduced).toList();
    Mask framed = with(others);
    for (PixelBox box : reduced) {
      framed = framed.or(filled(box));
    }
    int[] outside = indices(framed.dilated(2 * unit).inverted());
    GroundModel ground = GroundModel.of(lab, outside);
    List<Outline> outlines = new ArrayList<>();
    for (PixelBox box : reduced) {
      Outline drawn = outside.length < LEAST_GROUND ? ellipse(box) : outline(box, ground, framed);
      outlines.add(drawn.times(factor));
    }
    return new PieceFinder.Found(outlines, groundPoints(framed), work, factor, List.of());
  }

  private PixelBox reduced(PixelBox box) {
    int left = Math.max(0, Math.min(lab.width() - 1, box.left() / factor));
    int top = Math.max(0, Math.min(lab.height() - 1, box.top() / factor));
    int right = Math.min(lab.width(), (int) Math.ceil(box.right() / (double) factor));
    int bottom = Math.min(lab.height(), (int) Math.ceil(box.bottom() / (double) factor));
    return new PixelBox(left, top, Math.max(1, right - left), Math.max(1, bottom - top));
  }

  private Mask filled(PixelBox box) {
    Mask mask = Mask.empty(lab.width(), lab.height());
    for (int y = box.top(); y < box.bottom(); y++) {
      java.util.Arrays.fill(
          mask.set(), y * lab.width() + box.left(), y * lab.width() + box.right(), true);
    }
    return mask;
  }

  /** Only the surroundings of the box are looked at, so a frame of many pieces stays quick. */
  private Outline outline(PixelBox box, GroundModel ground, Mask framed) {
    PixelBox around = widened(box, SHADOW_UNITS * unit);
    LabPlanes near = lab.part(around);
    PixelBox inner = widened(box, Math.max(2, MARGIN_SHARE * Math.max(box.width(), box.height())));
    PixelBox local =
        new PixelBox(
            inner.left() - around.left(),
            inner.top() - around.top(),
            inner.width(),
            inner.height());
    Mask found = piece(near, local, ground, chart.part(around));
    double area = (double) box.width() * box.height();
    if (found.count() < LEAST_FILLED * area) {
      return ellipse(box);
    }
    Mask trimmed = new ShadowTrim(near, unit).trim(found, framed.part(around));
    return trimmed.count() >= LEAST_FILLED * area && trimmed.solidity() >= LEAST_SOLID
        ? OutlineTracer.trace(trimmed).shifted(around.left(), around.top())
        : ellipse(box);
  }

  /** The largest part of the box that is far from the ground; empty when nothing is. */
  private static Mask piece(LabPlanes near, PixelBox box, GroundModel ground, Mask chart) {
    double[] distances = new double[box.width() * box.height()];
    for (int i = 0; i < distances.length; i++) {
      distances[i] = ground.distance(near, index(near, box, i));
    }
    List<Double> levels = Threshold.levels(distances);
    Mask far = Mask.empty(near.width(), near.height());
    for (int i = 0; i < distances.length && !levels.isEmpty(); i++) {
      int at = index(near, box, i);
      far.set()[at] = distances[i] > levels.get(0) && !chart.set()[at];
    }
    return far.squareOpened(1).parts(12).stream()
        .max(Comparator.comparingInt(Mask::count))
        .map(part -> part.filled().opened(Math.max(1.5, 0.06 * Math.sqrt(part.count()))))
        .orElse(far);
  }

  private PixelBox widened(PixelBox box, double by) {
    int margin = (int) Math.ceil(by);
    int left = Math.max(0, box.left() - margin);
    int top = Math.max(0, box.top() - margin);
    int right = Math.min(lab.width(), box.right() + margin);
    int bottom = Math.min(lab.height(), box.bottom() + margin);
    return new PixelBox(left, top, right - left, bottom - top);
  }

  private static int index(LabPlanes near, PixelBox box, int i) {
    return (box.top() + i / box.width()) * near.width() + box.left() + i % box.width();
  }

  private static Outline ellipse(PixelBox box) {
    List<PixelPoint> points = new ArrayList<>();
    for (int i = 0; i < ELLIPSE_POINTS; i++) {
      double angle = 2 * Math.PI * i / ELLIPSE_POINTS;
      points.add(
          new PixelPoint(
              box.left() + box.width() / 2.0 * (1 + Math.cos(angle)),
              box.top() + box.height() / 2.0 * (1 + Math.sin(angle))));
    }
    return new Outline(points);
  }

  /** Every fourth pixel that is neither framed nor in the shadow beside what is. */
  private List<PixelPoint> groundPoints(Mask framed) {
    Mask near = framed.dilated(6 * unit);
    List<PixelPoint> points = new ArrayList<>();
    for (int y = 2; y < lab.height(); y += 4) {
      for (int x = 2; x < lab.width(); x += 4) {
        if (!near.set()[y * lab.width() + x]) {
          points.add(new PixelPoint((x + 0.5) / lab.width(), (y + 0.5) / lab.height()));
        }
      }
    }
    return points;
  }

  private static int[] indices(Mask mask) {
    boolean[] set = mask.set();
    return IntStream.range(0, set.length).filter(i -> set[i]).toArray();
  }
}
