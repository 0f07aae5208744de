package ovenproof.core.trace;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A line that a terminal or a log framework put its own stamp in front of.
 *
 * @param stamp as written
 * @param rest of the line
 */
record StampedLine(String stamp, String rest) {

  private static final Pattern BRACKETED =
      Pattern.compile("^\\s*[\\[(]([^\\])]{4,40})[\\])]\\s*[:>\\-|,;]*\\s*(.+)$");
  private static final Pattern ARROW =
      Pattern.compile("^\\s*(\\S[^>|]{3,40}?)\\s*(?:->|=>|>|\\|)\\s*(.+)$");
  private static final Pattern NAMED_MONTH =
      Pattern.compile(
          "^\\s*((?:\\p{L}{2,9}[.,]? +)?(?:\\d{1,2}[. ]+\\p{L}{3,9}|\\p{L}{3,9}[. ]+\\d{1,2}),?(?: +\\d{4})? +\\d{1,2}:\\d{2}(?::\\d{2})?(?:[.,]\\d+)?(?: ?[AaPp][Mm])?(?: +[A-Z]{3,4})?(?: +\\d{4})?)[\\s,;:]+(.+)$");

  /** Null when the line does not begin with a date whose month is named. */
  static @Nullable StampedLine namedMonth(String line) {
    if (line.length() > 100_000 || !line.matches("^\\s*[\\p{L}\\d].*")) {
      return null;
    }
    Matcher m = NAMED_MONTH.matcher(line);
    boolean stamped = m.matches() && TimeText.isTime(new TimeText().parse(m.group(1)));
    return stamped ? new StampedLine(m.group(1), m.group(2)) : null;
  }

  /** Null when the line does not begin with a stamp of its own. */
  static @Nullable StampedLine split(String line) {
    if (line.length() > 100_000) {
      return null;
    }
    for (Pattern pattern : new Pattern[] {BRACKETED, ARROW, NAMED_MONTH}) {
      Matcher m = pattern.matcher(line);
      if (m.matches() && TimeText.isTime(new TimeText().parse(m.group(1)))) {
        return new StampedLine(m.group(1), m.group(2));
      }
    }
    return null;
  }
}
