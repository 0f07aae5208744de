package ovenproof.bench;

import org.jspecify.annotations.Nullable;
import ovenproof.web.FormProblems;

/** Points of a mark as people type them. */
final class Points {
  private Points() {}

  /** Null, with the problem beside the field, for what is no number from low to high. */
  static @Nullable Double read(
      FormProblems problems, String field, @Nullable String typed, double low, double high) {
    String expected = "a number from " + plain(low) + " to " + plain(high);
    String text = problems.need(field, typed, expected).replace(',', '.');
    if (text.isEmpty()) {
      return null;
    }
    if (!text.matches("-?\\d{1,3}(\\.\\d{1,3})?")
        || Double.parseDouble(text) < low
        || Double.parseDouble(text) > high) {
      problems.add(field, "Found “" + typed + "”, expected " + expected + ".");
      return null;
    }
    return Double.valueOf(text);
  }

  private static String plain(double value) {
    return value == Math.rint(value) ? String.valueOf((long) value) : String.valueOf(value);
  }
}
