package ovenproof.core.trace;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * One table per channel, one below the other, each under a line that names the channel and the same
 * line of names. They become one table with the channel's name in every row.
 */
final class Sections {

  private static final int LARGEST_BYTES = 100 << 20;
  private static final int HEAD_LINES = 60;
  private static final Pattern TITLE =
      Pattern.compile(
          "(?i)[#\\[\\s\"']*(?:channel|sensor|probe|input|series|trace|signal|tag|variable|kanal"
              + "|messstelle|fühler|sonde|canal|voie|capteur)( ?(?:name|id|no\\.?|#))?\\b\\s*[:=,;\\t ]?\\s*(.{1,60}?)"
              + "[\\]\\s\"',;]*");

  private Sections() {}

  /** The text as one table; null when it is not made of such sections. */
  static byte @Nullable [] joined(LogText text, List<String> sample) {
    String header = text.to() - text.from() > LARGEST_BYTES ? null : header(sample);
    if (header == null) {
      return null;
    }
    char delimiter = delimiter(header);
    StringBuilder result = new StringBuilder();
    List<String> above = new ArrayList<>();
    Set<String> titles = new HashSet<>();
    String title = null;
    boolean inRows = false;
    for (LogText.Line line : text.lines(text.from(), Integer.MAX_VALUE, Integer.MAX_VALUE)) {
      String row = line.text();
      String named = title(row);
      if (named != null && row.indexOf(delimiter) == row.lastIndexOf(delimiter)) {
        title = named;
        inRows = false;
      } else if (row.strip().equals(header)) {
        inRows = true;
        if (title == null || !titles.add(title)) {
          return null;
        }
      } else if (inRows && title != null && row.indexOf(delimiter) >= 0) {
        result.append(quoted(title, delimiter)).append(delimiter).append(row).append('\n');
      } else if (title == null) {
        above.add(row);
      }
    }
    if (titles.size() < 2) {
      return null;
    }
    String lead = String.join("\n", above) + "\n\n\nchannel" + delimiter + header + "\n";
    return (lead + result).getBytes(StandardCharsets.UTF_8);
  }

  private static String quoted(String title, char delimiter) {
    return title.replace(delimiter, ' ').replace('"', ' ').strip();
  }

  /** The line of names under the first title; null when there is none. */
  private static @Nullable String header(List<String> sample) {
    List<String> lines =
        sample.stream().limit(HEAD_LINES).map(String::strip).filter(l -> !l.isEmpty()).toList();
    for (int i = 0; i + 2 < lines.size(); i++) {
      if (title(lines.get(i)) == null) {
        continue;
      }
      for (int h = i + 1; h < Math.min(i + 6, lines.size() - 1); h++) {
        String names = lines.get(h);
        boolean parted = delimiter(names) != 0;
        boolean header = parted && names.matches("[^\\d]{0,3}\\p{L}.*") && title(names) == null;
        if (header && lines.get(h + 1).matches("[\"'\\s]*[-+]?\\d.*")) {
          return names;
        }
      }
    }
    return null;
  }

  private static char delimiter(String line) {
    for (char c : new char[] {'\t', ';', ','}) {
      if (line.indexOf(c) > 0) {
        return c;
      }
    }
    return 0;
  }

  /** The channel that a line names; null when it names none. */
  private static @Nullable String title(String line) {
    if (line.length() > 120) {
      return null;
    }
    Matcher m = TITLE.matcher(line);
    return m.matches() && m.group(2).matches(".*[\\p{L}\\d].*") ? m.group(2).strip() : null;
  }
}
