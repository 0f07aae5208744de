package ovenproof.proof;

import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Unit;

/**
 * A number in running text, with its unit where one stands beside it.
 *
 * @param start offset of the first character, hedge included
 * @param end offset after the last
 * @param low the number, or the lower end of a range; in {@code unit} when there is one
 * @param high equal to {@code low}, or the upper end
 * @param decimals digits after the point as written; 0 for words
 * @param step how finely the number is stated, in {@code unit}: one unit of the last written digit,
 *     0.5 for a half, 0.25 for a quarter
 * @param unit null for a bare number
 * @param scale what the number counts when it has no physical unit
 */
record NumberPhrase(
    int start,
    int end,
    double low,
    double high,
    int decimals,
    double step,
    @Nullable Unit unit,
    Scale scale,
    Hedge hedge,
    String text) {

  /** What a number without physical unit is a number of. */
  enum Scale {
    NONE,
    /** "6.4 out of 10", "7.2/10". */
    OUT_OF_TEN,
    /** "3.5 out of 4": a step chosen by raters. */
    OUT_OF_FOUR,
    /** "3 points". */
    POINTS,
    /** "$129". */
    MONEY,
    /** "degrees" without a letter. */
    DEGREES,
    /** "Eleven forty-six": 1146 until the words say whether it is a time, a dial or a price. */
    SPOKEN_PAIR,
    /** "third", "2nd". */
    ORDINAL,
    /** "twice", "three times", "1.5 ×". */
    TIMES
  }

  /** The same number with another hedge: what "not" makes of it. */
  NumberPhrase hedged(Hedge other) {
    return new NumberPhrase(start, end, low, high, decimals, step, unit, scale, other, text);
  }

  /** The same number as one of another unit or scale. */
  NumberPhrase as(double number, double newStep, @Nullable Unit newUnit, Scale newScale) {
    return new NumberPhrase(
        start, end, number, number, decimals, newStep, newUnit, newScale, hedge, text);
  }

  boolean isRange() {
    return high != low;
  }
}
