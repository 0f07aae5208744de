package ovenproof.core.panel.table;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import ovenproof.core.statistics.Interval;

/**
 * The scale of each attribute and marks that cannot be on it. A declared scale is a limit; without
 * one the usual scales are tried, and only what lies far beyond (77 on a scale to 9) is refused.
 */
final class Scales {

  private static final double[][] USUAL = {
    {-2, 2}, {1, 3}, {1, 5}, {0, 5}, {1, 7}, {1, 9}, {0, 10}, {0, 15}, {0, 20}, {0, 100}
  };

  private Scales() {}

  /** Removes marks beyond the scale from {@code found} and says each. */
  static Map<String, String> check(
      List<FoundMark> found, @Nullable Interval declared, List<TableProblem> problems) {
    Map<String, List<FoundMark>> byAttribute = new LinkedHashMap<>();
    for (FoundMark one : found) {
      byAttribute.computeIfAbsent(one.rating().attribute(), any -> new ArrayList<>()).add(one);
    }
    Map<String, String> words = new LinkedHashMap<>();
    Map<String, Interval> limits = new LinkedHashMap<>();
    for (Map.Entry<String, List<FoundMark>> entry : byAttribute.entrySet()) {
      double[] values =
          entry.getValue().stream().mapToDouble(f -> f.rating().value()).sorted().toArray();
      Interval limit = declared != null ? declared : limit(values);
      limits.put(entry.getKey(), limit);
      words.put(entry.getKey(), words(values, limit));
    }
    Iterator<FoundMark> each = found.iterator();
    while (each.hasNext()) {
      FoundMark one = each.next();
      Interval limit = limits.get(one.rating().attribute());
      if (limit != null && !limit.contains(one.rating().value())) {
        problems.add(problem(one, limit, declared != null));
        each.remove();
      }
    }
    return words;
  }

  private static TableProblem problem(FoundMark one, Interval limit, boolean declared) {
    double value = one.rating().value();
    String what =
        number(value)
            + " for "
            + one.rating().attribute()
            + (one.rating().assessor() == null ? "" : " by " + one.rating().assessor());
    String scale =
        number(limit.low())
            + " to "
            + number(limit.high())
            + (declared ? "" : ", as nearly all other marks");
    return new TableProblem(
        one.sheet(),
        one.line(),
        one.column(),
        what,
        scale,
        "left out"
            + (Math.abs(value) == 99 || Math.abs(value) == 999 ? "; 99 often means missing" : ""));
  }

  /** The usual scale that nearly all marks fit while the rest lie far beyond; else everything. */
  private static @Nullable Interval limit(double[] ascending) {
    int n = ascending.length;
    if (n < 8) {
      return null;
    }
    for (double[] scale : USUAL) {
      double width = scale[1] - scale[0];
      long inside = 0;
      boolean far = true;
      for (double value : ascending) {
        if (value >= scale[0] && value <= scale[1]) {
          inside++;
        } else {
          far &= value > scale[1] + width || value < scale[0] - width || value < 0 && scale[0] >= 0;
        }
      }
      if (inside == n) {
        return null;
      }
      if (far && n - inside <= Math.max(1, n / 20)) {
        return new Interval(scale[0], scale[1]);
      }
    }
    return null;
  }

  private static String words(double[] ascending, @Nullable Interval limit) {
    boolean whole = true;
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (double value : ascending) {
      if (limit == null || limit.contains(value)) {
        whole &= value == Math.rint(value);
        low = Math.min(low, value);
        high = Math.max(high, value);
      }
    }
    return "marks from " + number(low) + " to " + number(high) + (whole ? ", whole numbers" : "");
  }

  private static String number(double value) {
    return value == Math.rint(value) && Math.abs(value) < 1e9
        ? String.valueOf((long) value)
        : String.valueOf(value);
  }
}
