package ovenproof.files;

import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import ovenproof.input.Place;

/**
 * Finds where a cell stands in the text of a table. Only asked for problems, so it scans the row
 * again instead of remembering every cell's place.
 */
final class CellPlaces {
  private final String file;
  private final String text;
  private final char separator;
  private int @Nullable [] lineStarts;

  CellPlaces(String file, String text, char separator) {
    this.file = file;
    this.text = text;
    this.separator = separator;
  }

  /**
   * Place of a cell's first character; of the row's line when the row has fewer cells.
   *
   * @param line in which the row begins, from 1
   * @param index of the cell, from 0
   */
  Place of(long line, int index) {
    int at = startOfLine(line);
    int cell = 0;
    int currentLine = (int) line;
    int lineStart = at;
    boolean quoted = false;
    while (cell < index && at < text.length()) {
      char c = text.charAt(at++);
      if (c == '"') {
        quoted = !quoted;
      } else if (c == '\n') {
        if (!quoted) {
          return new Place(file, (int) line, 0);
        }
        currentLine++;
        lineStart = at;
      } else if (c == separator && !quoted) {
        cell++;
      }
    }
    return cell < index
        ? new Place(file, (int) line, 0)
        : new Place(file, currentLine, at - lineStart + 1);
  }

  private int startOfLine(long line) {
    if (lineStarts == null) {
      IntStream breaks = IntStream.range(0, text.length()).filter(i -> text.charAt(i) == '\n');
      lineStarts = IntStream.concat(IntStream.of(0), breaks.map(i -> i + 1)).toArray();
    }
    return lineStarts[(int) Math.min(line, lineStarts.length) - 1];
  }
}
