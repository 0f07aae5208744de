package ovenproof.core.panel.table;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * A long table that lies on its side: the first lines are the keys ("Taster, Anna, Anna, Bela …",
 * "Oven, Alder, Birch …"), each further line is an attribute.
 */
final class SidewaysTable {

  private static final int FEWEST_MARKS = 4;

  private SidewaysTable() {}

  static boolean is(List<Sheet.Row> rows) {
    Set<Role> keys = EnumSet.noneOf(Role.class);
    int keyRows = 0;
    for (Sheet.Row row : rows) {
      Role role = Vocabulary.role(row.cell(0));
      if (role == null || role == Role.MARK || role == Role.IGNORED || !isKeyRow(row)) {
        break;
      }
      keys.add(role);
      keyRows++;
    }
    return keys.contains(Role.ASSESSOR)
        && keys.contains(Role.PRODUCT)
        && rows.size() > keyRows
        && rows.subList(keyRows, rows.size()).stream().allMatch(SidewaysTable::isMarks);
  }

  /** Names in every cell, some of them more than once. */
  private static boolean isKeyRow(Sheet.Row row) {
    List<String> cells = row.cells().subList(1, row.cells().size());
    long distinct = cells.stream().distinct().count();
    return cells.size() >= FEWEST_MARKS
        && cells.stream().noneMatch(String::isEmpty)
        && distinct < cells.size();
  }

  private static boolean isMarks(Sheet.Row row) {
    List<String> cells = row.cells().subList(1, row.cells().size());
    long filled = cells.stream().filter(c -> !Mark.isNoMark(c)).count();
    long numbers =
        cells.stream().filter(c -> !Mark.isNoMark(c) && !Double.isNaN(Mark.parse(c))).count();
    return !row.cell(0).isEmpty() && filled > 0 && numbers >= 0.8 * filled;
  }

  /** Columns as rows; the line of each is the column it was. */
  static List<Sheet.Row> turn(List<Sheet.Row> rows) {
    int width = rows.stream().mapToInt(r -> r.cells().size()).max().orElse(0);
    List<Sheet.Row> turned = new ArrayList<>();
    for (int c = 0; c < width; c++) {
      int column = c;
      turned.add(new Sheet.Row(c + 1, rows.stream().map(r -> r.cell(column)).toList()));
    }
    return turned;
  }
}
