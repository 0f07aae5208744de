package ovenproof.evidence.ratings;

import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.Row;
import org.dhatim.fastexcel.reader.SheetVisibility;
import org.jspecify.annotations.Nullable;
import ovenproof.core.panel.table.Sheet;

/** The visible sheets of an .xlsx workbook as text. */
final class Workbook {

  private Workbook() {}

  static List<Sheet> read(String name, InputStream in) {
    try (ReadableWorkbook workbook = new ReadableWorkbook(in)) {
      List<Sheet> sheets = new ArrayList<>();
      for (org.dhatim.fastexcel.reader.Sheet sheet : workbook.getSheets().toList()) {
        if (sheet.getVisibility() == SheetVisibility.VISIBLE) {
          sheets.add(new Sheet(sheet.getName(), rows(sheet)));
        }
      }
      return sheets;
    } catch (IOException | RuntimeException e) {
      throw RatingFile.problem(
          Path.of(name),
          "a file that cannot be opened as a workbook",
          "CSV or .xlsx",
          "open it in a spreadsheet and save it as .xlsx or CSV");
    }
  }

  private static List<Sheet.Row> rows(org.dhatim.fastexcel.reader.Sheet sheet) throws IOException {
    List<Sheet.Row> rows = new ArrayList<>();
    for (Row row : sheet.read()) {
      List<String> cells = new ArrayList<>();
      for (int c = 0; c < row.getCellCount(); c++) {
        cells.add(text(row.getCell(c)));
      }
      rows.add(new Sheet.Row(row.getRowNum(), cells));
    }
    return rows;
  }

  /** A cell as a person would type it; formulas by their stored result. */
  private static String text(@Nullable Cell cell) {
    if (cell == null || cell.getType() == CellType.EMPTY || cell.getType() == CellType.ERROR) {
      return "";
    }
    if (cell.getType() == CellType.NUMBER) {
      return number(cell.asNumber());
    }
    String raw = cell.getType() == CellType.STRING ? cell.asString() : cell.getRawValue();
    return raw == null ? "" : raw;
  }

  /** Spreadsheets store 0.1 + 0.2 as 0.30000000000000004; 15 digits are what they show. */
  private static String number(BigDecimal value) {
    BigDecimal shown = value.round(new MathContext(15)).stripTrailingZeros();
    return shown.toPlainString();
  }
}
