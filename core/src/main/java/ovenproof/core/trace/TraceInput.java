package ovenproof.core.trace;

import java.util.List;
import org.jspecify.annotations.Nullable;
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
 * @param settingCelsius what the dial or the display was set to; null when unknown
 * @param ambientCelsius temperature of the room; null when unknown
 * @param probe accuracy of the centre's probe
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
    @Nullable Double settingCelsius,
    @Nullable Double ambientCelsius,
    ProbeAccuracy probe,
    Subject subject,
    List<String> evidence) {

  public TraceInput {
    points = List.copyOf(points);
    cores = List.copyOf(cores);
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
        ProbeAccuracy.UNKNOWN,
        Subject.ofChannel(centre.channel()),
        List.of());
  }

  public TraceInput withCentre(Trace t) {
    return new TraceInput(
        t,
        points,
        cores,
        power,
        energy,
        duty,
        settingCelsius,
        ambientCelsius,
        probe,
        subject,
        evidence);
  }

  public TraceInput withSetting(@Nullable Double celsius) {
    return new TraceInput(
        centre,
        points,
        cores,
        power,
        energy,
        duty,
        celsius,
        ambientCelsius,
        probe,
        subject,
        evidence);
  }

  public TraceInput withAmbient(@Nullable Double celsius) {
    return new TraceInput(
        centre,
        points,
        cores,
        power,
        energy,
        duty,
        settingCelsius,
        celsius,
        probe,
        subject,
        evidence);
  }

  public TraceInput withProbe(ProbeAccuracy p) {
    return new TraceInput(
        centre,
        points,
        cores,
        power,
        energy,
        duty,
        settingCelsius,
        ambientCelsius,
        p,
        subject,
        evidence);
  }

  public TraceInput withPoints(List<Trace> traces) {
    return new TraceInput(
        centre,
        traces,
        cores,
        power,
        energy,
        duty,
        settingCelsius,
        ambientCelsius,
        probe,
        subject,
        evidence);
  }

  public TraceInput withCores(List<Trace> traces) {
    return new TraceInput(
        centre,
        points,
        traces,
        power,
        energy,
        duty,
        settingCelsius,
        ambientCelsius,
        probe,
        subject,
        evidence);
  }

  public TraceInput withPower(@Nullable Trace t) {
    return new TraceInput(
        centre,
        points,
        cores,
        t,
        energy,
        duty,
        settingCelsius,
        ambientCelsius,
        probe,
        subject,
        evidence);
  }

  public TraceInput withEnergy(@Nullable Trace t) {
    return new TraceInput(
        centre,
        points,
        cores,
        power,
        t,
        duty,
        settingCelsius,
        ambientCelsius,
        probe,
        subject,
        evidence);
  }

  public TraceInput withDuty(@Nullable Trace t) {
    return new TraceInput(
        centre,
        points,
        cores,
        power,
        energy,
        t,
        settingCelsius,
        ambientCelsius,
        probe,
        subject,
        evidence);
  }

  public TraceInput withSubject(Subject s) {
    return new TraceInput(
        centre,
        points,
        cores,
        power,
        energy,
        duty,
        settingCelsius,
        ambientCelsius,
        probe,
        s,
        evidence);
  }

  public TraceInput withEvidence(List<String> names) {
    return new TraceInput(
        centre,
        points,
        cores,
        power,
        energy,
        duty,
        settingCelsius,
        ambientCelsius,
        probe,
        subject,
        names);
  }
}
