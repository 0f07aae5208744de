package ovenproof.evidence.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.safety.SafetyMeasures;
import ovenproof.core.thermal.HeatBalance;
import ovenproof.core.thermal.HeatingModel;
import ovenproof.core.thermal.ReachStory;
import ovenproof.core.thermal.ThermalMeasures;
import ovenproof.core.trace.Channel;
import ovenproof.core.trace.Duty;
import ovenproof.core.trace.HeatCurve;
import ovenproof.core.trace.Segment;
import ovenproof.core.trace.SteadyState;
import ovenproof.core.trace.Trace;
import ovenproof.core.trace.TraceFile;
import ovenproof.core.trace.TraceInput;
import ovenproof.core.trace.TraceMeasure;
import ovenproof.core.trace.TraceMeasures;

/**
 * One run in one file: which channel is what, when heat came on, and every measure of it.
 *
 * @param file as read
 * @param input what the measures are taken from
 * @param curve the centre, prepared
 * @param startSecond heat on, from the first row
 * @param notes how channels, setting and start were chosen
 */
public record TraceSession(
    TraceFile file, TraceInput input, HeatCurve curve, double startSecond, List<String> notes) {

  private static final Set<String> WITHOUT_TIME = Set.of("highest", "core-highest");

  /** A flat lead longer than this is the logger waiting, not the probe lagging. */
  private static final double LONGEST_LAG_SECONDS = 60;

  /** What a person said about the run. */
  public record Choice(
      @Nullable Double settingCelsius,
      @Nullable Double ambientCelsius,
      Map<String, String> places,
      @Nullable Double startSecond) {
    public Choice {
      places = Map.copyOf(places);
    }

    public static final Choice NONE = new Choice(null, null, Map.of(), null);
  }

  /**
   * The run of a readable file; null when it holds no temperature.
   *
   * @param name of the file, for the evidence of the measurements
   */
  public static @Nullable TraceSession of(TraceFile file, Choice choice, String name) {
    List<Channel> channels = file.channels().stream().map(c -> placed(c, choice)).toList();
    TraceFile placed =
        new TraceFile(
            file.layout(),
            file.time(),
            channels,
            file.segments(),
            file.questions(),
            file.warnings(),
            file.problems());
    Channel centre = placed.centre().orElse(null);
    if (centre == null) {
      return null;
    }
    Segment segment = placed.longestSegment();
    List<String> notes = new ArrayList<>();
    notes.add("Measured on “" + centre.name() + "”.");
    Trace whole = placed.trace(centre, segment).present();
    Trace power =
        trace(
            placed,
            segment,
            c -> c.dimension() == Dimension.POWER && c.role() == Channel.Role.MEASURED);
    double offset = segment.rows() == 0 ? 0 : placed.time().seconds()[segment.fromRow()];
    double start = start(choice, whole, power, offset, notes);
    return build(placed, segment, centre, start, choice, name, notes);
  }

  private static Channel placed(Channel channel, Choice choice) {
    String place = choice.places.get(channel.name());
    if (place == null) {
      return channel;
    }
    String word = place.toLowerCase(Locale.ROOT);
    if (word.startsWith("core")) {
      return channel.withRole(Channel.Role.CORE);
    }
    return switch (word) {
      case "centre", "center" -> channel.withRole(Channel.Role.CENTRE);
      case "ambient", "room" -> channel.withRole(Channel.Role.AMBIENT);
      default -> channel.withRole(Channel.Role.MEASURED);
    };
  }

  private static TraceSession build(
      TraceFile file,
      Segment segment,
      Channel centre,
      double start,
      Choice choice,
      String name,
      List<String> notes) {
    double end = file.trace(centre, segment).lastSecond();
    Window window = new Window(file, segment, start, end);
    Double setting = setting(file, segment, choice, notes);
    Double ambient = choice.ambientCelsius;
    if (ambient == null && file.first(Channel.Role.AMBIENT).isPresent()) {
      Trace room = window.cut(file.first(Channel.Role.AMBIENT).get()).present();
      ambient = room.size() == 0 ? null : Double.valueOf(room.values()[0]);
    }
    TraceInput input =
        TraceInput.of(window.cut(centre))
            .withSetting(setting)
            .withAmbient(ambient)
            .withPoints(
                window.all(
                    c ->
                        c.isMeasuredTemperature()
                            && c.state() == Channel.State.GOOD
                            && (c.role() == Channel.Role.MEASURED
                                || c.role() == Channel.Role.CENTRE)))
            .withCores(window.all(c -> c.isMeasuredTemperature() && c.role() == Channel.Role.CORE))
            .withPower(
                window.first(
                    c -> c.dimension() == Dimension.POWER && c.role() == Channel.Role.MEASURED))
            .withEnergy(window.first(c -> c.dimension() == Dimension.ENERGY))
            .withDuty(
                window.first(c -> c.role() == Channel.Role.DUTY || c.role() == Channel.Role.SWITCH))
            .withSubject(Subject.ofChannel(centre.name()))
            .withEvidence(List.of(name));
    return new TraceSession(file, input, HeatCurve.of(input.centre()), start, List.copyOf(notes));
  }

  /** Cuts channels to the run. */
  private record Window(TraceFile file, Segment segment, double start, double end) {
    Trace cut(Channel channel) {
      return file.trace(channel, segment).window(start, end);
    }

    List<Trace> all(java.util.function.Predicate<Channel> wanted) {
      return file.channels().stream().filter(wanted).map(this::cut).toList();
    }

    @Nullable Trace first(java.util.function.Predicate<Channel> wanted) {
      return file.channels().stream().filter(wanted).findFirst().map(this::cut).orElse(null);
    }
  }

  private static @Nullable Trace trace(
      TraceFile file, Segment segment, java.util.function.Predicate<Channel> wanted) {
    return file.channels().stream()
        .filter(wanted)
        .findFirst()
        .map(c -> file.trace(c, segment).present())
        .orElse(null);
  }

  private static @Nullable Double setting(
      TraceFile file, Segment segment, Choice choice, List<String> notes) {
    if (choice.settingCelsius != null) {
      return choice.settingCelsius;
    }
    Channel column = file.first(Channel.Role.SET_POINT).orElse(null);
    if (column == null) {
      return null;
    }
    double[] values = file.trace(column, segment).present().values();
    double highest = Double.NEGATIVE_INFINITY;
    for (double v : values) {
      highest = Math.max(highest, v);
    }
    if (!(highest > 30)) {
      return null;
    }
    notes.add(
        String.format(
            Locale.ROOT, "The setting, %.1f °C, is the highest of “%s”.", highest, column.name()));
    return highest;
  }

  private static double start(
      Choice choice, Trace whole, @Nullable Trace power, double offset, List<String> notes) {
    if (choice.startSecond != null) {
      return Math.max(0, choice.startSecond - offset);
    }
    double found = heatOn(whole, power);
    if (found > 0) {
      notes.add(
          String.format(
              Locale.ROOT, "Times count from heat on, found %.0f s after the first row.", found));
    } else {
      notes.add("Times count from the first row.");
    }
    return found;
  }

  /** First full power, else the end of a flat lead of more than a minute; 0 otherwise. */
  private static double heatOn(Trace whole, @Nullable Trace power) {
    if (power != null && power.size() > 2) {
      double full = Duty.fullPowerWatt(power);
      for (int i = 0; full > 50 && i < power.size(); i++) {
        if (power.values()[i] > 0.3 * full) {
          return i == 0 ? 0 : power.seconds()[i];
        }
      }
    }
    double[] v = whole.values();
    if (v.length < 10) {
      return 0;
    }
    double low = Math.min(v[0], Math.min(v[1], v[2]));
    double high = Double.NEGATIVE_INFINITY;
    int i = 0;
    while (i < v.length && v[i] < low + 5) {
      high = Math.max(high, v[i]);
      i++;
    }
    int k = i;
    while (k > 0 && k < v.length && v[k - 1] > low + 1.5) {
      k--;
    }
    boolean lead = i < v.length && k > 0 && whole.seconds()[k - 1] > LONGEST_LAG_SECONDS;
    return lead ? whole.seconds()[k - 1] : 0;
  }

  /** Every measure, in the order a report shows them. */
  public List<Measurement> measurements() {
    List<TraceMeasure> measures = new ArrayList<>(TraceMeasures.all());
    measures.addAll(ThermalMeasures.all());
    measures.addAll(SafetyMeasures.all());
    boolean timed = file.time().form() != ovenproof.core.trace.TimeAxis.Form.NONE;
    List<Measurement> results = new ArrayList<>();
    for (TraceMeasure measure : measures) {
      boolean possible = timed || WITHOUT_TIME.contains(measure.description().id());
      results.add(
          possible
              ? measure.measure(input, curve)
              : Measurement.missing(
                  measure.description(),
                  input.subject(),
                  "the file holds no times; give the distance of its rows with --interval"));
    }
    return results;
  }

  public HeatingModel.Outcome model() {
    return HeatingModel.fit(input, curve);
  }

  /** Why the flatbread stayed pale; empty when no setting is known. */
  public String story() {
    return story(input, curve);
  }

  /** The same for a run that was put together from several files. */
  public static String story(TraceInput input, HeatCurve curve) {
    Double setting = input.settingCelsius();
    if (setting == null || curve.isEmpty()) {
      return "";
    }
    HeatingModel.Outcome outcome = HeatingModel.fit(input, curve);
    SteadyState steady = curve.steady();
    double highest = Double.NEGATIVE_INFINITY;
    for (double v : curve.smooth().values()) {
      highest = Math.max(highest, v);
    }
    return new ReachStory(
            setting,
            highest,
            curve.clean().lastSecond(),
            steady == null ? Double.NaN : steady.meanCelsius(),
            outcome.model(),
            outcome.why(),
            balance(input, curve, outcome.model()),
            Math.hypot(input.probe().calibrationKelvin(), input.probe().placementKelvin()))
        .paragraph();
  }

  /** What goes in and what is lost; null without power or model. */
  public @Nullable HeatBalance balance(@Nullable HeatingModel model) {
    return balance(input, curve, model);
  }

  /** The same for a run that was put together from several files. */
  public static @Nullable HeatBalance balance(
      TraceInput input, HeatCurve curve, @Nullable HeatingModel model) {
    Trace power = input.power();
    if (model == null || power == null) {
      return null;
    }
    double watt = Duty.fullPowerWatt(power.present());
    Double room = input.ambientCelsius();
    double ambient = room == null ? curve.clean().values()[0] : room;
    return watt > 0 && model.ceilingCelsius() > ambient
        ? new HeatBalance(watt, ambient, model.ceilingCelsius(), model.effectiveSeconds())
        : null;
  }
}
