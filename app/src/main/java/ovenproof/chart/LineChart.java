package ovenproof.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * Values over time (or over anything else that runs on).
 *
 * @param sentence what the picture says, for people who do not see it
 * @param height in pixels, at least 120
 * @param x horizontal axis
 * @param y vertical axis
 * @param series lines, drawn in this order
 * @param levels horizontal lines with their meaning
 * @param spans vertical regions with their meaning
 */
public record LineChart(
    String sentence,
    int height,
    Axis x,
    Axis y,
    List<Series> series,
    List<Level> levels,
    List<Span> spans) {
  private static final double TOP = 20;
  private static final double BELOW = 30;
  private static final int MOST_POINTS = 900;

  /** A word nearer to the one before it goes below that. */
  private static final double LEAST_APART_PERCENT = 12;

  public LineChart {
    if (height < 120) {
      throw new IllegalArgumentException("height is at least 120, found " + height);
    }
    series = List.copyOf(series);
    levels = List.copyOf(levels);
    spans = List.copyOf(spans);
  }

  /** A scale with its unit. */
  public record Axis(Scale scale, String unit) {}

  /** How a line is drawn. */
  public enum Style {
    /** Measured heat: solid, warm. */
    HEAT("curve", "hot"),
    /** Measured, anything else: solid. */
    MEASURED("curve own", "strong"),
    /** Inside of the food. */
    CORE("core", "strong"),
    /** From a model: dashed. */
    MODEL("model", "strong"),
    /** Another product, for comparison. */
    OTHER("model faint", ""),
    /** Measured, of another product: solid and quiet. */
    PEER("curve peer", "");

    private final String line;
    private final String label;

    Style(String line, String label) {
      this.line = line;
      this.label = label;
    }
  }

  /**
   * A line. Both arrays have the same length; a value that is not finite breaks the line.
   *
   * @param name stands at the end of the line; empty for none
   */
  public record Series(String name, Style style, double[] xs, double[] ys) {
    public Series {
      if (xs.length != ys.length) {
        throw new IllegalArgumentException(
            "xs and ys differ in length: " + xs.length + " and " + ys.length);
      }
      xs = xs.clone();
      ys = ys.clone();
    }

    @Override
    public double[] xs() {
      return xs.clone();
    }

    @Override
    public double[] ys() {
      return ys.clone();
    }
  }

  /** A horizontal line: a dial setting, a floor, a ceiling. */
  public record Level(String label, double at, LevelStyle style) {}

  /** What a level is. */
  public enum LevelStyle {
    DIAL("setline"),
    CEILING("ceil"),
    FLOOR("model");

    private final String line;

    LevelStyle(String line) {
      this.line = line;
    }
  }

  /** A vertical region: door open, not observed. */
  public record Span(String label, double from, double to) {}

  public String svg() {
    Svg svg =
        new Svg()
            .open("svg", "class", "chart", "height", height, "role", "img", "aria-label", sentence);
    body(svg);
    return svg.close().toString();
  }

  /** Everything inside the picture's own element. */
  void body(Svg svg) {
    spans(svg);
    grid(svg);
    levels(svg);
    svg.open(
        "svg",
        "width",
        "100%",
        "height",
        height,
        "viewBox",
        "0 0 1000 " + height,
        "preserveAspectRatio",
        "none");
    for (Series line : series) {
      svg.empty("path", "class", line.style().line, "d", path(line));
    }
    svg.close();
    names(svg);
  }

  private void grid(Svg svg) {
    for (double tick : y.scale().ticks()) {
      double at = vertical(tick);
      svg.empty("line", "class", "wire", "x1", "0", "x2", "100%", "y1", at, "y2", at);
    }
    double floor = height - BELOW;
    svg.empty("line", "class", "axis", "x1", "0", "x2", "100%", "y1", floor, "y2", floor);
    List<Double> ticks = x.scale().ticks();
    for (int i = 0; i < ticks.size(); i++) {
      tick(svg, ticks.get(i), i == ticks.size() - 1);
    }
    List<Double> values = y.scale().ticks();
    for (int i = 0; i < values.size(); i++) {
      boolean last = i == values.size() - 1;
      String words = y.scale().label(values.get(i)) + (last ? "\u00a0" + y.unit() : "");
      svg.text(words, "class", "halo", "x", "0", "y", vertical(values.get(i)) - 4);
    }
  }

  private void tick(Svg svg, double tick, boolean last) {
    double percent = x.scale().percent(tick);
    String at = Svg.percent(percent);
    double floor = height - BELOW;
    svg.empty("line", "class", "axis", "x1", at, "x2", at, "y1", floor, "y2", floor + 6);
    String words = x.scale().label(tick) + (last ? "\u00a0" + x.unit() : "");
    svg.text(words, "x", at, "y", floor + 22, "text-anchor", DotPlot.anchor(percent));
  }

  private void levels(Svg svg) {
    for (Level level : levels) {
      double at = vertical(level.at());
      svg.empty("line", "class", level.style().line, "x1", "0", "x2", "100%", "y1", at, "y2", at);
      svg.text(level.label(), "class", "halo", "x", "100%", "y", at - 6, "text-anchor", "end");
    }
  }

  private void spans(Svg svg) {
    double before = Double.NEGATIVE_INFINITY;
    for (Span span : spans) {
      double from = x.scale().percent(span.from());
      double width = Math.max(0.3, x.scale().percent(span.to()) - from);
      svg.empty(
          "rect",
          "class",
          "unseen",
          "x",
          Svg.percent(from),
          "width",
          Svg.percent(width),
          "y",
          TOP,
          "height",
          height - TOP - BELOW);
      svg.text(
          span.label(),
          "class",
          "halo",
          "x",
          Svg.percent(from),
          "y",
          from - before < LEAST_APART_PERCENT ? TOP + 9 : TOP - 6,
          "text-anchor",
          DotPlot.anchor(from));
      before = span.label().isEmpty() ? before : from;
    }
  }

  /** A line of the picture's type and a little air. */
  private static final double NAME_HEIGHT = 17;

  /** Per cent of the width behind which a name of a product has no room. */
  private static final double LAST_ROOM = 78;

  private record Name(String words, String style, double percent, double at) {

    /** A line that ends near the edge has its name over its end, the others behind it. */
    boolean before() {
      return percent > LAST_ROOM;
    }
  }

  /** Names at the ends of their lines, moved apart where they would lie on each other. */
  private void names(Svg svg) {
    List<Name> names = new ArrayList<>();
    for (Series line : series) {
      int last = lastFinite(line.ys);
      if (!line.name().isEmpty() && last >= 0) {
        names.add(
            new Name(
                line.name(),
                line.style().label,
                x.scale().percent(line.xs[last]),
                vertical(line.ys[last])));
      }
    }
    names.sort(Comparator.comparingDouble(Name::at));
    // What levels say stands at the right end as well.
    double[] taken = levels.stream().mapToDouble(l -> vertical(l.at()) - 6).toArray();
    draw(svg, names, taken);
  }

  private void draw(Svg svg, List<Name> names, double[] taken) {
    double[] wanted = names.stream().mapToDouble(n -> n.at() - 8).toArray();
    double[] places = LabelPlaces.apart(wanted, taken, NAME_HEIGHT, TOP, height - BELOW - 5);
    for (int i = 0; i < places.length; i++) {
      Name name = names.get(i);
      String classes = name.style().isEmpty() ? "halo" : name.style() + " halo";
      svg.text(
          name.words(),
          "class",
          classes,
          "x",
          Svg.percent(name.percent()),
          "dx",
          name.before() ? 0 : 5,
          "y",
          places[i],
          "text-anchor",
          name.before() ? "end" : "start");
    }
  }

  private static int lastFinite(double[] values) {
    for (int i = values.length - 1; i >= 0; i--) {
      if (Double.isFinite(values[i])) {
        return i;
      }
    }
    return -1;
  }

  /** Long lines keep the lowest and the highest value of each narrow slice, so no peak is lost. */
  private String path(Series line) {
    int n = line.xs.length;
    int slice = Math.max(1, n / (MOST_POINTS / 2));
    StringBuilder path = new StringBuilder();
    boolean[] pen = {false};
    for (int from = 0; from < n; from += slice) {
      int to = Math.min(n, from + slice);
      int low = from;
      int high = from;
      for (int i = from; i < to; i++) {
        low = line.ys[i] < line.ys[low] ? i : low;
        high = line.ys[i] > line.ys[high] ? i : high;
      }
      point(path, pen, line, Math.min(low, high));
      if (low != high) {
        point(path, pen, line, Math.max(low, high));
      }
    }
    return path.isEmpty() ? "M0 0" : path.toString();
  }

  private void point(StringBuilder path, boolean[] pen, Series line, int i) {
    if (!Double.isFinite(line.ys[i]) || !Double.isFinite(line.xs[i])) {
      pen[0] = false;
      return;
    }
    path.append(pen[0] ? " " : "M")
        .append(
            String.format(
                Locale.ROOT,
                "%.1f %.1f",
                10 * x.scale().percent(line.xs[i]),
                vertical(line.ys[i])));
    pen[0] = true;
  }

  double vertical(double value) {
    return TOP + (height - TOP - BELOW) * (1 - y.scale().fraction(value));
  }
}
