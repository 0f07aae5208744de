package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import ovenproof.core.trace.TableLayout.ColumnKind;

/**
 * Dates and clocks whose parts stand in columns of their own (year, month, day, hour, minute), as a
 * year with the number of the day, or as digits without marks (202603140930).
 */
final class DateParts {

  private static final double DAY = 86_400;

  private static final List<Set<String>> NAMES =
      List.of(
          Set.of(
              "year", "yr", "yy", "yyyy", "jahr", "año", "annee", "année", "ano", "anno", "jaar"),
          Set.of("month", "mo", "mon", "mm", "monat", "mes", "mois", "mese", "mês", "maand"),
          Set.of("day", "dy", "dd", "dom", "tag", "dia", "día", "jour", "giorno", "dag"),
          Set.of("hour", "hr", "hh", "hours", "stunde", "hora", "heure", "ora", "uur", "timme"),
          Set.of("minute", "min", "mn", "mi", "minuto", "minut"),
          Set.of("second", "sec", "ss", "seconds", "sekunde", "segundo", "seconde", "sekund"));

  private static final Set<String> DAY_OF_YEAR = Set.of("doy", "jday", "julian", "dayofyear", "jd");

  private final RawTable table;

  DateParts(RawTable table) {
    this.table = table;
  }

  /**
   * A time put together from numbers.
   *
   * @param seconds since 1970, local, one per row
   * @param columns that it was read from
   * @param resolutionSeconds of the parts
   */
  record Found(double[] seconds, List<Integer> columns, double resolutionSeconds) {}

  /** Null when no columns of numbers hold a date and its clock. */
  @Nullable Found find() {
    if (table.rows() == 0) {
      return null;
    }
    Found parts = parts();
    if (parts != null) {
      return parts;
    }
    Found ordinal = dayOfYear();
    return ordinal != null ? ordinal : digits();
  }

  private @Nullable Found parts() {
    int[] columns = new int[6];
    Arrays.fill(columns, -1);
    for (int c = 0; c < table.columns(); c++) {
      for (int part = 0; part < 6; part++) {
        boolean next = part == 0 || columns[part - 1] >= 0;
        if (columns[part] < 0 && next && isPart(c, part) && !taken(columns, c)) {
          columns[part] = c;
          break;
        }
      }
    }
    if (columns[0] < 0 || columns[1] < 0 || columns[2] < 0 || columns[3] < 0) {
      return null;
    }
    double[] seconds = new double[table.rows()];
    for (int r = 0; r < seconds.length; r++) {
      double date = date(value(columns[0], r), value(columns[1], r), value(columns[2], r));
      seconds[r] =
          date + 3600 * value(columns[3], r) + 60 * value(columns[4], r) + value(columns[5], r);
    }
    List<Integer> used = new ArrayList<>();
    Arrays.stream(columns).filter(c -> c >= 0).forEach(used::add);
    double resolution = columns[5] >= 0 ? 1 : columns[4] >= 0 ? 60 : 3600;
    return new Found(seconds, used, resolution);
  }

  /** Hour, minute and second in columns of their own, without a date. */
  @Nullable Found clock() {
    int hour = -1;
    int minute = -1;
    int second = -1;
    for (int c = 0; c < table.columns(); c++) {
      hour = hour < 0 && isPart(c, 3) ? c : hour;
      minute = minute < 0 && hour >= 0 && c > hour && isMinute(c) ? c : minute;
      second = second < 0 && minute >= 0 && c > minute && isPart(c, 5) ? c : second;
    }
    if (table.rows() == 0 || minute < 0 || second < 0) {
      return null;
    }
    double[] seconds = new double[table.rows()];
    for (int r = 0; r < seconds.length; r++) {
      seconds[r] = 3600 * value(hour, r) + 60 * value(minute, r) + value(second, r);
    }
    return new Found(seconds, List.of(hour, minute, second), 1);
  }

  /** Behind an hour mm are minutes, behind a year they are months. */
  private boolean isMinute(int c) {
    return isPart(c, 4)
        || table.headers().get(c).written().strip().equalsIgnoreCase("mm")
            && Arrays.stream(table.values()[c]).allMatch(v -> Double.isNaN(v) || v >= 0 && v < 60);
  }

  private static boolean taken(int[] columns, int c) {
    return Arrays.stream(columns).anyMatch(taken -> taken == c);
  }

  private static final double[] LOWEST = {0, 1, 1, 0, 0, 0};
  private static final double[] HIGHEST = {2200, 12, 31, 24, 59, 60};

  private boolean isPart(int c, int part) {
    String written = table.headers().get(c).written().toLowerCase(Locale.ROOT);
    boolean named =
        Arrays.stream(written.split("[^\\p{L}]+")).anyMatch(NAMES.get(part)::contains)
            && !written.matches(".*(temp|avg|max|min_|_min).*");
    return named
        && table.kinds().get(c) == ColumnKind.NUMBER
        && Arrays.stream(table.values()[c])
            .allMatch(
                v -> Double.isNaN(v) || v >= LOWEST[part] && v <= HIGHEST[part] && whole(v, part));
  }

  private static boolean whole(double v, int part) {
    return part == 5 || v == Math.rint(v);
  }

  private double value(int column, int row) {
    return column < 0 ? 0 : table.values()[column][row];
  }

  private static double date(double year, double month, double day) {
    if (Double.isNaN(year + month + day)) {
      return Double.NaN;
    }
    int y = (int) year + (year < 100 ? 2000 : 0);
    return DAY * TimeText.epochDay(y, (int) month, (int) day);
  }

  /** Year, day of the year, and the clock as 930 or in a column of stamps. */
  private @Nullable Found dayOfYear() {
    int year = -1;
    int day = -1;
    int clock = -1;
    for (int c = 0; c < table.columns(); c++) {
      boolean number = table.kinds().get(c) == ColumnKind.NUMBER;
      HeaderText header = table.headers().get(c);
      year = year < 0 && number && isPart(c, 0) && value(c, 0) > 1950 ? c : year;
      day = day < 0 && number && header.says(DAY_OF_YEAR) ? c : day;
      boolean hours = number && c > day && day >= 0 && c != day && isHundreds(c);
      clock = clock < 0 && hours && (header.saysTime() || c == day + 1) ? c : clock;
    }
    if (year < 0 || day < 0) {
      return null;
    }
    double[] seconds = new double[table.rows()];
    for (int r = 0; r < seconds.length; r++) {
      double hundreds = value(clock, r);
      double first = date(value(year, r), 1, 1);
      seconds[r] =
          first
              + DAY * (value(day, r) - 1)
              + Math.floor(hundreds / 100) * 3600
              + hundreds % 100 * 60;
    }
    List<Integer> used = new ArrayList<>(List.of(year, day));
    if (clock >= 0) {
      used.add(clock);
    }
    return new Found(seconds, used, 60);
  }

  private boolean isHundreds(int c) {
    return Arrays.stream(table.values()[c])
        .allMatch(v -> Double.isNaN(v) || v >= 0 && v <= 2400 && v % 100 < 60 && v == Math.rint(v));
  }

  /** 202603140930 and 20260314093000: year to minute or second in one number. */
  private @Nullable Found digits() {
    for (int c = 0; c < table.columns(); c++) {
      if (table.kinds().get(c) == ColumnKind.NUMBER) {
        double[] values = table.values()[c];
        boolean toSecond = values[0] > 1.9e13 && values[0] < 2.2e13;
        boolean inReach = toSecond || values[0] > 1.9e11 && values[0] < 2.2e11;
        double perMinute = toSecond ? 100 : 1;
        if (inReach && Arrays.stream(values).allMatch(v -> isDigits(v, perMinute))) {
          double[] seconds = Arrays.stream(values).map(v -> ofDigits(v, perMinute)).toArray();
          return new Found(seconds, List.of(c), toSecond ? 1 : 60);
        }
      }
    }
    return null;
  }

  private static boolean isDigits(double value, double perMinute) {
    double v = Math.floor(value / perMinute);
    return Double.isNaN(v)
        || value % perMinute <= 60
            && v % 100 < 60
            && Math.floor(v / 100) % 100 <= 24
            && Math.floor(v / 1e4) % 100 >= 1
            && Math.floor(v / 1e4) % 100 <= 31
            && Math.floor(v / 1e6) % 100 >= 1
            && Math.floor(v / 1e6) % 100 <= 12;
  }

  private static double ofDigits(double value, double perMinute) {
    double v = Math.floor(value / perMinute);
    return date(Math.floor(v / 1e8), Math.floor(v / 1e6) % 100, Math.floor(v / 1e4) % 100)
        + Math.floor(v / 100) % 100 * 3600
        + v % 100 * 60
        + value % perMinute;
  }
}
