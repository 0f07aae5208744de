package ovenproof.core.panel.table;

import java.util.HashMap;
import java.util.Map;
import java.util.stream.Collectors;

/** Rows of totals and means: words such as "mean" in front, or the extreme of every column. */
final class SummaryRows {

  private final SheetRoles sheet;

  SummaryRows(SheetRoles sheet) {
    this.sheet = sheet;
  }

  void leaveOutSummaryRows() {
    Map<String, Boolean> summaries = new HashMap<>();
    for (int r = 0; r < sheet.grid.body().size(); r++) {
      for (int c = 0; c < Math.min(2, sheet.grid.width()); c++) {
        String cell = sheet.grid.body().get(r).cell(c);
        if (!cell.isEmpty()
            && Double.isNaN(sheet.columns.get(c).number[r])
            && summaries.computeIfAbsent(cell, Vocabulary::isSummary)
            && (!Vocabulary.isExtreme(cell) || holdsExtremes(r))) {
          sheet.summaryRows.add(r);
        }
      }
    }
    if (sheet.summaryRows.size() > 6 && sheet.summaryRows.size() > sheet.grid.body().size() / 3) {
      sheet.summaryRows.clear();
    }
    if (!sheet.summaryRows.isEmpty()) {
      sheet.notes.add(
          "Rows of totals or means were left out: lines "
              + sheet.summaryRows.stream()
                  .sorted()
                  .map(r -> String.valueOf(sheet.grid.body().get(r).line()))
                  .collect(Collectors.joining(", "))
              + ".");
    }
  }

  /** Max may be a person: only a row that holds each column's extreme is a summary. */
  private boolean holdsExtremes(int row) {
    int numbers = 0;
    int extremes = 0;
    for (Column column : sheet.columns) {
      double value = column.number[row];
      if (Double.isNaN(value)) {
        continue;
      }
      numbers++;
      boolean largest = true;
      boolean smallest = true;
      for (int r = 0; r < column.number.length; r++) {
        largest &= !(column.number[r] > value);
        smallest &= !(column.number[r] < value);
      }
      extremes += largest || smallest ? 1 : 0;
    }
    return numbers > 1 && extremes == numbers;
  }
}
