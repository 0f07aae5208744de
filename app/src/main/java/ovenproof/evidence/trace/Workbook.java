package ovenproof.evidence.trace;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import java.util.zip.ZipInputStream;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ExcelReaderException;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;
import org.dhatim.fastexcel.reader.Row;
import org.dhatim.fastexcel.reader.Sheet;
import org.jspecify.annotations.Nullable;
import ovenproof.core.trace.ReadOptions;
import ovenproof.core.trace.TraceFile;
import ovenproof.core.trace.TraceReader;

/** Reads the sheet of a workbook that holds the log: the one with the most rows. */
final class Workbook {

  private static final int MOST_ROWS = 1_100_000;
  private static final int MOST_COLUMNS = 4096;

  /** Between the two days that workbooks count from. */
  private static final int DAYS_TO_1904 = 1462;

  /** Of a year: what is shorter is no date of our time. */
  private static final double SHORTEST_DATE_DAYS = 366;

  private Workbook() {}

  static TraceFile read(byte[] bytes, ReadOptions options) {
    try {
      if (unpacksBeyond(bytes, options.maximumTextBytes())) {
        return tooLarge(options);
      }
      return readSheets(bytes, options);
    } catch (IOException | ExcelReaderException | IllegalArgumentException e) {
      return TraceReader.unreadable(
          "XLSX",
          "The workbook cannot be opened (" + e.getMessage() + "). Save it again or export CSV.");
    }
  }

  private static TraceFile tooLarge(ReadOptions options) {
    return TraceReader.unreadable(
        "XLSX",
        "The workbook unpacks to more than this process has room for (its parts may hold "
            + (options.maximumTextBytes() >> 20)
            + " MB, its sheets "
            + options.maximumNumbers() / 1_000_000
            + " million cells). Save the sheet as CSV and open that.");
  }

  /** A few kilobytes can unpack to gigabytes: parts are counted before any is kept. */
  private static boolean unpacksBeyond(byte[] bytes, long most) throws IOException {
    byte[] window = new byte[1 << 16];
    long unpacked = 0;
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(bytes))) {
      while (unpacked <= most && zip.getNextEntry() != null) {
        for (int n = zip.read(window); n >= 0 && unpacked <= most; n = zip.read(window)) {
          unpacked += n;
        }
      }
    }
    return unpacked > most;
  }

  private static TraceFile readSheets(byte[] bytes, ReadOptions options) throws IOException {
    ReadingOptions reading = new ReadingOptions(true, false);
    try (ReadableWorkbook workbook =
        new ReadableWorkbook(new ByteArrayInputStream(bytes), reading)) {
      List<String[]> best = List.of();
      String name = "";
      int baseDays = workbook.isDate1904() ? DAYS_TO_1904 : 0;
      for (Sheet sheet : workbook.getSheets().toList()) {
        List<String[]> rows = rows(sheet, options.maximumNumbers(), baseDays);
        if (rows == null) {
          return tooLarge(options);
        }
        if (rows.size() > best.size()) {
          best = rows;
          name = sheet.getName();
        }
      }
      return TraceReader.with(options).readRows(best, name);
    }
  }

  /** Null when the sheet has more cells than there is room for; one far to the right makes many. */
  private static @Nullable List<String[]> rows(Sheet sheet, long mostCells, int baseDays)
      throws IOException {
    List<String[]> rows = new ArrayList<>();
    long cells = 0;
    try (Stream<Row> stream = sheet.openStream()) {
      Iterator<Row> iterator = stream.limit(MOST_ROWS).iterator();
      while (iterator.hasNext()) {
        Row row = iterator.next();
        rows.add(
            row.stream()
                .limit(MOST_COLUMNS)
                .map(cell -> text(cell, baseDays))
                .toArray(String[]::new));
        cells += rows.get(rows.size() - 1).length;
        if (cells > mostCells) {
          return null;
        }
      }
    }
    return rows;
  }

  private static String text(@Nullable Cell cell, int baseDays) {
    if (cell == null || cell.getType() == CellType.EMPTY || cell.getType() == CellType.ERROR) {
      return "";
    }
    if (cell.getType() == CellType.NUMBER) {
      BigDecimal number = cell.asNumber();
      boolean longAgo = number.doubleValue() < SHORTEST_DATE_DAYS;
      return isDate(cell)
          ? date(longAgo ? number : number.add(BigDecimal.valueOf(baseDays)))
          : number.toPlainString();
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
    if (days.doubleValue() < SHORTEST_DATE_DAYS) {
      return time(millis); // a time of day, or a duration of more than one
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
