package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import ovenproof.core.trace.TableLayout.ColumnKind;

/**
 * Columns of numbers as they stand in the file, before units and times are settled.
 *
 * @param headers one per column
 * @param kinds one per column
 * @param values per column, one entry per row; times in seconds (of the day, since 1970, or
 *     elapsed, as {@code stamps} tells), words as indexes into {@code labels}; NaN when missing
 * @param stamps per column: kind and facts of its stamps, null for other columns
 * @param suffixes per column: the unit behind its numbers, null when there is none
 * @param labels per column: words in order of appearance
 * @param missingWords per column: how many cells held a word for "nothing"
 * @param skipped lines that were no rows
 */
record RawTable(
    List<HeaderText> headers,
    List<ColumnKind> kinds,
    double[][] values,
    @Nullable StampColumn[] stamps,
    @Nullable UnitText[] suffixes,
    List<List<String>> labels,
    int[] missingWords,
    int skipped) {

  int rows() {
    return values.length == 0 ? 0 : values[0].length;
  }

  int columns() {
    return values.length;
  }

  /**
   * What the stamps of a column have in common.
   *
   * @param kind of the stamps
   * @param order in which open dates were read
   * @param orderWhy what the order rests on; empty when it was written beyond doubt
   * @param orderOpen whether both orders are possible
   * @param zoned whether a zone was written
   * @param yearKnown whether the year was written
   * @param clockParts 2 for h:mm, 3 with seconds
   * @param fraction whether fractions of a second are written
   * @param halfDay whether AM and PM are written
   * @param example the first stamp as written
   */
  record StampColumn(
      TimeText.Kind kind,
      DateOrder order,
      String orderWhy,
      boolean orderOpen,
      boolean zoned,
      boolean yearKnown,
      int clockParts,
      boolean fraction,
      boolean halfDay,
      String example) {}

  /** Gives every word of a column its number; not for use by two threads. */
  static final class Dictionary {
    private final Map<String, Integer> codes = new LinkedHashMap<>();

    /** Number of a word; −1 when the column already has a thousand different ones. */
    int code(String word) {
      Integer known = codes.get(word);
      if (known != null) {
        return known;
      }
      if (codes.size() >= 1000) {
        return -1;
      }
      codes.put(word, codes.size());
      return codes.size() - 1;
    }

    /** Whether a word has its number already. */
    boolean knows(String word) {
      return codes.containsKey(word);
    }

    List<String> words() {
      return new ArrayList<>(codes.keySet());
    }
  }
}
