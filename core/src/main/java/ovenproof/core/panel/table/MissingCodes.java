package ovenproof.core.panel.table;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Numbers that stand for "no mark", as spreadsheets and survey programs write them (-1, 99 …;
 * common practice). Only what lies outside a usual scale that all other marks keep is taken for
 * one.
 */
final class MissingCodes {

  private static final double[] CODES = {-1, -9, -99, -999, 88, 99, 888, 999, 9999};
  private static final double[][] SCALES = {
    {1, 3}, {1, 5}, {0, 5}, {1, 7}, {1, 9}, {0, 10}, {0, 15}, {0, 20}, {0, 100}
  };
  private static final double LARGEST_SHARE = 0.3;

  private MissingCodes() {}

  /**
   * Removes marks that are codes and says so.
   *
   * @return how many were removed
   */
  static int drop(List<FoundMark> found, List<String> questions) {
    Map<String, List<Double>> byAttribute = new LinkedHashMap<>();
    for (FoundMark one : found) {
      byAttribute
          .computeIfAbsent(one.rating().attribute(), any -> new ArrayList<>())
          .add(one.rating().value());
    }
    int before = found.size();
    byAttribute.forEach((attribute, values) -> drop(found, attribute, values, questions));
    return before - found.size();
  }

  private static void drop(
      List<FoundMark> found, String attribute, List<Double> values, List<String> questions) {
    for (double code : CODES) {
      long count = values.stream().filter(v -> v == code).count();
      if (count >= 2
          && count <= LARGEST_SHARE * values.size()
          && isBeyond(code, values.stream().filter(v -> v != code).toList())) {
        Iterator<FoundMark> each = found.iterator();
        while (each.hasNext()) {
          FoundMark one = each.next();
          if (one.rating().attribute().equals(attribute) && one.rating().value() == code) {
            each.remove();
          }
        }
        questions.add(
            String.format(
                "Does %d mean \"no mark\"? It stands %d times for %s, outside all other marks, and was"
                    + " read so. Declare the scale (--scale LOW..HIGH) if it is a mark.",
                (long) code, count, attribute));
        return;
      }
    }
  }

  private static boolean isBeyond(double code, List<Double> others) {
    double low = others.stream().mapToDouble(v -> v).min().orElse(Double.NaN);
    double high = others.stream().mapToDouble(v -> v).max().orElse(Double.NaN);
    for (double[] scale : SCALES) {
      if (low >= scale[0] && high <= scale[1]) {
        return code < scale[0] && code < 0 || code > 2 * scale[1];
      }
    }
    return false;
  }
}
