package ovenproof.measure;

import java.util.List;
import java.util.OptionalDouble;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Event;
import ovenproof.campaign.Run;
import ovenproof.core.measure.Subject;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan;

/** One run with its test and everything recorded of it. */
record RunEvidence(Campaign campaign, TestPlan test, Run run, List<Event> events) {

  RunEvidence {
    events = List.copyOf(events);
  }

  static RunEvidence of(Campaign campaign, TestPlan test, Run run) {
    return new RunEvidence(campaign, test, run, campaign.eventsOf(run.id()));
  }

  Subject subject() {
    return new Subject(run.product(), run.id(), null, null, null, null);
  }

  /** Batches that a use asks for: the one it names, or all of the test. */
  List<Integer> batches(MeasureUse use) {
    Integer only = use.batch();
    return only != null
        ? List.of(only)
        : java.util.stream.IntStream.rangeClosed(1, Math.max(1, test.batches())).boxed().toList();
  }

  /** First event of a type in a batch; an event without batch belongs to every batch. */
  java.util.Optional<Event> first(Event.Type type, int batch) {
    return events.stream().filter(e -> e.type() == type && belongs(e, batch)).findFirst();
  }

  /** Last event of a type in a batch. */
  java.util.Optional<Event> last(Event.Type type, int batch) {
    return events.stream().filter(e -> e.type() == type && belongs(e, batch)).reduce((a, b) -> b);
  }

  /** Elapsed time of the last event, when there is any. */
  OptionalDouble lastSecond() {
    return events.stream().mapToDouble(Event::elapsedSeconds).max();
  }

  private boolean belongs(Event event, int batch) {
    Integer of = event.batch();
    return of == null ? batch == 1 || test.batches() <= 1 : of == batch;
  }

  String evidenceOfRun() {
    return "events of " + run.id();
  }
}
