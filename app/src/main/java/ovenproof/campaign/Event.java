package ovenproof.campaign;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Something that happened in a run, with its time.
 *
 * @param elapsedSeconds since the run's start
 * @param at wall clock, when the run's start is known
 * @param batch which load it belongs to; null for the run as a whole
 * @param value for STOP: which rule fired ({@code ends-by-itself}, {@code time}, {@code core},
 *     {@code shade}, {@code mass-loss}, {@code cap}, {@code abort}); for SIGNAL: the temperature
 *     shown; else free
 */
public record Event(
    String run,
    Type type,
    double elapsedSeconds,
    @Nullable Instant at,
    @Nullable Integer batch,
    @Nullable String value,
    @Nullable String note,
    Provenance origin)
    implements Entry {

  /** What may end a run, as the value of a STOP says it. */
  public static final List<String> STOP_CAUSES =
      List.of("ends-by-itself", "time", "core", "shade", "mass-loss", "cap", "abort");

  /** What can happen. In files in lower case with hyphens: {@code door-open}. */
  public enum Type {
    START,
    /** The appliance says that it is ready. */
    SIGNAL,
    LOAD,
    DOOR_OPEN,
    DOOR_CLOSE,
    TURN,
    SHAKE,
    PROBE_IN,
    PROBE_OUT,
    POWER_OFF,
    /** The run, or a batch of it, ends; the value says which rule fired. */
    STOP,
    /** The food leaves the appliance. */
    REMOVE,
    PHOTO,
    TASTE,
    NOTE;

    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public static Optional<Type> named(String word) {
      for (Type type : values()) {
        if (type.word().equals(word)) {
          return Optional.of(type);
        }
      }
      return Optional.empty();
    }
  }
}
