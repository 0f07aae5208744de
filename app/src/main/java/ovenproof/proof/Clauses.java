package ovenproof.proof;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Where a sentence's clauses begin: at commas, dashes, brackets and joining words. Which clause a
 * word stands in says how close it belongs to a number.
 */
final class Clauses {
  private static final String JOINING =
      "and|but|while|whereas|against|versus|vs|compared|then|though|although|yet|so|now|okay|because|where|when|which|who";

  private static final Pattern BOUNDARY =
      Pattern.compile(
          "(?:[;:()—–|]|,(?!\\d{3})|\\s-\\s)(?:\\s*\\b(?:"
              + JOINING
              + ")\\b)?|\\b(?:"
              + JOINING
              + ")\\b",
          Pattern.CASE_INSENSITIVE);

  /** "In terms of juiciness, …", "For crispness, …" speaks of all that follows. */
  private static final Pattern TOPIC_FIRST =
      Pattern.compile(
          "\\s*(?:and |but |so )?(?:in terms of|as for|for|on|when it comes to|as to|regarding|speaking of|in the|judged by|by|measured by|on the)\\s+(?:\\p{L}+\\s+){0,4}\\p{L}+\\s*,",
          Pattern.CASE_INSENSITIVE);

  private final List<Integer> starts = new ArrayList<>();
  private final Set<Integer> introductions = new HashSet<>();

  Clauses(String text) {
    if (TOPIC_FIRST.matcher(text).lookingAt()) {
      introductions.add(0);
    }
    Matcher matcher = BOUNDARY.matcher(text);
    while (matcher.find()) {
      boolean colon = text.charAt(matcher.start()) == ':';
      boolean decimalComma =
          matcher.start() > 0
              && matcher.end() < text.length()
              && Character.isDigit(text.charAt(matcher.start() - 1))
              && Character.isDigit(text.charAt(matcher.end()));
      if (!decimalComma) {
        if (colon) {
          introductions.add(starts.size());
        }
        starts.add(matcher.start());
      }
    }
  }

  /** Whether a clause ends in a colon, so that it speaks of all that follows. */
  boolean introduces(int clause) {
    return introductions.contains(clause);
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
