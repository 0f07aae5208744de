package ovenproof.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ovenproof.campaign.Event;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.core.quantity.Quantity;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan.StopRule;

/** Times between events. */
final class EventMeasures {

  /** A person who taps start and stop is off by half a second or so each time (common practice). */
  private static final double TAPPED_SECONDS = 0.7;

  private EventMeasures() {}

  static List<Measurement> timeToStop(RunEvidence run, MeasureUse use) {
    List<Measurement> times = new ArrayList<>();
    for (int batch : run.batches(use)) {
      times.add(timeToStop(run, batch));
    }
    return times;
  }

  private static Measurement timeToStop(RunEvidence run, int batch) {
    MeasureDescription measure = EntryMeasures.TIME_TO_STOP;
    Subject subject = run.subject().withBatch(run.test().batches() > 1 ? batch : null);
    Optional<Event> begin =
        run.first(Event.Type.LOAD, batch).or(() -> run.first(Event.Type.START, batch));
    Optional<Event> stop = run.last(Event.Type.STOP, batch);
    if (begin.isEmpty()) {
      return Measurement.missing(measure, subject, "no start or load event");
    }
    if (stop.isEmpty()) {
      return Measurement.missing(measure, subject, "no stop event: the run is not over");
    }
    return time(run, measure, subject, begin.get(), stop.get());
  }

  private static Measurement time(
      RunEvidence run, MeasureDescription measure, Subject subject, Event begin, Event stop) {
    double seconds = stop.elapsedSeconds() - begin.elapsedSeconds();
    String why = stop.value() == null ? "" : stop.value();
    if (why.equals("abort")) {
      return Measurement.missing(measure, subject, "aborted: " + said(stop));
    }
    if (!(seconds > 0)) {
      return Measurement.missing(measure, subject, "the stop lies before the start");
    }
    if (why.equals("cap")) {
      double cap = run.test().cap().map(StopRule::at).map(Quantity::contract).orElse(seconds);
      return Measurement.above(measure, subject, Math.min(seconds, cap))
          .withNote("stopped by the cap, not done")
          .withEvidence(List.of(run.evidenceOfRun()));
    }
    return Measurement.of(measure, subject, seconds)
        .withComponents(List.of(Component.run(TAPPED_SECONDS)))
        .withEvidence(List.of(run.evidenceOfRun()));
  }

  static List<Measurement> signalTime(RunEvidence run, MeasureUse use) {
    MeasureDescription measure = EntryMeasures.SIGNAL_TIME;
    Optional<Event> start = run.first(Event.Type.START, 1);
    Optional<Event> signal = run.first(Event.Type.SIGNAL, 1);
    if (start.isEmpty() || signal.isEmpty()) {
      return List.of(
          Measurement.missing(
              measure, run.subject(), "the appliance gave no signal that was noted"));
    }
    double seconds = signal.get().elapsedSeconds() - start.get().elapsedSeconds();
    return List.of(
        Measurement.of(measure, run.subject(), seconds)
            .withComponents(List.of(Component.run(TAPPED_SECONDS)))
            .withEvidence(List.of(run.evidenceOfRun())));
  }

  private static String said(Event event) {
    return event.note() == null ? "no reason noted" : event.note();
  }
}
