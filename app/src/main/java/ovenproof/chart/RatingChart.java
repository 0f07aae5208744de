package ovenproof.chart;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * The marks of one or several attributes as a picture that stands alone: every mark a dot, every
 * product mean a bead in the tray of its 95 % interval among the products, with its letters. No
 * person is named.
 */
public final class RatingChart {

  private static final double WIDTH = 760;
  private static final double LEFT = 190;
  private static final double RIGHT = 60;
  private static final double LANE = 44;
  private static final double HEAD = 52;
  private static final double FOOT = 40;

  private static final String INK = "#0f2229";
  private static final String QUIET = "#5a6e76";
  private static final String HOLD = "#0a5670";

  private RatingChart() {}

  /**
   * One lane.
   *
   * @param low lower end of the interval; NaN when there is none
   * @param high upper end
   * @param letters groups; may be empty
   * @param marks every mark
   */
  public record Lane(
      String product, double mean, double low, double high, String letters, double[] marks) {}

  /**
   * One attribute.
   *
   * @param lanes best first
   */
  public record Panel(String attribute, List<Lane> lanes) {
    public Panel {
      lanes = List.copyOf(lanes);
    }
  }

  /** A whole SVG document. */
  public static String document(List<Panel> panels) {
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + inPage(panels) + "\n";
  }

  /** The picture as it stands inside a page. */
  public static String inPage(List<Panel> panels) {
    double height = panels.stream().mapToDouble(RatingChart::height).sum() + 16;
    Svg svg =
        new Svg()
            .open(
                "svg",
                "xmlns",
                "http://www.w3.org/2000/svg",
                "viewBox",
                "0 0 " + Svg.number(WIDTH) + " " + Svg.number(height),
                "width",
                WIDTH,
                "height",
                height,
                "font-family",
                "Sofia Sans, Helvetica, Arial, sans-serif",
                "font-size",
                "14",
                "role",
                "img",
                "aria-label",
                sentence(panels));
    svg.empty("rect", "width", WIDTH, "height", height, "fill", "#fafbfb");
    double top = 8;
    for (Panel panel : panels) {
      draw(svg, panel, top);
      top += height(panel);
    }
    return svg.close().toString();
  }

  private static double height(Panel panel) {
    return HEAD + LANE * panel.lanes().size() + FOOT;
  }

  private static String sentence(List<Panel> panels) {
    List<String> sentences = new ArrayList<>();
    for (Panel panel : panels) {
      List<String> means = new ArrayList<>();
      for (Lane lane : panel.lanes()) {
        means.add(
            lane.product()
                + " "
                + one(lane.mean())
                + (lane.letters().isEmpty() ? "" : " (" + lane.letters() + ")"));
      }
      sentences.add("Mean marks for " + panel.attribute() + ": " + String.join(", ", means) + ".");
    }
    return String.join(" ", sentences);
  }

  private static void draw(Svg svg, Panel panel, double top) {
    Axis axis = Axis.of(panel);
    svg.text(
        panel.attribute(),
        "x",
        "16",
        "y",
        top + 22,
        "fill",
        INK,
        "font-size",
        "17",
        "font-weight",
        "600");
    svg.text(
        "bead: mean, tray: 95 % among products, dots: marks; products that share a letter were not"
            + " shown to differ",
        "x", "16", "y", top + 40, "fill", QUIET, "font-size", "12");
    double y = top + HEAD;
    for (Lane lane : panel.lanes()) {
      lane(svg, axis, lane, y);
      y += LANE;
    }
    axis(svg, axis, y);
  }

  private static void lane(Svg svg, Axis axis, Lane lane, double top) {
    double rail = top + LANE - 14;
    svg.empty(
        "line",
        "x1",
        LEFT,
        "x2",
        WIDTH - RIGHT,
        "y1",
        top + LANE - 2,
        "y2",
        top + LANE - 2,
        "stroke",
        "#d3dcdf");
    svg.text(
        shortened(lane.product()),
        "x",
        LEFT - 16,
        "y",
        rail - 2,
        "text-anchor",
        "end",
        "fill",
        INK);
    svg.text(
        lane.letters(), "x", WIDTH - RIGHT + 12, "y", rail - 2, "fill", INK, "font-weight", "600");
    dots(svg, axis, lane, top + 14);
    if (!Double.isNaN(lane.low())) {
      double from = axis.x(lane.low());
      double to = axis.x(lane.high());
      svg.empty(
          "path",
          "d",
          "M"
              + Svg.number(from)
              + " "
              + Svg.number(rail - 8)
              + "V"
              + Svg.number(rail)
              + "H"
              + Svg.number(to)
              + "V"
              + Svg.number(rail - 8),
          "fill",
          "none",
          "stroke",
          HOLD,
          "stroke-width",
          "2.5");
    }
    svg.empty("circle", "cx", axis.x(lane.mean()), "cy", rail - 7, "r", "5.5", "fill", HOLD);
  }

  /** Equal marks are stacked side by side so that none hides another. */
  private static void dots(Svg svg, Axis axis, Lane lane, double y) {
    int most = 400;
    double[] marks = lane.marks().clone();
    Arrays.sort(marks);
    int step = Math.max(1, marks.length / most);
    int level = 0;
    for (int i = 0; i < marks.length; i += step) {
      level = i > 0 && axis.x(marks[i]) - axis.x(marks[Math.max(0, i - step)]) < 3 ? level + 1 : 0;
      double shift = (level % 2 == 0 ? -1 : 1) * (level + 1) / 2 * 2.2;
      svg.empty(
          "circle",
          "cx",
          axis.x(marks[i]),
          "cy",
          y + Math.max(-12, Math.min(12, shift)),
          "r",
          "2",
          "fill",
          QUIET,
          "fill-opacity",
          "0.45");
    }
  }

  private static void axis(Svg svg, Axis axis, double y) {
    for (double tick : axis.ticks()) {
      double x = axis.x(tick);
      svg.empty("line", "x1", x, "x2", x, "y1", y, "y2", y + 5, "stroke", QUIET);
      svg.text(
          Svg.number(tick),
          "x",
          x,
          "y",
          y + 19,
          "text-anchor",
          "middle",
          "fill",
          QUIET,
          "font-size",
          "12");
    }
  }

  private static String shortened(String words) {
    return words.length() > 24 ? words.substring(0, 23) + "…" : words;
  }

  private static String one(double value) {
    return String.format(Locale.ROOT, "%.2f", value);
  }

  /** From the lowest to the highest mark, in round steps. */
  private record Axis(double low, double high, double step) {

    static Axis of(Panel panel) {
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      for (Lane lane : panel.lanes()) {
        low = Math.min(low, Double.isNaN(lane.low()) ? lane.mean() : lane.low());
        high = Math.max(high, Double.isNaN(lane.high()) ? lane.mean() : lane.high());
        for (double mark : lane.marks()) {
          low = Math.min(low, mark);
          high = Math.max(high, mark);
        }
      }
      double width = high > low ? high - low : 1;
      double power = Math.pow(10, Math.floor(Math.log10(width / 5)));
      double step = power;
      for (double factor : new double[] {1, 2, 5, 10}) {
        if (width / (power * factor) <= 8) {
          step = power * factor;
          break;
        }
      }
      return new Axis(Math.floor(low / step) * step, Math.ceil(high / step + 1e-9) * step, step);
    }

    double x(double value) {
      double share = high > low ? (value - low) / (high - low) : 0.5;
      return LEFT + share * (WIDTH - LEFT - RIGHT);
    }

    List<Double> ticks() {
      List<Double> ticks = new ArrayList<>();
      for (int i = 0; low + i * step <= high + step / 1000; i++) {
        ticks.add(low + i * step);
      }
      return ticks;
    }
  }
}
