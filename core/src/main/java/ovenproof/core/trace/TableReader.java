package ovenproof.core.trace;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import ovenproof.core.trace.RawTable.Dictionary;
import ovenproof.core.trace.RawTable.StampColumn;
import ovenproof.core.trace.TableLayout.ColumnKind;

/**
 * Reads all rows of a table straight into arrays of the final size: lines are counted first, then
 * pieces of the file are read side by side, each by a {@link RowReader}. Neither the file nor a
 * text object for a plain number is kept in memory.
 */
final class TableReader {

  /** A piece and the numbers in it stay in a processor's own cache. */
  private static final int PIECE_BYTES = 1 << 18;

  /** Most lines end within this many bytes behind a piece. */
  private static final int OVERHANG_BYTES = 1 << 12;

  /** Of a longer line only the beginning is looked at. */
  private static final int LONGEST_LINE_BYTES = 1 << 23;

  private final LogText text;
  private final TableLayout layout;
  private final @Nullable StampColumn[] stamps;
  private final RowReader.Care care;
  private final int columns;
  private final ColumnKind[] kinds;
  private final long start;
  private final int pieces;
  private final int[] firstRows;
  private final int[] kept;
  private final Dictionary[][] dictionaries;
  private double[][] values = new double[0][];

  /**
   * Counts the lines.
   *
   * @param start where the first row begins
   */
  TableReader(LogText text, TableLayout layout, @Nullable StampColumn[] stamps, long start) {
    this(text, layout, stamps, start, RowReader.Care.WHERE_NEEDED);
  }

  TableReader(
      LogText text,
      TableLayout layout,
      @Nullable StampColumn[] stamps,
      long start,
      RowReader.Care care) {
    this.text = text;
    this.layout = layout;
    this.stamps = stamps;
    this.care = care;
    this.columns = layout.columns();
    this.kinds = layout.kinds().toArray(new ColumnKind[0]);
    this.start = start;
    this.pieces = (int) ((Math.max(0, text.to() - start) + PIECE_BYTES - 1) / PIECE_BYTES);
    this.firstRows = new int[pieces + 1];
    this.kept = new int[pieces];
    this.dictionaries = new Dictionary[pieces][0];
    count();
  }

  /** Lines from the first row on; rows and noise between them. */
  int lines() {
    return firstRows[pieces];
  }

  RawTable read() {
    values = new double[columns][];
    each(columns, c -> values[c] = new double[kinds[c] == ColumnKind.SKIPPED ? 0 : lines()]);
    int[] missing = new int[columns];
    int[] skipped = new int[1];
    inTurn(worker -> readPieces(worker, missing, skipped));
    int rows = Arrays.stream(kept).sum();
    List<List<String>> labels = labels();
    each(columns, c -> values[c] = finished(c, rows));
    return new RawTable(
        layout.headers(),
        layout.kinds(),
        values,
        stamps,
        new UnitText[columns],
        labels,
        missing,
        skipped[0]);
  }

  // Lines

  /** A line belongs to the piece in which its first byte lies: behind a line end, or the start. */
  private void count() {
    int[] lines = new int[pieces];
    inTurn(
        next -> {
          byte[] window = new byte[PIECE_BYTES];
          for (int p = next.getAndIncrement(); p < pieces; p = next.getAndIncrement()) {
            long from = Math.max(start, pieceStart(p) - 1);
            int length = (int) (pieceStart(p + 1) - 1 - from);
            text.source().copy(from, window, 0, length);
            lines[p] = EightBytes.count(window, length, text.lineEnd()) + (p == 0 ? 1 : 0);
          }
        });
    for (int p = 0; p < pieces; p++) {
      firstRows[p + 1] = Math.addExact(firstRows[p], lines[p]);
    }
  }

  private long pieceStart(int piece) {
    return Math.min(text.to(), start + (long) piece * PIECE_BYTES);
  }

  // Rows

  private void readPieces(AtomicInteger next, int[] missing, int[] skipped) {
    RowReader rows = new RowReader(text, layout, stamps, care);
    byte[] window = new byte[PIECE_BYTES + OVERHANG_BYTES + EightBytes.PADDING];
    for (int p = next.getAndIncrement(); p < pieces; p = next.getAndIncrement()) {
      int lines = firstRows[p + 1] - firstRows[p];
      if (lines > 0) {
        window = readPiece(rows, p, lines, window);
      }
    }
    synchronized (missing) {
      for (int c = 0; c < columns; c++) {
        missing[c] += rows.missingWords()[c];
      }
      skipped[0] += rows.skipped();
    }
  }

  private byte[] readPiece(RowReader rows, int p, int lines, byte[] window) {
    long from = p == 0 ? start : pieceStart(p) - 1;
    byte[] bytes = window;
    int length = (int) (Math.min(text.to(), pieceStart(p + 1) + OVERHANG_BYTES) - from);
    text.source().copy(from, bytes, 0, length);
    int inside = (int) (pieceStart(p + 1) - from) - 1;
    int end = EightBytes.indexOf(bytes, inside, length, text.lineEnd());
    while (end == length && from + length < text.to() && length < LONGEST_LINE_BYTES) {
      int more = (int) Math.min(text.to() - from - length, length);
      bytes = Arrays.copyOf(bytes, length + more + EightBytes.PADDING);
      text.source().copy(from + length, bytes, length, more);
      end = EightBytes.indexOf(bytes, length, length + more, text.lineEnd());
      length += more;
    }
    RowReader.Cut cut = end == length ? RowReader.Cut.IN_LAST_LINE : RowReader.Cut.NOWHERE;
    bytes[end] = text.lineEnd();
    int first = p == 0 ? 0 : EightBytes.indexOf(bytes, 0, end, text.lineEnd()) + 1;
    dictionaries[p] = rows.begin(bytes, end, values, cut);
    kept[p] = rows.read(first, lines, firstRows[p]);
    return bytes.length > 8 * PIECE_BYTES ? window : bytes;
  }

  // Words and holes

  /** Every piece numbers its words by itself; in order of the pieces they get their numbers. */
  private List<List<String>> labels() {
    List<List<String>> labels = new ArrayList<>();
    for (int c = 0; c < columns; c++) {
      Dictionary all = new Dictionary();
      for (int p = 0; p < pieces && kinds[c] == ColumnKind.WORDS; p++) {
        if (kept[p] > 0) {
          rename(c, p, all);
        }
      }
      labels.add(all.words());
    }
    return labels;
  }

  private void rename(int c, int p, Dictionary all) {
    List<String> own = dictionaries[p][c].words();
    double[] codes = new double[own.size()];
    boolean same = true;
    for (int k = 0; k < codes.length; k++) {
      int code = all.code(own.get(k));
      codes[k] = code < 0 ? Double.NaN : code;
      same &= code == k;
    }
    for (int i = firstRows[p]; i < firstRows[p] + kept[p] && !same; i++) {
      double code = values[c][i];
      values[c][i] = Double.isNaN(code) ? code : codes[(int) code];
    }
  }

  /** Closes the holes that skipped lines left. */
  private double[] finished(int c, int rows) {
    if (kinds[c] == ColumnKind.SKIPPED) {
      double[] nothing = new double[rows];
      Arrays.fill(nothing, Double.NaN);
      return nothing;
    }
    if (rows == lines()) {
      return values[c];
    }
    double[] tight = new double[rows];
    int next = 0;
    for (int p = 0; p < pieces; p++) {
      System.arraycopy(values[c], firstRows[p], tight, next, kept[p]);
      next += kept[p];
    }
    return tight;
  }

  // Two threads where there is work for them

  private void inTurn(java.util.function.Consumer<AtomicInteger> work) {
    AtomicInteger next = new AtomicInteger();
    int workers = Math.min((pieces + 1) / 2, ForkJoinPool.getCommonPoolParallelism() + 1);
    each(workers, pieces, worker -> work.accept(next));
  }

  private void each(int n, IntConsumer work) {
    each(n, pieces, work);
  }

  private static void each(int n, int pieces, IntConsumer work) {
    if (pieces < 4 || n < 2) {
      for (int i = 0; i < n; i++) {
        work.accept(i);
      }
    } else {
      IntStream.range(0, n).parallel().forEach(work);
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
