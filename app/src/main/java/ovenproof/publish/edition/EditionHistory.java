package ovenproof.publish.edition;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The editions of a review, oldest first. Only grows. */
public record EditionHistory(List<FrozenEdition> editions) {

  public EditionHistory {
    editions = List.copyOf(editions);
    for (int i = 0; i < editions.size(); i++) {
      if (editions.get(i).number() != i + 1) {
        throw new IllegalArgumentException(
            "editions must be numbered from 1, found "
                + editions.get(i).number()
                + " at place "
                + (i + 1));
      }
    }
  }

  public static EditionHistory none() {
    return new EditionHistory(List.of());
  }

  /** The newest edition, or null when nothing was published. */
  public @Nullable FrozenEdition newest() {
    return editions.isEmpty() ? null : editions.get(editions.size() - 1);
  }

  /**
   * With a further edition, unless it would print the same as the newest one.
   *
   * @param why the reason to be printed, or null
   */
  public EditionHistory then(Edition edition, @Nullable String why) {
    FrozenEdition next = FrozenEdition.of(edition, editions.size() + 1, why);
    FrozenEdition newest = newest();
    return newest != null && newest.printsTheSameAs(next) ? this : with(next);
  }

  private EditionHistory with(FrozenEdition next) {
    List<FrozenEdition> all = new ArrayList<>(editions);
    all.add(next);
    return new EditionHistory(all);
  }

  /** With the newest edition in place of the one that stood there. */
  public EditionHistory newestAs(FrozenEdition edition) {
    List<FrozenEdition> all = new ArrayList<>(editions);
    all.set(all.size() - 1, edition);
    return new EditionHistory(all);
  }

  /** What each edition changed against the one before, the newest first. */
  public List<EditionChange> changes() {
    List<EditionChange> changes = new ArrayList<>();
    for (int i = editions.size() - 1; i > 0; i--) {
      changes.add(EditionChange.between(editions.get(i - 1), editions.get(i)));
    }
    return changes;
  }
}
