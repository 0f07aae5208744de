package ovenproof.files;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Event;
import ovenproof.campaign.Run;
import ovenproof.core.quantity.Quantity;
import ovenproof.input.Words;
import ovenproof.method.TestPlan;
import ovenproof.method.TestPlan.StopRule;

/**
 * What ended each run. A run that reached its cap was not done, whatever the sheet says: its time
 * is only known as longer, and must not be averaged as if it were a time.
 */
final class StopChecks {
  /** Clocks are stopped by hand. */
  private static final double HAND_SECONDS = 5;

  private final Context context;
  private final Sections sections;

  StopChecks(Context context, Sections sections) {
    this.context = context;
    this.sections = sections;
  }

  void run() {
    Map<String, List<Rowed<Event>>> byRun = new LinkedHashMap<>();
    for (Rowed<Event> event : KeyChecks.effectiveOf(sections.events())) {
      byRun.computeIfAbsent(event.value().run(), r -> new ArrayList<>()).add(event);
    }
    for (Rowed<Run> run : sections.runs()) {
      List<Rowed<Event>> events = byRun.getOrDefault(run.value().id(), List.of());
      context.method().flatMap(m -> m.test(run.value().test())).ifPresent(t -> run(run, t, events));
    }
  }

  private void run(Rowed<Run> run, TestPlan test, List<Rowed<Event>> events) {
    List<Rowed<Event>> stops =
        events.stream().filter(e -> e.value().type() == Event.Type.STOP).toList();
    if (run.value().kind() == Run.Kind.COUNTED && !events.isEmpty()) {
      ends(run);
    }
    Map<Integer, Rowed<Event>> byBatch = new LinkedHashMap<>();
    for (Rowed<Event> stop : stops) {
      int batch = number(stop.value().batch());
      if (byBatch.putIfAbsent(batch, stop) != null) {
        stop.row()
            .error(
                "event",
                "a second stop of "
                    + run.value().id()
                    + (test.batches() == 1 ? "" : " batch " + batch),
                "one stop for each batch",
                "fill in \"batch\", or let one correct the other");
      }
      stop(stop, test, events);
    }
  }

  /** Looks at rows as written, also at those with a fault that is told elsewhere. */
  private void ends(Rowed<Run> run) {
    Set<String> events =
        context.rows().getOrDefault(Tables.EVENTS, List.of()).stream()
            .filter(r -> r.raw("run").strip().equals(run.value().id()))
            .map(r -> r.raw("event").strip())
            .collect(Collectors.toSet());
    if (!Words.all(Event.Type.class).containsAll(events)) {
      return;
    }
    if (!events.contains("stop")) {
      run.row()
          .warning(
              "run",
              run.value().id() + " has events but no stop",
              "a stop event that says what ended it",
              "add it to events.csv");
    } else if (!events.contains("start") && !events.contains("load")) {
      run.row()
          .warning(
              "run",
              run.value().id() + " has a stop but neither start nor load",
              "an event from which its time counts",
              "add a load to events.csv");
    }
  }

  private static void stop(Rowed<Event> stop, TestPlan test, List<Rowed<Event>> events) {
    String cause = stop.value().value();
    if (cause == null) {
      stop.row()
          .warning(
              "event",
              "a stop that does not say what ended the run",
              "one of " + String.join(", ", Event.STOP_CAUSES) + " in \"value\"",
              "");
    } else if (!cause.equals("abort") && Event.STOP_CAUSES.contains(cause)) {
      planned(stop, test, cause);
    }
    double begun = begun(stop.value().batch(), events);
    double took = stop.value().elapsedSeconds() - begun;
    if (took < 0) {
      stop.row().error("time", "a stop before its load", "a time after the load", "");
    }
    Optional<Quantity> cap = test.cap().map(StopRule::at);
    cap.ifPresent(c -> cap(stop, cause, took, c));
  }

  private static void planned(Rowed<Event> stop, TestPlan test, String cause) {
    List<String> rules = test.stops().stream().map(s -> Words.of(s.when())).toList();
    if (!rules.isEmpty() && !rules.contains(cause)) {
      stop.row()
          .warning(
              "value",
              "a stop by " + cause,
              "a stop rule of the test (" + String.join(", ", rules) + ")",
              "if it is right, the method was not followed: enter a deviation");
    }
  }

  private static void cap(Rowed<Event> stop, @Nullable String cause, double took, Quantity cap) {
    boolean reached = took >= cap.contract() + HAND_SECONDS;
    if ("cap".equals(cause) && took < cap.contract() - HAND_SECONDS) {
      stop.row()
          .error(
              "value",
              "cap, after " + minutes(took),
              "a cap of " + cap + " that was reached",
              "say what ended the run, or correct the time");
    } else if (reached && cause != null && !cause.equals("cap") && !cause.equals("abort")) {
      stop.row()
          .error(
              "value",
              cause + ", after " + minutes(took),
              "cap: the limit of " + cap + " was passed",
              "write cap; the run is then known as longer than " + cap);
    }
  }

  /** Elapsed time of the batch's load; of the run's when it has none; else the start. */
  private static double begun(@Nullable Integer batch, List<Rowed<Event>> events) {
    return events.stream()
        .map(Rowed::value)
        .filter(e -> e.type() == Event.Type.LOAD && number(e.batch()) == number(batch))
        .mapToDouble(Event::elapsedSeconds)
        .min()
        .orElse(0);
  }

  /** A run with one batch need not number it. */
  private static int number(@Nullable Integer batch) {
    return Objects.requireNonNullElse(batch, 1);
  }

  private static String minutes(double seconds) {
    long whole = Math.round(seconds);
    return whole / 60 + " min " + whole % 60 + " s";
  }
}
