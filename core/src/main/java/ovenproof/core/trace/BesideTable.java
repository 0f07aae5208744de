package ovenproof.core.trace;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Settings of an instrument that stand to the left of the table's first rows, as oscilloscopes
 * write them: {@code Sample Interval,5.0,,0.00,0.21}, then {@code ,,,5.00,0.23}. They go above it.
 */
final class BesideTable {

  private static final int MOST_SETTINGS = 60;
  private static final int LARGEST_BYTES = 100 << 20;

  private static final Pattern NAME = Pattern.compile("\\p{L}[\\p{L} _.()/]{2,30}");
  private static final Pattern NUMBER =
      Pattern.compile("[-+]?\\d[\\d.,]*([eE][-+]?\\d+)?( ?[a-zA-Z]{1,4})?");

  private BesideTable() {}

  /** The text with its settings above the rows; null when none stand beside them. */
  static byte @Nullable [] apart(LogText text, List<String> sample) {
    String lead = text.to() - text.from() > LARGEST_BYTES ? null : lead(sample);
    if (lead == null) {
      return null;
    }
    List<String> lines =
        text.lines(text.from(), Integer.MAX_VALUE, Integer.MAX_VALUE).stream()
            .map(LogText.Line::text)
            .toList();
    int cells = lead.length();
    char delimiter = lead.charAt(0);
    StringBuilder above = new StringBuilder();
    StringBuilder rows = new StringBuilder();
    for (String line : lines) {
      int from = behind(line, delimiter, cells);
      String setting = from < 0 ? line : line.substring(0, from);
      above.append(isBlank(setting, delimiter) ? "" : setting + "\n");
      rows.append(from < 0 ? "" : line.substring(from)).append('\n');
    }
    return above.append("\n\n\n").append(rows).toString().getBytes(StandardCharsets.UTF_8);
  }

  /** The delimiters that most rows begin with; null when few first rows hold settings there. */
  private static @Nullable String lead(List<String> sample) {
    for (char delimiter : new char[] {',', ';', '\t'}) {
      List<String> lines = sample.stream().filter(l -> !l.isBlank()).toList();
      int settings = (int) lines.stream().takeWhile(l -> l.charAt(0) != delimiter).count();
      List<String> rest = lines.subList(settings, lines.size());
      boolean few = settings >= 2 && settings <= MOST_SETTINGS && rest.size() > settings;
      if (few && rest.stream().allMatch(l -> l.charAt(0) == delimiter)) {
        int empty = rest.stream().mapToInt(l -> leading(l, delimiter)).min().orElse(0);
        List<String> beside = lines.subList(0, settings);
        if (empty >= 2 && beside.stream().allMatch(l -> isBeside(l, delimiter, empty))) {
          return String.valueOf(delimiter).repeat(empty);
        }
      }
    }
    return null;
  }

  private static int leading(String line, char delimiter) {
    int n = 0;
    while (n < line.length() && line.charAt(n) == delimiter) {
      n++;
    }
    return n;
  }

  /** A name, its value, and numbers behind. */
  private static boolean isBeside(String line, char delimiter, int cells) {
    int from = behind(line, delimiter, cells);
    return from > 0 && from < line.length() && line.substring(from).matches("\\s*[-+.\\d].*");
  }

  /** Where the cell begins before which so many stand; −1 when there are fewer. */
  private static int behind(String line, char delimiter, int cells) {
    int at = -1;
    for (int c = 0; c < cells; c++) {
      at = line.indexOf(delimiter, at + 1);
      if (at < 0) {
        return -1;
      }
    }
    return at + 1;
  }

  private static boolean isBlank(String setting, char delimiter) {
    return setting.chars().allMatch(c -> c == delimiter || c <= ' ');
  }

  /** Values that stand under their names in the lines before the first row, as named values. */
  static List<String> underNames(List<String> lines, LineSplitter splitter) {
    List<String> found = new ArrayList<>();
    for (int i = 0; i + 1 < lines.size(); i++) {
      List<String> names = splitter.split(lines.get(i));
      List<String> values = splitter.split(lines.get(i + 1));
      for (int c = 1; c < Math.min(names.size(), values.size()); c++) {
        if (NAME.matcher(names.get(c)).matches() && NUMBER.matcher(values.get(c)).matches()) {
          found.add(names.get(c) + ": " + values.get(c));
        }
      }
    }
    return found;
  }
}
