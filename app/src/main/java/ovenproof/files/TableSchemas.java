package ovenproof.files;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Frictionless table schemas (Table Schema, Data Package 1.0) of the tables, as trees of maps and
 * lists that any JSON writer takes. Made from the same declarations as the reader uses.
 */
public final class TableSchemas {

  private TableSchemas() {}

  /** The schema of one table. */
  public static Map<String, Object> of(Table table) {
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("title", table.title());
    schema.put("fields", table.columns().stream().map(TableSchemas::field).toList());
    schema.put("missingValues", List.of(""));
    if (!table.key().isEmpty()) {
      schema.put("primaryKey", table.key());
    }
    List<Map<String, Object>> foreign = new ArrayList<>();
    for (Column column : table.columns()) {
      column.reference().ifPresent(r -> foreign.add(foreignKey(table, column, r)));
    }
    if (!foreign.isEmpty()) {
      schema.put("foreignKeys", foreign);
    }
    return schema;
  }

  /** The name of a table's schema in {@code docs/schema}: {@code runs.schema.json}. */
  public static String fileName(Table table) {
    return table.file().replace(".csv", ".schema.json");
  }

  private static Map<String, Object> field(Column column) {
    Map<String, Object> field = new LinkedHashMap<>();
    field.put("name", column.name());
    field.put("type", type(column.kind()));
    format(column.kind()).ifPresent(f -> field.put("format", f));
    field.put("description", column.help());
    Map<String, Object> constraints = new LinkedHashMap<>();
    if (column.need() == Column.Need.REQUIRED) {
      constraints.put("required", true);
    }
    if (!column.words().isEmpty()) {
      constraints.put("enum", column.words());
    }
    if (!constraints.isEmpty()) {
      field.put("constraints", constraints);
    }
    return field;
  }

  /** Quantities and times as people write them are text to other programs. */
  private static String type(Column.Kind kind) {
    return switch (kind) {
      case WHOLE_NUMBER -> "integer";
      case NUMBER -> "number";
      case DATE -> "date";
      case KEY, TEXT, WORD, QUANTITY, TIME, TIME_OR_ELAPSED, PATH, BOXES -> "string";
    };
  }

  private static Optional<String> format(Column.Kind kind) {
    return kind == Column.Kind.DATE ? Optional.of("default") : Optional.empty();
  }

  private static Map<String, Object> foreignKey(
      Table table, Column column, Column.Reference reference) {
    Map<String, Object> key = new LinkedHashMap<>();
    key.put("fields", List.of(column.name()));
    boolean self = reference.table().equals(table.file());
    Map<String, Object> target = new LinkedHashMap<>();
    target.put("resource", self ? "" : reference.table().replace(".csv", ""));
    target.put("fields", List.of(reference.column()));
    key.put("reference", target);
    return key;
  }
}
