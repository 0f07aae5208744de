package ovenproof.files;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Entry;
import ovenproof.core.quantity.Dimension;
import ovenproof.input.Problems;
import ovenproof.input.Written;
import ovenproof.method.Method;
import ovenproof.method.TestPlan;

/**
 * What rows may refer to. Keys are taken from all rows, also from those that have other faults, so
 * that one fault is told once.
 *
 * @param method empty when it could not be read at all; then nothing is checked against it
 * @param broken names of tables that could not be read whole; then nothing is checked against them
 */
record Context(
    Problems problems,
    FolderEvidence evidence,
    ZoneId zone,
    String currency,
    Optional<Method> method,
    Map<Table, List<Row>> rows,
    Set<String> broken) {

  /** Every key that a column of a table holds. */
  Set<String> keys(String file, String column) {
    Set<String> keys = new LinkedHashSet<>();
    rows.forEach(
        (table, all) -> {
          if (table.file().equals(file)) {
            all.forEach(row -> row.find(column).ifPresent(w -> keys.add(w.text())));
          }
        });
    return keys;
  }

  /** Reads the complete rows of a table whose references hold; reports the others. */
  <T> List<Rowed<T>> read(Table table, Function<Row, Optional<T>> reader) {
    Map<Column, Set<String>> references = references(table);
    List<Rowed<T>> read = new ArrayList<>();
    for (Row row : rows.getOrDefault(table, List.of())) {
      boolean complete = row.isComplete();
      boolean holds = holds(row, references);
      Optional<T> value = complete ? reader.apply(row) : Optional.empty();
      if (holds) {
        value.ifPresent(v -> read.add(new Rowed<>(v, row)));
      }
    }
    return read;
  }

  private Map<Column, Set<String>> references(Table table) {
    Map<Column, Set<String>> references = new java.util.LinkedHashMap<>();
    for (Column column : table.columns()) {
      column
          .reference()
          .filter(r -> !broken.contains(r.table()))
          .ifPresent(r -> references.put(column, keys(r.table(), r.column())));
    }
    return references;
  }

  private static boolean holds(Row row, Map<Column, Set<String>> references) {
    boolean holds = true;
    for (Map.Entry<Column, Set<String>> reference : references.entrySet()) {
      Column column = reference.getKey();
      Optional<Written> cell = row.find(column.name());
      String table = column.reference().map(Column.Reference::table).orElse("");
      String what = (column.name().startsWith("i") ? "an " : "a ") + column.name() + " of " + table;
      holds &= cell.isEmpty() || cell.get().oneOf(reference.getValue(), what).isPresent();
    }
    return holds;
  }

  /** The test that a row names; empty and reported when there is none. */
  Optional<TestPlan> test(Row row) {
    if (method.isEmpty()) {
      return Optional.empty();
    }
    List<String> ids = method.get().tests().stream().map(TestPlan::id).toList();
    return row.find("test")
        .flatMap(w -> w.oneOf(ids, "a test of the method"))
        .flatMap(method.get()::test);
  }

  /** The variant that a row names, or the scored one when it names none. */
  Optional<String> variant(Row row, TestPlan test) {
    Optional<Written> written = row.find("variant");
    if (written.isPresent()) {
      List<String> ids = test.variants().stream().map(TestPlan.Variant::id).toList();
      return written.get().oneOf(ids, "a variant of the test " + test.id());
    }
    return test.variants().stream()
        .filter(v -> v.role() == TestPlan.Variant.Role.SCORED)
        .findFirst()
        .map(TestPlan.Variant::id);
  }

  @Nullable Instant time(Row row, String column) {
    return row.find(column).flatMap(w -> w.time(zone)).orElse(null);
  }

  Entry.Provenance origin(Row row) {
    return new Entry.Provenance(
        row.find("entry").flatMap(Written::key).orElse(null),
        row.textOrNull("by"),
        time(row, "at"),
        row.find("corrects").flatMap(Written::key).orElse(null));
  }

  /** What the uncertainty of a quantity is measured in: differences, for temperatures. */
  static Dimension ofDifferences(Dimension dimension) {
    return dimension == Dimension.TEMPERATURE ? Dimension.TEMPERATURE_DIFFERENCE : dimension;
  }
}
