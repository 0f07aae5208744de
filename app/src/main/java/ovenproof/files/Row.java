package ovenproof.files;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.input.Place;
import ovenproof.input.Problems;
import ovenproof.input.Written;

/** One row of a table; cells by column name. An empty cell is not said. */
final class Row {
  private final Table table;
  private final List<String> header;
  private final List<String> cells;
  private final CellPlaces places;
  private final long line;
  private final Problems problems;

  Row(
      Table table,
      List<String> header,
      List<String> cells,
      long line,
      CellPlaces places,
      Problems problems) {
    this.table = table;
    this.header = header;
    this.cells = cells;
    this.line = line;
    this.places = places;
    this.problems = problems;
  }

  Table table() {
    return table;
  }

  void error(String column, String found, String expected, String remedy) {
    problems.error(place(column), found, expected, remedy);
  }

  void warning(String column, String found, String expected, String remedy) {
    problems.warning(place(column), found, expected, remedy);
  }

  /** The row as a whole. */
  Place place() {
    return new Place(table.file(), (int) line, 0);
  }

  /** A cell's place; the row when the table has no such column. */
  Place place(String column) {
    int index = header.indexOf(declared(column));
    return index < 0 ? place() : places.of(line, index);
  }

  /** The cell as written, or empty text; reports nothing. */
  String raw(String column) {
    int index = header.indexOf(declared(column));
    return index < 0 || index >= cells.size() ? "" : cells.get(index);
  }

  Optional<Written> find(String column) {
    Written written = new Written(raw(column), new Place(table.file(), (int) line, 0), problems);
    return written.isBlank()
        ? Optional.empty()
        : Optional.of(new Written(written.text(), place(column), problems));
  }

  /** Whether every required cell is filled; reports those that are not. */
  boolean isComplete() {
    boolean complete = true;
    for (Column column : table.columns()) {
      if (column.need() == Column.Need.REQUIRED && find(column.name()).isEmpty()) {
        complete = false;
        reportEmpty(column);
      }
    }
    return complete;
  }

  /** A missing column was reported with the header, once. */
  private void reportEmpty(Column column) {
    if (header.contains(column.name())) {
      problems.error(
          place(column.name()),
          "an empty cell",
          "\"" + column.name() + "\"",
          "fill it in, or delete the row");
    }
  }

  @Nullable String textOrNull(String column) {
    return find(column).map(Written::text).orElse(null);
  }

  private String declared(String column) {
    if (table.column(column).isEmpty()) {
      throw new IllegalArgumentException(table.file() + " declares no column " + column);
    }
    return column;
  }
}
