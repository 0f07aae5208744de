package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import ovenproof.core.trace.TableLayout.ColumnKind;

/**
 * Looks for a table in lines of text: tries every delimiter and keeps the one under which most
 * lines become rows of numbers and times, then walks up from the first row to the header.
 */
final class TableSearch {

  private static final char[] DELIMITERS = {'\t', ';', ',', '|', LineSplitter.BLANKS};

  /** Tried where nothing else gives a table of two columns. */
  private static final char[] RARE_DELIMITERS = {
    ':', '/', '&', '\u001f', '~', '^', '!', '*', '@', '_'
  };

  private static final int HEADER_LINES = 4;

  /** More columns than any logger has, and more than are read. */
  private static final int MOST_NAMED = 10_000;

  /** More lines tell no more about the delimiter. */
  private static final int MOST_VOTERS = 200;

  private final List<String> lines;
  private final int headSize;
  private final List<String> voters;
  private final int[] voterLines;

  /** Rows begin with a number and then a stamp: a line of names may leave the number out. */
  private boolean rowNamesLead;

  /** The first column of stamps; −1 when there is none. */
  private int timeAt = -1;

  /**
   * @param lines the first lines of the file and some of its middle and end
   * @param headSize how many of them are its first lines
   */
  TableSearch(List<String> lines, int headSize) {
    this.lines = lines;
    this.headSize = headSize;
    this.voterLines = voterLines(lines.size());
    this.voters = java.util.Arrays.stream(voterLines).mapToObj(lines::get).toList();
  }

  /** All lines of a short file; else the first hundred and lines from everywhere. */
  private static int[] voterLines(int lines) {
    int n = Math.min(lines, MOST_VOTERS);
    int first = lines == n ? n : n / 3;
    double stride = n == first ? 1 : (double) (lines - first) / (n - first);
    return java.util.stream.IntStream.range(0, n)
        .map(i -> i < first ? i : first + (int) ((i - first) * stride))
        .toArray();
  }

  /** One way of splitting, and what came of it. */
  private record Attempt(
      LineSplitter splitter, char decimal, int columns, int rows, double typedShare) {

    /** Explicit delimiters win over blanks when both explain the lines. */
    double score() {
      double explicit = splitter.delimiter() == LineSplitter.BLANKS ? 0.9 : 1;
      double table = columns >= 2 ? 1 : 0.6;
      return rows * typedShare * typedShare * explicit * table;
    }
  }

  /** The table, or null when no way of splitting gives rows of numbers. */
  @Nullable TableLayout search() {
    Attempt best = null;
    for (char delimiter : DELIMITERS) {
      Attempt attempt = attempt(new LineSplitter(delimiter));
      if (attempt != null && (best == null || attempt.score() > best.score() * 1.0001)) {
        best = attempt;
      }
    }
    for (char delimiter : RARE_DELIMITERS) {
      Attempt attempt = best == null || best.columns < 2 ? rare(delimiter) : null;
      if (attempt != null && (best == null || attempt.rows >= best.rows)) {
        best = attempt;
      }
    }
    return best == null || best.rows < 1 ? null : layout(best);
  }

  /** Numbers and nothing else between marks that mostly mean something else. */
  private @Nullable Attempt rare(char delimiter) {
    Attempt attempt = attempt(new LineSplitter(delimiter));
    boolean table =
        attempt != null
            && attempt.columns >= 2
            && attempt.rows >= 0.6 * voters.size()
            && attempt.typedShare > 0.95;
    boolean clocks =
        delimiter == ':'
            && voters.stream()
                .allMatch(v -> v.matches("\\s*\\d{1,2}(:[0-5]\\d){1,2}(\\.\\d+)?\\s*"));
    return table && !clocks ? attempt : null;
  }

  private @Nullable Attempt attempt(LineSplitter splitter) {
    char decimal = decimal(splitter);
    CellText cells = new CellText(decimal);
    Map<Integer, int[]> byCount = new HashMap<>();
    for (String line : voters) {
      if (isComment(line, splitter)) {
        continue;
      }
      List<String> row = splitter.split(line);
      int[] counts = counts(row, cells);
      if (isDataLike(counts, splitter)) {
        int[] sum = byCount.computeIfAbsent(row.size(), k -> new int[3]);
        sum[0]++;
        sum[1] += counts[0] + counts[1];
        sum[2] += counts[0] + counts[1] + counts[2];
      }
    }
    return byCount.entrySet().stream()
        .map(
            e ->
                new Attempt(
                    splitter,
                    decimal,
                    e.getKey(),
                    e.getValue()[0],
                    e.getValue()[2] == 0 ? 0 : (double) e.getValue()[1] / e.getValue()[2]))
        .max((x, y) -> Double.compare(x.score(), y.score()))
        .orElse(null);
  }

  /** Numbers, times, words, blanks. */
  private static int[] counts(List<String> row, CellText cells) {
    int[] counts = new int[4];
    for (String cell : row) {
      CellType type = cells.type(cell);
      boolean unit = type == CellType.WORD && UnitText.wordOrLetter(CellText.unquote(cell)) != null;
      counts[
          type.isNumeric()
              ? 0
              : type == CellType.TIME ? 1 : type == CellType.WORD && !unit ? 2 : 3]++;
    }
    return counts;
  }

  private static boolean isDataLike(int[] counts, LineSplitter splitter) {
    int filled = counts[0] + counts[1] + counts[2];
    boolean measured = counts[0] >= 1 || (counts[1] >= 1 && counts[2] == 0 && counts[3] >= 1);
    double words = splitter.delimiter() == LineSplitter.BLANKS ? 0.34 : 0.6;
    return filled >= 1 && measured && counts[2] <= words * filled;
  }

  static boolean isComment(String line, LineSplitter splitter) {
    String text = line.stripLeading();
    return text.isEmpty()
        || text.startsWith("#")
        || text.startsWith("//")
        || text.startsWith("%")
        || (text.startsWith(";") && splitter.delimiter() != ';')
        || text.startsWith("!");
  }

  /** A comma is the decimal mark when more cells look like 23,5 than like 23.5. */
  private char decimal(LineSplitter splitter) {
    int commas = 0;
    int points = 0;
    for (String line : voters) {
      for (String cell : splitter.split(line)) {
        char mark = decimalMark(CellText.unquote(cell));
        commas += mark == ',' ? 1 : 0;
        points += mark == '.' ? 1 : 0;
      }
    }
    return commas > points ? ',' : '.';
  }

  /** The mark in 23,5 or 23.5 °C; 0 in anything else. */
  private static char decimalMark(String cell) {
    int i = 0;
    int n = cell.length();
    i += n > 0 && (cell.charAt(0) == '-' || cell.charAt(0) == '+') ? 1 : 0;
    int whole = digits(cell, i);
    if (whole == i || whole >= n) {
      return 0;
    }
    char mark = cell.charAt(whole);
    int end = digits(cell, whole + 1);
    if ((mark != ',' && mark != '.') || end == whole + 1) {
      return 0;
    }
    end = behindExponent(cell, end);
    if (end < n && (cell.charAt(end) == ' ' || cell.charAt(end) == '\u00a0')) {
      end++;
    }
    while (end < n
        && (Character.isLetter(cell.charAt(end)) || "°%/".indexOf(cell.charAt(end)) >= 0)) {
      end++;
    }
    return end == n ? mark : 0;
  }

  /** Where E+02 ends that begins here; the place itself when none does. */
  private static int behindExponent(String cell, int at) {
    if (at + 1 >= cell.length() || Character.toLowerCase(cell.charAt(at)) != 'e') {
      return at;
    }
    int sign = "+-".indexOf(cell.charAt(at + 1)) >= 0 ? at + 2 : at + 1;
    int end = digits(cell, sign);
    return end > sign ? end : at;
  }

  private static int digits(String text, int from) {
    int i = from;
    while (i < text.length() && text.charAt(i) >= '0' && text.charAt(i) <= '9') {
      i++;
    }
    return i;
  }

  private @Nullable TableLayout layout(Attempt attempt) {
    CellText cells = new CellText(attempt.decimal);
    Types types = new Types(attempt.splitter, cells);
    ColumnKind[] kinds = kinds(attempt, types);
    int first = firstRow(kinds, types);
    if (first < 0) {
      return null;
    }
    timeAt = List.of(kinds).indexOf(ColumnKind.TIME);
    rowNamesLead = kinds.length > 2 && kinds[0] == ColumnKind.NUMBER && kinds[1] == ColumnKind.TIME;
    Header header =
        attempt.columns > MOST_NAMED ? nameless(attempt.columns) : header(attempt, first);
    dropEmptyEdges(kinds, header.texts, types);
    return new TableLayout(
        attempt.splitter,
        attempt.decimal,
        header.texts,
        List.of(kinds),
        first,
        header.row,
        support(kinds, types, first));
  }

  /** A line of a million cells is told by its width, not by its names. */
  private static Header nameless(int columns) {
    return new Header(new ArrayList<>(Collections.nCopies(columns, HeaderText.of(""))), -1);
  }

  /** What the cells of each line are, looked at once and only where somebody asks. */
  private final class Types {
    private final LineSplitter splitter;
    private final CellText cells;
    private final CellType[][] known = new CellType[lines.size()][];

    Types(LineSplitter splitter, CellText cells) {
      this.splitter = splitter;
      this.cells = cells;
    }

    CellType[] of(int line) {
      if (known[line] == null) {
        String text = lines.get(line);
        List<String> row = isComment(text, splitter) ? List.of() : splitter.split(text);
        known[line] = row.stream().map(cells::type).toArray(CellType[]::new);
      }
      return known[line];
    }
  }

  /** By the majority of the lines that split into as many cells as the table has columns. */
  private ColumnKind[] kinds(Attempt attempt, Types types) {
    int[][] votes = new int[attempt.columns][4];
    for (int line : voterLines) {
      CellType[] row = types.of(line);
      if (row.length == attempt.columns && isDataLike(tally(row), attempt.splitter)) {
        for (int c = 0; c < row.length; c++) {
          votes[c][
              row[c].isNumeric()
                  ? 0
                  : row[c] == CellType.TIME ? 1 : row[c] == CellType.WORD ? 2 : 3]++;
        }
      }
    }
    ColumnKind[] kinds = new ColumnKind[attempt.columns];
    for (int c = 0; c < kinds.length; c++) {
      int[] v = votes[c];
      boolean words = v[2] > v[0] && v[2] > v[1];
      kinds[c] = words ? ColumnKind.WORDS : v[1] > v[0] ? ColumnKind.TIME : ColumnKind.NUMBER;
    }
    return kinds;
  }

  private static int[] tally(CellType[] row) {
    int[] counts = new int[4];
    for (CellType type : row) {
      counts[type.isNumeric() ? 0 : type == CellType.TIME ? 1 : type == CellType.WORD ? 2 : 3]++;
    }
    return counts;
  }

  /** "***End_of_Header***", "[Data]", "END OF HEADER": no row stands above the last of them. */
  private static final java.util.regex.Pattern HEADER_END =
      java.util.regex.Pattern.compile(
          "(?i)[\\W_]*(end[ _]?of[ _]?header|end[ _]header|header[ _]end|begin[ _]data|data[ _]?begin"
              + "|start[ _]of[ _]data)[\\W_]*|\\[data\\]\\s*");

  private int headerEnd() {
    int end = 0;
    for (int i = 0; i < headSize && i < Math.min(lines.size(), 400); i++) {
      String line = lines.get(i);
      end = line.length() < 60 && HEADER_END.matcher(line).matches() ? i + 1 : end;
    }
    return end < lines.size() ? end : 0;
  }

  private int firstRow(ColumnKind[] kinds, Types types) {
    for (int i = headerEnd(); i < headSize && i < lines.size(); i++) {
      if (isRow(kinds, types.of(i)) && followed(kinds, types, i)) {
        return i;
      }
    }
    for (int i = 0; i < headSize && i < lines.size(); i++) {
      if (isRow(kinds, types.of(i))) {
        return i;
      }
    }
    return -1;
  }

  /** A lone line that looks like a row among the lines before the table is none. */
  private boolean followed(ColumnKind[] kinds, Types types, int i) {
    int seen = 0;
    int rows = 0;
    for (int j = i + 1; j < lines.size() && seen < 6; j++) {
      if (types.of(j).length > 0) {
        seen++;
        rows += isRow(kinds, types.of(j)) ? 1 : 0;
      }
    }
    return seen == 0 || rows >= (seen + 1) / 2;
  }

  static boolean isRow(ColumnKind[] kinds, CellType[] row) {
    int surplus = row.length - kinds.length;
    if (surplus != 0) {
      boolean blankSurplus =
          surplus > 0 && (allBlank(row, kinds.length) || surplus <= 2 && fits(kinds, row));
      boolean shortRow = surplus < 0 && row.length >= Math.max(2, 0.6 * kinds.length);
      if (!blankSurplus && !shortRow) {
        return false;
      }
    }
    int wrong = 0;
    int filled = 0;
    for (int c = 0; c < Math.min(row.length, kinds.length); c++) {
      boolean bad =
          switch (kinds[c]) {
            case NUMBER -> row[c] == CellType.WORD || row[c] == CellType.TIME;
            case TIME -> row[c] == CellType.WORD || row[c].isNumeric();
            default -> false;
          };
      wrong += bad ? 1 : 0;
      filled += !bad && kinds[c] != ColumnKind.WORDS && !row[c].isBlank() ? 1 : 0;
    }
    return filled >= 1 && wrong <= kinds.length / 10;
  }

  /** A first row that carries more than the others, such as the logger's number. */
  private static boolean fits(ColumnKind[] kinds, CellType[] row) {
    for (int c = 0; c < kinds.length; c++) {
      boolean fits =
          switch (kinds[c]) {
            case NUMBER -> row[c].isNumeric() && kinds.length > 1;
            case TIME -> row[c] == CellType.TIME;
            default -> row[c] == CellType.WORD;
          };
      if (!fits) {
        return false;
      }
    }
    return kinds.length > 2;
  }

  private static boolean allBlank(CellType[] row, int from) {
    for (int c = from; c < row.length; c++) {
      if (!row[c].isBlank()) {
        return false;
      }
    }
    return true;
  }

  private double support(ColumnKind[] kinds, Types types, int first) {
    int rows = 0;
    int all = 0;
    for (int line : voterLines) {
      if (line >= first && types.of(line).length > 0) {
        all++;
        rows += isRow(kinds, types.of(line)) ? 1 : 0;
      }
    }
    return all == 0 ? 0 : (double) rows / all;
  }

  private record Header(List<HeaderText> texts, int row) {}

  /** Names, units and groups stand right above the first row, in up to four lines. */
  private Header header(Attempt attempt, int first) {
    List<List<String>> found = new ArrayList<>();
    List<Integer> places = new ArrayList<>();
    int blanks = 0;
    for (int i = first - 1; i >= 0 && found.size() < HEADER_LINES; i--) {
      boolean tabs = attempt.splitter.delimiter() == '\t';
      String line = tabs ? lines.get(i) : lines.get(i).strip();
      if (line.isBlank() || line.matches("[-=_*#+| \\t,;]+")) {
        if (++blanks > 2) {
          break;
        }
        continue;
      }
      List<String> cells = headerCells(attempt, line, found.isEmpty());
      if (cells == null) {
        break;
      }
      found.add(cells);
      places.add(i);
    }
    return new HeaderRows(attempt.columns, found).read(places);
  }

  private @Nullable List<String> headerCells(Attempt attempt, String line, boolean nearest) {
    String bare = line.replaceAll("^(#|//|%|;|!)+\\s*", "");
    List<String> whole = attempt.splitter.split(line);
    boolean wide = nearest && whole.size() > attempt.columns && whole.size() <= attempt.columns + 2;
    boolean byBlanks = attempt.splitter.delimiter() == LineSplitter.BLANKS;
    List<String> spaced = byBlanks ? List.of(bare.strip().split("\\t+| {2,}")) : List.of();
    if (spaced.size() == attempt.columns && whole.size() != attempt.columns) {
      return isHeaderLike(spaced) ? spaced : null;
    }
    if (byBlanks && !nearest && attempt.splitter.split(bare).size() != attempt.columns) {
      return null; // a sentence, whose words do not stand over the columns
    }
    boolean longer = wide && attempt.columns > 2 && bare.equals(line) && isHeaderLike(whole);
    List<String> cells =
        aligned(longer ? whole.subList(0, attempt.columns) : whole, attempt.columns);
    if (cells == null && !bare.equals(line)) {
      cells = aligned(attempt.splitter.split(bare), attempt.columns);
    }
    if (cells == null && attempt.splitter.delimiter() == LineSplitter.BLANKS) {
      cells = aligned(List.of(bare.split("\\t+| {2,}")), attempt.columns);
      if (cells == null) {
        cells =
            aligned(
                attempt.splitter.split(bare.replaceAll("\\s+(?=[(\\[])", "_")), attempt.columns);
      }
    }
    for (char other : DELIMITERS) {
      if (cells == null && nearest) {
        cells = aligned(new LineSplitter(other).split(bare), attempt.columns);
        boolean title = cells != null && timeAt >= 0 && !namesTime(cells.get(timeAt));
        cells = title ? null : cells;
      }
    }
    return cells != null && isHeaderLike(cells) ? cells : null;
  }

  /** As many cells as columns; blank ones too many are cut, one too few is the row name's. */
  private @Nullable List<String> aligned(List<String> cells, int columns) {
    if (columns == 1 && cells.size() == 1) {
      return cells;
    }
    if (cells.size() < 2) {
      return null;
    }
    List<String> result = new ArrayList<>(cells);
    while (result.size() > columns && isRemark(result.get(result.size() - 1))) {
      result.remove(result.size() - 1);
    }
    if (result.size() == columns - 1 && rowNamesLead && namesTime(result.get(0))) {
      result.add(0, "");
    } else if (result.size() == columns - 1 && columns > 2 && !namesTime(result.get(0))) {
      boolean later = result.stream().skip(1).anyMatch(TableSearch::namesTime);
      result.add(later ? result.size() : 0, "");
    }
    if (result.size() < columns && result.size() >= Math.max(2, columns - 2) && columns > 2) {
      while (result.size() < columns) {
        result.add("");
      }
    }
    return result.size() == columns ? result : null;
  }

  /** A first cell that is no row name's. */
  private static boolean namesTime(String cell) {
    HeaderText header = HeaderText.of(CellText.unquote(cell));
    return header.saysTime() || header.saysIndex() || header.says(HeaderText.DATE);
  }

  /** Nothing, or the name of a column that nobody filled. */
  private static boolean isRemark(String cell) {
    return cell.isBlank()
        || CellText.unquote(cell).strip().matches("(?i)(comment|note|remark)s?|bemerkung(en)?");
  }

  private static boolean isHeaderLike(List<String> cells) {
    int filled = 0;
    int texts = 0;
    for (String cell : cells) {
      String text = CellText.unquote(cell);
      if (!text.isEmpty()) {
        filled++;
        boolean number = text.matches("[-+]?\\d+([.,]\\d+)?");
        boolean stamp = text.matches("\\d+[-/.:]\\d+[-/.:].*");
        texts += number || stamp ? 0 : 1;
      }
    }
    return texts >= 1 && 2 * texts >= filled;
  }

  /** Turns the lines above the table into one header per column. */
  private record HeaderRows(int columns, List<List<String>> nearestFirst) {

    Header read(List<Integer> places) {
      if (nearestFirst.isEmpty()) {
        return new Header(unnamed(), -1);
      }
      if (namesOnlyTheRows()) {
        return withRowName(places);
      }
      if (nearestFirst.size() > 1 && saysHowReadingsWereJoined(nearestFirst.get(0))) {
        return new HeaderRows(columns, nearestFirst.subList(1, nearestFirst.size()))
            .read(places.subList(1, places.size()));
      }
      int names = 0;
      List<String> units = null;
      if (nearestFirst.size() > 1 && isUnits(nearestFirst.get(0))) {
        units = nearestFirst.get(0);
        names = 1;
      }
      if (names >= nearestFirst.size()) {
        return new Header(texts(unnamedText(), units), places.get(0));
      }
      List<String> named = nearestFirst.get(names);
      if (names + 1 < nearestFirst.size()) {
        List<String> above = nearestFirst.get(names + 1);
        if (units == null && isUnits(above)) {
          units = above;
        } else {
          named = joined(named, above);
        }
      }
      return new Header(texts(named, units), places.get(names));
    }

    /** "time,,,," under full rows of names: it names the first column, as data frames write it. */
    private boolean namesOnlyTheRows() {
      List<String> nearest = nearestFirst.get(0);
      return nearestFirst.size() > 1
          && columns > 2
          && !nearest.get(0).isBlank()
          && nearest.stream().skip(1).allMatch(String::isBlank)
          && nearestFirst.get(1).stream().noneMatch(String::isBlank);
    }

    /** "","","Avg","Min" under names and units: how each reading came about. */
    private static boolean saysHowReadingsWereJoined(List<String> cells) {
      List<String> filled =
          cells.stream().map(CellText::unquote).filter(s -> !s.isBlank()).toList();
      return !filled.isEmpty()
          && filled.stream()
              .allMatch(
                  s ->
                      s.matches(
                          "(?i)avg|average|min|max|smp|sample|std|tot|total|med|median|mean|inst"));
    }

    private Header withRowName(List<Integer> places) {
      List<List<String>> above = new ArrayList<>();
      for (List<String> row : nearestFirst.subList(1, nearestFirst.size())) {
        List<String> named = new ArrayList<>(row);
        named.set(0, above.isEmpty() ? nearestFirst.get(0).get(0) : "");
        above.add(named);
      }
      return new HeaderRows(columns, above).read(places.subList(1, places.size()));
    }

    /** A group's name stands over its first column, or over each. */
    private List<String> joined(List<String> names, List<String> above) {
      if (above.stream().map(CellText::unquote).anyMatch(HeaderRows::isStamp)) {
        return names;
      }
      boolean repeated =
          names.stream().filter(s -> !s.isBlank()).distinct().count()
              < names.stream().filter(s -> !s.isBlank()).count();
      boolean holes = above.stream().anyMatch(String::isBlank);
      boolean twoRows = !repeated && isTwoRowed(names, above);
      boolean inputs = names.stream().skip(1).allMatch(s -> HeaderText.of(s).isInputName());
      List<String> result = new ArrayList<>();
      String group = "";
      for (int c = 0; c < columns; c++) {
        String own = CellText.unquote(names.get(c));
        String over = CellText.unquote(above.get(c));
        group = over.isBlank() ? group : over;
        if (own.isBlank()) {
          result.add(over);
        } else if (twoRows) {
          result.add((over + " " + own).strip());
        } else if (repeated && (holes || !over.isBlank())) {
          boolean unit =
              UnitText.wordOrLetter(own) != null
                  && !HeaderText.of("x " + own).says(HeaderText.SCATTER);
          String joined = unit ? group + " (" + own + ")" : group + " " + own;
          result.add(group.equals(own) ? own : joined.strip());
        } else if (columns > 2 && inputs && !holes && c > 0 && !over.matches("[-+.,:/\\d ]+")) {
          result.add(over + " " + own);
        } else {
          result.add(own);
        }
      }
      return result;
    }

    private static boolean isStamp(String text) {
      return TimeText.isTime(new TimeText().parse(text));
    }

    /** Names too long for their columns, written in two lines; the time needs but one. */
    private boolean isTwoRowed(List<String> names, List<String> above) {
      int over = 0;
      int times = 0;
      boolean words = true;
      for (int c = 0; c < columns; c++) {
        String upper = CellText.unquote(above.get(c));
        HeaderText own = HeaderText.of(CellText.unquote(names.get(c)));
        boolean time = own.saysTime() || own.says(HeaderText.DATE);
        times += time && upper.isBlank() ? 1 : 0;
        over += !time && !upper.isBlank() ? 1 : 0;
        words &= upper.isBlank() || upper.matches("\\p{L}[\\p{L} .&#/\\-]{0,14}");
      }
      return words && times >= 1 && over >= 2 && over >= 0.5 * (columns - times);
    }

    private boolean isUnits(List<String> cells) {
      int filled = 0;
      int units = 0;
      for (String cell : cells) {
        String text = CellText.unquote(cell).replaceAll("^[(\\[{<]\\s*|\\s*[)\\]}>]$", "");
        if (!text.isBlank()) {
          filled++;
          boolean format =
              text.matches("(?i)[hmsdy.:/\\- ]{4,}|-+|number|n/?a|utc|local|yyyy.*|dd.*|text|none");
          units += format || UnitText.wordOrLetter(text) != null ? 1 : 0;
        }
      }
      return units >= 1 && units >= 0.6 * filled && !(filled == 1 && columns > 3 && units == 0);
    }

    private List<HeaderText> texts(List<String> names, @Nullable List<String> units) {
      List<HeaderText> texts = new ArrayList<>();
      for (int c = 0; c < columns; c++) {
        HeaderText text = HeaderText.of(CellText.unquote(names.get(c)));
        if (units != null) {
          String word =
              CellText.unquote(units.get(c)).replaceAll("^[(\\[{<]\\s*|\\s*[)\\]}>]$", "");
          UnitText unit = UnitText.wordOrLetter(word);
          text =
              unit == null ? text : new HeaderText(text.written(), text.name(), unit, text.words());
        }
        texts.add(text);
      }
      return texts;
    }

    private List<String> unnamedText() {
      List<String> names = new ArrayList<>();
      for (int c = 0; c < columns; c++) {
        names.add("");
      }
      return names;
    }

    private List<HeaderText> unnamed() {
      return texts(unnamedText(), null);
    }
  }

  /** Columns without name and content, as trailing delimiters and outer pipes leave them. */
  private void dropEmptyEdges(ColumnKind[] kinds, List<HeaderText> headers, Types types) {
    List<CellType[]> rows = new ArrayList<>();
    for (int line : voterLines) {
      CellType[] row = types.of(line);
      if (isRow(kinds, row)) {
        rows.add(row);
      }
    }
    for (int c = 0; c < kinds.length; c++) {
      if (!headers.get(c).written().isBlank()) {
        continue;
      }
      boolean empty = true;
      for (CellType[] row : rows) {
        empty &= row.length <= c || row[c] == CellType.EMPTY;
      }
      if (empty) {
        kinds[c] = ColumnKind.SKIPPED;
      }
    }
  }
}
