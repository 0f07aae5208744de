package ovenproof.core.panel.table;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What is decided so far about the columns of one sheet; each step of {@link SheetReader} adds to
 * it.
 */
final class SheetRoles {

  static final String BY_HEADER = "the header says so";

  final Grid grid;
  final ReadingChoices choices;
  final List<Column> columns = new ArrayList<>();
  final Map<Integer, ColumnReading> readings = new LinkedHashMap<>();
  final Map<Role, Column> keys = new EnumMap<>(Role.class);
  final List<Column> conditions = new ArrayList<>();
  List<Column> marks = new ArrayList<>();
  List<WideLabel> labels = List.of();
  final List<String> questions = new ArrayList<>();
  final List<String> notes = new ArrayList<>();
  final Set<Integer> summaryRows = new HashSet<>();
  Layout layout = Layout.UNREADABLE;

  SheetRoles(Grid grid, ReadingChoices choices) {
    this.grid = grid;
    this.choices = choices;
    for (int c = 0; c < grid.width(); c++) {
      columns.add(new Column(grid, c));
    }
  }

  /** How every column that holds something was read. */
  List<ColumnReading> columnReadings() {
    List<ColumnReading> all = new ArrayList<>();
    for (Column column : columns) {
      ColumnReading reading = readings.get(column.index);
      if (reading != null) {
        all.add(reading);
      } else if (!column.isEmpty()) {
        all.add(
            new ColumnReading(
                grid.sheet(), column.name(), Role.IGNORED, "nothing tells what it is"));
      }
    }
    return all;
  }

  void set(Column column, Role role, String why) {
    readings.put(column.index, new ColumnReading(grid.sheet(), column.name(), role, why));
    if (role == Role.CONDITION) {
      conditions.add(column);
    } else if (role == Role.MARK) {
      marks.add(column);
    } else if (role != Role.IGNORED) {
      keys.put(role, column);
    }
  }

  boolean isOpen(Column column) {
    return !readings.containsKey(column.index) && !column.isEmpty();
  }

  List<Column> open() {
    return columns.stream().filter(this::isOpen).toList();
  }

  void demote(Role role) {
    Column column = keys.remove(role);
    if (column != null) {
      readings.remove(column.index);
    }
  }

  boolean isChosen(Column column) {
    ColumnReading reading = readings.get(column.index);
    return reading != null && reading.why().equals("as you said");
  }
}
