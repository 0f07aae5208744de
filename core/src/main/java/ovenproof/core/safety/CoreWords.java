package ovenproof.core.safety;

import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What is said of a core: state, figures, where the floor is published, and the caution. */
public final class CoreWords {

  /** Stands wherever a core is judged. */
  public static final String CAUTION =
      "A floor is no promise: measure the coldest place; local food rules and trained people"
          + " prevail.";

  private CoreWords() {}

  /** One paragraph. */
  public static String of(CoreSafety judged, @Nullable Criterion wanted) {
    return "Core: "
        + judged.state().words()
        + ". "
        + Character.toUpperCase(judged.why().charAt(0))
        + judged.why().substring(1)
        + ". "
        + source(wanted)
        + CAUTION;
  }

  /** The published floor that a criterion is, with its region; says so when it is none. */
  public static String source(@Nullable Criterion wanted) {
    if (!(wanted instanceof Criterion.FloorWithRest floor)) {
      return "";
    }
    List<PublishedFloor> published = published(floor);
    if (published.isEmpty()) {
      return "This pair of temperature and rest is none of the published floors known here. ";
    }
    String foods = published.stream().map(PublishedFloor::food).collect(Collectors.joining("; "));
    PublishedFloor first = published.get(0);
    return "Published for " + foods + ": " + first.source() + " (" + first.region() + "). ";
  }

  /** The published floors with this temperature, to a tenth of a degree, and this rest. */
  public static List<PublishedFloor> published(Criterion.FloorWithRest floor) {
    return PublishedFloor.all().stream()
        .filter(p -> Math.abs(p.celsius() - floor.floorCelsius()) < 0.11)
        .filter(p -> p.restSeconds() == floor.restSeconds())
        .toList();
  }
}
