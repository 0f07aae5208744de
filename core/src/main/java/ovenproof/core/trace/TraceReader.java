package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import ovenproof.core.trace.Layout.Form;
import ovenproof.core.trace.RawTable.StampColumn;
import ovenproof.core.trace.TableLayout.ColumnKind;

/**
 * Reads a logger's file without being told how: text of any usual encoding and layout, or rows of a
 * workbook. It never throws for what a file holds; a file it cannot read comes back with the
 * problems in words.
 */
public final class TraceReader {

  private static final int HEAD_LINES = 1500;
  private static final int HEAD_BYTES = 2 << 20;
  private static final int MIDDLE_LINES = 150;

  private final ReadOptions options;

  /** How many dressings {@link LineRewrite} may still take off: some rows wear two. */
  private final int dressings;

  private TraceReader(ReadOptions options, int dressings) {
    this.options = options;
    this.dressings = dressings;
  }

  public static TraceReader withDefaults() {
    return new TraceReader(ReadOptions.withDefaults(), 3);
  }

  public static TraceReader with(ReadOptions options) {
    return new TraceReader(options, 3);
  }

  /** The log in these bytes of text. They are not changed and not kept. */
  public TraceFile read(byte[] bytes) {
    return read(LogSource.of(bytes));
  }

  /** The log behind a source, which is read piece by piece and not held. */
  public TraceFile read(LogSource source) {
    LogText text = LogText.of(source, options.maximumTextBytes());
    if (text.problem() != null) {
      return unreadable(text.encoding(), text.problem());
    }
    List<LogText.Line> head = text.lines(text.from(), HEAD_LINES, HEAD_BYTES);
    List<String> sample = new ArrayList<>(head.stream().map(LogText.Line::text).toList());
    int headSize = sample.size();
    addLater(text, head, sample);
    byte[] undressed = dressings > 0 ? undressed(text, sample) : null;
    if (undressed != null) {
      return new TraceReader(options, dressings - 1).read(undressed);
    }
    if (looksLikeJson(sample)) {
      TraceFile json = ofNamedRows(text, Form.JSON);
      if (json != null) {
        return json;
      }
    }
    TableLayout table = new TableSearch(sample, headSize).search();
    byte[] turned = table == null || dressings == 0 ? null : turned(text, sample, table);
    if (turned != null) {
      return new TraceReader(options, 0).read(turned);
    }
    double tableShare = table == null ? 0 : table.support();
    boolean thin = table == null || table.columns() < 2;
    double named =
        tableShare < 0.9 || thin
            ? KeyValueLines.share(cut(sample.subList(0, Math.min(400, sample.size()))))
            : 0;
    TraceFile keyed = null;
    if (named > 0.4 && (named > tableShare || thin)) {
      keyed = ofNamedRows(text, Form.KEY_VALUE);
      if (keyed != null && moves(keyed)) {
        return keyed;
      }
    }
    boolean wordsFirst = table != null && table.kinds().get(0) == ColumnKind.WORDS;
    if (tableShare < 0.6 || thin || wordsFirst) {
      TraceFile stamped = ofStampedLines(text, sample);
      if (stamped != null) {
        return stamped;
      }
    }
    if (table == null || table.support() < 0.5 || wordy(table) || keyed != null) {
      TraceFile sentences = ofNamedRows(text, Form.SENTENCES);
      if (sentences != null && moves(sentences)) {
        return sentences;
      }
    }
    if (keyed != null) {
      return keyed;
    }
    if (table == null || table.support() < 0.2) {
      return unreadable(
          text.encoding(),
          "No rows of numbers were found. Expected a table with one row per moment, such as 12:03:10;23,5;24,1 under a line of names.");
    }
    return ofTable(text, head, sample, table);
  }

  private static byte @Nullable [] undressed(LogText text, List<String> sample) {
    byte[] plain = LineRewrite.undress(text, sample);
    plain = plain == null ? QuotedLines.joined(text, sample) : plain;
    plain = plain == null ? SplitDecimals.joined(text, sample) : plain;
    plain = plain == null ? BesideTable.apart(text, sample) : plain;
    plain = plain == null ? Sections.joined(text, sample) : plain;
    return plain == null ? SqlRows.table(text, sample) : plain;
  }

  /** The log in rows that are already cells, as from a workbook; numbers with a decimal point. */
  public TraceFile readRows(List<String[]> cells, String origin) {
    List<String> lines = new ArrayList<>();
    for (String[] row : cells.subList(0, Math.min(HEAD_LINES, cells.size()))) {
      lines.add(line(row));
    }
    int headSize = lines.size();
    TableLayout table = new TableSearch(lines, headSize).search();
    if (table == null) {
      return unreadable(origin, "No rows of numbers were found in the sheet.");
    }
    List<String[]> rows = new ArrayList<>();
    int skipped = 0;
    for (String[] row : cells.subList(table.firstRow(), cells.size())) {
      CellText text = new CellText(table.decimal());
      CellType[] types = new CellType[row.length];
      for (int c = 0; c < row.length; c++) {
        types[c] = text.type(row[c]);
      }
      boolean isRow = TableSearch.isRow(table.kinds().toArray(new ColumnKind[0]), types);
      if (isRow) {
        rows.add(row);
      } else {
        skipped++;
      }
    }
    Metadata metadata =
        Metadata.of(
            lines.subList(
                0, Math.max(0, table.headerRow() < 0 ? table.firstRow() : table.headerRow())));
    StampColumn[] stamps = stamps(table.kinds(), rows);
    RawTable raw =
        TableReader.ofRows(rows, table.headers(), table.kinds(), stamps, table.decimal(), skipped);
    suffixes(raw, rows, table.decimal());
    Reading reading =
        new Reading(
            Form.WORKBOOK,
            origin,
            "",
            String.valueOf(table.decimal()),
            table.headerRow() + 1,
            table.firstRow() + 1,
            metadata,
            table.support());
    return assemble(raw, reading);
  }

  private static String line(String[] row) {
    StringBuilder line = new StringBuilder();
    for (int c = 0; c < row.length; c++) {
      line.append(c == 0 ? "" : "\t").append(row[c].replaceAll("[\\t\\r\\n]+", " "));
    }
    return line.toString();
  }

  private static void addLater(LogText text, List<LogText.Line> head, List<String> sample) {
    if (head.isEmpty()) {
      return;
    }
    LogText.Line last = head.get(head.size() - 1);
    long headEnd = text.lineEndAfter(last.offset());
    if (headEnd >= text.to() - 1) {
      return;
    }
    long middle =
        text.lineStartFrom(Math.max(headEnd + 1, text.from() + (text.to() - text.from()) / 2));
    text.lines(middle, MIDDLE_LINES, 1 << 19).forEach(l -> sample.add(l.text()));
    long end = text.lineStartFrom(Math.max(headEnd + 1, text.to() - (1 << 14)));
    List<LogText.Line> tail = text.lines(end, MIDDLE_LINES, 1 << 15);
    tail.forEach(l -> sample.add(l.text()));
  }

  private static List<String> cut(List<String> lines) {
    return lines.stream().map(l -> l.length() > 8192 ? l.substring(0, 8192) : l).toList();
  }

  private static boolean looksLikeJson(List<String> sample) {
    int objects = 0;
    int filled = 0;
    String first = "";
    for (String line : sample) {
      String trimmed = line.strip();
      if (trimmed.isEmpty()) {
        continue;
      }
      first = first.isEmpty() ? trimmed : first;
      filled++;
      objects +=
          trimmed.contains("{\"") && trimmed.endsWith("}")
                  || trimmed.startsWith("{") && trimmed.endsWith("},")
                  || trimmed.startsWith("{") && trimmed.endsWith("}")
              ? 1
              : 0;
    }
    boolean document =
        (first.startsWith("{")
                || first.startsWith("[{")
                || first.equals("[")
                || first.startsWith("[["))
            && !first.matches("\\[\\d.*");
    return objects > 0.5 * filled || document;
  }

  /** Few long lines, each a name and its readings, are columns that lie on their side. */
  private static byte @Nullable [] turned(LogText text, List<String> sample, TableLayout table) {
    List<List<String>> lines =
        sample.stream().filter(l -> !l.isBlank()).map(table.splitter()::split).toList();
    boolean few = lines.size() >= 2 && lines.size() <= 12 && text.to() - text.from() < 8 << 20;
    if (!few || table.columns() < 20 || table.splitter().delimiter() == LineSplitter.BLANKS) {
      return null;
    }
    int width = lines.get(lines.size() - 1).size();
    CellText cells = new CellText(table.decimal());
    for (List<String> line : lines) {
      boolean named = cells.type(line.get(0)) == CellType.WORD;
      if (line.size() != width || !named || cells.type(line.get(1)) == CellType.WORD) {
        return null;
      }
    }
    StringBuilder result = new StringBuilder();
    for (int c = 0; c < width; c++) {
      for (int r = 0; r < lines.size(); r++) {
        result.append(r == 0 ? "" : "\t").append(lines.get(r).get(c));
      }
      result.append('\n');
    }
    return result.toString().getBytes(java.nio.charset.StandardCharsets.UTF_8);
  }

  /** Whether anything but a constant was found. */
  private static boolean moves(TraceFile file) {
    return file.channels().stream()
        .anyMatch(c -> c.labels().isEmpty() && differs(c.values()) && c.dimension() != null);
  }

  private static boolean differs(double[] values) {
    double first = Double.NaN;
    for (double v : values) {
      first = Double.isNaN(first) ? v : first;
      if (!Double.isNaN(v) && v != first) {
        return true;
      }
    }
    return false;
  }

  /** Runs of blanks that part a sentence into its words. */
  private static boolean wordy(TableLayout table) {
    long words = table.kinds().stream().filter(k -> k == ColumnKind.WORDS).count();
    return table.splitter().delimiter() == LineSplitter.BLANKS && 2 * words >= table.columns();
  }

  /** What is known of the form before the table is interpreted. */
  private record Reading(
      Form form,
      String encoding,
      String delimiter,
      String decimal,
      int headerLine,
      int firstLine,
      Metadata metadata,
      double support) {}

  private @Nullable TraceFile ofNamedRows(LogText text, Form form) {
    if (text.to() - text.from() > options.maximumTextBytes()) {
      return unreadable(
          text.encoding(),
          "The file is larger than "
              + (options.maximumTextBytes() >> 20)
              + " MB and is not a plain table. Split it, or export it as CSV.");
    }
    List<String> lines = allLines(text);
    KeyValueLines.Rows rows =
        switch (form) {
          case JSON -> JsonRows.read(lines);
          case SENTENCES -> TemplateLines.read(cut(lines));
          default -> KeyValueLines.read(cut(lines));
        };
    if (rows == null) {
      return null;
    }
    return ofRows(
        rows, new Reading(form, text.encoding(), "", "", 0, 1, new Metadata(Map.of()), 1));
  }

  private static List<String> allLines(LogText text) {
    return text.lines(text.from(), Integer.MAX_VALUE, Integer.MAX_VALUE).stream()
        .map(LogText.Line::text)
        .toList();
  }

  private TraceFile ofRows(KeyValueLines.Rows rows, Reading reading) {
    List<HeaderText> headers = rows.names().stream().map(HeaderText::of).toList();
    char decimal = decimal(rows.rows());
    List<ColumnKind> kinds = kinds(rows.rows(), headers.size(), decimal);
    StampColumn[] stamps = stamps(kinds, rows.rows());
    RawTable raw = TableReader.ofRows(rows.rows(), headers, kinds, stamps, decimal, rows.skipped());
    suffixes(raw, rows.rows(), decimal);
    return assemble(
        raw,
        new Reading(
            reading.form,
            reading.encoding,
            reading.delimiter,
            String.valueOf(decimal),
            reading.headerLine,
            reading.firstLine,
            reading.metadata,
            reading.support));
  }

  private static char decimal(List<String[]> rows) {
    int commas = 0;
    int points = 0;
    for (String[] row : rows.subList(0, Math.min(300, rows.size()))) {
      for (String cell : row) {
        commas += cell.matches("[-+]?\\d+,\\d+[^,\\d]*") ? 1 : 0;
        points += cell.matches("[-+]?\\d+\\.\\d+[^.\\d]*") ? 1 : 0;
      }
    }
    return commas > points ? ',' : '.';
  }

  private static List<ColumnKind> kinds(List<String[]> rows, int columns, char decimal) {
    CellText cells = new CellText(decimal);
    List<ColumnKind> kinds = new ArrayList<>();
    for (int c = 0; c < columns; c++) {
      int[] votes = new int[3];
      int stride = Math.max(1, rows.size() / 400);
      for (int r = 0; r < rows.size(); r += stride) {
        CellType type = c < rows.get(r).length ? cells.type(rows.get(r)[c]) : CellType.EMPTY;
        if (!type.isBlank()) {
          votes[type.isNumeric() ? 0 : type == CellType.TIME ? 1 : 2]++;
        }
      }
      kinds.add(
          votes[2] > votes[0] && votes[2] > votes[1]
              ? ColumnKind.WORDS
              : votes[1] > votes[0] ? ColumnKind.TIME : ColumnKind.NUMBER);
    }
    return kinds;
  }

  private StampColumn[] stamps(List<ColumnKind> kinds, List<String[]> rows) {
    StampColumn[] stamps = new StampColumn[kinds.size()];
    int stride = Math.max(1, rows.size() / 300);
    for (int c = 0; c < stamps.length; c++) {
      if (kinds.get(c) == ColumnKind.TIME) {
        List<String> samples = new ArrayList<>();
        for (int r = 0; r < rows.size(); r += stride) {
          if (c < rows.get(r).length) {
            samples.add(CellText.unquote(rows.get(r)[c]));
          }
        }
        stamps[c] = StampSearch.of(samples, options);
      }
    }
    return stamps;
  }

  private static void suffixes(RawTable raw, List<String[]> rows, char decimal) {
    CellText cells = new CellText(decimal);
    for (int c = 0; c < raw.columns(); c++) {
      if (raw.kinds().get(c) != ColumnKind.NUMBER) {
        continue;
      }
      for (int r = 0; r < Math.min(50, rows.size()) && raw.suffixes()[c] == null; r++) {
        raw.suffixes()[c] = c < rows.get(r).length ? cells.suffix(rows.get(r)[c]) : null;
      }
    }
  }

  /** "[12:03:10] 23.5, 24.1" and "12:03:10.123 -> 23.5,24.1": a stamp, then a table. */
  private @Nullable TraceFile ofStampedLines(LogText text, List<String> sample) {
    int stamped = 0;
    int filled = 0;
    for (String line : sample) {
      filled += line.isBlank() ? 0 : 1;
      stamped += StampedLine.split(line) == null ? 0 : 1;
    }
    if (stamped < 0.6 * filled
        || stamped < 2
        || text.to() - text.from() > options.maximumTextBytes()) {
      return null;
    }
    List<String> stamps = new ArrayList<>();
    List<String> rests = new ArrayList<>();
    for (String line : allLines(text)) {
      StampedLine split = StampedLine.split(line);
      if (split != null) {
        stamps.add(split.stamp());
        rests.add(split.rest());
      } else if (rests.isEmpty() && !line.isBlank()) {
        stamps.add("");
        rests.add(line);
      }
    }
    TableLayout table =
        new TableSearch(rests.subList(0, Math.min(HEAD_LINES, rests.size())), rests.size())
            .search();
    return table == null || table.support() < 0.3 ? null : stampedTable(text, stamps, rests, table);
  }

  private TraceFile stampedTable(
      LogText text, List<String> stamps, List<String> rests, TableLayout table) {
    List<String[]> rows = new ArrayList<>();
    CellText cells = new CellText(table.decimal());
    int skipped = 0;
    ColumnKind[] kinds = table.kinds().toArray(new ColumnKind[0]);
    for (int i = table.firstRow(); i < rests.size(); i++) {
      List<String> split = table.splitter().split(rests.get(i));
      if (TableSearch.isRow(kinds, split.stream().map(cells::type).toArray(CellType[]::new))) {
        String[] row = new String[split.size() + 1];
        row[0] = stamps.get(i);
        for (int c = 0; c < split.size(); c++) {
          row[c + 1] = split.get(c);
        }
        rows.add(row);
      } else {
        skipped++;
      }
    }
    List<HeaderText> headers = new ArrayList<>(List.of(HeaderText.of("time")));
    headers.addAll(table.headers());
    List<ColumnKind> allKinds = new ArrayList<>(List.of(ColumnKind.TIME));
    allKinds.addAll(table.kinds());
    StampColumn[] columns = stamps(allKinds, rows);
    RawTable raw = TableReader.ofRows(rows, headers, allKinds, columns, table.decimal(), skipped);
    suffixes(raw, rows, table.decimal());
    return assemble(
        raw,
        new Reading(
            Form.DELIMITED,
            text.encoding(),
            table.splitter().word() + " after a stamp",
            String.valueOf(table.decimal()),
            table.headerRow() + 1,
            table.firstRow() + 1,
            new Metadata(Map.of()),
            table.support()));
  }

  private TraceFile ofTable(
      LogText text, List<LogText.Line> head, List<String> sample, TableLayout table) {
    long numbers = (long) table.columns() * estimatedLines(text, head);
    if (numbers > 2 * options.maximumNumbers()) {
      return tooMany(text, numbers);
    }
    if (table.columns() > options.maximumColumns()) {
      return unreadable(
          text.encoding(),
          "The table has "
              + table.columns()
              + " columns; at most "
              + options.maximumColumns()
              + " are read.");
    }
    List<String[]> rows = sampleRows(sample, table);
    StampColumn[] stamps = stamps(table.kinds(), rows);
    long offset = head.get(table.firstRow()).offset();
    TableReader reader = new TableReader(text, table, stamps, offset);
    numbers = (long) table.columns() * reader.lines();
    if (numbers > options.maximumNumbers()) {
      return tooMany(text, numbers);
    }
    RawTable raw = reader.read();
    suffixes(raw, rows, table.decimal());
    List<String> before =
        cut(sample.subList(0, table.headerRow() < 0 ? table.firstRow() : table.headerRow()))
            .stream()
            .filter(l -> l.length() < 400)
            .toList();
    List<String> told = new ArrayList<>(before);
    told.addAll(BesideTable.underNames(cut(sample.subList(0, table.firstRow())), table.splitter()));
    boolean blanks = table.splitter().delimiter() == LineSplitter.BLANKS;
    Reading reading =
        new Reading(
            blanks ? Form.BLANKS : Form.DELIMITED,
            text.encoding(),
            table.columns() < 2 ? "" : table.splitter().word(),
            String.valueOf(table.decimal()),
            table.headerRow() + 1,
            table.firstRow() + 1,
            Metadata.of(told),
            table.support());
    return assemble(raw, reading);
  }

  private TraceFile tooMany(LogText text, long numbers) {
    return unreadable(
        text.encoding(),
        "The file holds about "
            + numbers / 1_000_000
            + " million numbers; at most "
            + options.maximumNumbers() / 1_000_000
            + " million fit. Split it or log less often.");
  }

  private static long estimatedLines(LogText text, List<LogText.Line> head) {
    if (head.size() < 2) {
      return 1;
    }
    LogText.Line last = head.get(head.size() - 1);
    LogText.Line middle = head.get(head.size() / 2);
    double perLine =
        Math.max(
            1,
            (double) (last.offset() - middle.offset())
                / Math.max(1, last.number() - middle.number()));
    return (long) ((text.to() - text.from()) / perLine) + 1;
  }

  private static List<String[]> sampleRows(List<String> sample, TableLayout table) {
    List<String[]> rows = new ArrayList<>();
    for (String line : sample.subList(table.firstRow(), sample.size())) {
      List<String> cells = table.splitter().split(line);
      if (cells.size() >= Math.min(2, table.columns())) {
        rows.add(cells.toArray(String[]::new));
      }
    }
    return rows;
  }

  private TraceFile assemble(RawTable read, Reading reading) {
    RawTable raw = reading.metadata.describing(LongTable.spread(read));
    if (raw.rows() == 0) {
      return unreadable(reading.encoding, "No rows of numbers were found.");
    }
    TimeColumns.Found time = new TimeColumns(raw, reading.metadata, options).find();
    TimeRepair.Repaired repaired = new TimeRepair(time).repair((a, b) -> sameRow(raw, a, b));
    ChannelBuilder builder =
        new ChannelBuilder(
            raw, time.used(), repaired.rows(), repaired.seconds(), reading.metadata, options);
    List<Channel> channels = builder.build();
    List<String> explanation = explanation(raw, reading, time);
    List<String> warnings = new ArrayList<>(repaired.warnings());
    warnings.addAll(builder.warnings());
    if (time.form() == TimeAxis.Form.DATE_AND_TIME && time.zone() == TimeAxis.Zone.UNKNOWN) {
      warnings.add("The stamps hold no year.");
    }
    List<Question> questions = new ArrayList<>(time.questions());
    questions.addAll(builder.questions());
    double certainty =
        Math.min(1, 0.5 + reading.support / 2) * time.certainty() * builder.certainty();
    Layout layout =
        new Layout(
            reading.form,
            reading.encoding,
            reading.delimiter,
            reading.decimal,
            reading.headerLine,
            reading.firstLine,
            repaired.rows().length,
            raw.skipped(),
            reading.metadata.entries(),
            Math.rint(certainty * 100) / 100,
            explanation);
    if (repaired.rows().length == 1) {
      warnings.add("The log holds one row: readings, but no course of them.");
    }
    boolean silent =
        !channels.isEmpty() && channels.stream().allMatch(c -> c.state() == Channel.State.UNUSED);
    if (silent) {
      warnings.add("No channel holds a reading: nothing can be measured.");
    }
    List<String> problems = problems(channels, repaired.rows().length);
    return new TraceFile(
        layout, axis(time, repaired), channels, repaired.segments(), questions, warnings, problems);
  }

  private static List<String> problems(List<Channel> channels, int rows) {
    if (rows == 0) {
      return List.of("No row has a time that can be read.");
    }
    return channels.isEmpty()
        ? List.of("The table holds times but no readings beside them.")
        : List.of();
  }

  private static boolean sameRow(RawTable raw, int a, int b) {
    for (double[] column : raw.values()) {
      if (Double.compare(column[a], column[b]) != 0) {
        return false;
      }
    }
    return true;
  }

  private static TimeAxis axis(TimeColumns.Found time, TimeRepair.Repaired repaired) {
    boolean dated =
        time.form() == TimeAxis.Form.DATE_AND_TIME || time.form() == TimeAxis.Form.EPOCH;
    double start = dated ? repaired.startSeconds() : time.startEpochSeconds();
    double ofDay = Double.NaN;
    if (time.form() == TimeAxis.Form.TIME_OF_DAY) {
      ofDay = repaired.startSeconds();
      start =
          Double.isNaN(time.startEpochSeconds())
              ? Double.NaN
              : time.startEpochSeconds() + repaired.startSeconds();
    }
    boolean yearless =
        time.form() == TimeAxis.Form.DATE_AND_TIME && time.zone() == TimeAxis.Zone.UNKNOWN;
    if (yearless) {
      ofDay = start - Math.floor(start / 86_400) * 86_400;
      start = Double.NaN;
    }
    Long millis = Double.isNaN(start) ? null : Math.round(start * 1000);
    TimeAxis.Zone zone =
        millis != null && time.zone() == TimeAxis.Zone.UNKNOWN ? TimeAxis.Zone.LOCAL : time.zone();
    Trace trace =
        new Trace("", repaired.seconds(), repaired.seconds(), ovenproof.core.quantity.Unit.SECOND);
    return new TimeAxis(
        repaired.seconds(),
        millis,
        zone,
        time.form(),
        time.names(),
        time.description(),
        trace.medianStepSeconds(),
        ofDay);
  }

  private static List<String> explanation(RawTable raw, Reading reading, TimeColumns.Found time) {
    List<String> explanation = new ArrayList<>();
    String rows =
        raw.rows()
            + (raw.rows() == 1 ? " row of " : " rows of ")
            + raw.columns()
            + (raw.columns() == 1 ? " column" : " columns");
    explanation.add(
        switch (reading.form) {
          case KEY_VALUE -> rows + " from named values.";
          case SENTENCES -> rows + " from sentences that repeat with other numbers.";
          case JSON -> rows + " from JSON.";
          case WORKBOOK -> rows + " from the sheet “" + reading.encoding + "”.";
          default ->
              rows
                  + ", separated by "
                  + (reading.delimiter.isEmpty() ? "nothing" : reading.delimiter)
                  + ", decimal "
                  + (reading.decimal.equals(",") ? "comma" : "point")
                  + ", text in "
                  + reading.encoding
                  + ".";
        });
    if (reading.headerLine > 0) {
      explanation.add(
          "Names stand in line "
              + reading.headerLine
              + ", rows begin in line "
              + reading.firstLine
              + ".");
    } else if (reading.form == Form.DELIMITED || reading.form == Form.BLANKS) {
      explanation.add("There is no line of names.");
    }
    if (raw.skipped() > 0) {
      explanation.add(raw.skipped() + " line(s) between the rows are no rows and were left out.");
    }
    explanation.addAll(time.explanation());
    return explanation;
  }

  /** A file that could not be read, and why. */
  public static TraceFile unreadable(String encoding, String problem) {
    Layout layout =
        new Layout(Form.UNREADABLE, encoding, "", "", 0, 0, 0, 0, Map.of(), 0, List.of());
    TimeAxis axis =
        new TimeAxis(
            new double[0],
            null,
            TimeAxis.Zone.UNKNOWN,
            TimeAxis.Form.NONE,
            List.of(),
            "no times",
            0,
            Double.NaN);
    return new TraceFile(
        layout, axis, List.of(), List.of(), List.of(), List.of(), List.of(problem));
  }
}
