package ovenproof.tracepage;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.chart.HeatChart;
import ovenproof.chart.LineChart;
import ovenproof.chart.LineChart.Axis;
import ovenproof.chart.LineChart.Level;
import ovenproof.chart.LineChart.LevelStyle;
import ovenproof.chart.LineChart.Series;
import ovenproof.chart.LineChart.Span;
import ovenproof.chart.LineChart.Style;
import ovenproof.chart.Scale;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;
import ovenproof.core.safety.SafetyMeasures;
import ovenproof.core.thermal.HeatingModel;
import ovenproof.core.thermal.ThermalMeasures;
import ovenproof.core.trace.Gap;
import ovenproof.core.trace.HeatCurve;
import ovenproof.core.trace.SteadyState;
import ovenproof.core.trace.Trace;
import ovenproof.core.trace.TraceInput;
import ovenproof.core.trace.TraceMeasure;
import ovenproof.core.trace.TraceMeasures;
import ovenproof.evidence.trace.TraceSession;
import ovenproof.publish.figure.Figures;
import ovenproof.web.Shown;

/**
 * One heat curve with everything measured on it, and where on the curve each measure lies.
 *
 * @param input what the measures are taken from
 * @param curve its centre, prepared once
 * @param model the thermal model or why there is none
 * @param lines the table of measures, in the order of a report
 */
public record HeatPicture(
    String title,
    TraceInput input,
    HeatCurve curve,
    HeatingModel.Outcome model,
    List<Line> lines,
    List<HeatChart.Mark> marks,
    List<Span> spans) {

  private static final int HEIGHT = 430;
  private static final String NONE = "none";

  /** Half-width of the ceiling's band in standard uncertainties: 90 % of a normal. */
  private static final double BAND = 1.6448536;

  /** Share of the steady part at which the mark of each of its measures stands. */
  private static final Map<String, Double> IN_STEADY =
      Map.of(
          "steady-mean", 0.08,
          "offset", 0.22,
          "mid-range", 0.36,
          "drift", 0.5,
          "spread", 0.64,
          "spread-range", 0.78,
          "duty", 0.92);

  /** Seconds since the start and degrees. */
  private record Place(double second, double celsius) {}

  /**
   * A measure in the table.
   *
   * @param number of its mark in the picture; 0 when it lies nowhere on the curve
   * @param why the reason when there is no value, else a reservation; may be empty
   */
  public record Line(
      int number,
      String id,
      String name,
      String value,
      String why,
      String help,
      String formula,
      String source,
      String definition,
      List<String> components,
      List<String> evidence) {}

  static HeatPicture of(String title, TraceInput input, List<Span> spans) {
    HeatCurve curve = HeatCurve.of(input.centre());
    HeatingModel.Outcome model = HeatingModel.fit(input, curve);
    List<Line> lines = new ArrayList<>();
    List<HeatChart.Mark> marks = new ArrayList<>();
    for (TraceMeasure measure : measures()) {
      Measurement value = measure.measure(input, curve);
      Place place = place(value, curve, input, model.model());
      int number = place == null ? 0 : marks.size() + 1;
      Line line = line(number, measure.description(), value);
      lines.add(line);
      if (place != null) {
        marks.add(
            new HeatChart.Mark(
                number,
                place.second() / 60,
                place.celsius(),
                "#m-" + line.id(),
                line.name() + ", " + line.value()));
      }
    }
    // What was measured first; then what could not be, and why.
    lines.sort(java.util.Comparator.comparing(l -> l.value().equals(NONE)));
    return new HeatPicture(title, input, curve, model, lines, marks, spans);
  }

  private static List<TraceMeasure> measures() {
    List<TraceMeasure> all = new ArrayList<>(TraceMeasures.all());
    all.addAll(ThermalMeasures.all());
    all.addAll(SafetyMeasures.all());
    return all;
  }

  private static Line line(int number, MeasureDescription d, Measurement m) {
    String note = m.note() == null ? "" : m.note();
    List<String> components =
        m.components().stream()
            .map(
                c ->
                    (c.isShared() ? c.source() : "this run alone")
                        + ": "
                        + Figures.uncertainty(Math.abs(c.u()), m.unit()))
            .toList();
    return new Line(
        number,
        d.id(),
        m.label(),
        m.isMissing() ? NONE : Shown.measurement(m),
        note,
        d.help(),
        d.formula(),
        d.source(),
        m.definition(),
        components,
        m.evidence());
  }

  boolean isEmpty() {
    return curve.isEmpty();
  }

  String story() {
    return TraceSession.story(input, curve);
  }

  // ---------- where a measure lies ----------

  private static @Nullable Place place(
      Measurement m, HeatCurve curve, TraceInput input, @Nullable HeatingModel model) {
    if (m.isMissing() || curve.isEmpty()) {
      return null;
    }
    Double value = m.value() != null ? m.value() : m.low() != null ? m.low() : m.high();
    if (value == null) {
      return null;
    }
    return switch (m.id()) {
      case "preheat-first", "preheat-band", "preheat-steady", "settling", "preheat-nominal" ->
          at(curve, value);
      case "overshoot" -> highest(curve.smooth().part(0, 1800));
      case "highest" -> highest(curve.clean());
      case "core-highest", "core-held", "lethality" -> cores(input);
      case "cycle-amplitude" -> peak(curve, 0.25);
      case "cycle-period" -> peak(curve, 0.6);
      case "energy" -> at(curve, curve.clean().lastSecond());
      case "ceiling-temperature" ->
          model == null ? null : new Place(curve.clean().lastSecond(), value);
      case "time-constant" ->
          model == null
              ? null
              : new Place(
                  model.startSecond() + value, model.temperature(model.startSecond() + value));
      default -> steady(m.id(), curve);
    };
  }

  private static @Nullable Place at(HeatCurve curve, double second) {
    Trace t = curve.smooth();
    int i = Math.min(t.size() - 1, t.firstAtOrAfter(second));
    return i < 0 ? null : new Place(t.seconds()[i], t.values()[i]);
  }

  private static @Nullable Place highest(Trace t) {
    Place best = null;
    for (int i = 0; i < t.size(); i++) {
      if (best == null || t.values()[i] > best.celsius()) {
        best = new Place(t.seconds()[i], t.values()[i]);
      }
    }
    return best;
  }

  private static @Nullable Place cores(TraceInput input) {
    return input.cores().stream()
        .map(t -> Optional.ofNullable(highest(t.present())))
        .flatMap(Optional::stream)
        .findFirst()
        .orElse(null);
  }

  /** Highest reading near a share of the steady part: a peak of the thermostat's swing. */
  private static @Nullable Place peak(HeatCurve curve, double share) {
    SteadyState steady = curve.steady();
    if (steady == null) {
      return null;
    }
    double length = steady.endSecond() - steady.startSecond();
    double from = steady.startSecond() + share * length;
    return highest(curve.smooth().part(from, from + length / 4));
  }

  private static @Nullable Place steady(String id, HeatCurve curve) {
    SteadyState steady = curve.steady();
    Double share = IN_STEADY.get(id);
    if (steady == null || share == null) {
      return null;
    }
    double length = steady.endSecond() - steady.startSecond();
    return new Place(steady.startSecond() + share * length, steady.meanCelsius());
  }

  // ---------- drawing ----------

  HeatChart chart() {
    List<Series> series = new ArrayList<>();
    for (Trace point : input.points()) {
      if (!point.channel().equals(input.centre().channel())) {
        series.add(series(point, "", Style.PEER));
      }
    }
    series.add(series(curve.clean(), "", Style.HEAT));
    input.cores().forEach(core -> series.add(series(core, core.channel(), Style.CORE)));
    HeatingModel fitted = model.model();
    if (fitted != null) {
      series.add(modelled(fitted));
    }
    Axis x = new Axis(Scale.around(new double[] {0, Math.max(1, lastMinute())}, 6), "min");
    Axis y = new Axis(vertical(), "°C");
    LineChart drawn = new LineChart(sentence(), HEIGHT, x, y, series, levels(), spans);
    return new HeatChart(drawn, band(), marks);
  }

  private double lastMinute() {
    double last = curve.clean().size() == 0 ? 0 : curve.clean().lastSecond();
    for (Trace core : input.cores()) {
      last = Math.max(last, core.size() == 0 ? 0 : core.lastSecond());
    }
    return last / 60;
  }

  private Scale vertical() {
    double high = 50;
    double low = 0;
    for (double v : curve.clean().values()) {
      high = Math.max(high, v);
      low = Math.min(low, v);
    }
    Double setting = input.settingCelsius();
    high = setting == null ? high : Math.max(high, setting);
    HeatingModel fitted = model.model();
    high = fitted == null ? high : Math.max(high, fitted.ceilingCelsius() + fitted.ceilingU());
    return Scale.around(new double[] {low, high * 1.04}, 5);
  }

  private static Series series(Trace logged, String name, Style style) {
    Trace trace = Gap.broken(logged.present());
    double[] minutes = trace.seconds().clone();
    for (int i = 0; i < minutes.length; i++) {
      minutes[i] /= 60;
    }
    return new Series(name, style, minutes, trace.values());
  }

  private Series modelled(HeatingModel fitted) {
    double[] minutes = new double[160];
    double[] values = new double[160];
    double last = 60 * lastMinute();
    for (int i = 0; i < minutes.length; i++) {
      double second =
          fitted.startSecond() + (last - fitted.startSecond()) * i / (minutes.length - 1);
      minutes[i] = second / 60;
      values[i] = fitted.temperature(second);
    }
    return new Series("", Style.MODEL, minutes, values);
  }

  private List<Level> levels() {
    List<Level> levels = new ArrayList<>();
    Double setting = input.settingCelsius();
    if (setting != null) {
      levels.add(new Level("set " + celsius(setting), setting, LevelStyle.DIAL));
    }
    HeatingModel fitted = model.model();
    if (fitted != null) {
      double at = fitted.ceilingCelsius();
      levels.add(new Level("ceiling " + celsius(at), at, LevelStyle.CEILING));
    }
    return levels;
  }

  private HeatChart.@Nullable Band band() {
    HeatingModel fitted = model.model();
    if (fitted == null) {
      return null;
    }
    double half =
        BAND
            * Math.hypot(
                fitted.ceilingU(),
                Math.hypot(input.probe().calibrationKelvin(), input.probe().placementKelvin()));
    return new HeatChart.Band(fitted.ceilingCelsius() - half, fitted.ceilingCelsius() + half);
  }

  public String sentence() {
    Place top = highest(curve.clean());
    Double setting = input.settingCelsius();
    HeatingModel fitted = model.model();
    return title
        + (top == null
            ? ": no reading"
            : ": highest " + celsius(top.celsius()) + " after " + Shown.elapsed(top.second()))
        + (setting == null ? "" : ", set to " + celsius(setting))
        + (fitted == null ? "" : ", ceiling of the model " + celsius(fitted.ceilingCelsius()));
  }

  static String celsius(double value) {
    return Figures.text(value, Unit.CELSIUS);
  }
}
