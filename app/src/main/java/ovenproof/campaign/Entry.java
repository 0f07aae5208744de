package ovenproof.campaign;

import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Something a person entered; never edited, mended by a later entry that names it. */
public interface Entry {
  Provenance origin();

  /**
   * Who, when, and what it mends.
   *
   * @param id key of the entry, or null when it was written without one (then nothing can mend it)
   * @param corrects key of the entry that this one replaces
   */
  record Provenance(
      @Nullable String id, @Nullable String by, @Nullable Instant at, @Nullable String corrects) {
    public static final Provenance UNKNOWN = new Provenance(null, null, null, null);
  }

  /** The entries that hold: those that no later one replaces, in their order. */
  static <E extends Entry> List<E> effective(List<E> entries) {
    Set<String> replaced = new HashSet<>();
    for (E entry : entries) {
      if (entry.origin().corrects() != null) {
        replaced.add(entry.origin().corrects());
      }
    }
    return entries.stream()
        .filter(e -> e.origin().id() == null || !replaced.contains(e.origin().id()))
        .toList();
  }
}
