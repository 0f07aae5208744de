package ovenproof.core.trace;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Cells in quotes that run over several lines, as spreadsheets write names with a line break. */
final class QuotedLines {

  private static final int LARGEST_BYTES = 100 << 20;
  private static final int HEAD_LINES = 40;
  private static final int LONGEST_CELL_LINES = 6;

  private QuotedLines() {}

  /** The text with such cells on one line; null when its first lines hold none. */
  static byte @Nullable [] joined(LogText text, List<String> sample) {
    List<String> head = sample.subList(0, Math.min(HEAD_LINES, sample.size()));
    boolean broken = head.stream().anyMatch(QuotedLines::isOpen);
    if (!broken || text.to() - text.from() > LARGEST_BYTES || join(head).size() == head.size()) {
      return null;
    }
    List<String> lines =
        text.lines(text.from(), Integer.MAX_VALUE, Integer.MAX_VALUE).stream()
            .map(LogText.Line::text)
            .toList();
    return (String.join("\n", join(lines)) + "\n").getBytes(StandardCharsets.UTF_8);
  }

  private static List<String> join(List<String> lines) {
    List<String> result = new ArrayList<>();
    int i = 0;
    while (i < lines.size()) {
      int end = isOpen(lines.get(i)) ? closing(lines, i) : i;
      result.add(end == i ? lines.get(i) : String.join(" ", lines.subList(i, end + 1)));
      i = end + 1;
    }
    return result;
  }

  /** The line that closes the quote; the same line when none does soon. */
  private static int closing(List<String> lines, int open) {
    int quotes = count(lines.get(open));
    for (int i = open + 1; i < Math.min(lines.size(), open + LONGEST_CELL_LINES); i++) {
      quotes += count(lines.get(i));
      if (quotes % 2 == 0) {
        return i;
      }
    }
    return open;
  }

  /** A cell begins with a quote and no quote ends it on this line; 5" is none. */
  private static boolean isOpen(String line) {
    if (line.length() > 10_000 || count(line) % 2 == 0) {
      return false;
    }
    int last = line.lastIndexOf('"');
    String before = line.substring(0, last).strip();
    return before.isEmpty() || ",;\t".indexOf(before.charAt(before.length() - 1)) >= 0;
  }

  private static int count(String line) {
    return (int) line.chars().filter(c -> c == '"').count();
  }
}
