package ovenproof.record;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import ovenproof.campaign.Campaign;
import ovenproof.files.Column;
import ovenproof.files.Table;
import ovenproof.files.Tables;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * The Frictionless data package of a campaign folder: every table that is there, with its columns.
 */
final class TableSchemas {

  private TableSchemas() {}

  static ObjectNode dataPackage(Campaign campaign, Path data) throws IOException {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("$schema", "https://datapackage.org/profiles/2.0/datapackage.json");
    root.put("name", campaign.info().id().toLowerCase(java.util.Locale.ROOT));
    root.put("title", campaign.info().title());
    ArrayNode resources = root.putArray("resources");
    for (Table table : Tables.ALL) {
      if (Files.isRegularFile(data.resolve(table.file()))) {
        resource(resources.addObject(), table, header(data.resolve(table.file())));
      }
    }
    return root;
  }

  /** The first line that is no comment. */
  private static String header(Path file) throws IOException {
    try (Reader reader = Files.newBufferedReader(file);
        java.io.BufferedReader lines = new java.io.BufferedReader(reader)) {
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        String plain = line.startsWith("\ufeff") ? line.substring(1) : line;
        if (!plain.isBlank() && !plain.startsWith("#")) {
          return plain;
        }
      }
      return "";
    }
  }

  private static void resource(ObjectNode resource, Table table, String header) {
    String delimiter = header.contains(";") ? ";" : ",";
    resource.put("name", table.file().replace(".csv", ""));
    resource.put("path", table.file());
    resource.put("title", table.title());
    resource.put("format", "csv");
    resource.put("mediatype", "text/csv");
    resource.put("encoding", "utf-8");
    resource.putObject("dialect").put("delimiter", delimiter).put("commentChar", "#");
    ObjectNode schema = resource.putObject("schema");
    ArrayNode fields = schema.putArray("fields");
    for (String written : header.split(delimiter)) {
      String name = written.strip().replaceAll("^\"|\"$", "");
      table.column(name).ifPresent(column -> field(fields.addObject(), column));
    }
    ArrayNode missing = schema.putArray("missingValues");
    missing.add("");
    if (!table.key().isEmpty()) {
      ArrayNode key = schema.putArray("primaryKey");
      table.key().forEach(key::add);
    }
  }

  private static void field(ObjectNode field, Column column) {
    field.put("name", column.name());
    field.put("type", type(column.kind()));
    field.put("description", column.help());
    ObjectNode constraints = JsonNodeFactory.instance.objectNode();
    if (column.need() == Column.Need.REQUIRED) {
      constraints.put("required", true);
    }
    if (!column.words().isEmpty()) {
      ArrayNode words = constraints.putArray("enum");
      column.words().forEach(words::add);
    }
    if (!constraints.isEmpty()) {
      field.set("constraints", constraints);
    }
  }

  /**
   * Numbers and times are written as people write them; where that is freer, the type is string.
   */
  private static String type(Column.Kind kind) {
    return switch (kind) {
      case WHOLE_NUMBER -> "integer";
      case DATE -> "date";
      case KEY, TEXT, WORD, NUMBER, QUANTITY, TIME, TIME_OR_ELAPSED, PATH, BOXES -> "string";
    };
  }
}
