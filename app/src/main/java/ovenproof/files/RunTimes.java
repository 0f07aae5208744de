package ovenproof.files;

import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Event;
import ovenproof.campaign.Run;

/** From when to when each run went on: from its first event or start to its last event. */
final class RunTimes {
  private final Map<String, Span> spans = new HashMap<>();

  /** A stretch of time; null: open. */
  record Span(@Nullable Instant from, @Nullable Instant to) {
    static final Span ALWAYS = new Span(null, null);

    /** Whether the two share more than a moment. */
    boolean overlaps(Span other) {
      return before(from, other.to) && before(other.from, to);
    }

    private static boolean before(@Nullable Instant from, @Nullable Instant to) {
      return from == null || to == null || from.isBefore(to);
    }

    Span within(@Nullable Instant earliest, @Nullable Instant latest) {
      Instant newFrom = earliest == null ? from : earliest;
      Instant newTo = latest == null ? to : latest;
      return new Span(newFrom, newTo);
    }
  }

  RunTimes(List<Rowed<Run>> runs, List<Rowed<Event>> events) {
    for (Rowed<Run> run : runs) {
      Instant started = run.value().started();
      if (started != null) {
        spans.putIfAbsent(run.value().id(), new Span(started, started));
      }
    }
    for (Rowed<Event> event : events) {
      Instant at = event.value().at();
      if (at != null && event.value().type() != Event.Type.TASTE) {
        spans.computeIfPresent(event.value().run(), (id, span) -> stretched(span, at));
      }
    }
  }

  private static Span stretched(Span span, Instant at) {
    Instant from = span.from();
    Instant to = span.to();
    return new Span(
        from == null || at.isBefore(from) ? at : from, to == null || at.isAfter(to) ? at : to);
  }

  /** Empty when the run's start is unknown. */
  Optional<Span> of(String run) {
    return Optional.ofNullable(spans.get(run));
  }
}
