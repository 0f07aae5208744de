package ovenproof.core.trace;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A decimal comma in a file whose cells are parted by commas too: {@code 09:30:00,20,5,21,3} under
 * {@code Time,T1,T2}. The names prove it: there are fewer of them than cells, by as many as there
 * are cells that can only be the digits behind a mark.
 *
 * @param fractions cells, from 0, that belong to the one before them
 * @param width cells in a full row
 */
record SplitDecimals(List<Integer> fractions, int width) {

  private static final int LARGEST_BYTES = 100 << 20;
  private static final int LINES = 300;
  private static final Pattern WHOLE = Pattern.compile("[-+]?\\d{1,7}");
  private static final Pattern DIGITS = Pattern.compile("\\d{1,6}");
  private static final Pattern CLOCK = Pattern.compile("(.*[T ])?\\d{1,2}:\\d\\d:\\d\\d");

  /** The text with its numbers joined by a point; null when nothing proves that they are split. */
  static byte @Nullable [] joined(LogText text, List<String> sample) {
    SplitDecimals found = text.to() - text.from() > LARGEST_BYTES ? null : find(sample);
    if (found == null) {
      return null;
    }
    StringBuilder result = new StringBuilder();
    text.lines(text.from(), Integer.MAX_VALUE, Integer.MAX_VALUE)
        .forEach(l -> result.append(found.join(l.text())).append('\n'));
    return result.toString().getBytes(StandardCharsets.UTF_8);
  }

  static @Nullable SplitDecimals find(List<String> sample) {
    List<String> lines = sample.subList(0, Math.min(LINES, sample.size()));
    int header = header(lines);
    if (header < 0) {
      return null;
    }
    int names = lines.get(header).strip().replaceAll("[,\\s]+$", "").split(",").length;
    List<String[]> rows = new ArrayList<>();
    for (String line : lines.subList(header + 1, lines.size())) {
      if (!line.isBlank()) {
        rows.add(cells(line));
      }
    }
    int width = rows.stream().mapToInt(r -> r.length).max().orElse(0);
    if (width <= names || width > 2 * names) {
      return null;
    }
    List<String[]> full = rows.stream().filter(r -> r.length == width).toList();
    if (full.size() < 3 || full.size() < 0.3 * rows.size()) {
      return null;
    }
    List<Integer> fractions = fractions(full, width - names);
    return fractions == null ? null : new SplitDecimals(fractions, width);
  }

  /** The line of names right above the first line of numbers; −1 when there is none. */
  private static int header(List<String> lines) {
    for (int i = 0; i + 1 < lines.size(); i++) {
      String line = lines.get(i);
      boolean names = line.indexOf(',') > 0 && !line.contains("\"") && isNames(cells(line));
      if (names && line.indexOf(';') < 0 && line.indexOf('\t') < 0) {
        String next = lines.get(i + 1);
        if (next.indexOf(',') > 0 && !isNames(cells(next)) && next.matches("\\s*[-+\\d].*")) {
          return i;
        }
      }
    }
    return -1;
  }

  private static boolean isNames(String[] cells) {
    return cells.length >= 2 && Arrays.stream(cells).noneMatch(c -> c.matches("[-+]?\\d.*"));
  }

  private static String[] cells(String line) {
    String[] cells = line.strip().split(",", -1);
    for (int c = 0; c < cells.length; c++) {
      cells[c] = cells[c].strip();
    }
    return cells;
  }

  /**
   * Cells of digits behind whole numbers, exactly as many as are too many; digits of one length
   * everywhere are preferred. Null when that is not clear.
   */
  private static @Nullable List<Integer> fractions(List<String[]> rows, int wanted) {
    List<Integer> constant = new ArrayList<>();
    List<Integer> possible = new ArrayList<>();
    for (int c = 1; c < rows.get(0).length; c++) {
      int cell = c;
      boolean digits =
          rows.stream()
              .allMatch(
                  r ->
                      DIGITS.matcher(r[cell]).matches()
                          && (WHOLE.matcher(r[cell - 1]).matches()
                              || CLOCK.matcher(r[cell - 1]).matches()));
      long lengths = rows.stream().mapToInt(r -> r[cell].length()).distinct().count();
      if (digits && lengths == 1) {
        constant.add(c);
      }
      if (digits) {
        possible.add(c);
      }
    }
    List<Integer> choice = apart(constant);
    choice = choice.size() == wanted ? choice : apart(possible);
    return choice.size() == wanted ? choice : null;
  }

  /** A cell behind a fraction begins a number of its own. */
  private static List<Integer> apart(List<Integer> cells) {
    List<Integer> apart = new ArrayList<>();
    for (int c : cells) {
      if (apart.isEmpty() || apart.get(apart.size() - 1) < c - 1) {
        apart.add(c);
      }
    }
    return apart;
  }

  private String join(String line) {
    String[] cells = cells(line);
    if (cells.length != width || isNames(cells)) {
      return line;
    }
    StringBuilder joined = new StringBuilder(cells[0]);
    for (int c = 1; c < cells.length; c++) {
      joined.append(fractions.contains(c) ? '.' : ',').append(cells[c]);
    }
    return joined.toString();
  }
}
