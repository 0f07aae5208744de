package ovenproof.proof;

import java.util.HashSet;
import java.util.List;
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
      Stems.ofAll(
          "nameplate plate maker manufacturer claims claimed advertised rated box label promised promises nominal");

  private static final Lexicon LEXICON = Lexicon.load();

  private Vocabulary() {}

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
    return LEXICON.noun(stem);
  }

  static @Nullable Adjective adjective(String stem) {
    return LEXICON.adjective(stem);
  }

  /** Stems for a registered measure, and for the names it has in this method. */
  static Set<String> wordsOf(String take, String... names) {
    Set<String> words = new HashSet<>(LEXICON.words(take));
    for (String name : names) {
      words.addAll(Stems.ofAll(name));
    }
    return words;
  }

  /** Measures of which less is better, for "best" and "worst" said of a number. */
  private static final Set<String> LESS_IS_BETTER =
      Set.of(
          "overshoot",
          "offset",
          "spread",
          "energy",
          "price",
          "time-to-stop",
          "preheat-first",
          "signal-time",
          "mass-loss",
          "evenness-sd",
          "lightness-mean:spread",
          "lightness-mean:change",
          "share-dark",
          "shade-difference",
          "reading");

  static boolean isLessBetter(String take) {
    return LESS_IS_BETTER.contains(take);
  }

  /** Words for how even a thing is are said of its score too: "its evenness score". */
  static Set<String> nounsOf(String take) {
    Set<String> words = new HashSet<>(LEXICON.words(take));
    words.retainAll(Stems.ofAll("evenness even uneven shade colour color"));
    return words;
  }

  /** Words of all marks whose name holds the word of their block: "crunchy" for crispness. */
  static Set<String> wordsOfMark(Set<String> nameStems) {
    return LEXICON.wordsOfMark(nameStems);
  }

  /** Which end of a mark an adjective means: "soggiest" is the least crisp. */
  static Direction ofMark(String stem) {
    return LEXICON.isLowEndOfMark(stem) ? Direction.LOW : Direction.HIGH;
  }
}
