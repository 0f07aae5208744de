package ovenproof.core.colour;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Rows of a published table beside this class; their sources are in the README of the folder. */
public final class ReferenceTable {

  private ReferenceTable() {}

  public static List<Row> read(String name) {
    try (var in = ReferenceTable.class.getResourceAsStream(name);
        var reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      String[] header = reader.readLine().split(",");
      List<Row> rows = new ArrayList<>();
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        rows.add(Row.of(header, line.split(",")));
      }
      return rows;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** One row by column name. */
  public record Row(Map<String, String> cells) {
    static Row of(String[] header, String[] values) {
      Map<String, String> cells = new HashMap<>();
      for (int i = 0; i < header.length; i++) {
        cells.put(header[i], values[i]);
      }
      return new Row(cells);
    }

    public double number(String column) {
      return Double.parseDouble(cells.get(column));
    }

    public String text(String column) {
      return cells.get(column);
    }

    public Lab lab(String l, String a, String b, White white) {
      return new Lab(number(l), number(a), number(b), white);
    }

    @Override
    public String toString() {
      return cells.values().iterator().next();
    }
  }
}
