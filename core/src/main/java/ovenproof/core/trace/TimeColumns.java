package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Unit;
import ovenproof.core.trace.RawTable.StampColumn;
import ovenproof.core.trace.TableLayout.ColumnKind;
import ovenproof.core.trace.TimeAxis.Form;
import ovenproof.core.trace.TimeAxis.Zone;

/**
 * Finds the columns that hold time, and what their numbers mean: stamps first, then counters whose
 * unit the header, a clock beside them, or the size of their steps tells.
 */
final class TimeColumns {

  private static final double DAY = 86_400;

  private final RawTable table;
  private final Metadata metadata;
  private final ReadOptions options;
  private final Set<Integer> used = new HashSet<>();
  private final List<Question> questions = new ArrayList<>();
  private final List<String> explanation = new ArrayList<>();
  private double certainty = 1;

  TimeColumns(RawTable table, Metadata metadata, ReadOptions options) {
    this.table = table;
    this.metadata = metadata;
    this.options = options;
  }

  /**
   * Raw times, one per row, and what they are.
   *
   * @param seconds since 1970, of the day, or elapsed; NaN where a row has no stamp
   * @param used columns that hold time or number the rows
   * @param resolutionSeconds of the stamps
   */
  record Found(
      double[] seconds,
      Form form,
      Zone zone,
      Set<Integer> used,
      List<String> names,
      String description,
      double resolutionSeconds,
      double startEpochSeconds,
      List<Question> questions,
      List<String> explanation,
      double certainty) {}

  Found find() {
    Found wall = wall();
    Found counter = counter(wall);
    if (wall != null && counter != null && isFiner(counter, wall)) {
      return counterWithStart(counter, wall);
    }
    Found found = wall != null ? wall : counter != null ? counter : untimed();
    markCounters(found);
    return found;
  }

  // Stamps

  private @Nullable Found wall() {
    int both = firstStamp(TimeText.Kind.DATE_AND_CLOCK);
    if (both >= 0) {
      return dated(both);
    }
    DateParts.Found parts = new DateParts(table).find();
    if (parts != null) {
      return inParts(parts);
    }
    int date = dateColumn();
    int clock = firstStamp(TimeText.Kind.CLOCK);
    if (clock < 0) {
      clock = compactClockColumn(date);
    }
    if (clock >= 0) {
      applyHalfDays(clock);
    }
    if (date >= 0 && clock >= 0) {
      return dateAndClock(date, clock);
    }
    int duration = firstStamp(TimeText.Kind.DURATION);
    addDays(duration >= 0 ? duration : clock);
    if (duration >= 0) {
      return elapsedStamps(duration);
    }
    DateParts.Found three = clock >= 0 ? null : new DateParts(table).clock();
    if (three != null) {
      return clockInParts(three);
    }
    if (clock >= 0) {
      return startsAtZero(clock) || isNoTimeOfDay(clock) ? elapsedStamps(clock) : timeOfDay(clock);
    }
    return null;
  }

  private static final Set<String> DAYS =
      Set.of("day", "days", "tag", "tage", "jour", "jours", "día", "dia", "giorno", "dag", "dzień");

  /** The number of a day beside its clock. */
  private void addDays(int clock) {
    for (int c = 0; c < table.columns() && clock >= 0; c++) {
      double[] days = table.values()[c];
      boolean named =
          table.kinds().get(c) == ColumnKind.NUMBER && table.headers().get(c).says(DAYS);
      if (named && days.length > 0 && isDayNumber(days)) {
        used.add(c);
        double[] seconds = table.values()[clock];
        for (int i = 0; i < seconds.length; i++) {
          seconds[i] += DAY * (days[i] - days[0]);
        }
      }
    }
  }

  private static boolean isDayNumber(double[] days) {
    boolean grows = days[0] == Math.rint(days[0]) && days[0] >= 0 && days[days.length - 1] < 1000;
    for (int i = 1; i < days.length && grows; i++) {
      grows = days[i] == days[i - 1] || days[i] == days[i - 1] + 1;
    }
    return grows;
  }

  /** AM and PM in a column of their own. */
  private void applyHalfDays(int clock) {
    for (int c = 0; c < table.columns(); c++) {
      List<String> words = table.labels().get(c);
      boolean halves =
          table.kinds().get(c) == ColumnKind.WORDS
              && !words.isEmpty()
              && words.stream().allMatch(w -> w.matches("(?i)[ap]\\.? ?m\\.?"));
      if (halves) {
        used.add(c);
        double[] seconds = table.values()[clock];
        for (int i = 0; i < seconds.length; i++) {
          double code = table.values()[c][i];
          boolean afternoon = !Double.isNaN(code) && words.get((int) code).matches("(?i)p.*");
          double twelve = seconds[i] >= DAY / 2 ? -DAY / 2 : 0;
          seconds[i] += Double.isNaN(code) ? 0 : twelve + (afternoon ? DAY / 2 : 0);
        }
      }
    }
  }

  private Found clockInParts(DateParts.Found parts) {
    used.addAll(parts.columns());
    List<String> names = parts.columns().stream().map(this::label).toList();
    explanation.add("The clock is put together from " + String.join(", ", names) + ".");
    boolean elapsed = parts.seconds()[0] < 60;
    return new Found(
        parts.seconds(),
        elapsed ? Form.ELAPSED : Form.TIME_OF_DAY,
        Zone.UNKNOWN,
        used,
        names,
        "hours, minutes and seconds in parts",
        1,
        startSeconds(),
        questions,
        explanation,
        certainty);
  }

  private int firstStamp(TimeText.Kind kind) {
    int best = -1;
    int bestFilled = 0;
    for (int c = 0; c < table.columns(); c++) {
      StampColumn stamp = table.stamps()[c];
      if (stamp != null && stamp.kind() == kind) {
        int filled = filled(c);
        boolean zoned = best >= 0 && stamp.zoned() && !stamp(best).zoned();
        if (filled > (zoned ? 0.9 : 1.5) * bestFilled) {
          best = c;
          bestFilled = filled;
        }
      }
    }
    return bestFilled > 0.3 * table.rows() || bestFilled > 0 && kind != TimeText.Kind.DATE_AND_CLOCK
        ? best
        : -1;
  }

  /** Rows with a stamp; none when one and the same stands in every row of many. */
  private int filled(int column) {
    int n = 0;
    boolean moves = false;
    double first = Double.NaN;
    for (double v : table.values()[column]) {
      n += Double.isNaN(v) ? 0 : 1;
      first = Double.isNaN(first) ? v : first;
      moves |= !Double.isNaN(v) && v != first;
    }
    boolean both = stamp(column).kind() == TimeText.Kind.DATE_AND_CLOCK;
    return both && n > 20 && !moves ? 0 : n;
  }

  private Found inParts(DateParts.Found parts) {
    used.addAll(parts.columns());
    List<String> names = parts.columns().stream().map(this::label).toList();
    explanation.add("Time is put together from " + String.join(", ", names) + ".");
    return new Found(
        parts.seconds(),
        Form.DATE_AND_TIME,
        Zone.LOCAL,
        used,
        names,
        "date and time in parts",
        parts.resolutionSeconds(),
        Double.NaN,
        questions,
        explanation,
        certainty);
  }

  /** A column of 0 to 999 called ms finishes the stamp before it. */
  private double[] withMilliseconds(double[] seconds) {
    for (int c = 0; c < table.columns(); c++) {
      boolean named =
          table
              .headers()
              .get(c)
              .written()
              .strip()
              .matches("(?i)(ms|msec|millis|millisec(ond)?s?|ms ms)");
      if (named && table.kinds().get(c) == ColumnKind.NUMBER && !used.contains(c)) {
        double[] ms = table.values()[c];
        if (Arrays.stream(ms).allMatch(v -> v >= 0 && v < 1000 && v == Math.rint(v))) {
          used.add(c);
          double[] finer = new double[seconds.length];
          for (int i = 0; i < finer.length; i++) {
            finer[i] = seconds[i] + ms[i] / 1000;
          }
          return finer;
        }
      }
    }
    return seconds;
  }

  /** A column of dates, or of eight digits under a header that says so. */
  private int dateColumn() {
    int stamp = firstStamp(TimeText.Kind.DATE);
    if (stamp >= 0) {
      return stamp;
    }
    int shortDate = shortDateColumn();
    if (shortDate >= 0) {
      return shortDate;
    }
    for (int c = 0; c < table.columns(); c++) {
      if (table.kinds().get(c) == ColumnKind.NUMBER) {
        double[] digits = table.values()[c];
        boolean named = table.headers().get(c).says(HeaderText.DATE);
        double[] full = named ? withCentury(digits) : digits;
        if (isCompactDate(full)) {
          System.arraycopy(full, 0, digits, 0, digits.length);
          toDays(digits);
          return c;
        }
      }
    }
    return -1;
  }

  /** 140326 is the 14th of March 2026, or its year comes first where that alone is a date. */
  private static double[] withCentury(double[] digits) {
    if (Arrays.stream(digits).anyMatch(v -> v < 10_100 || v > 999_999)) {
      return digits;
    }
    double[] dayFirst =
        Arrays.stream(digits)
            .map(
                v ->
                    20_000_000
                        + v % 100 * 10_000
                        + Math.floor(v / 100) % 100 * 100
                        + Math.floor(v / 10_000))
            .toArray();
    return isCompactDate(dayFirst)
        ? dayFirst
        : Arrays.stream(digits).map(v -> 20_000_000 + v).toArray();
  }

  /** 14.03.26 beside another clock is a date, though alone it may be a time of day. */
  private int shortDateColumn() {
    for (int c = 0; c < table.columns(); c++) {
      StampColumn stamp = table.stamps()[c];
      boolean dotted =
          stamp != null
              && stamp.kind() == TimeText.Kind.CLOCK
              && stamp.example().matches("(0?[1-9]|[12]\\d|3[01])\\.(0?[1-9]|1[0-2])\\.\\d\\d");
      int clock = c + 1;
      boolean beside =
          clock < table.columns()
              && table.stamps()[clock] != null
              && stamp(clock).kind() == TimeText.Kind.CLOCK;
      if (dotted && beside) {
        asDates(table.values()[c]);
        table.stamps()[c] = null;
        return c;
      }
    }
    return -1;
  }

  /** Seconds of a day that were day, month and short year. */
  private static void asDates(double[] values) {
    for (int i = 0; i < values.length; i++) {
      if (!Double.isNaN(values[i])) {
        int day = (int) (values[i] / 3600);
        int month = (int) (values[i] / 60) % 60;
        int year = 2000 + (int) (values[i] % 60);
        values[i] = DAY * TimeText.epochDay(year, month, day);
      }
    }
  }

  private static boolean isCompactDate(double[] values) {
    int seen = 0;
    for (double v : values) {
      if (!Double.isNaN(v)) {
        seen++;
        int month = (int) (v / 100 % 100);
        int day = (int) (v % 100);
        if (v != Math.rint(v)
            || v < 19_900_101
            || v > 21_000_101
            || month < 1
            || month > 12
            || day < 1
            || day > 31) {
          return false;
        }
      }
    }
    return seen > 0;
  }

  private static void toDays(double[] values) {
    for (int i = 0; i < values.length; i++) {
      double v = values[i];
      values[i] =
          Double.isNaN(v)
              ? v
              : DAY * TimeText.epochDay((int) (v / 10_000), (int) (v / 100 % 100), (int) (v % 100));
    }
  }

  /** 120310 beside a date is ten past noon. */
  private int compactClockColumn(int date) {
    if (date < 0) {
      return -1;
    }
    for (int c = 0; c < table.columns(); c++) {
      boolean named = table.headers().get(c).saysTime() || c == date + 1;
      if (table.kinds().get(c) == ColumnKind.NUMBER && named && isCompactClock(table.values()[c])) {
        double[] v = table.values()[c];
        for (int i = 0; i < v.length; i++) {
          v[i] = Math.floor(v[i] / 10_000) * 3600 + Math.floor(v[i] / 100 % 100) * 60 + v[i] % 100;
        }
        return c;
      }
    }
    return -1;
  }

  private static boolean isCompactClock(double[] values) {
    double high = 0;
    for (double v : values) {
      if (!Double.isNaN(v)) {
        if (v < 0 || v >= 240_000 || v % 100 >= 60 || v / 100 % 100 >= 60) {
          return false;
        }
        high = Math.max(high, v);
      }
    }
    return high >= 10_000;
  }

  private Found dated(int c) {
    StampColumn stamp = stamp(c);
    used.add(c);
    askOrder(stamp);
    String zone = stamp.zoned() ? ", with its zone" : "";
    explanation.add("Time is date and clock in " + name(c) + zone + ".");
    return found(
        withMilliseconds(table.values()[c].clone()),
        Form.DATE_AND_TIME,
        stamp.zoned() ? Zone.ABSOLUTE : stamp.yearKnown() ? Zone.LOCAL : Zone.UNKNOWN,
        c,
        "date and time",
        resolution(stamp),
        Double.NaN);
  }

  private Found dateAndClock(int date, int clock) {
    StampColumn dateStamp = table.stamps()[date];
    StampColumn clockStamp = table.stamps()[clock];
    used.add(date);
    used.add(clock);
    if (dateStamp != null) {
      askOrder(dateStamp);
    }
    double[] seconds = new double[table.rows()];
    double day = Double.NaN;
    for (int i = 0; i < seconds.length; i++) {
      double d = table.values()[date][i];
      day = Double.isNaN(d) ? day : d; // some write the date once
      seconds[i] = day + table.values()[clock][i];
    }
    explanation.add("Time is the date in " + name(date) + " and the clock in " + name(clock) + ".");
    return new Found(
        withMilliseconds(seconds),
        Form.DATE_AND_TIME,
        Zone.LOCAL,
        used,
        List.of(label(date), label(clock)),
        "date and time in two columns",
        clockStamp == null ? 1 : resolution(clockStamp),
        Double.NaN,
        questions,
        explanation,
        certainty);
  }

  private void askOrder(StampColumn stamp) {
    if (stamp.orderOpen()) {
      List<String> readings = readings(stamp);
      certainty *= 0.8;
      questions.add(
          new Question(
              "date-order",
              "Is " + stamp.example() + " written " + String.join(" or ", readings) + "?",
              readings,
              stamp.orderWhy() + "; durations do not depend on it"));
    } else if (!stamp.orderWhy().isEmpty()) {
      explanation.add("Dates are read " + stamp.order().words() + ": " + stamp.orderWhy() + ".");
    }
  }

  private static List<String> readings(StampColumn stamp) {
    boolean shortYear =
        stamp.example().matches("(1[5-9]|2\\d|3[01])\\D(0\\d|1[0-2])\\D\\d\\d(\\D.*)?");
    List<DateOrder> orders =
        shortYear
            ? List.of(DateOrder.DAY_FIRST, DateOrder.YEAR_FIRST)
            : List.of(DateOrder.DAY_FIRST, DateOrder.MONTH_FIRST);
    List<String> readings = new ArrayList<>(List.of(stamp.order().words()));
    orders.stream().map(DateOrder::words).filter(w -> !readings.contains(w)).forEach(readings::add);
    return readings;
  }

  /** A clock that starts at zero, or whose header says so, counts from the start. */
  private boolean startsAtZero(int c) {
    HeaderText header = table.headers().get(c);
    if (header.says(Set.of("elapsed", "duration", "runtime", "laufzeit", "relative", "uptime"))) {
      return true;
    }
    double[] v = table.values()[c];
    double first = Arrays.stream(v).filter(x -> !Double.isNaN(x)).findFirst().orElse(DAY);
    boolean dateBeside = metadata.start() != null && metadata.start().contains(":");
    double step = medianPositiveStep(v);
    return first <= Math.max(1, 1.5 * step)
        && (!header.says(Set.of("clock", "uhrzeit")) || dateBeside);
  }

  /** 75:10, or minutes and seconds with tenths. */
  private boolean isNoTimeOfDay(int c) {
    boolean minutes = stamp(c).clockParts() == 2 && stamp(c).fraction();
    return minutes || Arrays.stream(table.values()[c]).anyMatch(v -> v >= DAY + 3600);
  }

  private Found elapsedStamps(int c) {
    used.add(c);
    StampColumn stamp = stamp(c);
    double[] seconds = table.values()[c].clone();
    if (stamp.clockParts() == 2 && !stamp.fraction() && minutesAndSeconds(seconds)) {
      for (int i = 0; i < seconds.length; i++) {
        seconds[i] /= 60;
      }
      explanation.add("Time in " + name(c) + " is elapsed minutes and seconds.");
      return elapsed(c, seconds, "elapsed, m:ss", 1);
    }
    explanation.add("Time in " + name(c) + " is elapsed time.");
    return elapsed(c, unwrapped(seconds, 3600), "elapsed", resolution(stamp));
  }

  /** Minutes that begin at 0 again with each hour, and counters that overflow, go on. */
  private static double[] unwrapped(double[] values, double span) {
    double add = 0;
    double[] result = values.clone();
    for (int i = 1; i < values.length; i++) {
      boolean turns =
          values[i - 1] > 0.97 * span && values[i - 1] < span && values[i] < 0.03 * span;
      add += turns ? span : 0;
      result[i] = values[i] + add;
    }
    return result;
  }

  /** 0:05, 0:10 with rows of seconds: hours would mean a record of days. */
  private static boolean minutesAndSeconds(double[] asHoursAndMinutes) {
    double last = 0;
    for (double v : asHoursAndMinutes) {
      last = Double.isNaN(v) ? last : Math.max(last, v);
    }
    return asHoursAndMinutes.length > 20 || last > DAY;
  }

  private Found elapsed(int c, double[] seconds, String description, double resolution) {
    return found(seconds, Form.ELAPSED, Zone.UNKNOWN, c, description, resolution, startSeconds());
  }

  private Found timeOfDay(int c) {
    used.add(c);
    StampColumn stamp = stamp(c);
    double[] seconds = table.values()[c].clone();
    explanation.add(
        "Time in "
            + name(c)
            + " is the time of day"
            + (stamp.halfDay() ? " with AM and PM" : "")
            + ".");
    double start = startSeconds();
    double day = Double.isNaN(start) ? Double.NaN : Math.floor(start / DAY) * DAY;
    if (Double.isNaN(day)) {
      explanation.add("The file holds no date.");
    }
    return found(seconds, Form.TIME_OF_DAY, Zone.UNKNOWN, c, "time of day", resolution(stamp), day);
  }

  /** Start of the record from the lines before the table, NaN when they do not tell. */
  private double startSeconds() {
    String start = metadata.start();
    if (start == null) {
      return Double.NaN;
    }
    TimeText time = new TimeText();
    TimeText.Kind kind = time.parse(start);
    if (kind == TimeText.Kind.NONE) {
      return Double.NaN;
    }
    StampColumn order = StampSearch.of(List.of(start), options);
    DateOrder chosen = order == null ? DateOrder.DAY_FIRST : order.order();
    time.parse(start);
    return time.epochDay(chosen) * DAY + time.clockSeconds - time.zoneMinutes * 60.0;
  }

  // Counters

  /** What a column of numbers would be as time. */
  private record Guess(
      int column,
      double score,
      double unitSeconds,
      Form form,
      String words,
      boolean sure,
      @Nullable EpochScale epoch) {

    Guess(int column, double score, double unitSeconds, Form form, String words, boolean sure) {
      this(column, score, unitSeconds, form, words, sure, null);
    }

    static Guess of(int column, EpochScale scale) {
      return new Guess(column, 12, scale.unitSeconds, Form.EPOCH, scale.words, true, scale);
    }
  }

  private @Nullable Found counter(@Nullable Found wall) {
    Guess best = null;
    for (int c = 0; c < table.columns(); c++) {
      if (table.kinds().get(c) == ColumnKind.NUMBER && !used.contains(c)) {
        Guess guess = guess(c, wall);
        if (guess != null && (best == null || guess.score > best.score)) {
          best = guess;
        }
      }
    }
    return best == null ? null : counted(best);
  }

  private @Nullable Guess guess(int c, @Nullable Found wall) {
    double[] v = table.values()[c];
    HeaderText header = table.headers().get(c);
    Run run = Run.of(v);
    if (run.filled < 0.9 * v.length || run.filled < 2 || run.risingShare < 0.9 || run.step <= 0) {
      return null;
    }
    UnitText unit = header.unit() != null ? header.unit() : table.suffixes()[c];
    if (unit != null && !unit.isTime()) {
      return null;
    }
    double median = v[v.length / 2];
    boolean named = header.saysTime() || header.says(HeaderText.DATE);
    Guess epoch = epoch(c, median, run, named, unit);
    if (epoch != null) {
      return epoch;
    }
    if (unit != null) {
      String word = "in " + unit.unit().symbol() + ", as its header says";
      return new Guess(c, 10 + (named ? 1 : 0), unit.contract(1), Form.ELAPSED, word, true);
    }
    boolean isFirst = c == firstNumeric();
    boolean unnamed = header.written().isBlank() && !anyNamed();
    boolean inputs = header.says(HeaderText.TEMPERATURE) || header.isInputName();
    if (header.saysIndex() && !header.says(Set.of("time", "seconds", "sec", "ms", "millis"))) {
      return null;
    }
    boolean plausible =
        named
            || (unnamed && isFirst && run.regular && !looksLikeReading(v))
            || (isFirst
                && run.regular
                && run.step != 1
                && !inputs
                && run.risingShare > 0.99
                && !header.says(HeaderText.POWER)
                && !header.says(HeaderText.ENERGY));
    return plausible ? byStep(c, run, named, wall) : null;
  }

  /** Curves rise in uneven steps of fractions; counters do not. */
  private static boolean looksLikeReading(double[] v) {
    Run run = Run.of(v);
    return run.step < 1 && !run.constant;
  }

  private boolean anyNamed() {
    return table.headers().stream().anyMatch(h -> !h.written().isBlank());
  }

  private int firstNumeric() {
    return table.kinds().indexOf(ColumnKind.NUMBER);
  }

  private @Nullable Guess epoch(
      int c, double median, Run run, boolean named, @Nullable UnitText unit) {
    EpochScale scale = EpochScale.of(median);
    if (scale == null) {
      return null;
    }
    if (scale.inDays()) {
      boolean fine = run.step < 0.5 && (named || c == 0);
      boolean seconds = unit != null && unit.unit() == Unit.SECOND;
      return fine && !seconds ? Guess.of(c, scale) : null;
    }
    boolean since1970 = scale.seconds(0) == 0;
    return since1970 && !named && run.risingShare < 0.98 ? null : Guess.of(c, scale);
  }

  private Guess byStep(int c, Run run, boolean named, @Nullable Found wall) {
    double score = (named ? 6 : 3) + (c == 0 ? 1 : 0);
    Unit given = options.counted();
    if (given != null) {
      double seconds = Quantity.of(1, given).contract();
      return new Guess(c, score, seconds, Form.COUNTER, given.symbol() + ", as given", true);
    }
    double ratio = wallRatio(c, wall);
    if (!Double.isNaN(ratio)) {
      return new Guess(
          c, score, ratio, Form.COUNTER, word(ratio) + ", by the clock beside it", true);
    }
    Double interval = metadata.intervalSeconds();
    if (interval != null && near(run.step, interval, 1)) {
      return new Guess(c, score, 1, Form.COUNTER, "seconds, by the interval the file names", true);
    }
    double step = run.step;
    boolean whole = run.whole;
    if (whole && step >= 50_000) {
      return new Guess(
          c, score, 1e-6, Form.COUNTER, "microseconds, by the size of its steps", true);
    }
    if (whole && step >= 90) {
      return new Guess(
          c, score, 1e-3, Form.COUNTER, "milliseconds, by the size of its steps", true);
    }
    if (!whole && step < 2e-4 && nearWhole(step * DAY)) {
      return new Guess(c, score, DAY, Form.COUNTER, "days, by the size of its steps", true);
    }
    if (!whole && step < 0.02 && nearWhole(step * 3600) && !nice(step)) {
      return new Guess(c, score, 3600, Form.COUNTER, "hours, by the size of its steps", true);
    }
    if (!whole && step < 1 && nearWhole(step * 60) && !nice(step)) {
      return new Guess(c, score, 60, Form.COUNTER, "minutes, by the size of its steps", true);
    }
    if (fastestRise(c) > 6 && step >= 0.5) {
      return new Guess(
          c,
          score,
          60,
          Form.COUNTER,
          "minutes: in seconds the temperatures would rise faster than any oven's",
          false);
    }
    return new Guess(c, score, 1, Form.COUNTER, "seconds", whole && step > 1 || !whole);
  }

  private static String word(double unitSeconds) {
    return unitSeconds == 1
        ? "seconds"
        : unitSeconds == 60
            ? "minutes"
            : unitSeconds == 3600 ? "hours" : unitSeconds == 1e-3 ? "milliseconds" : "microseconds";
  }

  /** Seconds per count when a clock stands beside the counter; NaN when it fits no unit. */
  private double wallRatio(int c, @Nullable Found wall) {
    if (wall == null) {
      return Double.NaN;
    }
    double[] v = table.values()[c];
    int last = v.length - 1;
    double ratio = (wall.seconds[last] - wall.seconds[0]) / (v[last] - v[0]);
    for (double unit : new double[] {1, 60, 3600, 1e-3, 1e-6}) {
      if (near(ratio, unit, 3)) {
        return unit;
      }
    }
    return Double.NaN;
  }

  private static boolean near(double value, double target, double percent) {
    return Math.abs(value - target) <= target * percent / 100;
  }

  private static boolean nearWhole(double value) {
    return value > 0.9
        && Math.abs(value - Math.rint(value)) < 0.03 * Math.max(1, Math.rint(value) / 10);
  }

  /** 0.5, 0.25, 0.1, 0.2, 0.05: steps that people choose in seconds. */
  private static boolean nice(double step) {
    double thousand = step * 1000;
    double rounded = Math.rint(thousand);
    return Math.abs(thousand - rounded) < 1e-6 * Math.max(1, rounded)
        && (rounded % 5 == 0 || rounded < 5);
  }

  /** Fastest sustained rise of any other column per count, over a tenth of its range. */
  private double fastestRise(int time) {
    double fastest = 0;
    for (int c = 0; c < table.columns(); c++) {
      HeaderText h = table.headers().get(c);
      boolean temperature =
          c != time
              && table.kinds().get(c) == ColumnKind.NUMBER
              && !h.says(HeaderText.SET_POINT)
              && !h.says(HeaderText.POWER)
              && !h.says(HeaderText.DUTY)
              && !h.says(HeaderText.SWITCH)
              && !h.says(HeaderText.ENERGY)
              && !h.says(HeaderText.CURRENT)
              && !h.says(HeaderText.VOLTAGE)
              && (h.unit() == null || h.unit().isTemperature());
      if (temperature) {
        fastest = Math.max(fastest, riseRate(table.values()[time], table.values()[c]));
      }
    }
    return fastest;
  }

  private static double riseRate(double[] t, double[] v) {
    double low = Double.NaN;
    double high = Double.NaN;
    double start = Double.NaN;
    double end = Double.NaN;
    for (double x : v) {
      low = Double.isNaN(low) || x < low ? x : low;
      high = Double.isNaN(high) || x > high ? x : high;
    }
    if (!(high - low > 60) || high > 1500) {
      return 0;
    }
    for (int i = 0; i < v.length; i++) {
      if (Double.isNaN(start) && v[i] > low + 0.2 * (high - low)) {
        start = t[i];
      }
      if (Double.isNaN(end) && v[i] > low + 0.8 * (high - low)) {
        end = t[i];
      }
    }
    return end > start ? 0.6 * (high - low) / (end - start) : 0;
  }

  private Found counted(Guess guess) {
    used.add(guess.column);
    double[] v = table.values()[guess.column];
    double[] seconds = new double[v.length];
    EpochScale epoch = guess.epoch;
    v = epoch == null ? overflown(v) : v;
    for (int i = 0; i < v.length; i++) {
      seconds[i] = epoch == null ? v[i] * guess.unitSeconds : epoch.seconds(v[i]);
    }
    explanation.add(
        "Time in "
            + name(guess.column)
            + " is "
            + (guess.form == Form.ELAPSED ? "elapsed, " : "")
            + guess.words
            + ".");
    if (!guess.sure) {
      certainty *= 0.8;
      boolean minutes = guess.unitSeconds == 60;
      questions.add(
          new Question(
              "time-unit",
              "What does " + name(guess.column) + " count?",
              minutes ? List.of("minutes", "seconds") : List.of("seconds", "minutes", "rows"),
              minutes ? guess.words : "no unit is written; seconds are usual"));
    }
    Zone zone = epoch == null ? Zone.UNKNOWN : epoch.zone();
    double resolution = Math.max(1e-9, guess.unitSeconds);
    return found(
        seconds,
        guess.form,
        zone,
        guess.column,
        guess.words,
        guess.unitSeconds >= 60 ? 0 : resolution,
        guess.form == Form.EPOCH ? Double.NaN : startSeconds());
  }

  /** Counters of 16 and of 32 bits begin at 0 again when they are full. */
  private double[] overflown(double[] counts) {
    double step = medianPositiveStep(counts);
    double[] result = counts.clone();
    double add = 0;
    for (int i = 1; i < counts.length; i++) {
      for (double full : new double[] {65_536, 4_294_967_296.0}) {
        double over = counts[i] + full - counts[i - 1];
        boolean falls = counts[i] < counts[i - 1] && counts[i - 1] < full;
        if (falls && over > 0 && over <= 3 * step && step < 0.1 * full) {
          add += full;
          explanation.add("The counter was full and began at 0 again; times go on.");
        }
      }
      result[i] = counts[i] + add;
    }
    return result;
  }

  // Both, or none

  /** A clock that repeats its stamps is coarser than a counter that never does. */
  private static boolean isFiner(Found counter, Found wall) {
    return repeats(wall.seconds) > 0.1 && repeats(counter.seconds) < 0.02
        || wall.form == Form.ELAPSED && wall.resolutionSeconds > 30;
  }

  private static double repeats(double[] seconds) {
    int n = 0;
    for (int i = 1; i < seconds.length; i++) {
      n += seconds[i] == seconds[i - 1] ? 1 : 0;
    }
    return seconds.length < 2 ? 0 : (double) n / (seconds.length - 1);
  }

  private Found counterWithStart(Found counter, Found wall) {
    double start = wall.form == Form.DATE_AND_TIME ? wall.seconds[0] : wall.startEpochSeconds;
    explanation.add("The clock repeats its stamps; the counter beside it is finer.");
    markCounters(counter);
    return new Found(
        counter.seconds,
        Form.ELAPSED,
        wall.zone,
        used,
        counter.names,
        counter.description + ", start by the clock",
        counter.resolutionSeconds,
        start,
        questions,
        explanation,
        certainty);
  }

  private Found untimed() {
    Double interval =
        options.intervalSeconds() != null ? options.intervalSeconds() : metadata.intervalSeconds();
    double step = interval == null ? 1 : interval;
    double[] seconds = new double[table.rows()];
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] = i * step;
    }
    markCounters(null);
    if (interval == null) {
      certainty *= 0.5;
      questions.add(
          new Question(
              "interval",
              "How many seconds lie between two rows?",
              List.of("not known; rows are counted as if 1 s apart"),
              "the file holds no time and names no interval; give it with --interval 5s"));
      explanation.add("The file holds no times.");
    } else {
      explanation.add(
          "The file holds no times; rows are "
              + TraceMeasures.digits(step, 3).replaceAll("\\.?0+$", "")
              + " s apart, "
              + (options.intervalSeconds() != null
                  ? "as given."
                  : "as the lines before the table say."));
    }
    return new Found(
        seconds,
        interval == null ? Form.NONE : Form.INTERVAL,
        Zone.UNKNOWN,
        used,
        List.of(),
        interval == null ? "no times" : "rows " + step + " s apart",
        0,
        startSeconds(),
        questions,
        explanation,
        certainty);
  }

  /** Further times and running numbers are no channels. */
  private void markCounters(@Nullable Found chosen) {
    for (int c = 0; c < table.columns(); c++) {
      if (used.contains(c)) {
        continue;
      }
      HeaderText header = table.headers().get(c);
      boolean time = table.kinds().get(c) == ColumnKind.TIME;
      boolean number = table.kinds().get(c) == ColumnKind.NUMBER;
      Run run = number ? Run.of(table.values()[c]) : Run.NONE;
      boolean rising = run.filled > 1 && run.risingShare > 0.9;
      boolean timeUnit = header.unit() != null && header.unit().isTime();
      boolean index =
          rising
              && run.whole
              && (header.saysIndex()
                  || (header.written().isBlank() && run.constant && run.step == 1)
                  || numbersRows(c, header, run));
      boolean otherTime =
          rising
              && (timeUnit || header.saysTime())
              && chosen != null
              && (header.unit() == null || timeUnit);
      boolean again = number && chosen != null && repeatsTime(c);
      boolean lone = number && table.rows() < 3 && header.saysTime() && table.columns() > 1;
      if (time || index || otherTime || again || lone) {
        used.add(c);
      }
    }
  }

  /** The time written once more, as for each of several traces. */
  private boolean repeatsTime(int c) {
    double[] v = table.values()[c];
    return v.length > 3
        && used.stream()
            .anyMatch(
                u -> u != c && table.stamps()[u] == null && Arrays.equals(table.values()[u], v))
        && v[0] != v[v.length - 1];
  }

  /** 1, 2, 3 … under any name but a temperature's. */
  private boolean numbersRows(int c, HeaderText header, Run run) {
    double first = table.values()[c][0];
    return run.constant
        && run.step == 1
        && run.filled == table.rows()
        && run.filled > 20
        && (first == 0 || first == 1)
        && header.unit() == null
        && (c == 0 && !used.isEmpty() && !used.contains(0)
            || !header.says(HeaderText.TEMPERATURE) && !header.isInputName());
  }

  /** How a column of numbers runs. */
  private record Run(
      int filled,
      double risingShare,
      double step,
      boolean whole,
      boolean constant,
      boolean regular) {
    static final Run NONE = new Run(0, 0, 0, false, false, false);

    /** A look at a thousand neighbours tells most readings from a counter. */
    private static double sampledShare(double[] v) {
      int stride = v.length / 1000;
      int steps = 0;
      int notFalling = 0;
      for (int i = 1; i < v.length; i += stride) {
        if (!Double.isNaN(v[i]) && !Double.isNaN(v[i - 1])) {
          steps++;
          notFalling += v[i] >= v[i - 1] ? 1 : 0;
        }
      }
      return steps == 0 ? 1 : (double) notFalling / steps;
    }

    static Run of(double[] v) {
      if (v.length > 5000) {
        double share = sampledShare(v);
        if (share < 0.8) {
          return new Run(v.length, share, 0, false, false, false);
        }
      }
      int filled = 0;
      int rising = 0;
      int steps = 0;
      boolean whole = true;
      double last = Double.NaN;
      double[] differences = new double[Math.max(0, v.length - 1)];
      for (double x : v) {
        if (Double.isNaN(x)) {
          continue;
        }
        filled++;
        whole &= x == Math.rint(x);
        if (!Double.isNaN(last)) {
          differences[steps++] = x - last;
          rising += x > last ? 1 : 0;
        }
        last = x;
      }
      if (steps == 0) {
        return new Run(filled, 0, 0, whole, false, false);
      }
      double[] sorted = Arrays.copyOf(differences, steps);
      Arrays.sort(sorted);
      double median = Medians.ofSorted(sorted, 0, steps);
      double low = sorted[(int) (0.1 * (steps - 1))];
      double high = sorted[(int) (0.9 * (steps - 1))];
      boolean regular = high - low <= 0.6 * Math.abs(median);
      boolean constant = high - low <= 1e-6 * Math.abs(median);
      // Fine stamps that repeat (rounded) still rise.
      double share = (double) rising / steps;
      if (median == 0 && high > 0 && low >= 0) {
        share = 1;
        median = (v[v.length - 1] - v[0]) / steps;
      }
      return new Run(filled, share, median, whole, constant, regular);
    }
  }

  private static double medianPositiveStep(double[] v) {
    double step = Run.of(v).step;
    return step > 0 ? step : 1;
  }

  private Found found(
      double[] seconds,
      Form form,
      Zone zone,
      int column,
      String description,
      double resolution,
      double start) {
    return new Found(
        seconds,
        form,
        zone,
        used,
        List.of(label(column)),
        description,
        resolution,
        start,
        questions,
        explanation,
        certainty);
  }

  private StampColumn stamp(int c) {
    StampColumn stamp = table.stamps()[c];
    if (stamp == null) {
      throw new IllegalStateException("column " + c + " holds no stamps");
    }
    return stamp;
  }

  private static double resolution(StampColumn stamp) {
    return stamp.fraction() ? 1e-3 : stamp.clockParts() == 2 ? 60 : 1;
  }

  private String label(int c) {
    String name = table.headers().get(c).name();
    return name.isBlank() ? "column " + (c + 1) : name;
  }

  private String name(int c) {
    return String.format(Locale.ROOT, "“%s”", label(c));
  }
}
