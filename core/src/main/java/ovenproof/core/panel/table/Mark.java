package ovenproof.core.panel.table;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A cell as a number: decimal point or comma, "7/10", the usual words of verbal scales. */
final class Mark {

  private static final Set<String> MISSING =
      Set.of(
          "", "na", "n/a", "nan", "null", "-", "--", "–", "—", ".", "..", "?", "missing", "#n/a",
          "k.a.", "n.a.");

  /** Only where marks stand: a product may be called X. */
  private static final Set<String> NO_MARK =
      Set.of("x", "none", "absent", "*", "not rated", "did not taste", "no answer");

  private static final Pattern FRACTION =
      Pattern.compile("(-?\\d+(?:[.,]\\d+)?)\\s*(?:/|of|out of|von|sur)\\s*\\d+");

  private static final Map<String, Double> WORDS = new HashMap<>();

  static {
    String[] liking = {
      "dislike extremely", "dislike very much", "dislike moderately", "dislike slightly",
      "neither like nor dislike", "like slightly", "like moderately", "like very much",
      "like extremely"
    };
    for (int i = 0; i < liking.length; i++) {
      WORDS.put(liking[i], i + 1.0);
    }
    String[] right = {
      "much too little", "too little", "just about right", "too much", "much too much"
    };
    for (int i = 0; i < right.length; i++) {
      WORDS.put(right[i], i + 1.0);
    }
    WORDS.put("just right", 3.0);
    WORDS.put("not enough", 2.0);
    WORDS.put("far too little", 1.0);
    WORDS.put("far too much", 5.0);
  }

  private Mark() {}

  static boolean isMissing(String cell) {
    return cell.isEmpty() || cell.length() < 14 && MISSING.contains(cell.toLowerCase(Locale.ROOT));
  }

  /** Whether a cell among marks says that there is none. */
  static boolean isNoMark(String cell) {
    return isMissing(cell) || cell.length() < 14 && NO_MARK.contains(cell.toLowerCase(Locale.ROOT));
  }

  /** The number; NaN when the cell is none. */
  static double parse(String cell) {
    double plain = plain(cell);
    if (!Double.isNaN(plain)) {
      return plain;
    }
    String folded = Vocabulary.fold(cell);
    Matcher fraction = FRACTION.matcher(folded);
    if (fraction.matches()) {
      return plain(fraction.group(1));
    }
    return WORDS.getOrDefault(folded, Double.NaN);
  }

  private static double plain(String cell) {
    boolean digit = false;
    int length = cell.length();
    if (length == 0 || length > 24) {
      return Double.NaN;
    }
    for (int i = 0; i < length; i++) {
      char c = cell.charAt(i);
      digit |= c >= '0' && c <= '9';
      if (!(c >= '0' && c <= '9'
          || c == '.'
          || c == ','
          || c == '-'
          || c == '+'
          || c == 'e'
          || c == 'E'
          || c == '−')) {
        return Double.NaN;
      }
    }
    if (!digit) {
      return Double.NaN;
    }
    try {
      return Double.parseDouble(cell.replace(',', '.').replace('−', '-'));
    } catch (NumberFormatException e) {
      return Double.NaN;
    }
  }
}
