package ovenproof.publish.figure;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import ovenproof.chart.Tray;
import ovenproof.verdict.Verdict.RankSet;
import ovenproof.verdict.Verdict.Score;

/**
 * How a score is printed, said and drawn. The digits are the verdict's; nothing is rounded here.
 */
public final class Scores {

  private Scores() {}

  /** The digits alone, or a dash where there are none: {@code 8.1}. */
  public static String digits(Score score) {
    return score.value() == null ? "–" : digits(score.value());
  }

  public static String digits(BigDecimal value) {
    return value.toPlainString().replace('-', '−');
  }

  /** The word that must stand beside the digits; empty for a plain score. */
  public static String qualifier(Score score) {
    return switch (score.known()) {
      case INTERVAL -> "";
      case VALUE_ONLY -> "no interval";
      case AT_MOST -> "at most";
      case AT_LEAST -> "at least";
      case BOUNDS -> "open";
      case CANNOT_DO -> "cannot do";
      case NOT_ASKED -> "not asked";
      case NONE -> "none";
    };
  }

  /** {@code 8.1}, {@code at most 4.9}, {@code 0.0, cannot do}, {@code 3.1 to 6.4, open}. */
  public static String words(Score score) {
    return switch (score.known()) {
      case INTERVAL, VALUE_ONLY -> digits(score);
      case AT_MOST, AT_LEAST -> qualifier(score) + " " + digits(score);
      case BOUNDS -> interval(score) + ", open";
      case CANNOT_DO -> digits(score) + ", cannot do";
      case NOT_ASKED, NONE -> qualifier(score);
    };
  }

  /** {@code 7.8 to 8.5}; a dash where there is no interval. */
  public static String interval(Score score) {
    if (score.low() == null || score.high() == null) {
      return "–";
    }
    return digits(score.low()) + " to " + digits(score.high());
  }

  /** {@code 8.1 of 10, 90 % interval 7.8 to 8.5}. */
  public static String sentence(Score score) {
    return switch (score.known()) {
      case INTERVAL -> digits(score) + " of 10, 90 % interval " + interval(score);
      case VALUE_ONLY -> digits(score) + " of 10, one run: no interval";
      case AT_MOST, AT_LEAST ->
          words(score) + " of 10" + (score.low() == null ? "" : ", possible " + interval(score));
      case BOUNDS -> "between " + interval(score).replace(" to ", " and ") + " of 10";
      case CANNOT_DO -> digits(score) + " of 10: cannot do it";
      case NOT_ASKED -> "not asked of it";
      case NONE -> "no score" + (score.note() == null ? "" : ": " + score.note());
    };
  }

  /** {@code 1–3}, {@code 4}, or a dash when unranked. */
  public static String rank(@Nullable RankSet rank) {
    if (rank == null) {
      return "–";
    }
    return rank.low() == rank.high()
        ? Integer.toString(rank.low())
        : rank.low() + "–" + rank.high();
  }

  /** Probability of being best: one figure, or both ends where something is missing. */
  public static String probability(@Nullable Double atLeast, @Nullable Double atMost) {
    String low = probability(atLeast);
    String high = probability(atMost);
    return low.equals(high) ? low : low + " to " + high;
  }

  /** {@code 0.72}; {@code < 0.01} and {@code > 0.99} at the ends, where draws say no more. */
  private static String probability(@Nullable Double probability) {
    if (probability == null) {
      return "–";
    }
    if (probability < 0.01) {
      return "< 0.01";
    }
    if (probability > 0.99) {
      return "> 0.99";
    }
    return ovenproof.core.quantity.Rounding.HALF_UP.text(probability, 2);
  }

  /** The score as a bead in its tray. */
  public static Tray tray(Score score) {
    Double value = score.value() == null ? null : score.value().doubleValue();
    Double low = score.low() == null ? null : score.low().doubleValue();
    Double high = score.high() == null ? null : score.high().doubleValue();
    return switch (score.known()) {
      case INTERVAL ->
          value == null || low == null || high == null
              ? onlyValue(value)
              : Tray.interval(value, low, high);
      case VALUE_ONLY -> onlyValue(value);
      case AT_MOST -> value == null ? Tray.none() : new Tray(Tray.Kind.AT_MOST, value, low, high);
      case AT_LEAST -> value == null ? Tray.none() : new Tray(Tray.Kind.AT_LEAST, value, low, high);
      case BOUNDS -> low == null || high == null ? Tray.none() : Tray.bounds(low, high);
      case CANNOT_DO -> new Tray(Tray.Kind.CANNOT_DO, value, null, null);
      case NOT_ASKED, NONE -> Tray.none();
    };
  }

  private static Tray onlyValue(@Nullable Double value) {
    return value == null ? Tray.none() : Tray.valueOnly(value);
  }
}
