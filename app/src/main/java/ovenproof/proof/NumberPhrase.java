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
    /** "3 points". */
    POINTS,
    /** "$129". */
    MONEY,
    /** "degrees" without a letter. */
    DEGREES,
    /** "third", "2nd". */
    ORDINAL,
    /** "twice", "three times", "1.5 ×". */
    TIMES
  }

  boolean isRange() {
    return high != low;
  }
}
