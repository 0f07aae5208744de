package ovenproof.verdict.question;

import java.math.BigDecimal;
import java.util.Locale;
import ovenproof.core.scoring.NodeScore;

/** How figures read in the cells of an answer. */
final class AnswerWords {

  private AnswerWords() {}

  /** A score as displayed; its bounds when it is open. */
  static String text(NodeScore node) {
    if (node.displayedLow() == null) {
      return node.state() == NodeScore.State.NOT_ASKED ? "not asked" : "no score";
    }
    return node.bounded()
        ? node.displayedLow() + " to " + node.displayedHigh() + ", open"
        : node.displayedLow().toString();
  }

  /** The displayed score; what has no weight counts nothing, what is open is not a number. */
  static double shown(NodeScore node) {
    BigDecimal shown = node.displayedLow();
    if (shown == null) {
      return node.share() == 0 ? 0 : Double.NaN;
    }
    return shown.doubleValue();
  }

  static String percent(double share) {
    return String.format(Locale.ROOT, "%.1f %%", 100 * share);
  }

  /** Points with their sign, never a minus before zero. */
  static String signed(double points) {
    String text = String.format(Locale.ROOT, "%+.2f", points);
    return text.equals("-0.00") ? "+0.00" : text.replace('-', '−');
  }

  /** What was and what is; once when nothing moved. */
  static String fromTo(String then, String now) {
    return then.equals(now) ? now : then + " → " + now;
  }
}
