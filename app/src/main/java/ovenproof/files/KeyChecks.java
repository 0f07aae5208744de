package ovenproof.files;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import ovenproof.input.NearestWord;
import ovenproof.input.Written;

/** Keys stand once, corrections name what they correct, and the same thing is not entered twice. */
final class KeyChecks {
  /** What makes two rows of a table of entries the same entry. */
  private static final Map<Table, List<String>> SAME =
      Map.of(
          Tables.FACTS, List.of("product", "fact"),
          Tables.RATED, List.of("product", "fact", "rater"),
          Tables.FEATURES, List.of("product", "feature"),
          Tables.READINGS, List.of("run", "reading", "batch", "piece", "face", "time"),
          Tables.RATINGS, List.of("session", "assessor", "run", "batch", "mark", "code", "order"),
          Tables.EVENTS, List.of("run", "event", "time", "batch", "value", "note"));

  private final Context context;

  KeyChecks(Context context) {
    this.context = context;
  }

  void run() {
    context.rows().forEach(this::table);
    namesOfProducts(context.rows().getOrDefault(Tables.PRODUCTS, List.of()));
  }

  /** Readers, and the proof of a text, tell products by their names. */
  private static void namesOfProducts(List<Row> rows) {
    Map<String, Row> seen = new HashMap<>();
    for (Row row : rows) {
      String name = row.raw("name").strip();
      Row first = name.isEmpty() ? null : seen.putIfAbsent(name.toLowerCase(Locale.ROOT), row);
      if (first != null) {
        row.warning(
            "name",
            "the name of another product",
            "a name of its own",
            "line " + first.place().line() + " has it already; add what tells the two apart");
      }
    }
  }

  private void table(Table table, List<Row> rows) {
    if (!table.key().isEmpty()) {
      unique(rows, table.key());
    }
    if (table.column("entry").isPresent()) {
      unique(rows.stream().filter(r -> r.find("entry").isPresent()).toList(), List.of("entry"));
      corrections(table, rows);
      List<String> same = SAME.getOrDefault(table, List.of());
      if (!same.isEmpty()) {
        unique(effective(rows), same);
      }
    }
  }

  private static void unique(List<Row> rows, List<String> columns) {
    Map<String, Row> seen = new HashMap<>();
    for (Row row : rows) {
      String key = key(row, columns);
      Row first = key.isBlank() ? null : seen.putIfAbsent(key, row);
      if (first != null) {
        row.error(
            columns.get(0),
            key + " for the second time",
            "each " + String.join(" + ", columns) + " once",
            "it stands already in line " + first.place().line());
      }
    }
  }

  private static String key(Row row, List<String> columns) {
    return columns.stream()
        .map(c -> row.raw(c).strip())
        .filter(c -> !c.isEmpty())
        .collect(Collectors.joining(" "));
  }

  private void corrections(Table table, List<Row> rows) {
    Set<String> entries = context.keys(table.file(), "entry");
    Map<String, Row> correctedBy = new LinkedHashMap<>();
    for (Row row : rows) {
      row.find("corrects").ifPresent(w -> correction(row, w, entries, correctedBy));
    }
  }

  private static void correction(
      Row row, Written corrects, Set<String> entries, Map<String, Row> correctedBy) {
    if (!entries.contains(corrects.text())) {
      corrects.error(
          "the key of an entry of this table",
          NearestWord.remedy(corrects.text(), others(row, entries)));
    } else if (corrects.text().equals(row.raw("entry").strip())) {
      corrects.error("another entry than itself", "give this row a key of its own");
    } else if (correctedBy.putIfAbsent(corrects.text(), row) != null) {
      corrects.error("each entry corrected once", "correct the correction instead");
    }
  }

  private static List<String> others(Row row, Set<String> entries) {
    return entries.stream().filter(e -> !e.equals(row.raw("entry").strip())).toList();
  }

  /** Rows that no other row replaces. */
  static List<Row> effective(List<Row> rows) {
    Set<String> replaced = new HashSet<>();
    rows.forEach(r -> r.find("corrects").ifPresent(w -> replaced.add(w.text())));
    return rows.stream().filter(r -> !replaced.contains(r.raw("entry").strip())).toList();
  }

  /** Records whose rows no other row replaces. */
  static <T> List<Rowed<T>> effectiveOf(List<Rowed<T>> rowed) {
    Set<Row> rows = new HashSet<>(effective(rowed.stream().map(Rowed::row).toList()));
    return rowed.stream().filter(r -> rows.contains(r.row())).toList();
  }
}
