package ovenproof.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign.Instrument;
import ovenproof.campaign.Campaign.SettingCard;
import ovenproof.campaign.Event;
import ovenproof.campaign.Run;
import ovenproof.campaign.TraceBinding;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.QuantityFormatException;
import ovenproof.core.quantity.QuantityParser;
import ovenproof.core.safety.HandThermometer;
import ovenproof.core.trace.ClockOffset;
import ovenproof.core.trace.FoodContact;
import ovenproof.core.trace.Happening;
import ovenproof.core.trace.HeatCurve;
import ovenproof.core.trace.ProbeAccuracy;
import ovenproof.core.trace.Radiation;
import ovenproof.core.trace.Trace;
import ovenproof.core.trace.TraceInput;
import ovenproof.core.trace.TraceMeasure;
import ovenproof.measure.ReadingMeasures.InstrumentError;
import ovenproof.method.MeasureUse;
import ovenproof.method.Method;

/** Takes what a heating curve tells, from the channels that are bound to a run. */
final class TraceTaker implements Taker {

  /** Where a probe sits is known to about this much of the mean (handbook: common practice). */
  private static final double PLACEMENT_KELVIN = 0.58;

  /**
   * What a small bare junction in oven air may be off by radiation, alike in every oven and unlike
   * from oven to oven (handbook's budget of the centre mean: 1.73 K in all, 1 K of it unlike).
   */
  private static final double RADIATION_ALIKE_KELVIN = 1.41;

  private static final double RADIATION_UNLIKE_KELVIN = 1.0;

  /** How long the food's rest is followed after the last event. */
  private static final double REST_SECONDS = 600;

  private static final Set<String> CAVITY =
      Set.of("centre", "front-left", "front-right", "back-left", "back-right", "top", "bottom");

  /** Less is the hand on the stopwatch. */
  private static final double LEAST_CLOCK_SECONDS = 10;

  /** What needs no temperature. */
  private static final Set<String> OF_POWER =
      Set.of("energy", "energy-cook", "power-standby", "mains-mean");

  private final TraceLibrary library;
  private final MeasurementCache cache;
  private final MeasureDescription measure;
  private final TraceGroup group;

  TraceTaker(TraceLibrary library, MeasurementCache cache, MeasureDescription measure) {
    this.library = library;
    this.cache = cache;
    this.measure = measure;
    group = TraceGroup.of(measure);
  }

  @Override
  public List<Measurement> take(RunEvidence run, MeasureUse use) {
    List<TraceBinding> bindings = bindings(run);
    boolean core = measure.id().startsWith("core") || measure.id().equals("lethality");
    String place = core ? needle(bindings) : use.place() == null ? "centre" : use.place();
    boolean there =
        bindings.stream()
                .anyMatch(b -> core ? b.place().startsWith("core") : b.place().equals(place))
            || OF_POWER.contains(measure.id());
    Optional<HandThermometer> read =
        !there && HandCore.isRead(use) ? HandCore.of(run, use) : Optional.empty();
    if (read.isPresent()) {
      return List.of(HandCore.measurement(run, use, read.get()));
    }
    if (!there) {
      String what = core ? "no core probe" : "no trace of the place \"" + place + "\"";
      return List.of(Measurement.missing(measure, run.subject(), what + " is bound to this run"));
    }
    Asked asked = Asked.of(run, use);
    List<Measurement> all =
        cache.get(key(run, bindings, place, asked), () -> measure(run, bindings, place, asked));
    all.forEach(m -> warnOfClocks(m, run));
    return List.of(
        all.stream()
            .filter(m -> m.id().equals(measure.id()))
            .findFirst()
            .orElse(Measurement.missing(measure, run.subject(), "the trace does not carry it")));
  }

  /** Two clocks that differ are a finding for a person, never a silent shift. */
  private void warnOfClocks(Measurement measurement, RunEvidence run) {
    Double offset = measurement.value();
    Double u = measurement.uncertainty();
    boolean ofClocks = measurement.id().equals(ClockOffset.DESCRIPTION.id());
    if (!ofClocks || offset == null || u == null || measurement.n() < 2) {
      return;
    }
    if (Math.abs(offset) > Math.max(LEAST_CLOCK_SECONDS, 3 * u)) {
      library.warn(
          String.format(
              Locale.ROOT,
              "%s: the log shows the doors %.0f ± %.0f s %s than they were noted; if the clocks"
                  + " differ, say clock_offset in traces.csv and enter a deviation",
              run.run().id(),
              Math.abs(offset),
              u,
              offset > 0 ? "later" : "earlier"));
    }
  }

  /** The first needle stands for all: they are of one make and were calibrated together. */
  private static String needle(List<TraceBinding> bindings) {
    return bindings.stream()
        .map(TraceBinding::place)
        .filter(place -> place.startsWith("core"))
        .sorted()
        .findFirst()
        .orElse("core-1");
  }

  /** What the method's use of a measure asks for; null where it is silent. */
  private record Asked(
      @Nullable Double set, @Nullable Double nominal, @Nullable Double core, double restSeconds) {

    static Asked of(RunEvidence run, MeasureUse use) {
      Double rest = amount(use, "rest", Dimension.TIME);
      return new Asked(
          setting(run, use),
          amount(use, "nominal", Dimension.VOLTAGE),
          amount(use, "to", Dimension.TEMPERATURE),
          rest == null ? 0 : rest);
    }
  }

  private List<Measurement> measure(
      RunEvidence run, List<TraceBinding> bindings, String place, Asked asked) {
    TraceInput input =
        input(run, bindings, place, asked.set)
            .withNominalVolt(asked.nominal)
            .withCoreTarget(asked.core)
            .withRest(asked.restSeconds);
    HeatCurve curve = HeatCurve.of(input.centre());
    return group.measures().stream().map(m -> m.measure(input, curve)).toList();
  }

  /** What every measure of a place is computed from. */
  TraceInput input(
      RunEvidence run, List<TraceBinding> bindings, String place, @Nullable Double set) {
    double end = run.lastSecond().orElse(0);
    return TraceInput.of(first(run, bindings, place, end))
        .withPoints(cavity(run, bindings, end))
        .withCores(cores(run, bindings, end))
        .withPower(optional(run, bindings, "power", end))
        .withEnergy(optional(run, bindings, "energy", end))
        .withDuty(optional(run, bindings, "duty", end))
        .withMains(optional(run, bindings, "mains", end))
        .withHappenings(happenings(run))
        .withSetting(set)
        .withAmbient(ambient(run, bindings))
        .withProbe(probe(run, bindings, place))
        .withSubject(run.subject().withChannel(place))
        .withEvidence(evidence(bindings));
  }

  private Trace first(RunEvidence run, List<TraceBinding> bindings, String place, double end) {
    Trace found = optional(run, bindings, place, end);
    return found != null
        ? found
        : new Trace(place, new double[0], new double[0], ovenproof.core.quantity.Unit.CELSIUS);
  }

  private @Nullable Trace optional(
      RunEvidence run, List<TraceBinding> bindings, String place, double end) {
    return bindings.stream()
        .filter(b -> b.place().equals(place))
        .flatMap(b -> corrected(run, b).stream())
        .map(t -> t.window(0, end))
        .filter(t -> t.size() > 0)
        .findFirst()
        .orElse(null);
  }

  private List<Trace> cavity(RunEvidence run, List<TraceBinding> bindings, double end) {
    List<Trace> traces = new ArrayList<>();
    for (String place : new TreeSet<>(CAVITY)) {
      Trace trace = optional(run, bindings, place, end);
      if (trace != null) {
        traces.add(new Trace(place, trace.seconds(), trace.values(), trace.unit()));
      }
    }
    return traces;
  }

  private static List<Happening> happenings(RunEvidence run) {
    List<Happening> noted = new ArrayList<>();
    for (Event event : run.events()) {
      Integer batch = event.batch();
      kind(event.type())
          .map(kind -> new Happening(kind, event.elapsedSeconds(), batch == null ? 1 : batch))
          .ifPresent(noted::add);
    }
    return noted;
  }

  private static Optional<Happening.Kind> kind(Event.Type type) {
    return switch (type) {
      case SIGNAL -> Optional.of(Happening.Kind.SIGNAL);
      case LOAD -> Optional.of(Happening.Kind.LOAD);
      case DOOR_OPEN -> Optional.of(Happening.Kind.DOOR_OPEN);
      case DOOR_CLOSE -> Optional.of(Happening.Kind.DOOR_CLOSE);
      case STOP -> Optional.of(Happening.Kind.STOP);
      case REMOVE -> Optional.of(Happening.Kind.REMOVE);
      case POWER_OFF -> Optional.of(Happening.Kind.POWER_OFF);
      default -> Optional.empty();
    };
  }

  /** From when the probes are in the food until the end of its rest. */
  private List<Trace> cores(RunEvidence run, List<TraceBinding> bindings, double end) {
    double in =
        run.first(Event.Type.PROBE_IN, 1)
            .or(() -> run.first(Event.Type.LOAD, 1))
            .map(Event::elapsedSeconds)
            .orElse(0.0);
    double out =
        run.last(Event.Type.PROBE_OUT, 1).map(Event::elapsedSeconds).orElse(end + REST_SECONDS);
    List<Trace> traces = new ArrayList<>();
    for (TraceBinding binding : bindings) {
      if (binding.place().startsWith("core")) {
        corrected(run, binding)
            .map(t -> FoodContact.of(t.window(in, out)))
            .filter(t -> t.size() > 0)
            .ifPresent(traces::add);
      }
    }
    return traces;
  }

  /** Median of the room's probe over the run; null when the room was not logged. */
  private @Nullable Double ambient(RunEvidence run, List<TraceBinding> bindings) {
    Trace room = optional(run, bindings, "ambient", run.lastSecond().orElse(0));
    if (room == null) {
      return null;
    }
    double[] values =
        java.util.Arrays.stream(room.values()).filter(Double::isFinite).sorted().toArray();
    return values.length == 0 ? null : values[values.length / 2];
  }

  private Optional<Trace> corrected(RunEvidence run, TraceBinding binding) {
    double correction = error(run, binding).correction();
    return library
        .trace(binding, run.run())
        .map(t -> correction == 0 ? t : t.withValues(plus(t.values(), correction)));
  }

  private static double[] plus(double[] values, double correction) {
    return java.util.Arrays.stream(values).map(v -> v + correction).toArray();
  }

  private static InstrumentError error(RunEvidence run, TraceBinding binding) {
    return InstrumentError.of(run.campaign(), binding.instrument(), run.run().started());
  }

  private static ProbeAccuracy probe(RunEvidence run, List<TraceBinding> bindings, String place) {
    Optional<TraceBinding> binding =
        bindings.stream()
            .filter(b -> b.place().equals(place) && b.instrument() != null)
            .findFirst();
    if (binding.isEmpty()) {
      return ProbeAccuracy.UNKNOWN;
    }
    Optional<Component> shared =
        error(run, binding.get()).components().stream().filter(Component::isShared).findFirst();
    Double response =
        run.campaign().instruments().stream()
            .filter(i -> i.id().equals(binding.get().instrument()))
            .map(Instrument::responseTimeSeconds)
            .filter(java.util.Objects::nonNull)
            .findFirst()
            .orElse(null);
    return new ProbeAccuracy(
        shared.map(Component::source).orElse("probe:" + binding.get().instrument()),
        shared.map(c -> Math.abs(c.u())).orElse(0.0),
        PLACEMENT_KELVIN,
        response,
        place.startsWith("core")
            ? Radiation.NONE
            : new Radiation(run.run().product(), RADIATION_ALIKE_KELVIN, RADIATION_UNLIKE_KELVIN));
  }

  /** What the dial was set to: the method's parameter, else the product's card, else the test's. */
  static @Nullable Double setting(RunEvidence run, MeasureUse use) {
    String parameter = use.parameters().get("set");
    return parameter == null
        ? dial(run)
        : Double.valueOf(QuantityParser.parse(parameter, Dimension.TEMPERATURE).contract());
  }

  /** The product's card, else the test's. */
  static @Nullable Double dial(RunEvidence run) {
    Run r = run.run();
    Optional<Double> card =
        run.campaign().settingCards().stream()
            .filter(c -> c.product().equals(r.product()) && c.test().equals(r.test()))
            .filter(c -> c.variant().equals(r.variant()))
            .map(SettingCard::dial)
            .flatMap(dial -> celsius(dial).stream())
            .findFirst();
    Method.Setting planned = run.test().setting();
    return card.orElse(
        planned == null || planned.dial() == null ? null : planned.dial().contract());
  }

  private static @Nullable Double amount(MeasureUse use, String parameter, Dimension dimension) {
    String written = use.parameters().get(parameter);
    return written == null ? null : QuantityParser.parse(written, dimension).contract();
  }

  /** A dial may also say "4" or "toast": then it names no temperature. */
  private static Optional<Double> celsius(@Nullable String dial) {
    try {
      return dial == null
          ? Optional.empty()
          : Optional.of(QuantityParser.parse(dial, Dimension.TEMPERATURE).contract());
    } catch (QuantityFormatException noTemperature) {
      return Optional.empty();
    }
  }

  /** Channels of this run: bound to it, or to its product while it ran. */
  static List<TraceBinding> bindings(RunEvidence run) {
    Run r = run.run();
    return run.campaign().traces().stream()
        .filter(b -> b.run() == null ? ofProduct(b, run) : b.run().equals(r.id()))
        .toList();
  }

  private static boolean ofProduct(TraceBinding binding, RunEvidence run) {
    boolean room = binding.product() == null && binding.place().equals("ambient");
    if (!room && !run.run().product().equals(binding.product())) {
      return false;
    }
    java.time.Instant started = run.run().started();
    if (started == null) {
      return false;
    }
    java.time.Instant ended = started.plusMillis((long) (1000 * run.lastSecond().orElse(0)));
    return (binding.from() == null || !binding.from().isAfter(ended))
        && (binding.to() == null || !binding.to().isBefore(started));
  }

  private List<String> evidence(List<TraceBinding> bindings) {
    return bindings.stream()
        .map(TraceBinding::file)
        .distinct()
        .map(f -> f + " sha256:" + library.fingerprint(f))
        .toList();
  }

  private MeasurementKey key(
      RunEvidence run, List<TraceBinding> bindings, String place, Asked asked) {
    List<String> parts = new ArrayList<>();
    parts.add("trace");
    group.measures().stream()
        .map(TraceMeasure::description)
        .forEach(d -> parts.add(d.id() + "@" + d.revision()));
    parts.add(place);
    parts.add(asked.toString());
    parts.add(run.run().toString());
    parts.add(run.events().toString());
    parts.add(run.campaign().info().zone().getId());
    for (TraceBinding binding : bindings) {
      parts.add(binding.toString());
      parts.add(library.fingerprint(binding.file()));
      parts.add(error(run, binding).toString());
    }
    parts.add(probe(run, bindings, place).toString());
    return MeasurementKey.of(parts);
  }
}
