package ovenproof.evidence.trace;

import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import ovenproof.core.thermal.HeatingModel;
import ovenproof.core.trace.Trace;

/**
 * The curve of a run as a picture that stands alone: measured solid, model dashed, setting thin.
 */
public final class TracePlot {

  private static final int WIDTH = 960;
  private static final int HEIGHT = 420;
  private static final int LEFT = 56;
  private static final int RIGHT = 150;
  private static final int TOP = 24;
  private static final int BELOW = 44;
  private static final int MOST_POINTS = 900;

  private final Trace trace;
  private final double lastSecond;
  private final double low;
  private final double high;

  private TracePlot(Trace trace, double lastSecond, double low, double high) {
    this.trace = trace;
    this.lastSecond = lastSecond;
    this.low = low;
    this.high = high;
  }

  public static String svg(TraceSession session) {
    Trace trace = session.curve().clean();
    Double setting = session.input().settingCelsius();
    HeatingModel model = session.model().model();
    double high = setting == null ? 50 : setting;
    double low = 0;
    for (double v : trace.values()) {
      high = Math.max(high, v);
      low = Math.min(low, v);
    }
    high = Math.ceil((model == null ? high : Math.max(high, model.ceilingCelsius())) / 50) * 50;
    low = Math.floor(low / 50) * 50;
    TracePlot plot = new TracePlot(trace, Math.max(60, trace.lastSecond()), low, high);
    return plot.draw(setting, model);
  }

  private String draw(@Nullable Double setting, @Nullable HeatingModel model) {
    StringBuilder svg = new StringBuilder();
    svg.append(
        text(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" width=\"%d\" height=\"%d\" role=\"img\" aria-label=\"%s\" font-family=\"Sofia Sans, system-ui, sans-serif\" font-size=\"14\">\n",
            WIDTH, HEIGHT, WIDTH, HEIGHT, sentence(setting, model)));
    svg.append(text("<rect width=\"%d\" height=\"%d\" fill=\"#fafbfb\"/>\n", WIDTH, HEIGHT));
    axes(svg);
    if (setting != null) {
      level(svg, setting, text("set %.0f °C", setting), "#0f2229", "");
    }
    if (model != null) {
      level(
          svg,
          model.ceilingCelsius(),
          text("ceiling %.0f °C", model.ceilingCelsius()),
          "#a83a10",
          "2 4");
      svg.append(path(modelled(model), "#0f2229", 1.5, "6 5"));
    }
    svg.append(path(trace, "#a83a10", 2, ""));
    return svg.append("</svg>\n").toString();
  }

  private String sentence(@Nullable Double setting, @Nullable HeatingModel model) {
    double top = java.util.Arrays.stream(trace.values()).max().orElse(Double.NaN);
    return escape(
        text(
                "Heat curve of %s over %.0f min, highest %.0f °C",
                trace.channel(), lastSecond / 60, top)
            + (setting == null ? "" : text(", set to %.0f °C", setting))
            + (model == null ? "" : text(", ceiling %.0f °C", model.ceilingCelsius())));
  }

  private void axes(StringBuilder svg) {
    double step = high - low > 300 ? 100 : 50;
    for (double v = low; v <= high; v += step) {
      svg.append(
          text(
              "<line x1=\"%d\" x2=\"%d\" y1=\"%.1f\" y2=\"%.1f\" stroke=\"#c9d4d8\"/><text x=\"%d\" y=\"%.1f\" text-anchor=\"end\" fill=\"#3f545c\">%.0f%s</text>\n",
              LEFT,
              WIDTH - RIGHT,
              y(v),
              y(v),
              LEFT - 8,
              y(v) + 5,
              v,
              v + step > high ? " °C" : ""));
    }
    double minutes = lastSecond / 60;
    double each = minutes > 240 ? 60 : minutes > 90 ? 20 : minutes > 30 ? 10 : minutes > 8 ? 5 : 1;
    for (double m = 0; m <= minutes; m += each) {
      svg.append(
          text(
              "<text x=\"%.1f\" y=\"%d\" text-anchor=\"middle\" fill=\"#3f545c\">%.0f%s</text>\n",
              x(m * 60), HEIGHT - BELOW + 24, m, m == 0 ? " min" : ""));
    }
  }

  private void level(StringBuilder svg, double celsius, String label, String colour, String dash) {
    svg.append(
        text(
            "<line x1=\"%d\" x2=\"%d\" y1=\"%.1f\" y2=\"%.1f\" stroke=\"%s\" stroke-dasharray=\"%s\"/><text x=\"%d\" y=\"%.1f\" fill=\"%s\">%s</text>\n",
            LEFT,
            WIDTH - RIGHT,
            y(celsius),
            y(celsius),
            colour,
            dash,
            WIDTH - RIGHT + 8,
            y(celsius) + 5,
            colour,
            escape(label)));
  }

  private Trace modelled(HeatingModel model) {
    double[] t = new double[200];
    double[] v = new double[200];
    for (int i = 0; i < t.length; i++) {
      t[i] = model.startSecond() + (lastSecond - model.startSecond()) * i / (t.length - 1);
      v[i] = model.temperature(t[i]);
    }
    return new Trace("model", t, v, trace.unit());
  }

  private String path(Trace line, String colour, double width, String dash) {
    StringBuilder d = new StringBuilder();
    int stride = Math.max(1, line.size() / MOST_POINTS);
    for (int i = 0; i < line.size(); i += stride) {
      d.append(text("%s%.1f %.1f", i == 0 ? "M" : "L", x(line.seconds()[i]), y(line.values()[i])));
    }
    return text(
        "<path d=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"%.1f\" stroke-dasharray=\"%s\" stroke-linejoin=\"round\"/>\n",
        d, colour, width, dash);
  }

  private double x(double second) {
    return LEFT + (WIDTH - LEFT - RIGHT) * second / lastSecond;
  }

  private double y(double celsius) {
    return HEIGHT - BELOW - (HEIGHT - TOP - BELOW) * (celsius - low) / (high - low);
  }

  private static String escape(String text) {
    return text.chars()
        .mapToObj(
            c ->
                switch (c) {
                  case '<' -> "&lt;";
                  case '>' -> "&gt;";
                  case '&' -> "&amp;";
                  case '"' -> "&quot;";
                  default -> c < 32 ? " " : String.valueOf((char) c);
                })
        .collect(Collectors.joining());
  }

  private static String text(String format, Object... arguments) {
    return String.format(Locale.ROOT, format, arguments);
  }
}
