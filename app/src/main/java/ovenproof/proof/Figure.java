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
 * @param use id of the measure's use, of a test's score ({@code score}), of a fact, or {@code
 *     price}
 * @param take id of the registered measure; {@code score}, {@code price} or {@code fact} otherwise
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
    String take,
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
    PRICE,
    /** Measured once of a product, outside all tests. */
    FACT,
    /** What the maker's plate says. */
    NAMEPLATE
  }

  Figure {
    runs = List.copyOf(runs);
    words = Set.copyOf(words);
    evidence = List.copyOf(evidence);
  }

  /** The same figure with one exact value: of one run, or with its sign turned. */
  Figure withValue(double exact) {
    return new Figure(
        kind,
        product,
        test,
        use,
        take,
        label,
        batch,
        exact,
        exact,
        exact,
        List.of(exact),
        null,
        unit,
        shownDecimals,
        words,
        evidence);
  }

  /** The same as a difference, whose unit is {@code differenceUnit}. */
  Figure asDifference(double difference, @Nullable Unit differenceUnit) {
    return new Figure(
        kind,
        product,
        test,
        use,
        take,
        label,
        batch,
        difference,
        difference,
        difference,
        List.of(difference),
        null,
        differenceUnit,
        shownDecimals,
        words,
        evidence);
  }

  /** Taken once, so that runs say nothing of its spread: a fact, a plate, a price. */
  boolean isSingle() {
    return kind == Kind.PRICE || kind == Kind.FACT || kind == Kind.NAMEPLATE;
  }

  boolean isScore() {
    return kind == Kind.TOTAL || kind == Kind.TEST_SCORE || kind == Kind.CRITERION_SCORE;
  }
}
