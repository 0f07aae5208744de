package ovenproof.draft;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A figure called by name in a draft: {@code {alder/toast/time}}, or {@code {alder/toast/time,
 * second}} for the other unit system alone.
 *
 * @param written as it stands in the draft
 * @param line from 1
 */
public record FigureCall(String written, String name, Part part, int line, int from, int to) {
  private static final Pattern CALL =
      Pattern.compile(
          "\\{([^\\s{},/]{1,80}(?:/[^\\s{},/]{1,80}){1,3})(?:, ?(first|second|both))?\\}");

  /** Which unit system. */
  public enum Part {
    BOTH,
    FIRST,
    SECOND
  }

  /** All calls of a draft, in its order. */
  public static List<FigureCall> in(String draft) {
    List<FigureCall> calls = new ArrayList<>();
    Matcher found = CALL.matcher(draft);
    int line = 1;
    int at = 0;
    while (found.find()) {
      for (; at < found.start(); at++) {
        line += draft.charAt(at) == '\n' ? 1 : 0;
      }
      String part = found.group(2);
      calls.add(
          new FigureCall(
              found.group(),
              found.group(1),
              part == null ? Part.BOTH : Part.valueOf(part.toUpperCase(Locale.ROOT)),
              line,
              found.start(),
              found.end()));
    }
    return calls;
  }
}
