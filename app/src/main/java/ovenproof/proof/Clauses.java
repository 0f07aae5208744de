package ovenproof.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Where a sentence's clauses begin: at commas, dashes, brackets and joining words. Which clause a
 * word stands in says how close it belongs to a number.
 */
final class Clauses {
  private static final String JOINING =
      "and|but|while|whereas|against|versus|vs|compared|then|though|although|yet";

  private static final Pattern BOUNDARY =
      Pattern.compile(
          "(?:[;:()—–|]|,(?!\\d{3})|\\s-\\s)(?:\\s*\\b(?:"
              + JOINING
              + ")\\b)?|\\b(?:"
              + JOINING
              + ")\\b",
          Pattern.CASE_INSENSITIVE);

  private final List<Integer> starts = new ArrayList<>();

  Clauses(String text) {
    Matcher matcher = BOUNDARY.matcher(text);
    while (matcher.find()) {
      boolean decimalComma =
          matcher.start() > 0
              && matcher.end() < text.length()
              && Character.isDigit(text.charAt(matcher.start() - 1))
              && Character.isDigit(text.charAt(matcher.end()));
      if (!decimalComma) {
        starts.add(matcher.start());
      }
    }
  }

  /** Number of the clause that an offset stands in, from 0. */
  int at(int offset) {
    int low = 0;
    int high = starts.size();
    while (low < high) {
      int middle = (low + high) / 2;
      if (starts.get(middle) <= offset) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }
}
