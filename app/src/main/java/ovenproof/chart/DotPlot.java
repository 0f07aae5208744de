package ovenproof.chart;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Single observations on a shared axis, one lane per row of a table, with their mean and its
 * interval beneath.
 */
public final class DotPlot {

  private DotPlot() {}

  /**
   * One observation.
   *
   * @param value where it lies; for an observation beyond a bound, the bound
   */
  public record Dot(double value, Kind kind) {}

  /** What an observation is. */
  public enum Kind {
    COUNTED,
    /** Listed, not counted: a trial, a void run. */
    LISTED,
    /** Known only to lie above. */
    ABOVE,
    /** Known only to lie below. */
    BELOW
  }

  /** The axis above or below the lanes, with its unit at the last tick. */
  public static String axis(Scale scale, String unit) {
    Svg svg = new Svg().open("svg", "class", "chart", "height", "28", "aria-hidden", "true");
    List<Double> ticks = scale.ticks();
    for (int i = 0; i < ticks.size(); i++) {
      double percent = scale.percent(ticks.get(i));
      String x = Svg.percent(percent);
      boolean last = i == ticks.size() - 1;
      String words = scale.label(ticks.get(i)) + (last && !unit.isEmpty() ? "\u00a0" + unit : "");
      svg.empty("line", "class", "axis", "x1", x, "x2", x, "y1", "20", "y2", "28");
      svg.text(words, "x", x, "y", "15", "text-anchor", anchor(percent));
    }
    return svg.close().toString();
  }

  /**
   * One lane.
   *
   * @param mean the mean, or null
   * @param low lower end of its interval, or null
   * @param high upper end of its interval, or null
   */
  public static String lane(
      String sentence,
      Scale scale,
      List<Dot> dots,
      @Nullable Double mean,
      @Nullable Double low,
      @Nullable Double high) {
    Svg svg =
        new Svg()
            .open("svg", "class", "chart", "height", "40", "role", "img", "aria-label", sentence);
    svg.empty("line", "class", "wire", "x1", "0", "x2", "100%", "y1", "33", "y2", "33");
    for (Dot dot : dots) {
      dot(svg, scale, dot);
    }
    if (low != null && high != null) {
      tray(svg, Svg.percent(scale.percent(low)), Svg.percent(scale.percent(high)));
    }
    if (mean != null) {
      String x = Svg.percent(scale.percent(mean));
      svg.empty("circle", "class", "bead", "cx", x, "cy", "26", "r", "5.5");
    }
    return svg.close().toString();
  }

  private static void tray(Svg svg, String left, String right) {
    svg.empty("line", "class", "rail", "x1", left, "x2", right, "y1", "33", "y2", "33");
    svg.empty("line", "class", "rail", "x1", left, "x2", left, "y1", "34.5", "y2", "26");
    svg.empty("line", "class", "rail", "x1", right, "x2", right, "y1", "34.5", "y2", "26");
  }

  private static void dot(Svg svg, Scale scale, Dot dot) {
    String x = Svg.percent(scale.percent(dot.value()));
    switch (dot.kind()) {
      case COUNTED -> svg.empty("circle", "class", "dot-ink", "cx", x, "cy", "10", "r", "4");
      case LISTED ->
          svg.empty("circle", "class", "ring", "cx", x, "cy", "10", "r", "4", "fill", "none");
      case ABOVE -> arrow(svg, x, "M-4 5L4 10L-4 15");
      case BELOW -> arrow(svg, x, "M4 5L-4 10L4 15");
    }
  }

  private static void arrow(Svg svg, String x, String path) {
    svg.open("svg", "x", x, "overflow", "visible");
    svg.empty("path", "class", "ring", "fill", "none", "d", path);
    svg.close();
  }

  static String anchor(double percent) {
    return percent < 2 ? "start" : percent > 96 ? "end" : "middle";
  }
}
