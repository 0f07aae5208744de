package ovenproof.core.trace;

import java.util.List;
import java.util.Map;

/**
 * How a file was read and how sure that is.
 *
 * @param form of its rows
 * @param encoding of its text
 * @param delimiter in words: comma, semicolon, tab, pipe, blanks; empty where rows have none
 * @param decimal the mark in its numbers
 * @param headerLine line of the names, from 1; 0 when there are none
 * @param firstDataLine line of the first row, from 1
 * @param rows rows read
 * @param skippedRows lines after the first row that were no rows: noise, comments, repeated headers
 * @param metadata what the lines before the table say, as written
 * @param certainty 0 to 1: 1 when nothing was guessed
 * @param explanation in sentences for a person
 */
public record Layout(
    Form form,
    String encoding,
    String delimiter,
    String decimal,
    int headerLine,
    int firstDataLine,
    int rows,
    int skippedRows,
    Map<String, String> metadata,
    double certainty,
    List<String> explanation) {

  public Layout {
    metadata = Map.copyOf(metadata);
    explanation = List.copyOf(explanation);
  }

  /** What rows look like. */
  public enum Form {
    DELIMITED,
    BLANKS,
    KEY_VALUE,
    SENTENCES,
    JSON,
    WORKBOOK,
    UNREADABLE;

    public String word() {
      return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }
  }
}
