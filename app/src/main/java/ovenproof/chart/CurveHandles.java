package ovenproof.chart;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A value curve whose corners can be taken hold of: by pointer, or by keyboard as sliders. The
 * fields of the form beside it hold the values; a script moves both together, and without it the
 * fields alone do.
 *
 * @param scale the measurement's axis in {@code unit}
 * @param corners the curve as straight pieces, in rising order
 */
public record CurveHandles(
    String sentence,
    Scale scale,
    String unit,
    List<CurveChart.Corner> corners,
    List<Handle> handles) {
  private static final double TOP = 18;
  private static final double FLOOR = 238;

  public CurveHandles {
    corners = List.copyOf(corners);
    handles = List.copyOf(handles);
  }

  /**
   * A corner.
   *
   * @param at field of its place
   * @param pointsField field of its points; null when they are fixed
   * @param words its place as it is written
   */
  public record Handle(
      double value, double points, String at, @Nullable String pointsField, String words) {}

  public String svg() {
    Svg svg =
        new Svg()
            .open("div", "role", "group", "aria-label", sentence)
            .open(
                "svg",
                "class",
                "chart curve-edit",
                "height",
                "276",
                "data-low",
                scale.low(),
                "data-high",
                scale.high(),
                "data-step",
                scale.step(),
                "data-top",
                TOP,
                "data-floor",
                FLOOR,
                "data-unit",
                unit.equals("1") ? "" : unit);
    grid(svg);
    svg.open(
        "svg",
        "width",
        "100%",
        "height",
        "276",
        "viewBox",
        "0 0 100 276",
        "preserveAspectRatio",
        "none");
    svg.empty("path", "class", "curve own", "d", CurveChart.path(corners, scale, CurveHandles::y));
    svg.close();
    ticks(svg);
    handles.forEach(h -> handle(svg, h));
    return svg.close().close().toString();
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

  private void ticks(Svg svg) {
    List<Double> ticks = scale.ticks();
    for (int i = 0; i < ticks.size(); i++) {
      double percent = scale.percent(ticks.get(i));
      boolean last = i == ticks.size() - 1;
      boolean named = last && !unit.isEmpty() && !unit.equals("1");
      svg.text(
          scale.label(ticks.get(i)) + (named ? "\u00a0" + unit : ""),
          "x",
          Svg.percent(percent),
          "y",
          FLOOR + 20,
          "text-anchor",
          DotPlot.anchor(percent));
    }
  }

  private void handle(Svg svg, Handle h) {
    String points = BigDecimal.valueOf(h.points()).stripTrailingZeros().toPlainString();
    svg.empty(
        "circle",
        "class",
        "bead handle",
        "cx",
        Svg.percent(scale.percent(h.value())),
        "cy",
        y(h.points()),
        "r",
        "11",
        "tabindex",
        "0",
        "role",
        "slider",
        "aria-label",
        "Corner at " + h.words(),
        "aria-valuemin",
        scale.low(),
        "aria-valuemax",
        scale.high(),
        "aria-valuenow",
        BigDecimal.valueOf(h.value())
            .setScale(6, RoundingMode.HALF_UP)
            .stripTrailingZeros()
            .toPlainString(),
        "aria-valuetext",
        h.words() + ", " + points + " points",
        "data-at",
        h.at(),
        "data-points",
        h.pointsField(),
        "data-fixed",
        h.pointsField() == null ? points : null);
  }

  private static double y(double points) {
    return FLOOR - (FLOOR - TOP) * Math.max(0, Math.min(10, points)) / 10;
  }
}
