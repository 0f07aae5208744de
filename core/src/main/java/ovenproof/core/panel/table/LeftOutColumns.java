package ovenproof.core.panel.table;

import java.util.List;

/**
 * Columns that are no ratings: remarks, addresses, facts about people or products, codes, row
 * numbers, totals.
 */
final class LeftOutColumns {

  private final SheetRoles sheet;

  LeftOutColumns(SheetRoles sheet) {
    this.sheet = sheet;
  }

  void leaveOut() {
    for (Column column : sheet.open()) {
      if (isPoorlyTyped(column)) {
        continue;
      }
      if (column.isRemark()) {
        sheet.set(column, Role.IGNORED, "sentences, not marks");
      } else if (isAddress(column)) {
        sheet.set(column, Role.IGNORED, "dates, times or addresses");
      } else if (column.levels.size() == 1 && !column.isNumeric()) {
        sheet.set(column, Role.IGNORED, "the same in every row");
      }
    }
    Column assessor = sheet.keys.get(Role.ASSESSOR);
    Column product = sheet.keys.get(Role.PRODUCT);
    for (Column column : sheet.open()) {
      if (assessor != null && product != null && assessor != product && !isConstantMark(column)) {
        if (repeats(assessor)
            && column.isDecidedBy(assessor)
            && column.levels.size() > 0
            && isFact(column, assessor)) {
          sheet.set(
              column, Role.IGNORED, "the same in all rows of a person: a fact about the person");
        } else if (repeats(product) && column.isDecidedBy(product) && isFact(column, product)) {
          sheet.set(
              column, Role.IGNORED, "the same in all rows of a product: a fact about the product");
        }
      }
    }
    if (assessor != null && product != null && assessor != product) {
      leaveOutPlan(assessor, product);
    }
    leaveOutCodes();
    leaveOutRowNumbers();
    leaveOutTotals();
  }

  /** What never changes while a person is served a product again: its place in the plan. */
  private void leaveOutPlan(Column assessor, Column product) {
    List<Column> candidates =
        sheet.open().stream()
            .filter(c -> c.levels.size() > 1)
            .filter(c -> Vocabulary.role(c.header) != Role.MARK)
            .filter(c -> !Vocabulary.isAttributeWord(c.header))
            .toList();
    if (candidates.isEmpty()) {
      return;
    }
    Column cell = Column.joined(List.of(assessor, product));
    for (Column column : candidates) {
      if (cell.filled - cell.levels.size() >= 6 && column.isDecidedBy(cell)) {
        sheet.set(
            column, Role.IGNORED, "the same each time a person meets a product: part of the plan");
      }
    }
  }

  /** A panel that agrees completely still rated. */
  private static boolean isConstantMark(Column column) {
    return column.levels.size() == 1
        && column.isNumeric()
        && (Vocabulary.role(column.header) == Role.MARK
            || Vocabulary.isAttributeWord(column.header));
  }

  /** Decided by a key in so many rows that chance cannot have done it. */
  private static boolean isFact(Column column, Column key) {
    return column.filled - key.levels.size() >= 4 || !column.isNumeric();
  }

  private static boolean repeats(Column key) {
    return key.levels.size() < key.filled;
  }

  /** The blind code beside a product that is named. */
  private void leaveOutCodes() {
    Column product = sheet.keys.get(Role.PRODUCT);
    for (Column column : sheet.open()) {
      List<String> tokens = Vocabulary.tokens(column.header);
      if (product != null
          && (tokens.contains("code") || tokens.contains("codes"))
          && column.whole
          && (column.isUnique() || column.smallest >= 100)) {
        sheet.set(column, Role.IGNORED, "codes of the samples");
      }
    }
  }

  private void leaveOutRowNumbers() {
    for (Column column : sheet.open()) {
      boolean others =
          sheet.columns.stream()
              .anyMatch(
                  c ->
                      c != column
                          && !c.isEmpty()
                          && (sheet.keys.containsValue(c) || sheet.isOpen(c) && !c.isNumeric()));
      if (column.isRowNumber()
          && others
          && (column.header.isEmpty()
              || Vocabulary.role(column.header) == Role.IGNORED
              || column.index == 0
                  && sheet.keys.containsKey(Role.ASSESSOR)
                  && sheet.keys.containsKey(Role.PRODUCT))) {
        sheet.set(column, Role.IGNORED, "running row numbers");
      }
    }
  }

  /** A column of marks in which many cells are no numbers: each of them is said. */
  static boolean isPoorlyTyped(Column column) {
    return Vocabulary.role(column.header) == Role.MARK
        && !column.isNumeric()
        && column.numbers >= 0.3 * column.filled
        && column.levels.size() < column.filled;
  }

  private static boolean isAddress(Column column) {
    long like =
        column.levels.keySet().stream()
            .filter(
                t ->
                    t.matches(
                        ".*(@|://).*|\\d{4}-\\d{2}-\\d{2}.*\\d{1,2}:\\d{2}.*|\\d{1,2}[:h]\\d{2}(:\\d{2})?"))
            .count();
    return like > 0 && like >= 0.8 * column.levels.size();
  }

  /** A column that is the sum or the mean of other numeric columns in every row. */
  private void leaveOutTotals() {
    List<Column> numeric = sheet.open().stream().filter(Column::isNumeric).toList();
    if (numeric.size() < 3) {
      return;
    }
    for (Column candidate : numeric) {
      List<Column> others = numeric.stream().filter(c -> c != candidate).toList();
      if (isTotal(candidate, others)) {
        sheet.set(candidate, Role.IGNORED, "the sum or mean of the other columns");
        return;
      }
    }
  }

  private static boolean isTotal(Column candidate, List<Column> others) {
    int agree = 0;
    int rows = 0;
    boolean varies = false;
    for (int r = 0; r < candidate.number.length; r++) {
      if (Double.isNaN(candidate.number[r])) {
        continue;
      }
      double sum = 0;
      int count = 0;
      for (Column other : others) {
        if (!Double.isNaN(other.number[r])) {
          sum += other.number[r];
          count++;
          varies |= other.number[r] != others.get(0).number[r];
        }
      }
      rows++;
      boolean isSum = Math.abs(candidate.number[r] - sum) < 1e-6;
      boolean isMean = count > 0 && Math.abs(candidate.number[r] - sum / count) < 0.0051;
      agree += isSum || isMean ? 1 : 0;
    }
    return varies && rows >= 3 && agree == rows;
  }
}
