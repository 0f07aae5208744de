package ovenproof.core.panel.table;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Among many columns of a questionnaire those that hold the marks: their headers cross every
 * product with every attribute ("sweetness_A", "sweetness_B", "texture_A", "texture_B"), the others
 * (age, hours since eating, differences) do not.
 */
final class MarkGrid {

  private static final List<String> SEPARATORS =
      List.of("_", " - ", " – ", "/", ":", "|", ".", " ");

  private MarkGrid() {}

  /** The columns of the largest such grid; empty when there is none, or when all are part of it. */
  static List<Column> among(List<Column> numeric) {
    List<Column> best = List.of();
    for (String separator : SEPARATORS) {
      for (boolean last : new boolean[] {true, false}) {
        List<Column> grid = crossed(numeric, separator, last);
        best = grid.size() > best.size() ? grid : best;
      }
    }
    return best.size() < numeric.size() ? best : List.of();
  }

  private static List<Column> crossed(List<Column> columns, String separator, boolean last) {
    Map<String, Map<String, Column>> rows = new LinkedHashMap<>();
    for (Column column : columns) {
      String[] parts = parts(column.header, separator, last);
      if (parts.length == 2
          && !Vocabulary.isComputed(parts[1])
          && !Vocabulary.isComputed(parts[0])) {
        rows.computeIfAbsent(parts[0], any -> new LinkedHashMap<>()).put(parts[1], column);
      }
    }
    List<Column> best = List.of();
    for (Set<String> levels :
        rows.values().stream()
            .map(Map::keySet)
            .collect(Collectors.toCollection(LinkedHashSet::new))) {
      Map<String, Map<String, Column>> full = new LinkedHashMap<>(rows);
      full.values().removeIf(row -> !row.keySet().containsAll(levels));
      if (full.size() > 1
          && levels.size() > 1
          && full.size() * levels.size() > best.size()
          && isProductsByAttributes(full.keySet(), levels)) {
        best = new ArrayList<>();
        for (Map<String, Column> row : full.values()) {
          levels.stream().map(row::get).forEach(best::add);
        }
      }
    }
    return best;
  }

  /** "smell_good", "taste_good" cross two attributes, "crisp_1", "taste_1" attribute and repeat. */
  private static boolean isProductsByAttributes(Set<String> first, Set<String> second) {
    Role one = LabelKind.of(new HashSet<>(first));
    Role other = LabelKind.of(new HashSet<>(second));
    return one == Role.ATTRIBUTE && isThing(other) || other == Role.ATTRIBUTE && isThing(one);
  }

  private static boolean isThing(Role kind) {
    return kind == Role.PRODUCT || kind == Role.ASSESSOR || kind == Role.IGNORED;
  }

  private static String[] parts(String header, String separator, boolean last) {
    int at = last ? header.lastIndexOf(separator) : header.indexOf(separator);
    return at <= 0 || at + separator.length() >= header.length()
        ? new String[0]
        : new String[] {
          header.substring(0, at).strip(), header.substring(at + separator.length()).strip()
        };
  }
}
