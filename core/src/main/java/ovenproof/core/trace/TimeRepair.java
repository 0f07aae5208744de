package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import ovenproof.core.trace.TimeAxis.Form;

/**
 * Makes raw times grow: midnight, clock changes, rows out of order, newest first, repeated stamps,
 * restarts.
 */
final class TimeRepair {

  private static final double DAY = 86_400;

  /** A clock is set by an hour; anything shorter needs no second look. */
  private static final double LONGEST_SOUND_STEP_SECONDS = 3500;

  private final TimeColumns.Found found;
  private final List<String> warnings = new ArrayList<>();
  private final List<Integer> restarts = new ArrayList<>();

  TimeRepair(TimeColumns.Found found) {
    this.found = found;
  }

  /**
   * Times that grow.
   *
   * @param rows which row of the table each is
   * @param seconds from the first
   * @param startSeconds raw time of the first
   */
  record Repaired(
      int[] rows,
      double[] seconds,
      double startSeconds,
      List<Segment> segments,
      List<String> warnings,
      List<String> explanation) {}

  Repaired repair(java.util.function.BiPredicate<Integer, Integer> sameValues) {
    if (isSound(found.seconds())) {
      return asTheyAre(found.seconds());
    }
    int[] rows =
        IntStream.range(0, found.seconds().length)
            .filter(i -> !Double.isNaN(found.seconds()[i]))
            .toArray();
    int untimed = found.seconds().length - rows.length;
    if (untimed > 0) {
      warnings.add(untimed + " row(s) without a time were left out.");
    }
    double[] t = new double[rows.length];
    for (int i = 0; i < rows.length; i++) {
      t[i] = found.seconds()[rows[i]];
    }
    if (isNewestFirst(t)) {
      reverse(rows, t);
      warnings.add("The file is written newest first; it was turned round.");
    }
    if (found.form() == Form.TIME_OF_DAY) {
      rollOver(t);
    } else if (found.form() == Form.DATE_AND_TIME) {
      clockChange(t);
    }
    rows = order(rows, t);
    int[] kept = withoutDuplicates(rows, t, sameValues);
    t = pick(t, kept);
    rows = pickInts(rows, kept);
    List<Segment> segments = segments(kept, rows.length);
    if (found.resolutionSeconds() > 0) {
      spreadRepeats(t, segments);
    }
    double start = t.length == 0 ? 0 : t[0];
    return new Repaired(rows, fromFirst(t, segments), start, segments, warnings, List.of());
  }

  /** Every row has a time, each later than the last, and none by as much as a clock is set. */
  private static boolean isSound(double[] t) {
    boolean sound = t.length > 0 && !Double.isNaN(t[0]);
    for (int i = 1; i < t.length && sound; i++) {
      double step = t[i] - t[i - 1];
      sound = step > 0 && step < LONGEST_SOUND_STEP_SECONDS;
    }
    return sound;
  }

  private Repaired asTheyAre(double[] t) {
    int[] rows = new int[t.length];
    for (int i = 0; i < rows.length; i++) {
      rows[i] = i;
    }
    List<Segment> segments = List.of(new Segment(0, t.length));
    return new Repaired(rows, fromFirst(t, segments), t[0], segments, warnings, List.of());
  }

  private static boolean isNewestFirst(double[] t) {
    int falls = 0;
    int rises = 0;
    for (int i = 1; i < t.length; i++) {
      falls += t[i] < t[i - 1] ? 1 : 0;
      rises += t[i] > t[i - 1] ? 1 : 0;
    }
    return falls > 3 && falls > 9 * rises;
  }

  private static void reverse(int[] rows, double[] t) {
    for (int i = 0, j = t.length - 1; i < j; i++, j--) {
      int row = rows[i];
      rows[i] = rows[j];
      rows[j] = row;
      double time = t[i];
      t[i] = t[j];
      t[j] = time;
    }
  }

  /** Midnight adds a day; a twelve-hour clock without AM and PM adds half a day. */
  private void rollOver(double[] t) {
    double add = 0;
    double[] raw = t.clone();
    double step = medianStep(raw);
    int midnights = 0;
    for (int i = 1; i < t.length; i++) {
      double d = raw[i] - raw[i - 1];
      if (d < -DAY / 2 - 3600 || (d < -DAY / 2 && d + DAY <= 20 * Math.max(step, 60))) {
        add += DAY;
        midnights++;
      } else if (d > DAY / 2 + 3600 && add >= DAY) {
        add -= DAY; // one row from before midnight, written late
      } else if (isHalfDay(d + DAY / 2, step)) {
        add += DAY / 2;
        midnights++;
      } else if (isHour(-d, step)) {
        add += 3600;
        warnings.add(
            "The clock was set back by an hour during the record; times go on without it.");
      }
      t[i] = raw[i] + add;
    }
    if (midnights > 0) {
      warnings.add(
          "The record runs past midnight"
              + (midnights > 1 ? " " + midnights + " times" : "")
              + ".");
    }
  }

  /** An hour back or forth between two neighbouring rows is the clock's, not the oven's. */
  private void clockChange(double[] t) {
    double step = medianStep(t);
    double add = 0;
    int halfDays = 0;
    double[] raw = t.clone();
    for (int i = 1; i < t.length; i++) {
      double d = raw[i] - raw[i - 1];
      if (isHalfDay(d + DAY / 2, step)) {
        add += DAY / 2; // 12:59:59, 1:00:00
        halfDays++;
      } else if (halfDays > 0 && isHalfDay(d - DAY, step)) {
        add -= DAY; // the date goes on at midnight, where such a clock says twelve
      } else if (isHour(-d, step) && staysBack(raw, i)) {
        add += 3600;
        warnings.add(
            "The clock was set back by an hour during the record; times go on without it.");
      } else if (step < 600
          && Math.abs(d - 3600 - step) <= Math.max(1, 0.5 * step)
          && isNight(raw[i - 1])) {
        add -= 3600;
        warnings.add(
            "The clock was set forward by an hour during the record; times go on without it.");
      }
      t[i] = raw[i] + add;
    }
    if (halfDays > 0) {
      warnings.add(
          "The clock counts to twelve without AM or PM: the record's start may lie twelve hours off.");
    }
  }

  /** A clock that counts to twelve falls or skips by this much, give or take some rows. */
  private static boolean isHalfDay(double difference, double step) {
    return step < 600 && Math.abs(difference) <= 10 * Math.max(step, 1) + 1;
  }

  private static boolean isHour(double back, double step) {
    return step < 600 && back > 3600 - 5 * Math.max(1, step) - 1 && back <= 3600;
  }

  private static boolean staysBack(double[] raw, int i) {
    int last = Math.min(raw.length - 1, i + 3);
    return raw[last] < raw[i - 1];
  }

  /** Clocks are changed between one and three in the morning. */
  private static boolean isNight(double epochSeconds) {
    double ofDay = epochSeconds - Math.floor(epochSeconds / DAY) * DAY;
    return ofDay >= 3500 && ofDay <= 3.1 * 3600;
  }

  private static double medianStep(double[] t) {
    if (t.length < 2) {
      return 1;
    }
    double[] steps = new double[t.length - 1];
    for (int i = 1; i < t.length; i++) {
      steps[i - 1] = Math.abs(t[i] - t[i - 1]);
    }
    double median = Medians.of(steps);
    return median > 0 ? median : 1;
  }

  /** Sorts what is merely out of order; notes where the logger began again. */
  private int[] order(int[] rows, double[] t) {
    int late = 0;
    double highest = Double.NEGATIVE_INFINITY;
    int segmentStart = 0;
    boolean[] restart = new boolean[t.length];
    for (int i = 0; i < t.length; i++) {
      if (t[i] < highest && isRestart(t, i, highest, t[segmentStart])) {
        restart[i] = true;
        segmentStart = i;
        highest = t[i];
      } else if (t[i] < highest) {
        late++;
      } else if (i > 0 && t[i] - highest > 3650 * DAY && found.form() != Form.ELAPSED) {
        restart[i] = true; // the clock was set
        segmentStart = i;
        highest = t[i];
      } else {
        highest = t[i];
      }
    }
    for (int i = 0; i < t.length; i++) {
      if (restart[i]) {
        restarts.add(i);
      }
    }
    if (!restarts.isEmpty()) {
      warnings.add(
          "The logger began again "
              + restarts.size()
              + " time(s) inside the file; the parts are kept apart, the time between them is not known.");
    }
    if (late == 0) {
      return rows;
    }
    warnings.add(late + " row(s) stood out of order and were put in their place.");
    return sorted(rows, t);
  }

  private int[] sorted(int[] rows, double[] t) {
    int[] result = new int[rows.length];
    double[] times = t.clone();
    int from = 0;
    List<Integer> ends = new ArrayList<>(restarts);
    ends.add(t.length);
    for (int end : ends) {
      Integer[] index = IntStream.range(from, end).boxed().toArray(Integer[]::new);
      Arrays.sort(index, Comparator.comparingDouble(i -> times[i]));
      for (int i = from; i < end; i++) {
        result[i] = rows[index[i - from]];
        t[i] = times[index[i - from]];
      }
      from = end;
    }
    return result;
  }

  /** A time that falls and goes on from there, instead of jumping back up. */
  private boolean isRestart(double[] t, int i, double highest, double segmentStart) {
    int higher = 0;
    int looked = 0;
    for (int j = i + 1; j < t.length && looked < 5; j++) {
      looked++;
      higher += t[j] >= highest ? 1 : 0;
    }
    if (looked > 0 && higher >= 1) {
      return false;
    }
    boolean nearStart = t[i] - segmentStart < 0.2 * (highest - segmentStart) + 1;
    boolean counter =
        found.form() == Form.ELAPSED || found.form() == Form.COUNTER || found.form() == Form.EPOCH;
    return counter ? nearStart && looked > 0 : highest - t[i] > 60 && looked > 2;
  }

  /** Rows that repeat both time and values, or the time of a fine clock. */
  private int[] withoutDuplicates(
      int[] rows, double[] t, java.util.function.BiPredicate<Integer, Integer> sameValues) {
    boolean coarse = repeats(t) > 0.15 && !isDoubled(rows, t, sameValues);
    int[] kept = new int[t.length];
    int n = 0;
    int dropped = 0;
    for (int i = 0; i < t.length; i++) {
      boolean repeated = n > 0 && t[i] == t[kept[n - 1]];
      if (repeated && !coarse
          || repeated && sameValues.test(rows[i], rows[kept[n - 1]]) && !coarse) {
        dropped++;
      } else {
        kept[n++] = i;
      }
    }
    if (dropped > 0) {
      warnings.add(dropped + " row(s) repeat the time of the row before and were left out.");
    }
    return Arrays.copyOf(kept, n);
  }

  /** Every row stands twice: written by two writers, or pasted together. */
  private static boolean isDoubled(
      int[] rows, double[] t, java.util.function.BiPredicate<Integer, Integer> sameValues) {
    int pairs = 0;
    int alike = 0;
    for (int i = 1; i < t.length; i++) {
      boolean same = sameValues.test(rows[i], rows[i - 1]);
      alike += same ? 1 : 0;
      pairs += same && t[i] == t[i - 1] ? 1 : 0;
      if (t[i] == t[i - 1] && !same) {
        return false;
      }
    }
    return t.length > 8 && pairs == alike && Math.abs(2 * pairs - t.length) <= 0.02 * t.length;
  }

  private static double repeats(double[] t) {
    int n = 0;
    for (int i = 1; i < t.length; i++) {
      n += t[i] == t[i - 1] ? 1 : 0;
    }
    return t.length < 2 ? 0 : (double) n / (t.length - 1);
  }

  private List<Segment> segments(int[] kept, int rows) {
    List<Segment> segments = new ArrayList<>();
    int from = 0;
    for (int restart : restarts) {
      int at = Arrays.binarySearch(kept, restart);
      int to = at < 0 ? -at - 1 : at;
      if (to > from) {
        segments.add(new Segment(from, to));
        from = to;
      }
    }
    if (rows > from || segments.isEmpty()) {
      segments.add(new Segment(from, rows));
    }
    return segments;
  }

  /** Rows that share a coarse stamp are spread evenly up to the next one. */
  private void spreadRepeats(double[] t, List<Segment> segments) {
    if (repeats(t) <= 0.15) {
      return;
    }
    for (Segment segment : segments) {
      double step = sharedStep(t, segment);
      int i = segment.fromRow();
      while (i < segment.toRow()) {
        int j = i;
        while (j < segment.toRow() && t[j] == t[i]) {
          j++;
        }
        spread(t, i, j, segment, step);
        i = j;
      }
    }
    warnings.add("Several rows share each stamp; they were spread evenly between the stamps.");
  }

  private static double meanStep(double[] t, Segment s) {
    int n = s.rows() - 1;
    return n < 1 ? 0 : (t[s.toRow() - 1] - t[s.fromRow()]) / n;
  }

  /**
   * Distance of rows that share coarse stamps: what one stamp stands for, by the rows that share
   * it. Of the first and the last stamp rows may be missing, so those between count where there are
   * any.
   */
  private double sharedStep(double[] t, Segment s) {
    List<Double> steps = new ArrayList<>();
    int most = 0;
    int i = s.fromRow();
    while (i < s.toRow()) {
      int j = i;
      while (j < s.toRow() && t[j] == t[i]) {
        j++;
      }
      most = Math.max(most, j - i);
      if (i > s.fromRow() && j < s.toRow()) {
        steps.add((t[j] - t[i]) / (j - i));
      }
      i = j;
    }
    if (steps.isEmpty()) {
      double each = most == 0 ? 0 : found.resolutionSeconds() / most;
      return each > 0.4 * meanStep(t, s) ? each : meanStep(t, s);
    }
    return Medians.of(steps.stream().mapToDouble(Double::doubleValue).toArray());
  }

  private static void spread(double[] t, int from, int to, Segment segment, double step) {
    double stamp = t[from];
    boolean isFirst = from == segment.fromRow();
    boolean last = to == segment.toRow();
    double next = last ? stamp + step * (to - from) : t[to];
    double each = Math.min((next - stamp) / (to - from), 3 * step);
    if (isFirst && !last) {
      each = Math.min(each, step);
      for (int i = from; i < to; i++) {
        t[i] = next - each * (to - i);
      }
      return;
    }
    for (int i = from; i < to; i++) {
      t[i] = stamp + each * (i - from);
    }
  }

  private static double[] fromFirst(double[] t, List<Segment> segments) {
    double[] seconds = new double[t.length];
    double offset = t.length == 0 ? 0 : t[0];
    double end = 0;
    for (Segment s : segments) {
      if (s.rows() > 0 && s.fromRow() > 0) {
        // The time between is unknown: the next part follows one step later.
        offset = t[s.fromRow()] - end - Math.max(1, meanStep(t, s));
      }
      for (int i = s.fromRow(); i < s.toRow(); i++) {
        seconds[i] = t[i] - offset;
        end = seconds[i];
      }
    }
    return seconds;
  }

  private static double[] pick(double[] t, int[] kept) {
    double[] result = new double[kept.length];
    for (int i = 0; i < kept.length; i++) {
      result[i] = t[kept[i]];
    }
    return result;
  }

  private static int[] pickInts(int[] rows, int[] kept) {
    int[] result = new int[kept.length];
    for (int i = 0; i < kept.length; i++) {
      result[i] = rows[kept[i]];
    }
    return result;
  }
}
