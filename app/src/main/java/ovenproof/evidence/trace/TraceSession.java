package ovenproof.evidence.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Unit;
import ovenproof.core.safety.CoreSafety;
import ovenproof.core.safety.CoreWords;
import ovenproof.core.safety.Criterion;
import ovenproof.core.safety.SafetyMeasures;
import ovenproof.core.thermal.HeatBalance;
import ovenproof.core.thermal.HeatingModel;
import ovenproof.core.thermal.ReachStory;
import ovenproof.core.thermal.ThermalMeasures;
import ovenproof.core.trace.Channel;
import ovenproof.core.trace.Duty;
import ovenproof.core.trace.FoodContact;
import ovenproof.core.trace.HeatCurve;
import ovenproof.core.trace.ProbeAccuracy;
import ovenproof.core.trace.RunSearch;
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
 * @param criterion what the food's core is held against, null when nobody asks
 */
public record TraceSession(
    TraceFile file,
    TraceInput input,
    HeatCurve curve,
    double startSecond,
    List<String> notes,
    @Nullable Criterion criterion) {

  /** What needs no temperature. */
  private static final Set<String> OF_POWER =
      Set.of("energy", "energy-cook", "power-standby", "mains-mean");

  /** What only a run of a campaign has: events, and a nominal voltage. */
  private static final Set<String> OF_CAMPAIGNS = Set.of("clock-offset", "preheat-nominal");

  private static final Set<String> WITHOUT_TIME = Set.of("highest", "core-highest");

  /** A flat lead longer than this is the logger waiting, not the probe lagging. */
  private static final double LONGEST_LAG_SECONDS = 60;

  /** The air follows the elements sooner than this; an earlier start belongs to another run. */
  private static final double LONGEST_DELAY_SECONDS = 300;

  /** A record of years holds more heat-ups than anybody reads the times of. */
  private static final int MOST_NAMED_STARTS = 20;

  /**
   * What a person said about the run.
   *
   * @param core what the food's core is held against, null when nobody asks
   * @param probeKelvin standard uncertainty of the probes, null when nobody knows it
   */
  public record Choice(
      @Nullable Double settingCelsius,
      @Nullable Double ambientCelsius,
      Map<String, String> places,
      @Nullable Double startSecond,
      @Nullable Criterion core,
      @Nullable Double probeKelvin) {
    public Choice {
      places = Map.copyOf(places);
    }

    public static final Choice NONE = new Choice(null, null, Map.of(), null, null, null);
  }

  /**
   * The run of a readable file; null when it holds neither temperature nor electricity. Of a record
   * with several heat-ups the first is taken, or the one in which the given start lies.
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
    Segment segment = placed.longestSegment();
    List<String> notes = new ArrayList<>();
    if (centre == null) {
      return electric(placed, segment, choice, name);
    }
    notes.add("Measured on “" + centre.name() + "”.");
    Trace whole = placed.trace(centre, segment).present();
    Trace power =
        trace(
            placed,
            segment,
            c -> c.dimension() == Dimension.POWER && c.role() == Channel.Role.MEASURED);
    double offset = segment.rows() == 0 ? 0 : placed.time().seconds()[segment.fromRow()];
    List<RunSearch.HeatUp> runs = RunSearch.in(whole);
    RunSearch.HeatUp run = runs.size() < 2 ? null : chosen(runs, choice, offset);
    if (run != null) {
      notes.add(several(runs, run));
      whole = whole.part(run.startSecond(), run.endSecond());
    }
    double found = start(choice, whole, power, offset, notes);
    if (run != null
        && choice.startSecond == null
        && found < run.startSecond() - LONGEST_DELAY_SECONDS) {
      found = run.startSecond();
    }
    double end = run == null ? placed.trace(centre, segment).lastSecond() : run.endSecond();
    return build(new Window(placed, segment, found, end), centre, choice, name, notes);
  }

  /** The heat-up in which the given start lies or which follows it, else the first. */
  private static RunSearch.HeatUp chosen(
      List<RunSearch.HeatUp> runs, Choice choice, double offset) {
    Double start = choice.startSecond;
    if (start == null) {
      return runs.get(0);
    }
    return runs.stream()
        .filter(r -> r.endSecond() > start - offset + 1)
        .findFirst()
        .orElse(runs.get(runs.size() - 1));
  }

  private static String several(List<RunSearch.HeatUp> runs, RunSearch.HeatUp chosen) {
    String starts =
        runs.stream()
            .limit(MOST_NAMED_STARTS)
            .map(r -> clock(r.startSecond()))
            .collect(java.util.stream.Collectors.joining(", "));
    String more = runs.size() > MOST_NAMED_STARTS ? ", …" : "";
    return String.format(
        Locale.ROOT,
        "The record holds %d heat-ups, beginning %s%s after the first row; measured is the one from"
            + " %s to %s. Another is picked with --start.",
        runs.size(),
        starts,
        more,
        clock(chosen.startSecond()),
        clock(chosen.endSecond()));
  }

  private static String clock(double seconds) {
    long s = Math.round(seconds);
    return String.format(Locale.ROOT, "%d:%02d:%02d", s / 3600, s / 60 % 60, s % 60);
  }

  /** A meter at the plug alone: energy and power of the whole record. */
  private static @Nullable TraceSession electric(
      TraceFile file, Segment segment, Choice choice, String name) {
    Channel meter =
        file.channels().stream()
            .filter(c -> c.dimension() == Dimension.POWER || c.dimension() == Dimension.ENERGY)
            .findFirst()
            .orElse(null);
    if (meter == null || file.rows() == 0) {
      return null;
    }
    double start = choice.startSecond == null ? 0 : choice.startSecond;
    List<String> notes = new ArrayList<>();
    notes.add("No temperature was logged: energy and power are measured over the whole record.");
    Window window = new Window(file, segment, start, file.trace(meter, segment).lastSecond());
    Trace none = new Trace(meter.name(), new double[0], new double[0], Unit.CELSIUS);
    return build(none, window, choice, name, notes, Subject.ofChannel(meter.name()));
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
      Window window, Channel centre, Choice choice, String name, List<String> notes) {
    return build(window.cut(centre), window, choice, name, notes, Subject.ofChannel(centre.name()));
  }

  private static TraceSession build(
      Trace centre,
      Window window,
      Choice choice,
      String name,
      List<String> notes,
      Subject subject) {
    TraceFile file = window.file;
    Double setting = setting(window, choice, notes);
    Double ambient = choice.ambientCelsius;
    if (ambient == null && file.first(Channel.Role.AMBIENT).isPresent()) {
      Trace room = window.cut(file.first(Channel.Role.AMBIENT).get()).present();
      ambient = room.size() == 0 ? null : Double.valueOf(room.values()[0]);
    }
    TraceInput input =
        TraceInput.of(centre)
            .withSetting(setting)
            .withAmbient(ambient)
            .withCores(window.cores())
            .withPower(
                window.first(
                    c -> c.dimension() == Dimension.POWER && c.role() == Channel.Role.MEASURED))
            .withEnergy(window.first(c -> c.dimension() == Dimension.ENERGY))
            .withMains(window.first(TraceSession::isMains))
            .withDuty(
                window.first(
                    c ->
                        c.role() == Channel.Role.DUTY
                            || c.role() == Channel.Role.SWITCH && !isOtherSwitch(c)))
            .withSubject(subject)
            .withEvidence(List.of(name));
    HeatCurve curve = HeatCurve.of(input.centre());
    CavityPoints points = CavityPoints.among(window.points(choice), choice.places.keySet(), curve);
    notes.addAll(points.notes());
    return new TraceSession(
        file,
        food(input.withPoints(points.traces()).withCores(both(input.cores(), points)), choice),
        curve,
        window.start,
        List.copyOf(notes),
        choice.core);
  }

  private static List<Trace> both(List<Trace> needles, CavityPoints found) {
    List<Trace> all = new ArrayList<>(needles);
    all.addAll(found.cores());
    return all;
  }

  private static TraceInput food(TraceInput input, Choice choice) {
    Double known = choice.probeKelvin;
    TraceInput asked =
        known == null ? input : input.withProbe(new ProbeAccuracy("probe:stated", known, 0, null));
    return choice.core instanceof Criterion.FloorWithRest floor
        ? asked.withCoreTarget(floor.floorCelsius()).withRest(floor.restSeconds())
        : asked;
  }

  /** Cuts channels to the run. */
  private record Window(TraceFile file, Segment segment, double start, double end) {
    Trace cut(Channel channel) {
      return file.trace(channel, segment).window(start, end);
    }

    /** Where a spread may be taken over, under the names a person gave the places. */
    List<CavityPoints.Point> points(Choice choice) {
      return file.channels().stream()
          .filter(c -> c.isMeasuredTemperature() && c.state() == Channel.State.GOOD)
          .filter(c -> c.role() == Channel.Role.MEASURED || c.role() == Channel.Role.CENTRE)
          .map(
              c ->
                  new CavityPoints.Point(
                      c, named(cut(c), choice.places.getOrDefault(c.name(), c.name()))))
          .toList();
    }

    /** Needles, from when they are in the food. */
    List<Trace> cores() {
      return all(c -> c.isMeasuredTemperature() && c.role() == Channel.Role.CORE).stream()
          .map(FoodContact::of)
          .filter(t -> t.size() > 0)
          .toList();
    }

    private static Trace named(Trace trace, String place) {
      return new Trace(place, trace.seconds(), trace.values(), trace.unit());
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

  private static @Nullable Double setting(Window window, Choice choice, List<String> notes) {
    if (choice.settingCelsius != null) {
      return choice.settingCelsius;
    }
    Channel column =
        window.file.channels().stream()
            .filter(c -> c.role() == Channel.Role.SET_POINT && !isOfFood(c, window.file))
            .findFirst()
            .orElse(null);
    if (column == null) {
      return null;
    }
    double[] values = window.cut(column).present().values();
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

  /** A voltage of the size of mains; a battery's or a thermocouple's is none. */
  private static boolean isMains(Channel channel) {
    return channel.dimension() == Dimension.VOLTAGE
        && java.util.Arrays.stream(channel.values()).anyMatch(v -> v > 80);
  }

  /** Switches that say nothing about the heater. */
  private static boolean isOtherSwitch(Channel channel) {
    return channel.name().matches("(?i).*(door|fan|light|lamp|alarm|tür|licht|porte|puerta).*");
  }

  /** "Probe 1 Target" beside a needle called "Probe 1" is what the food shall reach. */
  private static boolean isOfFood(Channel setPoint, TraceFile file) {
    String name = setPoint.name().toLowerCase(Locale.ROOT);
    return file.channels().stream()
        .filter(c -> c.role() == Channel.Role.CORE)
        .anyMatch(c -> name.contains(c.name().toLowerCase(Locale.ROOT)));
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
    boolean warm = !curve.isEmpty();
    boolean timed = file.time().form() != ovenproof.core.trace.TimeAxis.Form.NONE;
    List<Measurement> results = new ArrayList<>();
    for (TraceMeasure measure : measures) {
      String id = measure.description().id();
      boolean possible = timed || WITHOUT_TIME.contains(id);
      if (!warm && !OF_POWER.contains(id)) {
        results.add(missing(measure, "no temperature was logged"));
      } else if (!possible) {
        results.add(
            missing(
                measure, "the file holds no times; give the distance of its rows with --interval"));
      } else {
        results.add(measure.measure(input, curve));
      }
    }
    return results;
  }

  private Measurement missing(TraceMeasure measure, String why) {
    return Measurement.missing(measure.description(), input.subject(), why);
  }

  /** Whether a file like this could ever carry a measure; where not, its lack is no news. */
  public boolean couldMeasure(String id) {
    return !OF_CAMPAIGNS.contains(id)
        && (!curve.isEmpty() || OF_POWER.contains(id))
        && (!input.cores().isEmpty() || criterion != null || !isOfFood(id));
  }

  private static boolean isOfFood(String id) {
    return id.startsWith("core") || id.equals(SafetyMeasures.LETHALITY.id());
  }

  /** Whether the core met what was asked of it; empty when nobody asked. */
  public Optional<CoreSafety> core() {
    double expanded = input.probe().expandedKelvin();
    return Optional.ofNullable(criterion)
        .map(
            wanted ->
                CoreSafety.judge(
                    wanted,
                    input.cores(),
                    expanded > 0 ? expanded : Double.NaN,
                    CoreSafety.Record.FINISHED));
  }

  /** The same for a person, with where the floor is published; empty when nobody asked. */
  public String coreWords() {
    return core().map(judged -> CoreWords.of(judged, criterion)).orElse("");
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
    return setting == null || curve.isEmpty() ? "" : reachStory(input, curve, setting).paragraph();
  }

  /** What one run's model says of reaching a setting; empty when it carries none. */
  public static String reach(TraceInput input, double settingCelsius) {
    HeatCurve curve = HeatCurve.of(input.centre());
    return curve.isEmpty() ? "" : reachStory(input, curve, settingCelsius).reach();
  }

  private static ReachStory reachStory(TraceInput input, HeatCurve curve, double setting) {
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
        HeatBalance.of(input, curve).orElse(null),
        ThermalMeasures.ceiling(input, curve),
        Math.hypot(input.probe().calibrationKelvin(), input.probe().placementKelvin()));
  }
}
