package ovenproof.kitchen.folder;

import java.util.Locale;

/** Numbers and times as people in the kitchen write them. */
final class Figures {

  private static final double[] SCALES = {1, 10, 100, 1_000, 10_000, 100_000};

  private Figures() {}

  static String of(double value, int decimals) {
    double scale = SCALES[decimals];
    if (!(Math.abs(value) * scale < 9e15)) {
      throw new IllegalArgumentException("value must be smaller, found " + value);
    }
    long whole = Math.round(Math.abs(value) * scale);
    StringBuilder text = new StringBuilder(12);
    if (value < 0 && whole != 0) {
      text.append('-');
    }
    text.append(whole / (long) scale);
    if (decimals > 0) {
      String part = Long.toString(whole % (long) scale);
      text.append('.').append("0".repeat(decimals - part.length())).append(part);
    }
    return text.toString();
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
