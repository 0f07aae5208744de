package ovenproof.core.panel.table;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Decides for one sheet which column says what. Headers are believed first; what they leave open is
 * decided by how the columns are filled: keys repeat evenly, facts about people are the same in all
 * their rows, totals are sums of their neighbours.
 */
final class SheetReader {

  private final SheetRoles sheet;

  SheetReader(Grid grid, ReadingChoices choices) {
    sheet = new SheetRoles(grid, choices);
  }

  SheetReader decide() {
    new SummaryRows(sheet).leaveOutSummaryRows();
    KeysByHeader headers = new KeysByHeader(sheet);
    headers.takeChoices();
    headers.takeExportedIndexes();
    headers.takeGridOfMarks();
    headers.takeHeaders();
    headers.takeFinerProducts();
    headers.twinKeys();
    new LeftOutColumns(sheet).leaveOut();
    headers.findMarks();
    new KeysByShape(sheet).findKeysByShape();
    new SheetShape(sheet).shape();
    return this;
  }

  Grid grid() {
    return sheet.grid;
  }

  Layout layout() {
    return sheet.layout;
  }

  List<Column> marks() {
    return sheet.marks;
  }

  List<WideLabel> labels() {
    return sheet.labels;
  }

  @Nullable Column key(Role role) {
    return sheet.keys.get(role);
  }

  List<Column> conditions() {
    return sheet.conditions;
  }

  Set<Integer> summaryRows() {
    return sheet.summaryRows;
  }

  List<String> questions() {
    return sheet.questions;
  }

  List<String> notes() {
    return sheet.notes;
  }

  List<ColumnReading> readings() {
    return sheet.columnReadings();
  }

  /** The sheet's own name says who rated. */
  void peopleAreSheets() {
    sheet.notes.remove(SheetShape.NOBODY_NAMED);
  }

  /** Text columns that may have been meant as marks. */
  List<Column> wordy() {
    return sheet.columns.stream()
        .filter(
            c -> !c.isEmpty() && !c.isNumeric() && c.isRepeated() && !sheet.keys.containsValue(c))
        .toList();
  }
}
