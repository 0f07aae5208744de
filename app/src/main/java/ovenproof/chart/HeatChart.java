package ovenproof.chart;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.chart.LineChart.Axis;

/**
 * A heat curve with numbered marks, each of which leads to the definition of the measure it shows.
 *
 * @param lines curve, model, levels
 * @param band interval of the ceiling; null for none
 * @param marks in the order of their numbers
 */
public record HeatChart(LineChart lines, @Nullable Band band, List<Mark> marks) {

  /** Bubbles nearer than this, in per cent of the width, are put above each other. */
  private static final double NEAR_PERCENT = 7.5;

  private static final double BUBBLE = 12;
  private static final double AWAY = 36;
  private static final double STEP = 27;

  /** Colours of the light look, for a picture that stands alone. */
  private static final String ALONE =
      "text{font:500 14px 'Sofia Sans',system-ui,sans-serif;fill:#3f545c}.strong{fill:#0f2229;font-weight:700}"
          + ".hot{fill:#a83a10;font-weight:700}.axis{stroke:#5a6e76;stroke-width:1}"
          + ".wire{stroke:#bbc7cb;stroke-width:1}.curve{fill:none;stroke:#a83a10;stroke-width:2.5}"
          + ".own{stroke:#0a5670}.peer{stroke:#5a6e76;stroke-width:1.5}"
          + ".model{fill:none;stroke:#0f2229;stroke-width:1.5;stroke-dasharray:7 5}"
          + ".faint{stroke:#5a6e76}.core{fill:none;stroke:#0a5670;stroke-width:2.5}"
          + ".setline{stroke:#0f2229;stroke-width:2}.ceil{stroke:#a83a10;stroke-width:2}"
          + ".ceil-band{fill:#f8e3d8}.unseen{fill:#dce4e6}.dot-heat{fill:#a83a10}"
          + ".dot-ink{fill:#0f2229}.rev{fill:#fafbfb;font-weight:700}";

  private static final int ALONE_WIDTH = 1200;
  private static final int MARGIN = 24;
  private static final int HEAD = 44;

  public HeatChart {
    marks = List.copyOf(marks);
  }

  /** From low to high on the vertical axis. */
  public record Band(double low, double high) {}

  /**
   * A numbered place.
   *
   * @param href where it leads to, such as {@code #m-highest}
   * @param words what it shows, with its value
   */
  public record Mark(int number, double x, double y, String href, String words) {}

  /** Its marks are links, so it is a group of things and no single image. */
  public String svg() {
    Svg svg =
        new Svg()
            .open("div", "role", "group", "aria-label", lines.sentence())
            .open("svg", "class", "chart heat-chart", "height", lines.height());
    paint(svg, Links.YES);
    return svg.close().close().toString();
  }

  /** The picture as a file of its own: no style sheet, light ground, a title. */
  public String alone() {
    int height = lines.height() + HEAD + MARGIN;
    Svg svg =
        new Svg()
            .open(
                "svg",
                "xmlns",
                "http://www.w3.org/2000/svg",
                "width",
                ALONE_WIDTH,
                "height",
                height,
                "viewBox",
                "0 0 " + ALONE_WIDTH + " " + height,
                "role",
                "img",
                "aria-label",
                lines.sentence());
    svg.style(ALONE);
    svg.empty("rect", "width", ALONE_WIDTH, "height", height, "fill", "#fafbfb");
    svg.text(lines.sentence(), "class", "strong", "x", MARGIN, "y", 28);
    svg.open(
        "svg",
        "x",
        MARGIN,
        "y",
        HEAD,
        "width",
        ALONE_WIDTH - 2 * MARGIN,
        "height",
        lines.height(),
        "overflow",
        "visible");
    paint(svg, Links.NO);
    return svg.close().close().toString();
  }

  private enum Links {
    YES,
    NO
  }

  private void paint(Svg svg, Links links) {
    Band interval = band;
    if (interval != null) {
      double top = lines.vertical(interval.high());
      double height = Math.max(1, lines.vertical(interval.low()) - top);
      svg.empty(
          "rect", "class", "ceil-band", "x", "0", "width", "100%", "y", top, "height", height);
    }
    lines.body(svg);
    List<Bubble> bubbles = bubbles();
    for (Bubble bubble : bubbles) {
      String x = Svg.percent(lines.x().scale().percent(bubble.mark().x()));
      String end = Svg.percent(bubble.percent());
      double dot = lines.vertical(bubble.mark().y());
      svg.empty("line", "class", "axis", "x1", x, "x2", end, "y1", dot, "y2", bubble.y());
      svg.empty("circle", "class", "dot-heat", "cx", x, "cy", dot, "r", 4.5);
    }
    for (Bubble bubble : bubbles) {
      bubble(svg, bubble, links);
    }
  }

  private static void bubble(Svg svg, Bubble bubble, Links links) {
    Mark mark = bubble.mark();
    String x = Svg.percent(bubble.percent());
    if (links == Links.YES) {
      svg.open("a", "href", mark.href(), "aria-label", mark.number() + ": " + mark.words());
    }
    svg.empty("circle", "class", "dot-ink", "cx", x, "cy", bubble.y(), "r", BUBBLE);
    svg.text(
        String.valueOf(mark.number()),
        "class",
        "rev",
        "x",
        x,
        "y",
        bubble.y() + 5,
        "text-anchor",
        "middle");
    if (links == Links.YES) {
      svg.close();
    }
  }

  private record Bubble(Mark mark, double percent, double y) {
    boolean touches(double otherPercent, double otherY) {
      return Math.abs(percent - otherPercent) < NEAR_PERCENT && Math.abs(y - otherY) < STEP;
    }
  }

  /** Away from the dot towards the middle of the picture, farther where another one lies. */
  private List<Bubble> bubbles() {
    List<Bubble> placed = new ArrayList<>();
    Axis x = lines.x();
    for (Mark mark : marks) {
      double percent = Math.max(2, Math.min(98, x.scale().percent(mark.x())));
      double dot = lines.vertical(mark.y());
      double away = dot < lines.height() / 2.0 ? 1 : -1;
      double y = dot + away * AWAY;
      for (int tries = 0; tries < 30 && taken(placed, percent, y); tries++) {
        y += away * STEP;
        if (y > lines.height() - 46 || y < 16) {
          y = dot + away * AWAY;
          percent = percent > 50 ? percent - NEAR_PERCENT : percent + NEAR_PERCENT;
        }
      }
      placed.add(new Bubble(mark, percent, y));
    }
    return placed;
  }

  private static boolean taken(List<Bubble> placed, double percent, double y) {
    return placed.stream().anyMatch(b -> b.touches(percent, y));
  }
}
