package ovenproof.core.panel.table;

import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/** One column's contents, counted. */
final class Column {
  final int index;
  final String header;
  final String[] text;
  final double[] number;
  final int filled;
  final int numbers;
  final boolean whole;
  final double smallest;
  final double largest;
  final Map<String, Integer> levels;
  final int longest;

  Column(Grid grid, int index) {
    this(
        index,
        grid.header(index),
        grid.body().stream().map(row -> row.cell(index)).toArray(String[]::new));
  }

  /** Part of what this column's cells say, as a key of its own. */
  Column derived(UnaryOperator<String> part) {
    return new Column(index, header, Arrays.stream(text).map(part).toArray(String[]::new));
  }

  /** Several columns that together name one thing, row by row. */
  static Column joined(List<Column> parts) {
    String header = parts.stream().map(p -> p.header).collect(Collectors.joining(" × "));
    String[] text = new String[parts.get(0).text.length];
    for (int r = 0; r < text.length; r++) {
      int row = r;
      text[r] = parts.stream().map(p -> p.text[row]).collect(Collectors.joining(" / "));
    }
    return new Column(parts.get(0).index, header, text);
  }

  private Column(int index, String header, String[] cells) {
    this.index = index;
    this.header = header;
    int n = cells.length;
    text = cells;
    number = new double[n];
    levels = new LinkedHashMap<>();
    int filledCells = 0;
    int numericCells = 0;
    boolean integers = true;
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    int length = 0;
    Map<String, Double> parsed = new HashMap<>();
    boolean amongMarks = holdsMarks(cells, parsed);
    for (int r = 0; r < n; r++) {
      String cell = cells[r];
      number[r] = Double.NaN;
      if (amongMarks ? Mark.isNoMark(cell) : Mark.isMissing(cell)) {
        continue;
      }
      filledCells++;
      length = Math.max(length, cell.length());
      levels.merge(cell, 1, Integer::sum);
      double value = parsed.computeIfAbsent(cell, Mark::parse);
      number[r] = value;
      if (!Double.isNaN(value)) {
        numericCells++;
        integers &= value == Math.rint(value);
        low = Math.min(low, value);
        high = Math.max(high, value);
      }
    }
    filled = filledCells;
    numbers = numericCells;
    whole = integers;
    smallest = low;
    largest = high;
    longest = length;
  }

  /** Fills {@code parsed} with what each distinct cell says. */
  private static boolean holdsMarks(String[] cells, Map<String, Double> parsed) {
    int numbers = 0;
    int others = 0;
    for (String cell : cells) {
      if (!Mark.isNoMark(cell)) {
        boolean number = !Double.isNaN(parsed.computeIfAbsent(cell, Mark::parse));
        numbers += number ? 1 : 0;
        others += number ? 0 : 1;
      }
    }
    return numbers > 4 * others;
  }

  boolean isEmpty() {
    return filled == 0;
  }

  boolean isNumeric() {
    return filled > 0 && numbers >= 0.8 * filled;
  }

  /** Each level once. */
  boolean isUnique() {
    return filled > 1 && levels.size() == filled;
  }

  boolean isRepeated() {
    return levels.size() < filled && levels.size() <= 0.75 * filled;
  }

  /** Every level equally often, at least twice: what a design does and marks do not. */
  boolean isEven() {
    int first = levels.values().stream().findFirst().orElse(0);
    return levels.size() > 1 && first > 1 && levels.values().stream().allMatch(c -> c == first);
  }

  /** Every level meets every level of the other equally often: a design, not chance. */
  boolean isCrossedWith(Column other) {
    Map<String, Integer> pairs = new HashMap<>();
    int rows = 0;
    for (int r = 0; r < text.length; r++) {
      if (!Mark.isMissing(text[r]) && !Mark.isMissing(other.text[r])) {
        pairs.merge(text[r] + "\u0000" + other.text[r], 1, Integer::sum);
        rows++;
      }
    }
    int cells = levels.size() * other.levels.size();
    return pairs.size() == cells
        && rows % cells == 0
        && pairs.values().stream().allMatch(count -> count == rowsPerCell(pairs));
  }

  private static int rowsPerCell(Map<String, Integer> pairs) {
    return pairs.values().iterator().next();
  }

  /** 1, 2, 3 … down the column. */
  boolean isRowNumber() {
    if (!isNumeric() || !whole || filled < 2 || filled != text.length) {
      return false;
    }
    for (int r = 1; r < number.length; r++) {
      if (number[r] != number[r - 1] + 1) {
        return false;
      }
    }
    return number[0] == 0 || number[0] == 1;
  }

  boolean isRemark() {
    double total = 0;
    for (String level : levels.keySet()) {
      total += level.length();
    }
    return !isNumeric() && !levels.isEmpty() && total / levels.size() > 28;
  }

  /** Whether the other column's level decides this one's, each met at least twice somewhere. */
  boolean isDecidedBy(Column other) {
    Map<String, String> seen = new LinkedHashMap<>();
    boolean repeated = false;
    for (int r = 0; r < text.length; r++) {
      if (Mark.isMissing(other.text[r]) || Mark.isMissing(text[r])) {
        continue;
      }
      String before = seen.putIfAbsent(other.text[r], text[r]);
      if (before != null) {
        repeated = true;
        if (!before.equals(text[r])) {
          return false;
        }
      }
    }
    return repeated;
  }

  String name() {
    return header.isEmpty() ? "column " + (index + 1) : header;
  }
}
