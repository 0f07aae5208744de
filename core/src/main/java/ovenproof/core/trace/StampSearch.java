package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.core.trace.RawTable.StampColumn;

/** Learns from samples what the stamps of a column are, and in which order open dates stand. */
final class StampSearch {

  private StampSearch() {}

  /** Null when none of the samples is a stamp. */
  static @Nullable StampColumn of(List<String> samples, ReadOptions options) {
    TimeText time = new TimeText();
    int[] kinds = new int[TimeText.Kind.values().length];
    List<int[]> open = new ArrayList<>();
    StampColumn last = null;
    boolean orderOpen = false;
    boolean shortYears = true;
    boolean fraction = false;
    boolean halfDay = false;
    boolean zoned = false;
    int parts = 0;
    String example = "";
    boolean yearKnown = true;
    for (String sample : samples) {
      TimeText.Kind kind = time.parse(sample);
      if (kind == TimeText.Kind.NONE) {
        continue;
      }
      kinds[kind.ordinal()]++;
      example = example.isEmpty() ? sample : example;
      fraction |= time.fraction;
      halfDay |= time.halfDay;
      zoned |= time.hasZone;
      parts = Math.max(parts, time.clockParts);
      yearKnown &= time.yearKnown;
      if (time.orderOpen) {
        orderOpen = true;
        shortYears &= time.shortYear;
        open.add(new int[] {time.month, time.day, time.year});
      }
    }
    TimeText.Kind kind = most(kinds);
    if (kind == TimeText.Kind.NONE) {
      return last;
    }
    Order order = orderOpen ? order(open, example, halfDay, options, shortYears) : Order.WRITTEN;
    return new StampColumn(
        kind,
        order.order,
        order.why,
        order.open,
        zoned,
        yearKnown,
        parts,
        fraction,
        halfDay,
        example);
  }

  private static TimeText.Kind most(int[] kinds) {
    int best = 0;
    int all = 0;
    for (int k = 1; k < kinds.length; k++) {
      best = kinds[k] > kinds[best] || best == 0 ? k : best;
      all += kinds[k];
    }
    if (all == 0) {
      return TimeText.Kind.NONE;
    }
    boolean durations = kinds[TimeText.Kind.DURATION.ordinal()] > 0;
    TimeText.Kind kind = TimeText.Kind.values()[best];
    return kind == TimeText.Kind.CLOCK && durations ? TimeText.Kind.DURATION : kind;
  }

  private record Order(DateOrder order, String why, boolean open) {
    static final Order WRITTEN = new Order(DateOrder.DAY_FIRST, "", false);
  }

  private static Order order(
      List<int[]> dates, String example, boolean halfDay, ReadOptions options, boolean shortYears) {
    Order yearFirst = shortYears ? yearFirst(dates, example, options) : null;
    if (yearFirst != null) {
      return yearFirst;
    }
    int first = dates.stream().mapToInt(d -> d[0]).max().orElse(0);
    int second = dates.stream().mapToInt(d -> d[1]).max().orElse(0);
    if (first > 12) {
      return new Order(DateOrder.DAY_FIRST, "a first number above 12", false);
    }
    if (second > 12) {
      return new Order(DateOrder.MONTH_FIRST, "a second number above 12", false);
    }
    if (options.dateOrder() != null) {
      return new Order(options.dateOrder(), "as given", false);
    }
    if (dates.stream().allMatch(d -> d[0] == d[1])) {
      return new Order(DateOrder.DAY_FIRST, "day and month are equal", false);
    }
    long spanDayFirst = span(dates, DateOrder.DAY_FIRST);
    long spanMonthFirst = span(dates, DateOrder.MONTH_FIRST);
    if (spanDayFirst != spanMonthFirst) {
      boolean dayFirst = spanDayFirst < spanMonthFirst;
      return new Order(
          dayFirst ? DateOrder.DAY_FIRST : DateOrder.MONTH_FIRST,
          "the record then covers "
              + Math.min(spanDayFirst, spanMonthFirst)
              + " day(s) instead of "
              + Math.max(spanDayFirst, spanMonthFirst),
          false);
    }
    if (example.matches("\\d+\\.\\d+\\.\\d+.*")) {
      return new Order(DateOrder.DAY_FIRST, "dates with points are written day first", false);
    }
    if (halfDay) {
      return new Order(DateOrder.MONTH_FIRST, "clocks with AM and PM mostly go with it", true);
    }
    boolean unpadded = example.matches("[1-9][/-].*|\\d\\d[/-]\\d[/-].*");
    return unpadded
        ? new Order(DateOrder.MONTH_FIRST, "unpadded numbers mostly go with it", true)
        : new Order(DateOrder.DAY_FIRST, "nothing in the file tells", true);
  }

  /**
   * 26-11-25 may begin with the year: when that is written with dashes or points like an ISO date,
   * when only the last number changes, or when somebody says so.
   */
  /** Dates with points begin with the day wherever they are written. */
  private static final String DOTTED = "\\d\\d\\.\\d\\d\\.\\d\\d.*";

  private static @Nullable Order yearFirst(List<int[]> dates, String example, ReadOptions options) {
    boolean possible =
        dates.stream().allMatch(d -> d[0] >= 15 && d[1] <= 12 && d[2] > 2000 && d[2] <= 2031);
    if (options.dateOrder() != null) {
      return options.dateOrder() == DateOrder.YEAR_FIRST && possible
          ? new Order(DateOrder.YEAR_FIRST, "as given", false)
          : null;
    }
    if (!possible || example.matches(DOTTED)) {
      return null;
    }
    boolean lastMoves = dates.stream().mapToInt(d -> d[2]).distinct().count() > 1;
    boolean firstMoves = dates.stream().mapToInt(d -> d[0]).distinct().count() > 1;
    if (lastMoves != firstMoves) {
      return lastMoves
          ? new Order(DateOrder.YEAR_FIRST, "the last number changes within the record", false)
          : null;
    }
    return example.matches("\\d\\d-\\d\\d-\\d\\d.*")
        ? new Order(
            DateOrder.YEAR_FIRST, "short dates with dashes mostly begin with the year", true)
        : new Order(DateOrder.DAY_FIRST, "nothing in the file tells", true);
  }

  private static long span(List<int[]> dates, DateOrder order) {
    long low = Long.MAX_VALUE;
    long high = Long.MIN_VALUE;
    for (int[] d : dates) {
      long day =
          order == DateOrder.DAY_FIRST
              ? TimeText.epochDay(d[2], d[1], d[0])
              : TimeText.epochDay(d[2], d[0], d[1]);
      low = Math.min(low, day);
      high = Math.max(high, day);
    }
    return high - low + 1;
  }
}
