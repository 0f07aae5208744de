package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Lines of one moment that were stamped one after the other: a chip's two readings, printed two
 * milliseconds apart every second. They take the stamp of the first.
 */
final class MomentLines {

  /** Longest time within a moment, as a share of the time between two. */
  private static final double LONGEST_WITHIN = 0.2;

  private MomentLines() {}

  /** The lines themselves when they are not such. */
  static List<Map<String, String>> oneStamp(List<Map<String, String>> lines) {
    if (lines.size() < 6 || lines.stream().anyMatch(l -> l.size() < 2 || !l.containsKey("time"))) {
      return lines;
    }
    int[] starts = starts(lines);
    double[] seconds = seconds(lines);
    boolean grouped = starts.length > 2 && starts.length < 0.7 * lines.size();
    if (!grouped || Arrays.stream(seconds).anyMatch(Double::isNaN)) {
      return lines;
    }
    double within = 0;
    double[] between = new double[starts.length - 1];
    for (int g = 0; g < between.length; g++) {
      within = Math.max(within, seconds[starts[g + 1] - 1] - seconds[starts[g]]);
      between[g] = seconds[starts[g + 1]] - seconds[starts[g]];
    }
    return within < LONGEST_WITHIN * Medians.of(between) ? stamped(lines, starts) : lines;
  }

  /** Where a name comes again. */
  private static int[] starts(List<Map<String, String>> lines) {
    List<Integer> starts = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (int i = 0; i < lines.size(); i++) {
      boolean again =
          lines.get(i).keySet().stream().anyMatch(k -> !k.equals("time") && seen.contains(k));
      if (again || i == 0) {
        starts.add(i);
        seen.clear();
      }
      seen.addAll(lines.get(i).keySet());
    }
    return starts.stream().mapToInt(Integer::intValue).toArray();
  }

  private static double[] seconds(List<Map<String, String>> lines) {
    TimeText time = new TimeText();
    return lines.stream().mapToDouble(l -> seconds(time, l.getOrDefault("time", ""))).toArray();
  }

  private static double seconds(TimeText time, String stamp) {
    return switch (time.parse(stamp)) {
      case CLOCK -> time.clockSeconds;
      case DATE_AND_CLOCK -> time.epochDay(DateOrder.DAY_FIRST) * 86_400.0 + time.clockSeconds;
      default -> Double.NaN;
    };
  }

  private static List<Map<String, String>> stamped(List<Map<String, String>> lines, int[] starts) {
    List<Map<String, String>> result = new ArrayList<>();
    int group = 0;
    for (int i = 0; i < lines.size(); i++) {
      group = group + 1 < starts.length && starts[group + 1] == i ? group + 1 : group;
      Map<String, String> line = new LinkedHashMap<>(lines.get(i));
      line.put("time", lines.get(starts[group]).getOrDefault("time", ""));
      result.add(line);
    }
    return result;
  }
}
