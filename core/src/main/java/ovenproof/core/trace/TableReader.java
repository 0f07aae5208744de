package ovenproof.core.trace;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import ovenproof.core.trace.RawTable.Dictionary;
import ovenproof.core.trace.RawTable.StampColumn;
import ovenproof.core.trace.TableLayout.ColumnKind;

/**
 * Reads all rows of a table from the bytes, straight into arrays of the final size: lines are
 * counted first, then pieces of the file are read side by side. No text object is made for a plain
 * number.
 */
final class TableReader {

  private static final int PIECE_BYTES = 1 << 20;

  private final LogText text;
  private final TableLayout layout;
  private final @Nullable StampColumn[] stamps;
  private final Dictionary[] dictionaries;
  private final int columns;
  private final byte delimiter;
  private final boolean blanks;
  private final int decimal;
  private final ColumnKind[] kinds;
  private double[][] values = new double[0][];

  TableReader(LogText text, TableLayout layout, @Nullable StampColumn[] stamps) {
    this.text = text;
    this.layout = layout;
    this.stamps = stamps;
    this.columns = layout.columns();
    this.delimiter = (byte) layout.splitter().delimiter();
    this.blanks = layout.splitter().delimiter() == LineSplitter.BLANKS;
    this.decimal = layout.decimal();
    this.kinds = layout.kinds().toArray(new ColumnKind[0]);
    this.dictionaries = new Dictionary[columns];
    for (int c = 0; c < columns; c++) {
      dictionaries[c] = new Dictionary();
    }
  }

  /** A part of the file and the rows it fills. */
  private record Piece(int from, int to, int firstRow) {}

  /** What became of a piece. */
  private record Done(boolean[] kept, int lines, int skipped, int[] missingWords) {}

  RawTable read(int firstOffset) {
    List<Piece> pieces = pieces(firstOffset);
    Piece last = pieces.get(pieces.size() - 1);
    int lines = last.firstRow + countLines(last.from, last.to);
    values = new double[columns][];
    for (int c = 0; c < columns; c++) {
      values[c] = new double[kinds[c] == ColumnKind.SKIPPED ? 0 : lines];
    }
    List<Done> done =
        IntStream.range(0, pieces.size())
            .parallel()
            .mapToObj(i -> new PieceReader(pieces.get(i)).read())
            .toList();
    return table(pieces, done, lines);
  }

  private List<Piece> pieces(int firstOffset) {
    List<Integer> starts = new ArrayList<>();
    int at = firstOffset;
    while (at < text.to()) {
      starts.add(at);
      long next = (long) at + PIECE_BYTES;
      at = next >= text.to() ? text.to() : text.lineStartFrom((int) next);
    }
    int[] counts =
        IntStream.range(0, starts.size())
            .parallel()
            .map(
                i ->
                    countLines(
                        starts.get(i), i + 1 < starts.size() ? starts.get(i + 1) : text.to()))
            .toArray();
    List<Piece> pieces = new ArrayList<>();
    int row = 0;
    for (int i = 0; i < starts.size(); i++) {
      int end = i + 1 < starts.size() ? starts.get(i + 1) : text.to();
      pieces.add(new Piece(starts.get(i), end, row));
      row += counts[i];
    }
    return pieces;
  }

  /** Line ends, and one more when the piece does not end in one. */
  private int countLines(int from, int to) {
    byte[] b = text.bytes();
    byte end = text.lineEnd();
    int n = 0;
    for (int i = from; i < to; i++) {
      n += b[i] == end ? 1 : 0;
    }
    return to > from && b[to - 1] != end ? n + 1 : n;
  }

  private RawTable table(List<Piece> pieces, List<Done> done, int lines) {
    int kept = 0;
    int skipped = 0;
    int[] missing = new int[columns];
    for (Done d : done) {
      for (int i = 0; i < d.lines; i++) {
        kept += d.kept[i] ? 1 : 0;
      }
      skipped += d.skipped;
      for (int c = 0; c < columns; c++) {
        missing[c] += d.missingWords[c];
      }
    }
    if (kept < lines) {
      compact(pieces, done, kept);
    }
    List<List<String>> labels = new ArrayList<>();
    for (Dictionary dictionary : dictionaries) {
      labels.add(dictionary.words());
    }
    for (int c = 0; c < columns; c++) {
      if (kinds[c] == ColumnKind.SKIPPED) {
        values[c] = new double[kept];
        java.util.Arrays.fill(values[c], Double.NaN);
      }
    }
    return new RawTable(
        layout.headers(),
        layout.kinds(),
        values,
        stamps,
        new UnitText[columns],
        labels,
        missing,
        skipped);
  }

  /** Closes the holes that skipped lines left. */
  private void compact(List<Piece> pieces, List<Done> done, int kept) {
    for (int c = 0; c < columns; c++) {
      if (kinds[c] == ColumnKind.SKIPPED) {
        continue;
      }
      double[] tight = new double[kept];
      int next = 0;
      for (int p = 0; p < pieces.size(); p++) {
        int row = pieces.get(p).firstRow;
        for (int i = 0; i < done.get(p).lines; i++) {
          if (done.get(p).kept[i]) {
            tight[next++] = values[c][row + i];
          }
        }
      }
      values[c] = tight;
    }
  }

  /** Reads one piece with its own parsers. */
  private final class PieceReader {
    private final Piece piece;
    private final byte[] b = text.bytes();
    private final byte end = text.lineEnd();
    private final StampReader[] readers = new StampReader[columns];
    private final CellText cells = new CellText(layout.decimal());
    private final int[] missingWords = new int[columns];
    private final int[] fieldFrom = new int[columns];
    private final int[] fieldTo = new int[columns];
    private int skipped;

    PieceReader(Piece piece) {
      this.piece = piece;
      for (int c = 0; c < columns; c++) {
        StampColumn stamp = stamps[c];
        if (stamp != null) {
          readers[c] = new StampReader(stamp);
        }
      }
    }

    Done read() {
      int lines = countLines(piece.from, piece.to);
      boolean[] kept = new boolean[lines];
      int i = piece.from;
      for (int line = 0; line < lines; line++) {
        int stop = i;
        int row = piece.firstRow + line;
        int quick = quickRow(i, row);
        if (quick > 0) {
          kept[line] = true;
          i = quick;
          continue;
        }
        while (stop < piece.to && b[stop] != end) {
          stop++;
        }
        boolean blank = isBlank(i, stop);
        kept[line] = !blank && slowRow(i, stop, row, stop == text.to());
        skipped += kept[line] || blank ? 0 : 1;
        i = stop + 1;
      }
      return new Done(kept, lines, skipped, missingWords);
    }

    private boolean isBlank(int from, int to) {
      for (int i = from; i < to; i++) {
        if (b[i] != ' ' && b[i] != '\r' && b[i] != '\t') {
          return false;
        }
      }
      return true;
    }

    /**
     * A row of plain numbers and learned stamps, read in one pass.
     *
     * @return the offset of the next line, or −1 when the row has to be read with more care
     */
    private int quickRow(int from, int row) {
      if (blanks) {
        return -1;
      }
      int i = from;
      for (int c = 0; c < columns; c++) {
        int start = i;
        if (kinds[c] == ColumnKind.NUMBER) {
          i = number(c, row, i);
          if (i < 0) {
            return -1;
          }
        } else {
          while (i < piece.to && b[i] != delimiter && b[i] != end && b[i] != '"') {
            i++;
          }
          int stop = i > start && b[i - 1] == '\r' ? i - 1 : i;
          if (i < piece.to && b[i] == '"' || !other(c, row, start, stop)) {
            return -1;
          }
        }
        boolean atEnd = i >= piece.to || b[i] == end || b[i] == '\r';
        if (c < columns - 1) {
          if (atEnd || b[i] != delimiter) {
            return -1;
          }
          i++;
        }
      }
      if (i < piece.to && b[i] == '\r' && end == '\n') {
        i++;
      }
      return i >= piece.to ? (i >= text.to() ? piece.to + 1 : -1) : b[i] == end ? i + 1 : -1;
    }

    /** Reads digits up to the delimiter; −1 for anything but a plain decimal number. */
    private int number(int c, int row, int from) {
      int i = from;
      final byte[] bytes = b;
      final int to = piece.to;
      boolean negative = false;
      if (i < to && bytes[i] == '-') {
        negative = true;
        i++;
      }
      int first = i;
      long mantissa = 0;
      int digit;
      while (i < to && (digit = bytes[i] - '0') >= 0 && digit <= 9) {
        mantissa = mantissa * 10 + digit;
        i++;
      }
      int digits = i - first;
      int fraction = 0;
      if (i < to && bytes[i] == decimal) {
        int mark = ++i;
        while (i < to && (digit = bytes[i] - '0') >= 0 && digit <= 9) {
          mantissa = mantissa * 10 + digit;
          i++;
        }
        fraction = i - mark;
        digits += fraction;
      }
      if (digits == 0 || digits > 15) {
        return -1;
      }
      if (i < to && bytes[i] != delimiter && bytes[i] != end && bytes[i] != '\r') {
        return -1;
      }
      double value = fraction == 0 ? mantissa : mantissa / POWERS[fraction];
      values[c][row] = negative ? -value : value;
      return i;
    }

    private boolean other(int c, int row, int from, int to) {
      if (kinds[c] == ColumnKind.SKIPPED) {
        return true;
      }
      if (kinds[c] == ColumnKind.TIME) {
        double seconds = readers[c].seconds(b, from, to);
        values[c][row] = seconds;
        return !Double.isNaN(seconds);
      }
      values[c][row] = word(c, from, to);
      return true;
    }

    private double word(int c, int from, int to) {
      if (from >= to) {
        return Double.NaN;
      }
      String word = CellText.unquote(text.text(from, to));
      int code = word.isEmpty() ? -1 : dictionaries[c].code(word);
      return code < 0 ? Double.NaN : code;
    }

    /** Quotes, blanks, missing values, units behind numbers, rows too short or too long. */
    private boolean slowRow(int from, int to, int row, boolean lastLine) {
      int fields = split(from, to);
      boolean enough = fields == columns || fields >= Math.max(2, 0.6 * columns);
      if (!enough || (lastLine && fields < columns)) {
        return false;
      }
      boolean stamped = false;
      boolean stampWanted = false;
      int wrong = 0;
      int numbers = 0;
      for (int c = 0; c < columns; c++) {
        double value = c < fields ? cell(c, fieldFrom[c], fieldTo[c]) : Double.NaN;
        boolean bad = !NumberText.isNumber(value);
        if (kinds[c] == ColumnKind.TIME) {
          stampWanted = true;
          stamped |= !bad && !Double.isNaN(value);
        }
        wrong += bad ? 1 : 0;
        numbers += kinds[c] == ColumnKind.NUMBER && Double.isFinite(value) ? 1 : 0;
        if (kinds[c] != ColumnKind.SKIPPED) {
          values[c][row] = bad ? Double.NaN : value;
        }
      }
      return stampWanted ? stamped && wrong <= columns / 2 : numbers > 0 && wrong <= columns / 4;
    }

    private double cell(int c, int from, int to) {
      if (from >= to) {
        return Double.NaN;
      }
      return switch (kinds[c]) {
        case NUMBER -> numberCell(c, from, to);
        case TIME -> {
          double seconds = readers[c].seconds(b, from, to);
          yield Double.isNaN(seconds) && !CellText.isMissingWord(text.text(from, to))
              ? NumberText.NOT_A_NUMBER
              : seconds;
        }
        case WORDS -> word(c, from, to);
        case SKIPPED -> Double.NaN;
      };
    }

    private double numberCell(int c, int from, int to) {
      double plain = NumberText.parse(b, from, to, decimal);
      if (NumberText.isNumber(plain)) {
        return plain;
      }
      String cell = text.text(from, to);
      double value = cells.number(cell);
      if (NumberText.isNumber(value)) {
        return value;
      }
      String bare = CellText.unquote(cell);
      if (bare.isEmpty()) {
        return Double.NaN;
      }
      missingWords[c]++;
      return CellText.isMissingWord(bare) ? Double.NaN : NumberText.NOT_A_NUMBER;
    }

    /** Fills the bounds of the fields; the number of fields, at most the number of columns + 1. */
    private int split(int from, int to) {
      int stop = to > from && b[to - 1] == '\r' ? to - 1 : to;
      return blanks ? splitBlanks(from, stop) : splitDelimited(from, stop);
    }

    private int splitDelimited(int from, int to) {
      int n = 0;
      int i = from;
      while (n < columns) {
        int start = skipBlanks(i, to);
        i = start < to && b[start] == '"' ? afterQuote(start, to) : start;
        while (i < to && b[i] != delimiter) {
          i++;
        }
        int last = i;
        while (last > start && (b[last - 1] == ' ' || (b[last - 1] == '\t' && delimiter != '\t'))) {
          last--;
        }
        fieldFrom[n] = start;
        fieldTo[n++] = last;
        if (quoted(start, last)) {
          fieldFrom[n - 1]++;
          fieldTo[n - 1]--;
        }
        if (i >= to) {
          return n;
        }
        i++;
      }
      return n;
    }

    private boolean quoted(int start, int last) {
      return last - start >= 2 && b[start] == '"' && b[last - 1] == '"';
    }

    private int skipBlanks(int from, int to) {
      int i = from;
      while (i < to && (b[i] == ' ' || (b[i] == '\t' && delimiter != '\t'))) {
        i++;
      }
      return i;
    }

    private int afterQuote(int open, int to) {
      int i = open + 1;
      while (i < to && b[i] != '"') {
        i++;
      }
      return i < to ? i + 1 : open;
    }

    private int splitBlanks(int from, int to) {
      int n = 0;
      int i = from;
      while (n < columns) {
        while (i < to && (b[i] == ' ' || b[i] == '\t')) {
          i++;
        }
        if (i >= to) {
          return n;
        }
        int start = i;
        while (i < to && b[i] != ' ' && b[i] != '\t') {
          i++;
        }
        boolean halfDay =
            n > 0
                && i - start == 2
                && (b[start + 1] | 32) == 'm'
                && ((b[start] | 32) == 'a' || (b[start] | 32) == 'p');
        if (halfDay) {
          fieldTo[n - 1] = i;
        } else {
          fieldFrom[n] = start;
          fieldTo[n++] = i;
        }
      }
      // A last "PM" behind the last column still belongs to it.
      return n;
    }
  }

  private static final double[] POWERS = new double[16];

  static {
    double power = 1;
    for (int i = 0; i < POWERS.length; i++) {
      POWERS[i] = power;
      power *= 10;
    }
  }

  /** Reads rows that are already split, as from JSON, key=value lines or a workbook. */
  static RawTable ofRows(
      List<String[]> rows,
      List<HeaderText> headers,
      List<ColumnKind> kinds,
      @Nullable StampColumn[] stamps,
      char decimal,
      int skipped) {
    int columns = headers.size();
    double[][] values = new double[columns][rows.size()];
    int[] missing = new int[columns];
    List<List<String>> labels = new ArrayList<>();
    CellText cells = new CellText(decimal);
    for (int c = 0; c < columns; c++) {
      Dictionary dictionary = new Dictionary();
      StampColumn stamp = stamps[c];
      StampReader reader = stamp == null ? null : new StampReader(stamp);
      for (int r = 0; r < rows.size(); r++) {
        String cell = CellText.unquote(c < rows.get(r).length ? rows.get(r)[c] : "");
        double value = Double.NaN;
        if (!cell.isEmpty() && reader != null) {
          byte[] bytes = cell.getBytes(StandardCharsets.UTF_8);
          value = reader.seconds(bytes, 0, bytes.length);
        } else if (!cell.isEmpty() && kinds.get(c) == ColumnKind.WORDS) {
          int code = dictionary.code(cell);
          value = code < 0 ? Double.NaN : code;
        } else if (!cell.isEmpty() && kinds.get(c) == ColumnKind.NUMBER) {
          double number = cells.number(cell);
          value = NumberText.isNumber(number) ? number : Double.NaN;
          missing[c] += NumberText.isNumber(number) ? 0 : 1;
        }
        values[c][r] = value;
      }
      labels.add(dictionary.words());
    }
    return new RawTable(
        headers, kinds, values, stamps, new UnitText[columns], labels, missing, skipped);
  }
}
