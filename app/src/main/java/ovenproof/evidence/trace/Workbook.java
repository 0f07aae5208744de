package ovenproof.evidence.trace;

import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ExcelReaderException;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;
import org.dhatim.fastexcel.reader.Row;
import org.dhatim.fastexcel.reader.Sheet;
import ovenproof.core.trace.ReadOptions;
import ovenproof.core.trace.TraceFile;
import ovenproof.core.trace.TraceReader;

/** Reads the sheet of a workbook that holds the log: the one with the most rows. */
final class Workbook {

  private static final int MOST_ROWS = 1_100_000;
  private static final int MOST_COLUMNS = 4096;

  private Workbook() {}

  static TraceFile read(InputStream in, ReadOptions options) {
    try (ReadableWorkbook workbook = new ReadableWorkbook(in, new ReadingOptions(true, false))) {
      List<String[]> best = List.of();
      String name = "";
      for (Sheet sheet : workbook.getSheets().toList()) {
        List<String[]> rows = rows(sheet);
        if (rows.size() > best.size()) {
          best = rows;
          name = sheet.getName();
        }
      }
      return TraceReader.with(options).readRows(best, name);
    } catch (IOException | ExcelReaderException | IllegalArgumentException e) {
      return TraceReader.unreadable(
          "XLSX",
          "The workbook cannot be opened (" + e.getMessage() + "). Save it again or export CSV.");
    }
  }

  private static List<String[]> rows(Sheet sheet) throws IOException {
    List<String[]> rows = new ArrayList<>();
    try (Stream<Row> stream = sheet.openStream()) {
      stream
          .limit(MOST_ROWS)
          .forEach(
              row ->
                  rows.add(
                      row.stream().limit(MOST_COLUMNS).map(Workbook::text).toArray(String[]::new)));
    }
    return rows;
  }

  private static String text(@org.jspecify.annotations.Nullable Cell cell) {
    if (cell == null || cell.getType() == CellType.EMPTY || cell.getType() == CellType.ERROR) {
      return "";
    }
    if (cell.getType() == CellType.NUMBER) {
      BigDecimal number = cell.asNumber();
      return isDate(cell) ? date(number) : number.toPlainString();
    }
    return cell.getText() == null ? "" : cell.getText();
  }

  private static boolean isDate(Cell cell) {
    String format = cell.getDataFormatString();
    if (format == null) {
      return false;
    }
    String bare =
        format.toLowerCase(Locale.ROOT).replaceAll("\"[^\"]*\"|\\[[^\\]]*\\]|general", "");
    return bare.matches(".*(y|d|h:|hh|:ss|mm:).*");
  }

  /** Days since 1900 as an ISO stamp; less than one day is a time. */
  private static String date(BigDecimal days) {
    long millis = Math.round(days.doubleValue() * 86_400_000.0);
    if (days.doubleValue() < 1) {
      return time(millis);
    }
    java.time.LocalDateTime base = java.time.LocalDateTime.of(1899, 12, 30, 0, 0);
    java.time.LocalDateTime moment = base.plus(java.time.Duration.ofMillis(millis));
    boolean midnight = millis % 86_400_000 == 0;
    return midnight
        ? moment.toLocalDate().toString()
        : moment.toLocalDate() + " " + time(millis % 86_400_000);
  }

  private static String time(long millis) {
    return String.format(
        Locale.ROOT,
        "%02d:%02d:%02d.%03d",
        millis / 3_600_000,
        millis / 60_000 % 60,
        millis / 1000 % 60,
        millis % 1000);
  }
}
