package ovenproof.proof;

import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Set;

/**
 * Reduces English words to rough stems, so that "croquettes" and "croquette", "evenly" and
 * "evenness", "crispest" and "crispness" meet. Only ever compared with other stems.
 */
final class Stems {
  private static final Set<String> EMPTY_WORDS =
      Set.of(
          "a", "an", "the", "of", "to", "and", "or", "in", "on", "at", "for", "by", "with", "from",
          "is", "was", "its", "it", "as", "per", "mean", "means", "score", "mark", "value", "close",
          "wanted", "over", "after", "before", "like", "first", "one", "two");

  private Stems() {}

  static String of(String word) {
    String w = word.toLowerCase(Locale.ROOT).replaceAll("['’]s$", "");
    for (String ending :
        new String[] {
          "iness", "ness", "iest", "ier", "ily", "ing", "est", "ies", "ally", "ly", "er", "ed",
          "es", "s", "y", "e"
        }) {
      if (w.endsWith(ending) && w.length() - ending.length() >= 3) {
        return undouble(w.substring(0, w.length() - ending.length()));
      }
    }
    return w;
  }

  /** hottest → hott → hot. */
  private static String undouble(String stem) {
    int n = stem.length();
    boolean doubled =
        n > 3 && stem.charAt(n - 1) == stem.charAt(n - 2) && "lsz".indexOf(stem.charAt(n - 1)) < 0;
    return doubled ? stem.substring(0, n - 1) : stem;
  }

  /** Stems of the words that carry meaning. */
  static Set<String> ofAll(String text) {
    Set<String> stems = new LinkedHashSet<>();
    for (String word : text.toLowerCase(Locale.ROOT).split("[^\\p{L}\\p{N}']+")) {
      if (word.length() > 1 && !EMPTY_WORDS.contains(word)) {
        stems.add(of(word));
      }
    }
    return stems;
  }
}
