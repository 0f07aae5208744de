package ovenproof.desk;

import java.time.Instant;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * A piece of work that takes longer than a person waits.
 *
 * @param input what the work needs, as its kind writes it
 * @param done steps done
 * @param total steps in all; 0 while unknown
 * @param message what is being done, or why it failed
 * @param result what came of it; null until done
 */
public record Job(
    String id,
    String kind,
    @Nullable String campaign,
    String input,
    State state,
    long done,
    long total,
    String message,
    @Nullable String result,
    String who,
    Instant createdAt,
    Instant updatedAt) {

  /** Where a job stands. */
  public enum State {
    WAITING,
    RUNNING,
    DONE,
    FAILED,
    CANCELLED;

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    static State named(String word) {
      return valueOf(word.toUpperCase(Locale.ROOT));
    }
  }

  public boolean isOpen() {
    return state == State.WAITING || state == State.RUNNING;
  }
}
