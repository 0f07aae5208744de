package ovenproof.core.trace;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Rows that a database wrote as statements that would insert them. */
final class SqlRows {

  private static final int LARGEST_BYTES = 100 << 20;
  private static final Pattern INSERT =
      Pattern.compile("(?i)\\s*insert\\s+into\\s+\\S+?\\s*(?:\\(([^)]*)\\))?\\s*values\\s*(.*)");
  private static final Pattern CREATE =
      Pattern.compile("(?is)create\\s+table[^(]*\\((.*?)\\)\\s*(;|\\n|$).*");

  private SqlRows() {}

  /**
   * The rows under the names of their columns; null when the text is not made of such statements.
   */
  static byte @Nullable [] table(LogText text, List<String> sample) {
    boolean inserts =
        sample.stream()
            .limit(200)
            .anyMatch(l -> l.length() < 1 << 20 && INSERT.matcher(l).matches());
    if (!inserts || text.to() - text.from() > LARGEST_BYTES) {
      return null;
    }
    String names = "";
    StringBuilder rows = new StringBuilder();
    StringBuilder before = new StringBuilder();
    int found = 0;
    for (LogText.Line line : text.lines(text.from(), Integer.MAX_VALUE, Integer.MAX_VALUE)) {
      Matcher insert = INSERT.matcher(line.text());
      String tuples = insert.matches() ? insert.group(2) : found > 0 ? line.text() : "";
      if (insert.lookingAt() && insert.group(1) != null) {
        names = insert.group(1);
      } else if (found == 0 && tuples.isEmpty()) {
        before.append(line.text()).append('\n');
      }
      int open = tuples.indexOf('(');
      int close = open < 0 ? -1 : closing(tuples, open + 1);
      while (close > 0) {
        rows.append(unquoted(tuples.substring(open + 1, close))).append('\n');
        found++;
        open = tuples.indexOf('(', close);
        close = open < 0 ? -1 : closing(tuples, open + 1);
      }
    }
    Matcher create = CREATE.matcher(before);
    if (names.isEmpty() && create.find()) {
      names = columns(create.group(1));
    }
    String header = names.replaceAll("[`\"\\[\\]]", "");
    return found < 2 ? null : (header + "\n" + rows).getBytes(StandardCharsets.UTF_8);
  }

  /** The bracket that closes a tuple, outside of quotes; −1 when there is none. */
  private static int closing(String text, int from) {
    boolean quoted = false;
    for (int i = from; i < text.length(); i++) {
      char c = text.charAt(i);
      quoted ^= c == '\'';
      if (c == ')' && !quoted) {
        return i;
      }
    }
    return -1;
  }

  private static String unquoted(String tuple) {
    return tuple.replaceAll("'([^',]*)'", "$1").replaceAll("(?i)\\bnull\\b", "");
  }

  /** The first word of each part of a definition that is no constraint. */
  private static String columns(String definition) {
    List<String> names = new ArrayList<>();
    for (String part : definition.split(",")) {
      String[] words = part.strip().split("\\s+");
      if (words.length > 1
          && !words[0].matches("(?i)primary|foreign|unique|key|constraint|check")) {
        names.add(words[0]);
      }
    }
    return String.join(",", names);
  }
}
