package ovenproof.core.panel.table;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Names written once above their rows, as cells that were merged downwards come out. A single empty
 * cell stays empty: a forgotten name is not guessed.
 */
final class NamesOnce {

  private static final int COLUMNS_LOOKED_AT = 4;
  private static final double FEWEST_EMPTY = 0.4;

  private static final Set<Role> KEYS =
      Set.of(Role.ASSESSOR, Role.PRODUCT, Role.SESSION, Role.BATCH, Role.ATTRIBUTE);

  private NamesOnce() {}

  static List<Sheet.Row> repeat(
      List<Sheet.Row> body, List<List<String>> headers, List<String> notes) {
    List<Sheet.Row> rows = body;
    for (int c = 0; c < Math.min(COLUMNS_LOOKED_AT, headers.size()); c++) {
      String header = String.join(" ", headers.get(c)).strip();
      if (isKey(header, c) && isWrittenOnce(rows, c)) {
        rows = filled(rows, c);
        notes.add(
            "Names of "
                + (header.isEmpty() ? "column " + (c + 1) : "\"" + header + "\"")
                + " stand once above their rows and were repeated.");
      }
    }
    return rows;
  }

  private static boolean isKey(String header, int column) {
    Role role = Vocabulary.role(header);
    return role != null && KEYS.contains(role) || column == 0 && role == null;
  }

  /** First a name, then empty cells, in blocks of mostly one length. */
  private static boolean isWrittenOnce(List<Sheet.Row> rows, int column) {
    if (rows.size() < 4 || rows.get(0).cell(column).isEmpty()) {
      return false;
    }
    Map<Integer, Integer> lengths = new HashMap<>();
    int blocks = 0;
    int empty = 0;
    int length = 0;
    for (Sheet.Row row : rows) {
      if (row.cell(column).isEmpty()) {
        empty++;
        length++;
      } else {
        blocks++;
        if (length > 0) {
          lengths.merge(length, 1, Integer::sum);
        }
        length = 1;
      }
    }
    lengths.merge(length, 1, Integer::sum);
    int usual = lengths.values().stream().mapToInt(n -> n).max().orElse(0);
    return blocks >= 2 && empty >= FEWEST_EMPTY * rows.size() && usual >= 0.5 * blocks;
  }

  private static List<Sheet.Row> filled(List<Sheet.Row> rows, int column) {
    List<Sheet.Row> all = new ArrayList<>();
    String name = "";
    for (Sheet.Row row : rows) {
      if (!row.cell(column).isEmpty()) {
        name = row.cell(column);
        all.add(row);
      } else {
        List<String> cells = new ArrayList<>(row.cells());
        while (cells.size() <= column) {
          cells.add("");
        }
        cells.set(column, name);
        all.add(new Sheet.Row(row.line(), cells));
      }
    }
    return all;
  }
}
