package ovenproof.verdict;

import java.util.ArrayList;
import java.util.List;

/** Columns of text, each as wide as its widest cell; the first row is the head. */
public final class TextTable {

  private TextTable() {}

  /** One line for each row, with a rule below the head. */
  public static List<String> lines(List<List<String>> rows) {
    int columns = rows.stream().mapToInt(List::size).max().orElse(0);
    int[] widths = new int[columns];
    for (List<String> row : rows) {
      for (int c = 0; c < row.size(); c++) {
        widths[c] = Math.max(widths[c], width(row.get(c)));
      }
    }
    List<String> lines = new ArrayList<>();
    for (int r = 0; r < rows.size(); r++) {
      StringBuilder line = new StringBuilder();
      for (int c = 0; c < rows.get(r).size(); c++) {
        String cell = rows.get(r).get(c);
        line.append(cell).append(" ".repeat(widths[c] - width(cell) + 2));
      }
      lines.add(line.toString().stripTrailing());
      if (r == 0) {
        lines.add("─".repeat(lines.get(0).length()));
      }
    }
    return lines;
  }

  private static int width(String cell) {
    return cell.codePointCount(0, cell.length());
  }
}
