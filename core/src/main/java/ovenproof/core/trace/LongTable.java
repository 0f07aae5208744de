package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
    int key = keyColumn(table);
    if (key < 0) {
      return table;
    }
    List<Integer> readings = readings(table, key);
    if (readings.isEmpty() || readings.size() > 3) {
      return table;
    }
    return spread(table, key, readings);
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
      if (number && !counting && !looksLikeEpoch(table.values()[c])) {
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
      if (c != key && !readings.contains(c) && table.kinds().get(c) != ColumnKind.WORDS) {
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
