package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Splits lines into cells.
 *
 * @param delimiter character between cells; a blank stands for any run of blanks and tabs
 */
record LineSplitter(char delimiter) {

  static final char BLANKS = ' ';

  private static final Pattern RUN = Pattern.compile("[ \\t\\u00a0]+");
  private static final Pattern HALF_DAY = Pattern.compile("(?i)[ap]\\.?m\\.?");

  List<String> split(String line) {
    return delimiter == BLANKS ? byBlanks(line) : byDelimiter(line);
  }

  /** Quotes protect delimiters; a quote inside a cell that did not start with one is text. */
  private List<String> byDelimiter(String line) {
    List<String> cells = new ArrayList<>();
    int i = 0;
    while (true) {
      int start = i;
      while (i < line.length()
          && (line.charAt(i) == ' ' || (line.charAt(i) == '\t' && delimiter != '\t'))) {
        i++;
      }
      if (i < line.length() && line.charAt(i) == '"') {
        int close = closingQuote(line, i);
        i = close < 0 ? start : close;
      }
      while (i < line.length() && line.charAt(i) != delimiter) {
        i++;
      }
      cells.add(line.substring(start, i).strip());
      if (i >= line.length()) {
        return cells;
      }
      i++;
    }
  }

  private static int closingQuote(String line, int open) {
    int i = open + 1;
    while (i < line.length()) {
      if (line.charAt(i) == '"') {
        if (i + 1 < line.length() && line.charAt(i + 1) == '"') {
          i += 2;
          continue;
        }
        return i + 1;
      }
      i++;
    }
    return -1;
  }

  /** "12:03:10 PM" stays one cell. */
  private static List<String> byBlanks(String line) {
    List<String> cells = new ArrayList<>();
    for (String cell : RUN.split(line.strip())) {
      boolean halfDay = cell.length() <= 4 && HALF_DAY.matcher(cell).matches();
      int last = cells.size() - 1;
      if (halfDay && last >= 0 && cells.get(last).matches("\\d+:\\d+.*")) {
        cells.set(last, cells.get(last) + " " + cell);
      } else if (!cell.isEmpty()) {
        cells.add(cell);
      }
    }
    return cells;
  }

  String word() {
    return switch (delimiter) {
      case ',' -> "comma";
      case ';' -> "semicolon";
      case '\t' -> "tab";
      case '|' -> "pipe";
      case BLANKS -> "blanks";
      default -> String.valueOf(delimiter);
    };
  }
}
