package ovenproof.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/** Loader, schemas and documentation say the same of every column. */
class TableSchemasTest {
  private static final JsonMapper JSON =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();
  private static final Pattern ROW = Pattern.compile("\\| `([a-z-]+\\.csv)` \\| (.*) \\|");

  static List<Table> tables() {
    return Tables.ALL;
  }

  @ParameterizedTest
  @MethodSource("tables")
  void theSchemaInTheDocumentationIsTheLoaders(Table table) throws IOException {
    Path file = Docs.folder().resolve("schema").resolve(TableSchemas.fileName(table));
    assertThat(JSON.readTree(Files.readString(file)))
        .isEqualTo(JSON.readTree(JSON.writeValueAsString(TableSchemas.of(table))));
  }

  @Test
  void everyColumnOfTheLoaderIsDocumentedAndNoOther() throws IOException {
    Map<String, List<String>> documented = new TreeMap<>();
    for (String line : Files.readAllLines(Docs.folder().resolve("files.md"))) {
      Matcher row = ROW.matcher(line);
      if (row.matches()) {
        documented.put(row.group(1), columns(row.group(2)));
      }
    }
    Map<String, List<String>> declared = new TreeMap<>();
    for (Table table : Tables.ALL) {
      declared.put(table.file(), table.columnNames().stream().sorted().toList());
    }
    assertThat(documented).isEqualTo(declared);
  }

  @Test
  void requiredColumnsStandBeforeTheDot() throws IOException {
    for (String line : Files.readAllLines(Docs.folder().resolve("files.md"))) {
      Matcher row = ROW.matcher(line);
      if (row.matches()) {
        Table table =
            Tables.ALL.stream()
                .filter(t -> t.file().equals(row.group(1)))
                .findFirst()
                .orElseThrow();
        assertThat(columns(row.group(2).split(" · ")[0]))
            .isEqualTo(
                table.columns().stream()
                    .filter(c -> c.need() == Column.Need.REQUIRED)
                    .map(Column::name)
                    .sorted()
                    .toList());
      }
    }
  }

  private static List<String> columns(String cell) {
    String withoutWords = cell.replaceAll("\\([^)]*\\)", "");
    return Pattern.compile("[,·]")
        .splitAsStream(withoutWords)
        .map(String::strip)
        .filter(c -> !c.isEmpty())
        .sorted()
        .collect(Collectors.toList());
  }

  /** Writes the schemas again: {@code java … TableSchemasTest}. */
  public static void main(String[] none) throws IOException {
    for (Table table : Tables.ALL) {
      Files.writeString(
          Docs.folder().resolve("schema").resolve(TableSchemas.fileName(table)),
          JSON.writeValueAsString(TableSchemas.of(table)) + "\n");
    }
  }
}
