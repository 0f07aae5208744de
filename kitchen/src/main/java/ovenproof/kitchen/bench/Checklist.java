package ovenproof.kitchen.bench;

import java.util.List;
import java.util.Map;

/**
 * What the invented ovens have and have not, in the order of {@link #FEATURES}: {@code y} yes,
 * {@code n} no, {@code -} makes no sense for it, {@code ?} nobody looked before it went back.
 *
 * <p>The two ovens of the true tie have different features that weigh the same.
 */
public final class Checklist {

  /** As the method prints them. */
  public static final List<String> FEATURES =
      List.of(
          "Door light",
          "Timer that switches it off",
          "Keep-warm setting",
          "Fan can be switched off",
          "Crumb tray from the front",
          "Second rack in the box",
          "Place for the cord",
          "Elements off while the door is open",
          "Double glass in the door",
          "Beep can be silenced");

  private static final Map<String, String> OVENS =
      Map.of(
          "alder", "yynyyynyyn",
          "siskin", "yynyynynyy",
          "rowan", "nyynyynnyy",
          "hornbeam", "yyyyynnyyn",
          "plover", "yynynnnnnn",
          "larch", "nyn-yn?nn-",
          "whimbrel", "nyyyynnyny",
          "dunnock", "nynnynynn-");

  private static final Map<String, String> NOTES =
      Map.of(
          "alder Crumb tray from the front", "lifts out with one hand",
          "rowan Fan can be switched off", "the fan follows the mode",
          "plover Crumb tray from the front", "the oven has to be tipped",
          "larch Fan can be switched off", "there is no fan",
          "larch Beep can be silenced", "a mechanical bell",
          "dunnock Beep can be silenced", "a mechanical bell",
          "siskin Elements off while the door is open", "they go on glowing");

  private Checklist() {}

  /** What is seen of a feature. */
  public enum Seen {
    YES,
    NO,
    NOT_APPLICABLE,
    NOT_LOOKED_AT
  }

  public static Seen seen(String oven, String feature) {
    String known = OVENS.get(oven);
    if (known == null) {
      throw new IllegalArgumentException("no oven named " + oven);
    }
    return switch (known.charAt(FEATURES.indexOf(feature))) {
      case 'y' -> Seen.YES;
      case 'n' -> Seen.NO;
      case '-' -> Seen.NOT_APPLICABLE;
      default -> Seen.NOT_LOOKED_AT;
    };
  }

  /** What was written beside it; empty for most. */
  public static String note(String oven, String feature) {
    return NOTES.getOrDefault(oven + " " + feature, "");
  }
}
