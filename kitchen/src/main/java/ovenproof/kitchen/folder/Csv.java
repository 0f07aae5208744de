package ovenproof.kitchen.folder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/** A table that grows row by row: comma, quotes where needed, UTF-8. */
final class Csv {
  private final StringBuilder text = new StringBuilder();
  private final int columns;

  Csv(String... header) {
    this.columns = header.length;
    line(Arrays.asList(header));
  }

  /** Adds a row; as many cells as the header has. */
  void row(Object... cells) {
    if (cells.length != columns) {
      throw new IllegalArgumentException(
          "cells must be " + columns + ", found " + cells.length + ": " + Arrays.toString(cells));
    }
    line(Arrays.stream(cells).map(String::valueOf).toList());
  }

  private void line(List<String> cells) {
    text.append(cells.stream().map(Csv::quoted).collect(Collectors.joining(","))).append('\n');
  }

  private static String quoted(String cell) {
    boolean plain =
        cell.indexOf(',') < 0
            && cell.indexOf(';') < 0
            && cell.indexOf('"') < 0
            && cell.indexOf('\n') < 0;
    return plain ? cell : '"' + cell.replace("\"", "\"\"") + '"';
  }

  void write(Path file) throws IOException {
    Files.writeString(file, text);
  }
}
