package ovenproof.chart;

import java.util.List;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * What a measurement is worth: its value curve from 0 to 10 points, with the observations on it.
 *
 * @param sentence what the picture says
 * @param scale the measurement's axis
 * @param unit its unit, for the last tick
 * @param corners the curve as straight pieces, in rising order
 * @param marks observations, in the order of their notes
 * @param unseenFrom from here on nothing was observed (a cap); null when everything could be
 */
public record CurveChart(
    String sentence,
    Scale scale,
    String unit,
    List<Corner> corners,
    List<Mark> marks,
    @Nullable Double unseenFrom) {
  private static final double TOP = 18;
  private static final double FLOOR = 178;

  public CurveChart {
    corners = List.copyOf(corners);
    marks = List.copyOf(marks);
  }

  /** A corner of the curve. */
  public record Corner(double value, double points) {}

  /**
   * An observation.
   *
   * @param label short: {@code run 2}
   * @param points null when it lies beyond what was observed
   */
  public record Mark(String label, double value, @Nullable Double points) {}

  public String svg() {
    Svg svg =
        new Svg()
            .open("svg", "class", "chart", "height", "212", "role", "img", "aria-label", sentence);
    grid(svg);
    unseen(svg);
    svg.open(
        "svg",
        "width",
        "100%",
        "height",
        "212",
        "viewBox",
        "0 0 100 212",
        "preserveAspectRatio",
        "none");
    svg.empty("path", "class", "curve own", "d", path(corners, scale, CurveChart::y));
    svg.close();
    ticks(svg);
    marks(svg);
    return svg.close().toString();
  }

  private void grid(Svg svg) {
    for (int points : new int[] {10, 5}) {
      double y = y(points);
      svg.empty("line", "class", "wire", "x1", "0", "x2", "100%", "y1", y, "y2", y);
    }
    svg.empty("line", "class", "axis", "x1", "0", "x2", "100%", "y1", FLOOR, "y2", FLOOR);
    svg.text("10 points", "class", "halo", "x", "0", "y", y(10) - 4);
    svg.text("5", "class", "halo", "x", "0", "y", y(5) - 4);
    svg.text("0", "class", "halo", "x", "0", "y", FLOOR - 4);
  }

  private void unseen(Svg svg) {
    if (unseenFrom == null) {
      return;
    }
    double from = scale.percent(unseenFrom);
    svg.empty(
        "rect",
        "class",
        "unseen",
        "x",
        Svg.percent(from),
        "width",
        Svg.percent(100 - from),
        "y",
        TOP,
        "height",
        FLOOR - TOP);
    if (from < 80) {
      svg.text("not observed", "x", Svg.percent(from + 1.5), "y", TOP + 16);
    }
    String x = Svg.percent(from);
    svg.empty("line", "class", "setline", "x1", x, "x2", x, "y1", TOP, "y2", FLOOR);
  }

  /** The line through the corners, for any height of the drawing. */
  static String path(List<Corner> corners, Scale scale, DoubleUnaryOperator y) {
    StringBuilder path = new StringBuilder();
    for (Corner corner : corners) {
      path.append(path.isEmpty() ? "M" : " L")
          .append(
              String.format(
                  Locale.ROOT,
                  "%.2f %.1f",
                  scale.percent(corner.value()),
                  y.applyAsDouble(corner.points())));
    }
    return path.isEmpty() ? "M0 0" : path.toString();
  }

  private void ticks(Svg svg) {
    List<Double> ticks = scale.ticks();
    for (int i = 0; i < ticks.size(); i++) {
      double percent = scale.percent(ticks.get(i));
      boolean last = i == ticks.size() - 1;
      String words = scale.label(ticks.get(i)) + (last && !unit.isEmpty() ? "\u00a0" + unit : "");
      svg.text(
          words,
          "x",
          Svg.percent(percent),
          "y",
          FLOOR + 20,
          "text-anchor",
          DotPlot.anchor(percent));
    }
  }

  private void marks(Svg svg) {
    for (Mark mark : marks) {
      if (mark.points() == null) {
        svg.open("svg", "x", Svg.percent(scale.percent(mark.value())), "overflow", "visible");
        svg.empty("path", "class", "ring", "fill", "none", "d", "M0 166h14m-5 -5l5 5l-5 5");
        svg.close();
        continue;
      }
      String x = Svg.percent(scale.percent(mark.value()));
      svg.empty("circle", "class", "bead", "cx", x, "cy", y(mark.points()), "r", "6");
    }
  }

  private static double y(double points) {
    return FLOOR - (FLOOR - TOP) * Math.max(0, Math.min(10, points)) / 10;
  }
}
