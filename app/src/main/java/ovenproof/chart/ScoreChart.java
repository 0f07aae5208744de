package ovenproof.chart;

import org.jspecify.annotations.Nullable;

/**
 * Scores from 0 to 10 as beads in trays: the lanes of a ranking and the small trays of a matrix.
 */
public final class ScoreChart {
  private static final double BEAD_RADIUS = 7;

  private ScoreChart() {}

  /**
   * The tier that a lane lies in, drawn as a larger tray behind it.
   *
   * @param best score of the tier's best product
   * @param lowest score down to which the tier reaches
   * @param place whether the lane closes the tray below
   */
  public record Tier(double best, double lowest, Place place) {}

  /** Where in its tier a lane stands. */
  public enum Place {
    INSIDE,
    LAST
  }

  /** The axis above the lanes, 0 to 10. */
  public static String axis() {
    Svg svg = new Svg().open("svg", "class", "chart", "height", "28", "aria-hidden", "true");
    for (double tick : Scale.POINTS.ticks()) {
      String x = Svg.percent(Scale.POINTS.percent(tick));
      svg.empty("line", "class", "axis", "x1", x, "x2", x, "y1", "20", "y2", "28");
      svg.text(Scale.POINTS.label(tick), "x", x, "y", "15", "text-anchor", "middle");
    }
    return svg.close().toString();
  }

  /**
   * One lane of the ranking.
   *
   * @param sentence what the picture says, for people who do not see it
   */
  public static String lane(String sentence, Tray tray, @Nullable Tier tier) {
    Svg svg = new Svg().open("svg", "class", "chart", "role", "img", "aria-label", sentence);
    if (tier != null) {
      tier(svg, tier);
    }
    svg.open("svg", "y", "50%", "overflow", "visible");
    bead(svg, tray, 5.5, BEAD_RADIUS, 10.5);
    return svg.close().close().toString();
  }

  /** A small tray beneath a figure; the figure says it in words. */
  public static String mini(Tray tray) {
    Svg svg = new Svg().open("svg", "class", "chart mini", "height", "14", "aria-hidden", "true");
    svg.empty("line", "class", "wire", "x1", "0", "x2", "100%", "y1", "11.5", "y2", "11.5");
    bead(svg, tray, 11.5, 4, 0);
    return svg.close().toString();
  }

  private static void tier(Svg svg, Tier tier) {
    String left = Svg.percent(Scale.POINTS.percent(tier.lowest()));
    String right = Svg.percent(Scale.POINTS.percent(tier.best()));
    String width =
        Svg.percent(Scale.POINTS.percent(tier.best()) - Scale.POINTS.percent(tier.lowest()));
    svg.empty("rect", "class", "band", "x", left, "width", width, "y", "0", "height", "100%");
    if (tier.place() == Place.LAST) {
      svg.empty("line", "class", "tier-rail", "x1", left, "x2", right, "y1", "100%", "y2", "100%");
    }
    svg.empty("line", "class", "tier-rail thin", "x1", left, "x2", left, "y1", "0", "y2", "100%");
    svg.empty("line", "class", "tier-rail thin", "x1", right, "x2", right, "y1", "0", "y2", "100%");
  }

  /** Draws rail, lips and bead; {@code lip} is the height of the lips, 0 for none. */
  private static void bead(Svg svg, Tray tray, double railY, double radius, double lip) {
    switch (tray.kind()) {
      case INTERVAL -> {
        rail(svg, "rail", tray.low(), tray.high(), railY);
        lip(svg, "rail", tray.low(), railY, lip);
        lip(svg, "rail", tray.high(), railY, lip);
      }
      case AT_MOST -> {
        rail(svg, "rail open", tray.low() == null ? 0.0 : tray.low(), tray.value(), railY);
        lip(svg, "rail", tray.value(), railY, lip);
      }
      case AT_LEAST -> {
        rail(svg, "rail open", tray.value(), tray.high() == null ? 10.0 : tray.high(), railY);
        lip(svg, "rail", tray.value(), railY, lip);
      }
      case BOUNDS -> {
        rail(svg, "rail other open", tray.low(), tray.high(), railY);
        lip(svg, "rail other", tray.low(), railY, lip);
        lip(svg, "rail other", tray.high(), railY, lip);
      }
      case CANNOT_DO -> rail(svg, "rail other open", 0.0, 2.0, railY);
      case VALUE_ONLY, NONE -> {
        // No tray: nothing is known that could hold the value.
      }
    }
    if (tray.value() != null && tray.kind().hasBead()) {
      svg.empty(
          "circle",
          "class",
          "bead",
          "cx",
          x(tray.value()),
          "cy",
          railY - 1.5 - radius,
          "r",
          radius);
    }
  }

  private static void rail(
      Svg svg, String style, @Nullable Double from, @Nullable Double to, double y) {
    svg.empty("line", "class", style, "x1", x(from), "x2", x(to), "y1", y, "y2", y);
  }

  private static void lip(Svg svg, String style, @Nullable Double at, double railY, double height) {
    if (height > 0) {
      String x = x(at);
      svg.empty(
          "line", "class", style, "x1", x, "x2", x, "y1", railY + 1.5, "y2", railY + 1.5 - height);
    }
  }

  private static String x(@Nullable Double points) {
    return Svg.percent(Scale.POINTS.percent(points == null ? 0 : points));
  }
}
