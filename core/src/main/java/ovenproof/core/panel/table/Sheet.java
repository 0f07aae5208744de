package ovenproof.core.panel.table;

import java.util.List;

/**
 * One sheet of cells as text.
 *
 * @param name of the sheet; empty for a text file
 * @param rows non-blank and blank rows alike, each with its line
 */
public record Sheet(String name, List<Row> rows) {

  public Sheet {
    rows = List.copyOf(rows);
  }

  /**
   * One row.
   *
   * @param line in the file, from 1
   * @param cells text of each; short rows mean empty cells at the end
   */
  public record Row(int line, List<String> cells) {
    public Row {
      cells = List.copyOf(cells);
    }

    String cell(int column) {
      return column < cells.size() ? cells.get(column) : "";
    }
  }
}
