package ovenproof.core.panel.table;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * A sheet split into header and body: titles above, blank lines, repeated headers, notes below and
 * section lines taken out.
 *
 * @param headers per column one or two parts; empty text where nothing is written
 * @param body rows with data
 * @param sections the section line above each body row; empty text without
 * @param notes what was left out
 * @param turnedLines of a table that lay on its side, the line that each column was; empty for
 *     others
 */
record Grid(
    String sheet,
    List<List<String>> headers,
    List<Sheet.Row> body,
    List<String> sections,
    List<String> notes,
    List<Integer> turnedLines) {

  private static final Pattern RULE = Pattern.compile(":?[-=_]{2,}:?");

  static Grid of(Sheet sheet) {
    List<Sheet.Row> rows = new ArrayList<>();
    int blank = 0;
    for (Sheet.Row row : sheet.rows()) {
      Sheet.Row clean = clean(row);
      if (filled(clean) == 0) {
        blank++;
      } else if (!isComment(clean) && !isRule(clean)) {
        rows.add(clean);
      }
    }
    List<String> notes = new ArrayList<>();
    if (blank > 0) {
      notes.add(blank + (blank == 1 ? " blank line was" : " blank lines were") + " left out.");
    }
    if (SidewaysTable.is(rows)) {
      notes.add("The table lies on its side (one column per mark): it was turned.");
      List<Integer> lines = rows.stream().map(Sheet.Row::line).toList();
      Grid upright = split(sheet.name(), SidewaysTable.turn(rows), notes);
      return new Grid(upright.sheet, upright.headers, upright.body, upright.sections, notes, lines);
    }
    return split(sheet.name(), rows, notes);
  }

  /** Line in the file of a cell of the body. */
  int line(int row, int column) {
    return turnedLines.isEmpty() ? body.get(row).line() : turnedLines.get(column);
  }

  /** Column in the file, from 1, of a cell of the body. */
  int column(int row, int column) {
    return turnedLines.isEmpty() ? column + 1 : body.get(row).line();
  }

  private static Sheet.Row clean(Sheet.Row row) {
    List<String> cells = new ArrayList<>();
    for (String cell : row.cells()) {
      cells.add(clean(cell));
    }
    return new Sheet.Row(row.line(), cells);
  }

  private static String clean(String cell) {
    boolean plain = true;
    boolean blank = true;
    for (int i = 0; i < cell.length() && plain; i++) {
      char c = cell.charAt(i);
      plain = c >= ' ' && c != '\u00A0' && c != '\uFEFF' && !(blank && c == ' ');
      blank = c == ' ';
    }
    plain &= !blank || cell.isEmpty();
    String text = plain ? cell : withoutStraySpace(cell);
    // Spreadsheets put an apostrophe before numbers that were typed as text.
    boolean quoted = text.length() > 1 && text.charAt(0) == '\'';
    return quoted && !Double.isNaN(Mark.parse(text.substring(1))) ? text.substring(1) : text;
  }

  private static String withoutStraySpace(String cell) {
    String text = cell;
    if (!text.isEmpty() && text.charAt(0) == '\uFEFF') {
      text = text.substring(1);
    }
    return text.replace('\u00A0', ' ').replaceAll("\\s{2,}", " ").strip();
  }

  private static boolean isComment(Sheet.Row row) {
    return filled(row) == 1 && row.cell(0).startsWith("#") && row.cell(0).length() > 1;
  }

  /** |---|---| under a header, or a line of dashes. */
  private static boolean isRule(Sheet.Row row) {
    for (String cell : row.cells()) {
      boolean ruled = cell.isEmpty() || ":-=_".indexOf(cell.charAt(0)) >= 0;
      if (!ruled || !cell.isEmpty() && !RULE.matcher(cell).matches()) {
        return false;
      }
    }
    return true;
  }

  private static int filled(Sheet.Row row) {
    int count = 0;
    for (String cell : row.cells()) {
      count += cell.isEmpty() ? 0 : 1;
    }
    return count;
  }

  private static Grid split(String sheet, List<Sheet.Row> rows, List<String> notes) {
    int width = rows.stream().mapToInt(r -> r.cells().size()).max().orElse(0);
    int usual = usualFilled(rows);
    int start = 0;
    while (start < rows.size() && filled(rows.get(start)) < Math.max(2, (usual + 1) / 2)) {
      start++;
    }
    if (start > 0 && start + 1 < rows.size() && isSecondHeader(rows, start - 1, width)) {
      start--;
    }
    if (start > 0 && isGroups(rows, start - 1, width) && isSecondHeader(rows, start, width)) {
      start--;
    }
    if (start > 0 && start < rows.size()) {
      notes.add("Lines above the table were left out: " + start + ".");
    }
    if (start >= rows.size()) {
      return new Grid(sheet, List.of(), List.of(), List.of(), notes, List.of());
    }
    int headerRows = headerRows(rows, start, width);
    List<List<String>> headers = headers(rows, start, headerRows, width);
    if (headerRows == 0) {
      notes.add("The table has no header line; columns are named by their place.");
    }
    return body(sheet, rows, start, headerRows, headers, width, notes);
  }

  private static int usualFilled(List<Sheet.Row> rows) {
    int[] counts = rows.stream().mapToInt(Grid::filled).sorted().toArray();
    return counts.length == 0 ? 0 : counts[counts.length / 2];
  }

  private static int headerRows(List<Sheet.Row> rows, int start, int width) {
    if (looksLikeData(rows, start, width)) {
      return 0;
    }
    if (start + 3 < rows.size()
        && isGroups(rows, start, width)
        && isSecondHeader(rows, start + 1, width)) {
      return 3;
    }
    return start + 2 < rows.size() && isSecondHeader(rows, start, width) ? 2 : 1;
  }

  /** A first line of numbers like those below, not codes or running numbers. */
  private static boolean looksLikeData(List<Sheet.Row> rows, int start, int width) {
    Sheet.Row first = rows.get(start);
    int numbers = 0;
    int filled = 0;
    boolean running = true;
    Set<String> distinct = new HashSet<>();
    double smallest = Double.POSITIVE_INFINITY;
    double previous = Double.NaN;
    for (int c = 0; c < width; c++) {
      String cell = first.cell(c);
      if (cell.isEmpty() || !numericBelow(rows, start + 1, c)) {
        continue;
      }
      filled++;
      distinct.add(cell);
      double value = Mark.parse(cell);
      if (!Double.isNaN(value)) {
        numbers++;
        smallest = Math.min(smallest, value);
        running &= Double.isNaN(previous) || value == previous + 1;
        previous = value;
      }
    }
    if (filled == 0 || numbers < 0.8 * filled) {
      return false;
    }
    boolean codes = distinct.size() == filled && smallest > largestBelow(rows, start, width);
    boolean corner = Double.isNaN(Mark.parse(first.cell(0)));
    boolean numbered = corner && running && filled >= 3 && previous - filled <= 1;
    return !(codes || numbered);
  }

  private static double largestBelow(List<Sheet.Row> rows, int start, int width) {
    double largest = Double.NEGATIVE_INFINITY;
    for (int r = start + 1; r < rows.size(); r++) {
      for (int c = 1; c < width; c++) {
        double value = Mark.parse(rows.get(r).cell(c));
        largest = Double.isNaN(value) ? largest : Math.max(largest, value);
      }
    }
    return largest;
  }

  /** Names of groups of columns: written once above each, or again and again. */
  private static boolean isGroups(List<Sheet.Row> rows, int line, int width) {
    Sheet.Row row = rows.get(line);
    int gaps = 0;
    int repeated = 0;
    String before = "";
    for (int c = 0; c < width; c++) {
      String cell = row.cell(c);
      gaps += c > 0 && cell.isEmpty() ? 1 : 0;
      repeated += !cell.isEmpty() && cell.equals(before) ? 1 : 0;
      before = cell.isEmpty() ? before : cell;
    }
    boolean words = row.cells().stream().allMatch(c -> c.isEmpty() || Double.isNaN(Mark.parse(c)));
    return filled(row) >= 2 && words && (gaps >= width / 4.0 && gaps > 0 || repeated >= 2);
  }

  private static boolean isSecondHeader(List<Sheet.Row> rows, int start, int width) {
    Sheet.Row first = rows.get(start);
    Sheet.Row second = rows.get(start + 1);
    int words = 0;
    int filled = 0;
    for (int c = 0; c < width; c++) {
      if (!second.cell(c).isEmpty()) {
        filled++;
        words +=
            Double.isNaN(Mark.parse(second.cell(c))) && numericBelow(rows, start + 2, c) ? 1 : 0;
      }
    }
    boolean grouped = isGroups(rows, start, width);
    boolean labels = filled >= width / 2 && words >= 0.5 * filled;
    boolean gaps = first.cells().stream().skip(1).anyMatch(String::isEmpty);
    boolean numbered = grouped && gaps && isNumbering(first, second, width);
    return grouped && (labels || numbered);
  }

  /** 1 2 3 1 2 3 under group names. */
  private static boolean isNumbering(Sheet.Row first, Sheet.Row second, int width) {
    double expected = 1;
    int seen = 0;
    for (int c = 0; c < width; c++) {
      double value = Mark.parse(second.cell(c));
      if (Double.isNaN(value)) {
        continue;
      }
      expected = first.cell(c).isEmpty() ? expected + 1 : 1;
      if (value != expected) {
        return false;
      }
      seen++;
    }
    return seen >= 4;
  }

  private static boolean numericBelow(List<Sheet.Row> rows, int from, int column) {
    int numbers = 0;
    int filled = 0;
    for (int r = from; r < rows.size() && filled < 20; r++) {
      String cell = rows.get(r).cell(column);
      if (!Mark.isMissing(cell)) {
        filled++;
        numbers += Double.isNaN(Mark.parse(cell)) ? 0 : 1;
      }
    }
    return filled > 0 && numbers >= 0.8 * filled;
  }

  private static List<List<String>> headers(
      List<Sheet.Row> rows, int start, int headerRows, int width) {
    List<List<String>> headers = new ArrayList<>();
    String[] groups = new String[Math.max(0, headerRows - 1)];
    Arrays.fill(groups, "");
    for (int c = 0; c < width; c++) {
      List<String> written = new ArrayList<>();
      for (int h = 0; h < headerRows; h++) {
        written.add(rows.get(start + h).cell(c));
      }
      boolean key = headerRows > 1 && (c == 0 || !numericBelow(rows, start + headerRows, c));
      headers.add(key ? keyHeader(written, groups) : markHeader(written, groups));
    }
    return headers;
  }

  /** The lowest word stands for a column of names; words above it name the group that begins. */
  private static List<String> keyHeader(List<String> written, String[] groups) {
    for (int h = 0; h < groups.length; h++) {
      groups[h] = written.get(h + 1).isEmpty() ? "" : written.get(h);
    }
    String lowest = "";
    for (String word : written) {
      lowest = word.isEmpty() ? lowest : word;
    }
    return List.of(lowest);
  }

  /** Group names reach to the right until the next one; a new outer group ends the inner one. */
  private static List<String> markHeader(List<String> written, String[] groups) {
    List<String> parts = new ArrayList<>();
    for (int h = 0; h < written.size(); h++) {
      String word = written.get(h);
      if (h < groups.length) {
        if (!word.isEmpty()) {
          groups[h] = word;
          Arrays.fill(groups, h + 1, groups.length, "");
        }
        word = groups[h];
      }
      if (!word.isEmpty()) {
        parts.add(word);
      }
    }
    return parts.isEmpty() ? List.of("") : parts;
  }

  private static Grid body(
      String sheet,
      List<Sheet.Row> rows,
      int start,
      int headerRows,
      List<List<String>> headers,
      int width,
      List<String> notes) {
    List<Sheet.Row> body = new ArrayList<>();
    List<String> sections = new ArrayList<>();
    String section =
        start > 0 && filled(rows.get(start - 1)) == 1 ? rows.get(start - 1).cell(0) : "";
    boolean sectioned = false;
    int lastData = lastData(rows, width);
    int left = 0;
    for (int r = start + headerRows; r < rows.size(); r++) {
      Sheet.Row row = rows.get(r);
      if (r > lastData) {
        left++;
      } else if (r == start + headerRows && headerRows > 0 && isExplanation(row)) {
        notes.add("Line " + row.line() + " explains the columns and was left out.");
      } else if (width >= 3
          && filled(row) == 1
          && !row.cell(0).isEmpty()
          && Double.isNaN(Mark.parse(row.cell(0)))) {
        section = row.cell(0);
        sectioned = true;
      } else if (headerRows == 0 || !row.cells().equals(rows.get(start).cells())) {
        body.add(row);
        sections.add(section);
      }
    }
    if (left > 0) {
      notes.add("Lines below the table were left out: " + left + ".");
    }
    if (!sectioned) {
      sections.replaceAll(s -> "");
    }
    return new Grid(
        sheet, headers, NamesOnce.repeat(body, headers, notes), sections, notes, List.of());
  }

  /** (0-100) and the like under a header. */
  private static boolean isExplanation(Sheet.Row row) {
    return filled(row) >= 2
        && row.cells().stream().allMatch(c -> c.isEmpty() || c.matches("[(\\[].*[)\\]]"));
  }

  private static int lastData(List<Sheet.Row> rows, int width) {
    int last = rows.size() - 1;
    while (last > 0
        && width >= 3
        && filled(rows.get(last)) == 1
        && Double.isNaN(Mark.parse(firstFilled(rows.get(last))))) {
      last--;
    }
    return last;
  }

  private static String firstFilled(Sheet.Row row) {
    return row.cells().stream().filter(c -> !c.isEmpty()).findFirst().orElse("");
  }

  String header(int column) {
    return String.join(" ", headers.get(column)).strip();
  }

  int width() {
    return headers.size();
  }
}
