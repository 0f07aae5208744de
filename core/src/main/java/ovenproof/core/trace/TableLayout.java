package ovenproof.core.trace;

import java.util.List;

/**
 * The table found in a text: how its lines split and what its columns hold.
 *
 * @param splitter of its lines
 * @param decimal mark of its numbers
 * @param headers what the header says, one per column
 * @param kinds what the columns hold, one per column
 * @param firstRow index in the sample of the first row
 * @param headerRow index in the sample of the line of names, −1 when there is none
 * @param support share of sampled lines after the first row that are rows
 */
record TableLayout(
    LineSplitter splitter,
    char decimal,
    List<HeaderText> headers,
    List<ColumnKind> kinds,
    int firstRow,
    int headerRow,
    double support) {

  /** What is read from a column. */
  enum ColumnKind {
    NUMBER,
    TIME,
    WORDS,
    /** Empty in every row, without a header. */
    SKIPPED
  }

  int columns() {
    return kinds.size();
  }
}
