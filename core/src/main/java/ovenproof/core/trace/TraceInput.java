package ovenproof.core.trace;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;

/**
 * What the measures of one run are computed from. All traces are cut to the run's window and count
 * seconds from its start (heat on).
 *
 * @param centre temperature at the place the method calls the centre
 * @param points the temperatures that a spread is taken over; the centre among them when it is one
 * @param cores probes inside the food
 * @param power in W, null when not logged
 * @param energy a counter in kWh, null when not logged
 * @param duty share of the time the heater is on, in %, or a switch of 0 and 100; null when not
 *     logged
 * @param mains in V, null when not logged
 * @param settingCelsius what the dial or the display was set to; null when unknown
 * @param nominalVolt mains to which results are brought; null when nobody asks
 * @param ambientCelsius temperature of the room; null when unknown
 * @param coreTargetCelsius what the core shall reach; null when nobody asks
 * @param restSeconds for how long the core shall stay there; 0 for one moment
 * @param probe accuracy of the centre's probe
 * @param happenings doors, loads and stops that people noted, in order of time
 * @param subject what was measured
 * @param evidence files and entries behind it
 */
public record TraceInput(
    Trace centre,
    List<Trace> points,
    List<Trace> cores,
    @Nullable Trace power,
    @Nullable Trace energy,
    @Nullable Trace duty,
    @Nullable Trace mains,
    @Nullable Double settingCelsius,
    @Nullable Double ambientCelsius,
    @Nullable Double nominalVolt,
    @Nullable Double coreTargetCelsius,
    double restSeconds,
    ProbeAccuracy probe,
    List<Happening> happenings,
    Subject subject,
    List<String> evidence) {

  public TraceInput {
    points = List.copyOf(points);
    cores = List.copyOf(cores);
    happenings = happenings.stream().sorted(Comparator.comparingDouble(Happening::second)).toList();
    evidence = List.copyOf(evidence);
  }

  /** One temperature channel and nothing else. */
  public static TraceInput of(Trace centre) {
    return new TraceInput(
        centre,
        List.of(),
        List.of(),
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        0,
        ProbeAccuracy.UNKNOWN,
        List.of(),
        Subject.ofChannel(centre.channel()),
        List.of());
  }

  /** The first thing of a kind at or after a time. */
  public Optional<Happening> first(Happening.Kind kind, double fromSecond) {
    return happenings.stream()
        .filter(h -> h.kind() == kind && h.second() >= fromSecond)
        .findFirst();
  }

  /** A measure that this run does not give, and why; what was looked at stays named. */
  public Measurement missing(MeasureDescription measure, String why) {
    return Measurement.missing(measure, subject, why).withEvidence(evidence);
  }

  public TraceInput withCentre(Trace trace) {
    return changed(draft -> draft.centre = trace);
  }

  public TraceInput withPoints(List<Trace> traces) {
    return changed(draft -> draft.points = traces);
  }

  public TraceInput withCores(List<Trace> traces) {
    return changed(draft -> draft.cores = traces);
  }

  public TraceInput withPower(@Nullable Trace trace) {
    return changed(draft -> draft.power = trace);
  }

  public TraceInput withEnergy(@Nullable Trace trace) {
    return changed(draft -> draft.energy = trace);
  }

  public TraceInput withDuty(@Nullable Trace trace) {
    return changed(draft -> draft.duty = trace);
  }

  public TraceInput withMains(@Nullable Trace trace) {
    return changed(draft -> draft.mains = trace);
  }

  public TraceInput withSetting(@Nullable Double celsius) {
    return changed(draft -> draft.settingCelsius = celsius);
  }

  public TraceInput withAmbient(@Nullable Double celsius) {
    return changed(draft -> draft.ambientCelsius = celsius);
  }

  public TraceInput withNominalVolt(@Nullable Double volt) {
    return changed(draft -> draft.nominalVolt = volt);
  }

  public TraceInput withCoreTarget(@Nullable Double celsius) {
    return changed(draft -> draft.coreTargetCelsius = celsius);
  }

  public TraceInput withRest(double seconds) {
    return changed(draft -> draft.restSeconds = seconds);
  }

  public TraceInput withProbe(ProbeAccuracy accuracy) {
    return changed(draft -> draft.probe = accuracy);
  }

  public TraceInput withHappenings(List<Happening> noted) {
    return changed(draft -> draft.happenings = noted);
  }

  public TraceInput withSubject(Subject newSubject) {
    return changed(draft -> draft.subject = newSubject);
  }

  public TraceInput withEvidence(List<String> names) {
    return changed(draft -> draft.evidence = names);
  }

  private TraceInput changed(Consumer<Draft> change) {
    Draft draft = new Draft(this);
    change.accept(draft);
    return draft.input();
  }

  /** A copy that can still be changed; never leaves this class. */
  private static final class Draft {
    private Trace centre;
    private List<Trace> points;
    private List<Trace> cores;
    private @Nullable Trace power;
    private @Nullable Trace energy;
    private @Nullable Trace duty;
    private @Nullable Trace mains;
    private @Nullable Double settingCelsius;
    private @Nullable Double ambientCelsius;
    private @Nullable Double nominalVolt;
    private @Nullable Double coreTargetCelsius;
    private double restSeconds;
    private ProbeAccuracy probe;
    private List<Happening> happenings;
    private Subject subject;
    private List<String> evidence;

    Draft(TraceInput input) {
      centre = input.centre;
      points = input.points;
      cores = input.cores;
      power = input.power;
      energy = input.energy;
      duty = input.duty;
      mains = input.mains;
      settingCelsius = input.settingCelsius;
      ambientCelsius = input.ambientCelsius;
      nominalVolt = input.nominalVolt;
      coreTargetCelsius = input.coreTargetCelsius;
      restSeconds = input.restSeconds;
      probe = input.probe;
      happenings = input.happenings;
      subject = input.subject;
      evidence = input.evidence;
    }

    TraceInput input() {
      return new TraceInput(
          centre,
          points,
          cores,
          power,
          energy,
          duty,
          mains,
          settingCelsius,
          ambientCelsius,
          nominalVolt,
          coreTargetCelsius,
          restSeconds,
          probe,
          happenings,
          subject,
          evidence);
    }
  }
}
