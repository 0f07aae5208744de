package ovenproof.input;

import java.util.Locale;
import java.util.Optional;

/** Finds the word a person probably meant. */
public final class NearestWord {

  private NearestWord() {}

  /**
   * The valid word with the smallest edit distance (insertions, deletions, replacements, swaps of
   * neighbours), ignoring case, if it is at most a third of the word's length away, at least 1; the
   * first of several. Empty if none is near.
   */
  public static Optional<String> to(String written, Iterable<String> valid) {
    String folded = written.toLowerCase(Locale.ROOT);
    int best = Math.max(1, folded.length() / 3) + 1;
    String nearest = null;
    for (String candidate : valid) {
      int distance = distance(folded, candidate.toLowerCase(Locale.ROOT));
      if (distance < best) {
        best = distance;
        nearest = candidate;
      }
    }
    return Optional.ofNullable(nearest);
  }

  /** "did you mean …?", or an empty sentence if nothing is near. */
  public static String remedy(String written, Iterable<String> valid) {
    return to(written, valid).map(word -> "did you mean \"" + word + "\"?").orElse("");
  }

  /** Optimal string alignment distance (Damerau 1964, restricted), three rows. */
  static int distance(String a, String b) {
    int[] beforeLast = new int[b.length() + 1];
    int[] last = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      last[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int[] row = new int[b.length() + 1];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int replace = last[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        row[j] = Math.min(replace, Math.min(last[j], row[j - 1]) + 1);
        boolean swapped =
            i > 1
                && j > 1
                && a.charAt(i - 1) == b.charAt(j - 2)
                && a.charAt(i - 2) == b.charAt(j - 1);
        if (swapped) {
          row[j] = Math.min(row[j], beforeLast[j - 2] + 1);
        }
      }
      beforeLast = last;
      last = row;
    }
    return last[b.length()];
  }
}
