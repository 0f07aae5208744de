package ovenproof.core.trace;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import ovenproof.core.trace.RawTable.Dictionary;
import ovenproof.core.trace.RawTable.StampColumn;
import ovenproof.core.trace.TableLayout.ColumnKind;

/**
 * Reads the rows of a table out of bytes. Most rows hold plain numbers, learned stamps and words
 * already seen, and are read in one pass, eight bytes at a time; a row that holds anything else is
 * read again with care, and what care says is what counts. Not for use by two threads.
 */
final class RowReader {

  /** When a row is read with care. */
  enum Care {
    /** Where the quick way gives up; both ways give the same numbers. */
    WHERE_NEEDED,
    ALWAYS
  }

  private static final int GIVEN_UP = -1;

  /** Stands for a decimal mark that cannot occur. */
  private static final int NO_MARK = 256;

  private final LogText text;
  private final Care care;
  private final int columns;
  private final ColumnKind[] kinds;
  private final boolean[] isNumber;
  private final boolean stamped;
  private final int numbers;
  private final byte delimiter;
  private final boolean blanks;
  private final int decimal;
  private final int bareDecimal;
  private final byte end;
  private final @Nullable StampReader[] readers;
  private final CellText cells;
  private final int[] missingWords;
  private final int[] fieldFrom;
  private final int[] fieldTo;
  private final Seen[] seen;
  private final int[] oddCells;
  private int oddInRow;
  private int emptyInRow;
  private int skipped;

  private byte[] b = new byte[0];
  private double[][] values = new double[0][];
  private int limit;
  private int cutAt;
  private Dictionary[] dictionaries = new Dictionary[0];

  RowReader(LogText text, TableLayout layout, @Nullable StampColumn[] stamps, Care care) {
    this.text = text;
    this.care = care;
    this.columns = layout.columns();
    this.kinds = layout.kinds().toArray(new ColumnKind[0]);
    this.delimiter = (byte) layout.splitter().delimiter();
    this.blanks = layout.splitter().delimiter() == LineSplitter.BLANKS;
    this.decimal = layout.decimal();
    this.bareDecimal = decimal == delimiter ? NO_MARK : decimal;
    this.end = text.lineEnd();
    this.cells = new CellText(layout.decimal());
    this.missingWords = new int[columns];
    this.fieldFrom = new int[columns];
    this.fieldTo = new int[columns];
    this.oddCells = new int[columns];
    this.readers = new StampReader[columns];
    this.seen = new Seen[columns];
    this.isNumber = new boolean[columns];
    int numeric = 0;
    boolean timed = false;
    for (int c = 0; c < columns; c++) {
      StampColumn stamp = stamps[c];
      readers[c] = stamp == null ? null : new StampReader(stamp);
      seen[c] = new Seen();
      isNumber[c] = kinds[c] == ColumnKind.NUMBER;
      numeric += isNumber[c] ? 1 : 0;
      timed |= kinds[c] == ColumnKind.TIME;
    }
    this.numbers = numeric;
    this.stamped = timed;
  }

  /** What a column held last that was no plain number: words and readings repeat. */
  private static final class Seen {
    private byte[] word = new byte[0];
    private double wordValue = Double.NaN;
    private byte[] odd = new byte[0];
    private double oddValue = Double.NaN;
    private byte[] suffix = new byte[0];

    void forgetWord() {
      word = new byte[0];
    }

    boolean isWord(byte[] b, int from, int to) {
      return to > from && Arrays.equals(b, from, to, word, 0, word.length);
    }

    boolean isOdd(byte[] b, int from, int to) {
      return to > from && Arrays.equals(b, from, to, odd, 0, odd.length);
    }

    boolean endsInSuffix(byte[] b, int from, int to) {
      int n = suffix.length;
      return n > 0 && to - from > n && Arrays.equals(b, to - n, to, suffix, 0, n);
    }
  }

  /** Per column, how many cells held a word for "nothing". */
  int[] missingWords() {
    return missingWords;
  }

  /** Lines that were neither rows nor blank. */
  int skipped() {
    return skipped;
  }

  /**
   * Takes up a piece of the file.
   *
   * @param bytes a line end behind the last line, and {@link EightBytes#PADDING} more bytes
   * @param limit index of the last line end
   * @param columnValues where readings go
   * @param cut whether the file ends within the last line
   * @return the words of this piece, one dictionary per column
   */
  Dictionary[] begin(byte[] bytes, int limit, double[][] columnValues, Cut cut) {
    this.b = bytes;
    this.values = columnValues;
    this.limit = limit;
    this.cutAt = cut == Cut.IN_LAST_LINE ? limit : -1;
    this.dictionaries = new Dictionary[columns];
    for (int c = 0; c < columns; c++) {
      dictionaries[c] = new Dictionary();
      seen[c].forgetWord();
    }
    return dictionaries;
  }

  /** Whether the last line of a piece ended by itself. */
  enum Cut {
    NOWHERE,
    IN_LAST_LINE
  }

  /**
   * Reads lines into rows without holes.
   *
   * @param first where the first line begins
   * @return how many lines were rows
   */
  int read(int first, int lines, int firstRow) {
    int row = firstRow;
    int i = first;
    for (int line = 0; line < lines; line++) {
      int next = care == Care.ALWAYS ? GIVEN_UP : blanks ? quickBlanks(i, row) : quick(i, row);
      if (next != GIVEN_UP) {
        row++;
        i = next;
        continue;
      }
      int stop = EightBytes.indexOf(b, i, limit, end);
      boolean blank = isBlank(i, stop);
      boolean kept = !blank && careful(i, stop, row, stop == cutAt);
      row += kept ? 1 : 0;
      skipped += kept || blank ? 0 : 1;
      i = stop + 1;
    }
    return row - firstRow;
  }

  private boolean isBlank(int from, int to) {
    for (int i = from; i < to; i++) {
      if (b[i] != ' ' && b[i] != '\r' && b[i] != '\t' && b[i] != 0) {
        return false;
      }
    }
    return true;
  }

  // The quick way

  /**
   * A row of plain numbers, learned stamps and words.
   *
   * @return where the next line begins, or {@link #GIVEN_UP} when the row has to be read with care
   */
  private int quick(int from, int row) {
    final byte[] bytes = b;
    final int last = columns - 1;
    oddInRow = 0;
    emptyInRow = 0;
    int i = from;
    for (int c = 0; c <= last; c++) {
      i = isNumber[c] ? quickNumber(bytes, i, c, row) : quickOther(i, c, row);
      if (i == GIVEN_UP) {
        return GIVEN_UP;
      }
      if (c < last) {
        if (bytes[i] != delimiter) {
          return GIVEN_UP;
        }
        i++;
      }
    }
    if (emptyInRow == numbers && !stamped) {
      return GIVEN_UP;
    }
    if (bytes[i] == delimiter) {
      i = EightBytes.indexOf(bytes, i, limit, end); // what lies behind the last column is nothing
    }
    return lineEnd(i);
  }

  private int lineEnd(int from) {
    int i = b[from] == '\r' && end == '\n' ? from + 1 : from;
    if (b[i] != end) {
      return GIVEN_UP;
    }
    for (int k = 0; k < oddInRow; k++) {
      missingWords[oddCells[k]]++;
    }
    return i + 1;
  }

  /**
   * Digits and decimal mark within eight bytes; longer ones, signs, blanks and quotes go on to
   * {@link #longNumber}.
   */
  private int quickNumber(byte[] bytes, int from, int c, int row) {
    int at = bytes[from] == '-' ? from + 1 : from;
    long word = EightBytes.at(bytes, at);
    long digits = EightBytes.digits(word);
    long others = EightBytes.noDigits(digits);
    int length = Long.numberOfTrailingZeros(others) >>> 3;
    if (length == 0 || length == 8) {
      return longNumber(from, c, row);
    }
    double value;
    if ((byte) (word >>> (length << 3)) == bareDecimal) {
      int whole = length;
      length = Long.numberOfTrailingZeros(others & (others - 1)) >>> 3;
      if (length == 8) {
        return longNumber(from, c, row);
      }
      long before = (1L << (whole << 3)) - 1;
      long joined = (digits & before) | ((digits >>> 8) & ~before);
      long mantissa = EightBytes.number(joined << (72 - (length << 3)));
      value = mantissa / NumberText.POWERS[length - whole - 1];
    } else {
      value = EightBytes.number(digits << (64 - (length << 3)));
    }
    int stop = at + length;
    byte behind = bytes[stop];
    if (behind != delimiter && behind != end && behind != '\r') {
      return longNumber(from, c, row);
    }
    values[c][row] = at == from ? value : -value;
    return stop;
  }

  /** A number of any length, quoted or with blanks around it; or an empty cell; or a known word. */
  private int longNumber(int from, int c, int row) {
    int start = skipBlanks(from, limit);
    boolean quoted = b[start] == '"';
    start += quoted ? 1 : 0;
    int i = digits(start, quoted ? decimal : bareDecimal);
    if (i == GIVEN_UP) {
      return quoted || isEnd(start) ? nothing(start, quoted, c, row) : odd(start, c, row);
    }
    if (quoted && b[i++] != '"') {
      return GIVEN_UP;
    }
    i = skipBlanks(i, limit);
    values[c][row] = number;
    return isEnd(i) ? i : GIVEN_UP;
  }

  private double number;

  /** Sign, digits, mark, digits into {@link #number}; where they stop, or given up without any. */
  private int digits(int from, int mark) {
    boolean negative = b[from] == '-';
    int i = negative || b[from] == '+' ? from + 1 : from;
    int first = i;
    long mantissa = 0;
    int digit;
    while ((digit = b[i] - '0') >= 0 && digit <= 9) {
      mantissa = mantissa * 10 + digit;
      i++;
    }
    int count = i - first;
    int fraction = 0;
    if (b[i] == mark) {
      int behind = ++i;
      while ((digit = b[i] - '0') >= 0 && digit <= 9) {
        mantissa = mantissa * 10 + digit;
        i++;
      }
      fraction = i - behind;
      count += fraction;
    }
    if (count == 0 || count > 15) {
      return GIVEN_UP;
    }
    double value = fraction == 0 ? mantissa : mantissa / NumberText.POWERS[fraction];
    number = negative ? -value : value;
    return i;
  }

  private boolean isEnd(int i) {
    return b[i] == delimiter || b[i] == end || (b[i] == '\r' && b[i + 1] == end);
  }

  private int nothing(int from, boolean quoted, int c, int row) {
    int i = from;
    if (quoted) {
      if (b[i] != '"') {
        return GIVEN_UP;
      }
      i = skipBlanks(i + 1, limit);
    }
    if (!isEnd(i)) {
      return GIVEN_UP;
    }
    values[c][row] = Double.NaN;
    emptyInRow++;
    return i;
  }

  /** The word for nothing that stood here last. */
  private int odd(int from, int c, int row) {
    Seen known = seen[c];
    int stop = from + known.odd.length;
    boolean same =
        known.odd.length > 0
            && stop <= limit
            && isEnd(stop)
            && Double.isNaN(known.oddValue)
            && NumberText.isNumber(known.oddValue)
            && known.isOdd(b, from, stop);
    if (!same) {
      return GIVEN_UP;
    }
    values[c][row] = Double.NaN;
    emptyInRow++;
    oddCells[oddInRow++] = c;
    return stop;
  }

  private int quickOther(int from, int c, int row) {
    int start = from;
    int i = from;
    StampReader reader = readers[c];
    int length = reader == null ? 0 : reader.sameLength(b, from, limit);
    if (length > 0 && isEnd(from + length)) {
      values[c][row] = reader.last();
      return from + length;
    }
    if (b[from] == '"') {
      start = from + 1;
      i = start;
      while (i < limit && b[i] != '"' && b[i] != end) {
        i++;
      }
      return b[i] == '"' && isEnd(i + 1) && other(c, row, start, i) ? i + 1 : GIVEN_UP;
    }
    while (b[i] != delimiter && b[i] != end && b[i] != '"') {
      i++;
    }
    int stop = b[i] == end && i > start && b[i - 1] == '\r' && end == '\n' ? i - 1 : i;
    return b[i] != '"' && other(c, row, start, stop) ? stop : GIVEN_UP;
  }

  private boolean other(int c, int row, int from, int to) {
    StampReader reader = readers[c];
    if (kinds[c] == ColumnKind.TIME && reader != null) {
      double seconds = reader.seconds(b, from, to);
      values[c][row] = seconds;
      return !Double.isNaN(seconds);
    }
    if (kinds[c] == ColumnKind.WORDS) {
      if (!isKnownWord(c, from, to)) {
        return false; // the row may yet be none, and then its words do not count
      }
      values[c][row] = word(c, from, to);
    }
    return kinds[c] != ColumnKind.TIME;
  }

  private boolean isKnownWord(int c, int from, int to) {
    return from >= to
        || seen[c].isWord(b, from, to)
        || dictionaries[c].knows(CellText.unquote(text.text(b, from, to)));
  }

  /** The same where any run of blanks stands between cells. */
  private int quickBlanks(int from, int row) {
    oddInRow = 0;
    int i = from;
    for (int c = 0; c < columns; c++) {
      int start = skipRun(i);
      if (isNumber[c]) {
        i = digits(start, decimal);
        if (i == GIVEN_UP || !isRunEnd(i)) {
          return GIVEN_UP;
        }
        values[c][row] = number;
      } else {
        i = start;
        while (!isRunEnd(i)) {
          i++;
        }
        if (i == start || isHalfDay(start, i) || !other(c, row, start, i)) {
          return GIVEN_UP;
        }
      }
    }
    return lineEnd(skipRun(i));
  }

  private int skipRun(int from) {
    int i = from;
    while (b[i] == ' ' || b[i] == '\t') {
      i++;
    }
    return i;
  }

  private boolean isRunEnd(int i) {
    return b[i] == ' ' || b[i] == '\t' || b[i] == end || (b[i] == '\r' && b[i + 1] == end);
  }

  private boolean isHalfDay(int start, int stop) {
    return stop - start == 2
        && (b[start + 1] | 32) == 'm'
        && ((b[start] | 32) == 'a' || (b[start] | 32) == 'p');
  }

  private double word(int c, int from, int to) {
    if (from >= to) {
      return Double.NaN;
    }
    Seen known = seen[c];
    if (care == Care.WHERE_NEEDED && known.isWord(b, from, to)) {
      return known.wordValue;
    }
    String word = CellText.unquote(text.text(b, from, to));
    int code = word.isEmpty() ? -1 : dictionaries[c].code(word);
    known.word = Arrays.copyOfRange(b, from, to);
    known.wordValue = code < 0 ? Double.NaN : code;
    return known.wordValue;
  }

  // With care

  /** Quotes, blanks, missing values, units behind numbers, rows too short or too long. */
  private boolean careful(int from, int to, int row, boolean lastLine) {
    int fields = split(from, to);
    boolean enough = fields == columns || fields >= Math.max(2, 0.6 * columns);
    if (!enough || (lastLine && fields < columns)) {
      return false;
    }
    boolean found = false;
    int wrong = 0;
    int finite = 0;
    for (int c = 0; c < columns; c++) {
      double value = c < fields ? cell(c, fieldFrom[c], fieldTo[c]) : Double.NaN;
      boolean bad = !NumberText.isNumber(value);
      found |= kinds[c] == ColumnKind.TIME && !bad && !Double.isNaN(value);
      wrong += bad ? 1 : 0;
      finite += isNumber[c] && Double.isFinite(value) ? 1 : 0;
      if (kinds[c] != ColumnKind.SKIPPED) {
        values[c][row] = bad ? Double.NaN : value;
      }
    }
    return stamped ? found && wrong <= columns / 2 : finite > 0 && wrong <= columns / 4;
  }

  private double cell(int c, int from, int to) {
    if (from >= to) {
      return Double.NaN;
    }
    return switch (kinds[c]) {
      case NUMBER -> numberCell(c, from, to);
      case TIME -> stampCell(c, from, to);
      case WORDS -> word(c, from, to);
      case SKIPPED -> Double.NaN;
    };
  }

  private double stampCell(int c, int from, int to) {
    StampReader reader = readers[c];
    double seconds = reader == null ? Double.NaN : reader.seconds(b, from, to);
    return Double.isNaN(seconds) && !CellText.isMissingWord(text.text(b, from, to))
        ? NumberText.NOT_A_NUMBER
        : seconds;
  }

  private double numberCell(int c, int from, int to) {
    double plain = NumberText.parse(b, from, to, decimal);
    if (NumberText.isNumber(plain)) {
      return plain;
    }
    Seen known = seen[c];
    if (care == Care.WHERE_NEEDED) {
      if (known.isOdd(b, from, to)) {
        missingWords[c]++;
        return known.oddValue;
      }
      if (known.endsInSuffix(b, from, to)) {
        double value = NumberText.parse(b, from, to - known.suffix.length, decimal);
        if (NumberText.isNumber(value)) {
          return value;
        }
      }
    }
    return oddCell(c, from, to);
  }

  /** Units and quotes around a number, or a word in its place; remembered for the next row. */
  private double oddCell(int c, int from, int to) {
    String cell = text.text(b, from, to);
    double value = cells.number(cell);
    if (NumberText.isNumber(value)) {
      seen[c].suffix = suffix(from, to);
      return value;
    }
    String bare = CellText.unquote(cell);
    if (bare.isEmpty()) {
      return Double.NaN;
    }
    missingWords[c]++;
    double nothing = CellText.isMissingWord(bare) ? Double.NaN : NumberText.NOT_A_NUMBER;
    seen[c].odd = Arrays.copyOfRange(b, from, to);
    seen[c].oddValue = nothing;
    return nothing;
  }

  /** What stands behind the last digit; nothing when a quote is in it. */
  private byte[] suffix(int from, int to) {
    int i = to;
    while (i > from && (b[i - 1] < '0' || b[i - 1] > '9')) {
      if (b[i - 1] == '"' || b[i - 1] == '\'') {
        return new byte[0];
      }
      i--;
    }
    return Arrays.copyOfRange(b, i, to);
  }

  /** Fills the bounds of the fields; the number of fields, at most the number of columns. */
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
    while (i < to && (b[i] == ' ' || b[i] == 0 || (b[i] == '\t' && delimiter != '\t'))) {
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
      if (n > 0 && isHalfDay(start, i)) {
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
