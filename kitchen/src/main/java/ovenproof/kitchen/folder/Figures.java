package ovenproof.kitchen.folder;

import java.util.Locale;

/** Numbers and times as people in the kitchen write them. */
final class Figures {

  private Figures() {}

  static String of(double value, int decimals) {
    String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
    return text.matches("-0\\.?0*") ? text.substring(1) : text;
  }

  /** Rounded to the step that a display shows. */
  static double shown(double value, double step) {
    return Math.rint(value / step) * step;
  }

  /** {@code +6:30}, or {@code +61:05}. */
  static String elapsed(double seconds) {
    long whole = Math.round(seconds);
    return String.format(Locale.ROOT, "+%d:%02d", whole / 60, whole % 60);
  }
}
