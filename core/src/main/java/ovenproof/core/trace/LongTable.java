package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import ovenproof.core.trace.RawTable.StampColumn;
import ovenproof.core.trace.TableLayout.ColumnKind;

/**
 * Turns a table with one reading per row and the sensor's name beside it into one column per
 * sensor.
 */
final class LongTable {

  private static final int MOST_SENSORS = 256;

  private LongTable() {}

  /** The table itself when its rows are not readings of named sensors. */
  static RawTable spread(RawTable table) {
    RawTable named = namedOnce(table);
    if (named != null) {
      return named;
    }
    int key = keyColumn(table);
    if (key < 0) {
      return blocks(table);
    }
    List<Integer> readings = readings(table, key);
    if (readings.isEmpty() || readings.size() > 3) {
      return table;
    }
    return spread(table, key, readings);
  }

  private static final Set<String> KEY_WORDS =
      Set.of(
          "sensor",
          "name",
          "entity",
          "entityid",
          "topic",
          "device",
          "field",
          "channel",
          "series",
          "metric",
          "measurement",
          "probe",
          "id",
          "signal",
          "tag",
          "point",
          "variable",
          "table");

  private static final Set<String> READING_WORDS =
      Set.of("value", "state", "reading", "val", "payload", "data");

  /** One sensor, named in every row beside its reading: its name is the channel's. */
  private static @Nullable RawTable namedOnce(RawTable table) {
    int reading = -1;
    int numbers = 0;
    int key = -1;
    for (int c = 0; c < table.columns(); c++) {
      HeaderText h = table.headers().get(c);
      boolean number = table.kinds().get(c) == ColumnKind.NUMBER;
      numbers += number && !h.saysTime() && !looksLikeEpoch(table.values()[c]) ? 1 : 0;
      reading = number && h.says(READING_WORDS) ? c : reading;
      boolean once =
          table.kinds().get(c) == ColumnKind.WORDS
              && table.labels().get(c).size() == 1
              && h.says(KEY_WORDS);
      key = key < 0 && once ? c : key;
    }
    if (key < 0 || reading < 0 || numbers != 1) {
      return null;
    }
    HeaderText own = table.headers().get(reading);
    HeaderText named = HeaderText.of(table.labels().get(key).get(0));
    UnitText unit = own.unit() == null ? named.unit() : own.unit();
    List<HeaderText> headers = new ArrayList<>(table.headers());
    List<String> words = new ArrayList<>(named.words());
    words.addAll(own.words());
    headers.set(reading, new HeaderText(own.written(), named.name(), unit, words));
    List<ColumnKind> kinds = new ArrayList<>(table.kinds());
    kinds.set(key, ColumnKind.SKIPPED);
    return new RawTable(
        headers,
        kinds,
        table.values(),
        table.stamps(),
        table.suffixes(),
        table.labels(),
        table.missingWords(),
        table.skipped());
  }

  /** All rows of one sensor, then all of the next: the time goes back where the name changes. */
  private static RawTable blocks(RawTable table) {
    int time = timeColumn(table);
    for (int key = 0; key < table.columns() && time >= 0; key++) {
      boolean words =
          table.kinds().get(key) == ColumnKind.WORDS && table.labels().get(key).size() >= 2;
      boolean named = table.headers().get(key).says(KEY_WORDS);
      if (words && named && inBlocks(table.values()[key], table.values()[time])) {
        List<Integer> readings = readings(table, key);
        readings.removeIf(c -> followsKey(table, c));
        if (!readings.isEmpty() && readings.size() <= 3) {
          return spread(sorted(table, time), key, readings);
        }
      }
    }
    return table;
  }

  /** A column that only numbers the blocks. */
  private static boolean followsKey(RawTable table, int column) {
    return table.headers().get(column).says(Set.of("table", "result"))
        && table.kinds().get(column) == ColumnKind.NUMBER
        && Arrays.stream(table.values()[column])
            .allMatch(v -> Double.isNaN(v) || v == Math.rint(v));
  }

  private static int timeColumn(RawTable table) {
    for (int c = 0; c < table.columns(); c++) {
      boolean counted =
          table.kinds().get(c) == ColumnKind.NUMBER && table.headers().get(c).saysTime();
      if (table.stamps()[c] != null || counted) {
        return c;
      }
    }
    return -1;
  }

  private static boolean inBlocks(double[] codes, double[] times) {
    int changes = 0;
    int back = 0;
    for (int i = 1; i < codes.length; i++) {
      if (Double.isNaN(codes[i])) {
        return false;
      }
      boolean change = codes[i] != codes[i - 1];
      changes += change ? 1 : 0;
      back += change && times[i] < times[i - 1] ? 1 : 0;
    }
    long sensors = Arrays.stream(codes).distinct().count();
    return changes == sensors - 1 && back == changes && codes.length >= 2 * sensors;
  }

  private static RawTable sorted(RawTable table, int time) {
    double[] t = table.values()[time];
    int[] order =
        java.util.stream.IntStream.range(0, t.length)
            .boxed()
            .sorted(java.util.Comparator.comparingDouble(i -> t[i]))
            .mapToInt(Integer::intValue)
            .toArray();
    double[][] values = new double[table.columns()][];
    for (int c = 0; c < values.length; c++) {
      double[] old = table.values()[c];
      values[c] = Arrays.stream(order).mapToDouble(i -> old[i]).toArray();
    }
    return new RawTable(
        table.headers(),
        table.kinds(),
        values,
        table.stamps(),
        table.suffixes(),
        table.labels(),
        table.missingWords(),
        table.skipped());
  }

  /** A column whose names take turns. */
  private static int keyColumn(RawTable table) {
    for (int c = 0; c < table.columns(); c++) {
      boolean words = table.kinds().get(c) == ColumnKind.WORDS && table.labels().get(c).size() >= 2;
      boolean numbered =
          table.kinds().get(c) == ColumnKind.NUMBER
              && c > 0
              && table
                  .headers()
                  .get(c)
                  .says(
                      java.util.Set.of(
                          "channel", "sensor", "probe", "ch", "input", "kanal", "device", "id",
                          "chan"))
              && !table.headers().get(c).name().matches(".*\\d.*");
      if ((words || numbered) && takesTurns(table.values()[c]) && sharesStamps(table, c)) {
        return c;
      }
    }
    return -1;
  }

  private static boolean takesTurns(double[] codes) {
    int changes = 0;
    int filled = 0;
    Map<Double, Integer> seen = new LinkedHashMap<>();
    for (int i = 0; i < codes.length; i++) {
      if (Double.isNaN(codes[i]) || codes[i] != Math.rint(codes[i])) {
        return false;
      }
      filled++;
      changes += i > 0 && codes[i] != codes[i - 1] ? 1 : 0;
      seen.merge(codes[i], 1, Integer::sum);
      if (seen.size() > MOST_SENSORS) {
        return false;
      }
    }
    boolean often = seen.size() >= 2 && changes > 0.5 * (filled - 1);
    int most = seen.values().stream().mapToInt(Integer::intValue).max().orElse(0);
    return often && filled >= 2 * seen.size() && most <= 0.9 * filled;
  }

  /** Sensors of one moment carry one stamp, or the names come in the same order again and again. */
  private static boolean sharesStamps(RawTable table, int key) {
    double[] codes = table.values()[key];
    for (int c = 0; c < table.columns(); c++) {
      if (table.stamps()[c] != null) {
        int same = 0;
        for (int i = 1; i < codes.length; i++) {
          same += table.values()[c][i] == table.values()[c][i - 1] ? 1 : 0;
        }
        if (same > 0.3 * (codes.length - 1)) {
          return true;
        }
      }
    }
    int period = (int) Arrays.stream(codes).distinct().count();
    int again = 0;
    for (int i = period; i < codes.length; i++) {
      again += codes[i] == codes[i - period] ? 1 : 0;
    }
    return again > 0.8 * (codes.length - period);
  }

  private static List<Integer> readings(RawTable table, int key) {
    List<Integer> readings = new ArrayList<>();
    for (int c = 0; c < table.columns(); c++) {
      HeaderText h = table.headers().get(c);
      boolean number = table.kinds().get(c) == ColumnKind.NUMBER && c != key;
      boolean counting = h.saysTime() || h.saysIndex() || (h.written().isBlank() && c == 0);
      boolean filled = Arrays.stream(table.values()[c]).anyMatch(Double::isFinite);
      if (number && filled && !counting && !looksLikeEpoch(table.values()[c])) {
        readings.add(c);
      }
    }
    return readings;
  }

  private static boolean looksLikeEpoch(double[] values) {
    return values.length > 0 && values[values.length / 2] > 0.9e9;
  }

  private static RawTable spread(RawTable table, int key, List<Integer> readings) {
    double[] codes = table.values()[key];
    int[] group = groups(codes);
    int rows = group.length == 0 ? 0 : group[group.length - 1] + 1;
    List<HeaderText> headers = new ArrayList<>();
    List<ColumnKind> kinds = new ArrayList<>();
    List<double[]> values = new ArrayList<>();
    List<@Nullable StampColumn> stamps = new ArrayList<>();
    List<@Nullable UnitText> suffixes = new ArrayList<>();
    for (int c = 0; c < table.columns(); c++) {
      boolean beside = c != key && !readings.contains(c) && !followsKey(table, c);
      if (beside && table.kinds().get(c) != ColumnKind.WORDS) {
        headers.add(table.headers().get(c));
        kinds.add(table.kinds().get(c));
        values.add(firstOfGroup(table.values()[c], group, rows));
        stamps.add(table.stamps()[c]);
        suffixes.add(table.suffixes()[c]);
      }
    }
    Map<Double, String> names = names(table, key);
    for (Map.Entry<Double, String> sensor : names.entrySet()) {
      for (int c : readings) {
        HeaderText own = table.headers().get(c);
        String name =
            readings.size() == 1 ? sensor.getValue() : sensor.getValue() + " " + own.name();
        List<String> words = new ArrayList<>(HeaderText.of(name).words());
        words.addAll(own.words());
        headers.add(new HeaderText(own.written(), name, own.unit(), words));
        kinds.add(ColumnKind.NUMBER);
        values.add(ofSensor(table.values()[c], codes, sensor.getKey(), group, rows));
        stamps.add(null);
        suffixes.add(table.suffixes()[c]);
      }
    }
    List<List<String>> labels = new ArrayList<>();
    headers.forEach(h -> labels.add(List.of()));
    return new RawTable(
        headers,
        kinds,
        values.toArray(double[][]::new),
        stamps.toArray(StampColumn[]::new),
        suffixes.toArray(UnitText[]::new),
        labels,
        new int[headers.size()],
        table.skipped());
  }

  private static Map<Double, String> names(RawTable table, int key) {
    Map<Double, String> names = new LinkedHashMap<>();
    boolean words = table.kinds().get(key) == ColumnKind.WORDS;
    double[] distinct = Arrays.stream(table.values()[key]).distinct().sorted().toArray();
    for (double code : distinct) {
      names.put(
          code,
          words
              ? table.labels().get(key).get((int) code)
              : table.headers().get(key).name() + " " + (long) code);
    }
    return names;
  }

  /** A new moment begins when a sensor comes that the moment already has. */
  private static int[] groups(double[] codes) {
    int[] group = new int[codes.length];
    java.util.Set<Double> seen = new java.util.HashSet<>();
    int current = 0;
    for (int i = 0; i < codes.length; i++) {
      if (!seen.add(codes[i])) {
        current++;
        seen.clear();
        seen.add(codes[i]);
      }
      group[i] = current;
    }
    return group;
  }

  private static double[] firstOfGroup(double[] values, int[] group, int rows) {
    double[] result = new double[rows];
    Arrays.fill(result, Double.NaN);
    for (int i = values.length - 1; i >= 0; i--) {
      result[group[i]] = values[i];
    }
    return result;
  }

  private static double[] ofSensor(
      double[] values, double[] codes, double code, int[] group, int rows) {
    double[] result = new double[rows];
    Arrays.fill(result, Double.NaN);
    for (int i = 0; i < values.length; i++) {
      if (codes[i] == code) {
        result[group[i]] = values[i];
      }
    }
    return result;
  }
}
