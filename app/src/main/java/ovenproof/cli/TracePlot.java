package ovenproof.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.chart.HeatChart;
import ovenproof.chart.LineChart;
import ovenproof.chart.LineChart.Axis;
import ovenproof.chart.LineChart.Level;
import ovenproof.chart.LineChart.LevelStyle;
import ovenproof.chart.LineChart.Series;
import ovenproof.chart.LineChart.Style;
import ovenproof.chart.Scale;
import ovenproof.core.quantity.Unit;
import ovenproof.core.thermal.HeatingModel;
import ovenproof.core.trace.Gap;
import ovenproof.core.trace.Trace;
import ovenproof.evidence.trace.TraceSession;
import ovenproof.publish.figure.Figures;

/**
 * The curves of a run as a picture that stands alone: the centre solid, other places quiet, food
 * blue, the model dashed; power where no temperature was logged.
 */
final class TracePlot {
  private static final int HEIGHT = 430;

  /** More names than this would stand on each other. */
  private static final int MOST_NAMED = 8;

  private final TraceSession session;
  private final @Nullable HeatingModel model;

  private TracePlot(TraceSession session) {
    this.session = session;
    this.model = session.curve().isEmpty() ? null : session.model().model();
  }

  static String svg(TraceSession session) {
    return new TracePlot(session).draw();
  }

  private String draw() {
    boolean power = session.curve().isEmpty();
    List<Series> series = power ? power() : temperatures();
    Scale x = Scale.around(new double[] {0, Math.max(1, last(series))}, 8);
    Scale y = Scale.around(range(series, power), 6);
    LineChart lines =
        new LineChart(
            sentence(),
            HEIGHT,
            new Axis(x, "min"),
            new Axis(y, power ? "W" : "°C"),
            series,
            power ? List.of() : levels(),
            List.of());
    return new HeatChart(lines, null, List.of()).alone() + "\n";
  }

  private List<Series> power() {
    Trace watt = session.input().power();
    Trace drawn = watt != null ? watt : session.input().energy();
    return drawn == null
        ? List.of()
        : List.of(series(drawn.present(), drawn.channel(), Style.MEASURED));
  }

  private List<Series> temperatures() {
    List<Series> series = new ArrayList<>();
    Trace centre = session.curve().clean();
    List<Trace> others =
        session.input().points().stream()
            .filter(p -> !Arrays.equals(p.values(), session.input().centre().values()))
            .toList();
    boolean named = others.size() <= MOST_NAMED;
    others.forEach(p -> series.add(series(p, named ? p.channel() : "", Style.PEER)));
    session.input().cores().forEach(c -> series.add(series(c, c.channel(), Style.CORE)));
    HeatingModel fitted = model;
    if (fitted != null) {
      series.add(modelled(fitted, centre.lastSecond()));
    }
    series.add(series(centre, centre.channel(), Style.HEAT));
    return series;
  }

  private static Series series(Trace logged, String name, Style style) {
    Trace trace = Gap.broken(logged.present());
    return new Series(
        name, style, Arrays.stream(trace.seconds()).map(s -> s / 60).toArray(), trace.values());
  }

  private static Series modelled(HeatingModel fitted, double lastSecond) {
    double[] minutes = new double[200];
    double[] values = new double[200];
    double first = fitted.startSecond();
    for (int i = 0; i < minutes.length; i++) {
      double second = first + (lastSecond - first) * i / (minutes.length - 1);
      minutes[i] = second / 60;
      values[i] = fitted.temperature(second);
    }
    return new Series("model, elements on throughout", Style.MODEL, minutes, values);
  }

  private List<Level> levels() {
    List<Level> levels = new ArrayList<>();
    Double setting = session.input().settingCelsius();
    if (setting != null) {
      levels.add(new Level("set " + celsius(setting), setting, LevelStyle.DIAL));
    }
    HeatingModel fitted = model;
    if (fitted != null) {
      double ceiling = fitted.ceilingCelsius();
      levels.add(new Level("ceiling " + celsius(ceiling), ceiling, LevelStyle.CEILING));
    }
    return levels;
  }

  private static double last(List<Series> series) {
    return series.stream().flatMapToDouble(s -> Arrays.stream(s.xs())).max().orElse(1);
  }

  /** From zero, or from what lies below it, to a little above everything drawn. */
  private double[] range(List<Series> series, boolean power) {
    double[] values =
        series.stream()
            .flatMapToDouble(s -> Arrays.stream(s.ys()))
            .filter(Double::isFinite)
            .toArray();
    double high = Arrays.stream(values).max().orElse(1);
    double lowest = Math.min(0, Arrays.stream(values).min().orElse(0));
    // A meter's noise about zero is none of the picture's business.
    double low = power && lowest > -0.05 * high ? 0 : lowest;
    Double setting = session.input().settingCelsius();
    HeatingModel fitted = model;
    if (!power) {
      high = setting == null ? high : Math.max(high, setting);
      high = fitted == null ? high : Math.max(high, fitted.ceilingCelsius());
    }
    return new double[] {low, high > 0 ? high * 1.04 : high + 1};
  }

  private String sentence() {
    double[] values = session.curve().clean().values();
    if (values.length == 0) {
      return "Power of " + session.input().subject().channel();
    }
    double top = Arrays.stream(values).max().orElse(Double.NaN);
    Double setting = session.input().settingCelsius();
    HeatingModel fitted = model;
    return session.input().centre().channel()
        + ": highest "
        + celsius(top)
        + (setting == null ? "" : ", set to " + celsius(setting))
        + (fitted == null ? "" : ", ceiling of the model " + celsius(fitted.ceilingCelsius()));
  }

  private static String celsius(double value) {
    return Figures.text(value, Unit.CELSIUS);
  }
}
