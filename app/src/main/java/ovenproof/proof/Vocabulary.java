package ovenproof.proof;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Dimension;

/** By which words people speak of a measure, and which adjectives compare it. */
final class Vocabulary {

  /** Which end of a measure an adjective means. */
  enum Direction {
    HIGH,
    LOW
  }

  /**
   * An adjective in its stem.
   *
   * @param takes ids of registered measures it may speak of, best first; empty: any measure of
   *     {@code dimension}
   */
  record Adjective(Direction direction, List<String> takes, @Nullable Dimension dimension) {}

  private static final Map<String, String> SYNONYMS = new HashMap<>();
  private static final Map<String, Adjective> ADJECTIVES = new HashMap<>();

  static {
    SYNONYMS.put(
        "preheat-first",
        "preheat heat heats heated reach reached ready warm get got up temperature");
    SYNONYMS.put("preheat-band", "preheat settle settled within band hold held stay");
    SYNONYMS.put("preheat-steady", "preheat settle settled steady stable");
    SYNONYMS.put("signal-time", "signal beep beeped light lit ready announced chime");
    SYNONYMS.put(
        "time-to-stop",
        "took take takes taken time done cook cooked cooking bake baked baking roast roasted toast toasted minutes finish finished needed needs");
    SYNONYMS.put("overshoot", "overshoot overshot overshoots beyond past exceed exceeded above");
    SYNONYMS.put("offset", "offset off dial thermostat wrong hot cold above below error accurate");
    SYNONYMS.put(
        "steady-mean",
        "mean average averaged held ran runs actual real true inside centre center temperature cavity settled");
    SYNONYMS.put("highest", "highest peak peaked hottest maximum max reached reach top topped got");
    SYNONYMS.put(
        "spread", "spread uneven even differ differed corner corners points apart hot cold spot");
    SYNONYMS.put("spread-range", "range spread corner corners apart between");
    SYNONYMS.put("cycle-amplitude", "swing swung swings cycle cycled cycling amplitude");
    SYNONYMS.put("cycle-period", "cycle period every");
    SYNONYMS.put("energy", "energy electricity used uses consumed kilowatt power consumption");
    SYNONYMS.put(
        "core-highest", "core inside internal centre middle temperature reached peaked joint meat");
    SYNONYMS.put(
        "mass-loss", "lost lose loses loss weight mass moisture water juice dry dried shrank");
    SYNONYMS.put("lightness-mean", "shade colour color light dark pale brown lightness");
    SYNONYMS.put(
        "lightness-difference", "shade colour color darker lighter paler target wanted off");
    SYNONYMS.put("shade-difference", "shade colour color target off distance");
    SYNONYMS.put("evenness-sd", "even uneven evenness patchy mottled");
    SYNONYMS.put("evenness-range", "even uneven evenness patchy");
    SYNONYMS.put("rim-difference", "rim edge edges darker border");
    SYNONYMS.put("share-dark", "burnt dark scorched share");
    SYNONYMS.put("share-pale", "pale share");

    List<String> times =
        List.of("time-to-stop", "preheat-first", "preheat-band", "preheat-steady", "signal-time");
    List<String> heat = List.of("highest", "steady-mean", "core-highest");
    List<String> shade = List.of("lightness-mean", "lightness-difference");
    List<String> even = List.of("evenness-sd", "evenness-range", "spread", "spread-range");
    adjective("fast quick speed swift", Direction.LOW, times, Dimension.TIME);
    adjective("slow long", Direction.HIGH, times, Dimension.TIME);
    adjective("short", Direction.LOW, times, Dimension.TIME);
    adjective("hot warm", Direction.HIGH, heat, Dimension.TEMPERATURE);
    adjective("cool cold", Direction.LOW, heat, Dimension.TEMPERATURE);
    adjective("dark brown", Direction.LOW, shade, null);
    adjective("pale light", Direction.HIGH, shade, null);
    adjective("even uniform", Direction.LOW, even, null);
    adjective("uneven patch mottl", Direction.HIGH, even, null);
    adjective("dri dry", Direction.HIGH, List.of("mass-loss"), null);
    adjective("juic moist", Direction.LOW, List.of("mass-loss"), null);
    adjective("cheap", Direction.LOW, List.of("price"), null);
    adjective("dear expensiv pric cost", Direction.HIGH, List.of("price"), null);
    adjective("accurat", Direction.LOW, List.of("offset"), null);
    adjective("econom frug efficient", Direction.LOW, List.of("energy"), null);
    adjective("thirst hungr", Direction.HIGH, List.of("energy"), null);
    adjective("heav", Direction.HIGH, List.of("fact"), Dimension.MASS);
    adjective("good better best strong top", Direction.HIGH, List.of("score"), null);
    adjective("bad wors worst weak poor", Direction.LOW, List.of("score"), null);
  }

  private Vocabulary() {}

  private static void adjective(
      String stems, Direction direction, List<String> takes, @Nullable Dimension dimension) {
    for (String stem : stems.split(" ")) {
      ADJECTIVES.put(stem, new Adjective(direction, takes, dimension));
    }
  }

  static @Nullable Adjective adjective(String stem) {
    return ADJECTIVES.get(stem);
  }

  /** Stems for a registered measure, and for the names it has in this method. */
  static Set<String> wordsOf(String take, String... names) {
    Set<String> words = new HashSet<>();
    String synonyms = SYNONYMS.get(take);
    if (synonyms != null) {
      words.addAll(Stems.ofAll(synonyms));
    }
    for (String name : names) {
      words.addAll(Stems.ofAll(name));
    }
    return words;
  }
}
