package ovenproof.proof;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

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
   * @param takes ids of registered measures it may speak of, best first; {@code fact:word} is a
   *     fact by that word, {@code score} a total or a test's score
   */
  record Adjective(Direction direction, List<String> takes) {
    Adjective towards(Direction other) {
      return new Adjective(other, takes);
    }
  }

  /** Words of a maker's plate. */
  static final Set<String> PLATE =
      Stems.ofAll("nameplate plate maker manufacturer claims claimed advertised rated box label");

  private static final Map<String, String> SYNONYMS = new HashMap<>();
  private static final Map<String, Adjective> ADJECTIVES = new HashMap<>();
  private static final Map<String, Adjective> NOUNS = new HashMap<>();

  static {
    SYNONYMS.put(
        "preheat-first",
        "preheat heat heats heated reach reached ready warm warms hot get got up temperature cold quickly going");
    SYNONYMS.put("preheat-band", "preheat settle settled within band hold held stay");
    SYNONYMS.put("preheat-steady", "preheat settle settled steady stable");
    SYNONYMS.put("signal-time", "signal beep beeped light lit ready announced chime");
    SYNONYMS.put(
        "time-to-stop",
        "took take takes taken time done cook cooked cooking bake baked baking roast roasted toast toasted minutes finish finished needed needs");
    SYNONYMS.put("overshoot", "overshoot overshot overshoots beyond past exceed exceeded above");
    SYNONYMS.put(
        "offset",
        "offset off dial thermostat wrong hot cold above below error accurate errs err erred asked deviates deviation honest");
    SYNONYMS.put(
        "steady-mean",
        "mean average averaged hold holds held ran runs actual real true inside centre center temperature cavity settled");
    SYNONYMS.put("highest", "highest peak peaked hottest maximum max reached reach top topped got");
    SYNONYMS.put(
        "spread",
        "spread uneven even differ differed corner corners points apart hot cold spot rack thermocouples other");
    SYNONYMS.put("spread-range", "range spread corner corners apart between");
    SYNONYMS.put("cycle-amplitude", "swing swung swings cycle cycled cycling amplitude");
    SYNONYMS.put("cycle-period", "cycle period every");
    SYNONYMS.put("energy", "energy electricity used uses consumed kilowatt power consumption");
    SYNONYMS.put(
        "core-highest", "core inside internal centre middle temperature reached peaked joint meat");
    SYNONYMS.put(
        "mass-loss",
        "lost lose loses loss weight weigh weighed lighter mass moisture water juice dry dried shrank");
    SYNONYMS.put("lightness-mean", "shade colour color light dark pale brown lightness");
    SYNONYMS.put(
        "lightness-difference",
        "shade colour color darker lighter paler pale dark target wanted off");
    SYNONYMS.put("shade-difference", "shade colour color target off distance");
    SYNONYMS.put("evenness-sd", "even uneven evenness patchy mottled");
    SYNONYMS.put("evenness-range", "even uneven evenness patchy");
    SYNONYMS.put("rim-difference", "rim edge edges darker border");
    SYNONYMS.put("share-dark", "burnt dark scorched share");
    SYNONYMS.put("share-pale", "pale share");

    for (String shade : List.of("lightness-mean", "lightness-difference")) {
      SYNONYMS.put(
          shade + ":spread", "unlike alike spread differ differed uneven even apart between");
      SYNONYMS.put(
          shade + ":change", "change changed differ differed second batch first drift later");
      SYNONYMS.put(shade + ":faces", "top underside bottom faces sides against differ");
    }
    SYNONYMS.put(
        "usable-volume", "volume holds hold capacity space room cavity litres inside roomy");
    SYNONYMS.put("mass", "weighs weigh weight mass heavy kilos scale");
    SYNONYMS.put("footprint", "footprint counter worktop area space takes");
    SYNONYMS.put("noise", "noise noisy loud quiet sound decibels fan hum");
    SYNONYMS.put("cord", "cord cable lead flex reach");
    SYNONYMS.put("power", "power draws draw drew watts element elements pulls");

    List<String> times =
        List.of("time-to-stop", "preheat-first", "preheat-band", "preheat-steady", "signal-time");
    List<String> heat = List.of("highest", "steady-mean", "core-highest");
    List<String> shade = List.of("lightness-mean", "lightness-difference");
    List<String> even =
        List.of("evenness-sd", "evenness-range", "spread", "spread-range", "lightness-mean:spread");
    List<String> price = List.of("price");
    List<String> energy = List.of("energy");
    adjective("fast quick quicker fastest quickest speedy swift soon early", Direction.LOW, times);
    adjective("slow late", Direction.HIGH, times);
    adjective("long", Direction.HIGH, with(times, "fact:cord"));
    adjective("short", Direction.LOW, with(times, "fact:cord"));
    adjective("hot warm", Direction.HIGH, heat);
    adjective("cool cold", Direction.LOW, heat);
    adjective("dark brown", Direction.LOW, shade);
    adjective("pale light", Direction.HIGH, shade);
    adjective("even uniform evenly uniformly", Direction.LOW, even);
    adjective("uneven unevenly patchy mottled", Direction.HIGH, even);
    adjective("dry drier driest", Direction.HIGH, List.of("mass-loss"));
    adjective("juicy juicier juiciest moist", Direction.LOW, List.of("mass-loss"));
    adjective("cheap", Direction.LOW, price);
    adjective("dear expensive pricey costly", Direction.HIGH, price);
    adjective("accurate", Direction.LOW, List.of("offset"));
    adjective("economical frugal efficient", Direction.LOW, energy);
    adjective("thirsty hungry", Direction.HIGH, energy);
    adjective("heavy", Direction.HIGH, List.of("fact:mass"));
    adjective("quiet", Direction.LOW, List.of("fact:noise"));
    adjective("loud noisy", Direction.HIGH, List.of("fact:noise"));
    adjective("large big roomy spacious", Direction.HIGH, List.of("fact:volume", "fact:footprint"));
    adjective("small compact", Direction.LOW, List.of("fact:footprint", "fact:volume"));
    adjective("powerful", Direction.HIGH, List.of("fact:power"));
    adjective("good better best strong top highest-scoring", Direction.HIGH, List.of("score"));
    adjective("bad worse worst weak poor", Direction.LOW, List.of("score"));

    noun("electricity energy kilowatt-hours", energy);
    noun("weight mass juice moisture water", List.of("mass-loss", "fact:mass"));
    noun("money", price);
    noun("price prices cost", price);
    noun("noise", List.of("fact:noise"));
    noun("volume room space capacity", List.of("fact:volume", "fact:footprint"));
    noun("footprint", List.of("fact:footprint"));
    noun("cord cable", List.of("fact:cord"));
    noun("power", List.of("fact:power"));
    noun("overshoot", List.of("overshoot"));
    noun("spread", List.of("spread"));
    noun("time wait preheat", times);
    noun("temperature peak", heat);
    noun("score total mark marks", List.of("score"));
  }

  private Vocabulary() {}

  private static void adjective(String words, Direction direction, List<String> takes) {
    for (String word : words.split(" ")) {
      ADJECTIVES.put(Stems.of(word), new Adjective(direction, takes));
    }
  }

  /** What "more" and "most" of a thing mean. */
  private static void noun(String words, List<String> takes) {
    for (String word : words.split(" ")) {
      NOUNS.put(Stems.of(word), new Adjective(Direction.HIGH, takes));
    }
  }

  private static List<String> with(List<String> takes, String more) {
    List<String> all = new java.util.ArrayList<>(takes);
    all.add(more);
    return List.copyOf(all);
  }

  /** "Light" is a shade where food or colour is spoken of, and little mass elsewhere. */
  static @Nullable Adjective light(Focus focus, @Nullable Adjective adjective, String stem) {
    boolean food =
        !focus.tests().isEmpty()
            || focus.weight(Stems.of("shade")) > 0
            || focus.weight(Stems.of("colour")) > 0
            || focus.weight(Stems.of("brown")) > 0;
    return stem.equals(Stems.of("light")) && !food
        ? new Adjective(Direction.LOW, List.of("fact:mass"))
        : adjective;
  }

  /** A thing that there can be more or less of: "the most electricity", "the highest price". */
  static @Nullable Adjective noun(String stem) {
    return NOUNS.get(stem);
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
