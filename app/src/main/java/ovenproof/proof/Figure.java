package ovenproof.proof;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Unit;

/**
 * Something the campaign knows of a product as a number: a claim is held against figures.
 *
 * @param product key
 * @param test id, or null for the total, prices and facts
 * @param use id of the measure's use, of a test's score ({@code score}), or {@code price}
 * @param batch when the figure is of one batch only
 * @param value mean over the counted runs, in the contract unit; null when only bounds are known
 * @param low lowest run, or lower bound
 * @param high highest run, or upper bound
 * @param runs the values of the counted runs
 * @param standardError of {@code value}, or null
 * @param shownDecimals digits that the site shows, for scores; −1 otherwise
 * @param words stems by which a text may speak of it
 * @param evidence where it comes from
 */
record Figure(
    Kind kind,
    String product,
    @Nullable String test,
    String use,
    String label,
    @Nullable Integer batch,
    @Nullable Double value,
    @Nullable Double low,
    @Nullable Double high,
    List<Double> runs,
    @Nullable Double standardError,
    @Nullable Unit unit,
    int shownDecimals,
    Set<String> words,
    List<String> evidence) {

  /** What sort of number it is. */
  enum Kind {
    MEASURE,
    MARK,
    TOTAL,
    TEST_SCORE,
    CRITERION_SCORE,
    PRICE
  }

  Figure {
    runs = List.copyOf(runs);
    words = Set.copyOf(words);
    evidence = List.copyOf(evidence);
  }

  boolean isScore() {
    return kind == Kind.TOTAL || kind == Kind.TEST_SCORE || kind == Kind.CRITERION_SCORE;
  }
}
