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
  static RawTable spread(RawTable all) {
    RawTable table = withoutMessages(all);
    RawTable named = namedOnce(table);
    if (named != null) {
      return named;
    }
    int key = keyColumn(table);
    if (key < 0) {
      RawTable sorted = blocks(table);
      return sorted == table ? unevenly(table) : sorted;
    }
    List<Integer> readings = readings(table, key);
    if (readings.isEmpty() || readings.size() > 3) {
      return table;
    }
    return spread(table, key, readings, groups(table.values()[key]));
  }

  /** Rows of a recorder's own: $OFF$, named like no sensor. */
  private static RawTable withoutMessages(RawTable table) {
    for (int c = 0; c < table.columns(); c++) {
      List<String> words = table.labels().get(c);
      boolean messages = words.size() > 1 && words.stream().anyMatch(w -> w.matches("\\$.+\\$"));
      if (messages && table.headers().get(c).says(KEY_WORDS)) {
        double[] codes = table.values()[c];
        return rows(
            table,
            java.util.stream.IntStream.range(0, codes.length)
                .filter(
                    i -> Double.isNaN(codes[i]) || !words.get((int) codes[i]).matches("\\$.+\\$"))
                .toArray());
      }
    }
    return table;
  }

  /**
   * Sensors that report when they like, as home automation keeps them: a column of names, one of
   * readings and one of times, in any order.
   */
  private static RawTable unevenly(RawTable table) {
    int time = timeColumn(table);
    int key = -1;
    for (int c = 0; c < table.columns(); c++) {
      boolean names =
          table.kinds().get(c) == ColumnKind.WORDS
              && table.labels().get(c).size() >= 2
              && table.labels().get(c).size() <= MOST_SENSORS
              && table.headers().get(c).says(KEY_WORDS)
              && table.rows() >= 3 * table.labels().get(c).size();
      key = names && moreNames(table, c, key) ? c : key;
    }
    if (time < 0 || key < 0) {
      return table;
    }
    List<Integer> readings = readings(table, key);
    int sensors = key;
    readings.removeIf(c -> c == time || followsKey(table, c));
    boolean said = readings.stream().anyMatch(c -> table.headers().get(c).says(READING_WORDS));
    if (readings.isEmpty() || readings.size() > 3 || !said) {
      return table;
    }
    RawTable sorted = sorted(table, time);
    return spread(sorted, key, readings, moments(sorted.values()[sensors], sorted.values()[time]));
  }

  /** Of two columns of names the one that tells more sensors apart; a topic before its host. */
  private static boolean moreNames(RawTable table, int column, int best) {
    return best < 0 || table.labels().get(column).size() > table.labels().get(best).size();
  }

  /** A new moment begins with a sensor that came already, or clearly later than the first. */
  private static int[] moments(double[] codes, double[] times) {
    double tolerance = 0.2 * usualDistance(codes, times);
    int[] group = new int[codes.length];
    java.util.Set<Double> seen = new java.util.HashSet<>();
    int current = 0;
    double first = codes.length == 0 ? Double.NaN : times[0];
    for (int i = 0; i < codes.length; i++) {
      if (!seen.add(codes[i]) || times[i] - first > tolerance) {
        current += i == 0 ? 0 : 1;
        seen.clear();
        seen.add(codes[i]);
        first = times[i];
      }
      group[i] = current;
    }
    return group;
  }

  /** Median time between two readings of the sensor that reports most often. */
  private static double usualDistance(double[] codes, double[] times) {
    Map<Double, Integer> counts = new LinkedHashMap<>();
    Arrays.stream(codes).forEach(code -> counts.merge(code, 1, Integer::sum));
    double busiest =
        counts.entrySet().stream()
            .max(Map.Entry.comparingByValue())
            .map(Map.Entry::getKey)
            .orElse(0.0);
    double[] own =
        java.util.stream.IntStream.range(0, codes.length)
            .filter(i -> codes[i] == busiest)
            .mapToDouble(i -> times[i])
            .toArray();
    double[] steps =
        java.util.stream.IntStream.range(1, own.length)
            .mapToDouble(i -> own[i] - own[i - 1])
            .filter(d -> d > 0)
            .sorted()
            .toArray();
    return steps.length == 0 ? 0 : steps[steps.length / 2];
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
          "varname",
          "tagname",
          "parameter",
          "param",
          "quantity",
          "attribute",
          "location",
          "position",
          "place",
          "source",
          "node",
          "key",
          "type",
          "label",
          "item",
          "feed",
          "sensorname",
          "datastream",
          "kanal",
          "messstelle",
          "fühler",
          "capteur",
          "sonde",
          "table");

  private static final Set<String> READING_WORDS =
      Set.of(
          "value",
          "state",
          "reading",
          "val",
          "payload",
          "data",
          "varvalue",
          "wert",
          "messwert",
          "valeur",
          "valor",
          "valore",
          "waarde",
          "mean",
          "temperature",
          "temp",
          "result",
          "measurement",
          "numeric");

  /** Headers of readings that say more than that they are readings. */
  private static final Set<String> QUANTITIES =
      Set.of("temperature", "temp", "humidity", "power", "voltage", "current", "energy");

  /** One sensor, named in every row beside its reading: its name is the channel's. */
  private static @Nullable RawTable namedOnce(RawTable table) {
    int reading = -1;
    int numbers = 0;
    int key = -1;
    for (int c = 0; c < table.columns(); c++) {
      HeaderText h = table.headers().get(c);
      boolean number = table.kinds().get(c) == ColumnKind.NUMBER;
      boolean counts = h.saysIndex() && !h.says(READING_WORDS) && !moves(table.values()[c]);
      boolean empty = number && Arrays.stream(table.values()[c]).noneMatch(Double::isFinite);
      boolean reads = number && !h.saysTime() && !looksLikeEpoch(table.values()[c]);
      numbers += reads && !counts && !empty ? 1 : 0;
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
    String once = table.labels().get(key).get(0);
    boolean telling = own.says(QUANTITIES) && !once.equalsIgnoreCase(own.name());
    HeaderText named = HeaderText.of(telling ? once + " " + own.name() : once);
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
          RawTable sorted = sorted(table, time);
          return spread(sorted, key, readings, groups(sorted.values()[key]));
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
      if ((table.stamps()[c] != null || counted) && moves(table.values()[c])) {
        return c;
      }
    }
    return -1;
  }

  /** The bounds of a query stand in every row; the moments do not. */
  private static boolean moves(double[] times) {
    return Arrays.stream(times).filter(t -> !Double.isNaN(t)).distinct().limit(3).count() > 2;
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
    return rows(table, order);
  }

  private static RawTable rows(RawTable table, int[] order) {
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
      boolean aside = h.says(Set.of("validity", "quality", "qc", "lat", "lon", "ele", "elevation"));
      if (number && filled && !aside && !counting && !looksLikeEpoch(table.values()[c])) {
        readings.add(c);
      }
    }
    return readings;
  }

  /** A column of words that names, for each sensor, the one unit of its readings; −1 for none. */
  private static int unitColumn(RawTable table, int key) {
    for (int c = 0; c < table.columns(); c++) {
      List<String> words = table.labels().get(c);
      boolean units =
          c != key
              && table.kinds().get(c) == ColumnKind.WORDS
              && !words.isEmpty()
              && words.size() <= 32
              && words.stream().anyMatch(w -> UnitText.wordOrLetter(w) != null)
              && words.stream().filter(w -> UnitText.wordOrLetter(w) != null).count()
                  >= 0.5 * words.size();
      if (units) {
        return c;
      }
    }
    return -1;
  }

  private static @Nullable UnitText unitOf(
      RawTable table, int units, double[] codes, double sensor) {
    if (units < 0) {
      return null;
    }
    UnitText found = null;
    for (int i = 0; i < codes.length; i++) {
      double word = table.values()[units][i];
      if (codes[i] == sensor && !Double.isNaN(word)) {
        UnitText unit = UnitText.wordOrLetter(table.labels().get(units).get((int) word));
        if (found != null && unit != null && !unit.equals(found)) {
          return null;
        }
        found = unit == null ? found : unit;
      }
    }
    return found;
  }

  private static boolean looksLikeEpoch(double[] values) {
    return values.length > 0 && values[values.length / 2] > 0.9e9;
  }

  private static RawTable spread(RawTable table, int key, List<Integer> readings, int[] group) {
    double[] codes = table.values()[key];
    int units = unitColumn(table, key);
    int rows = group.length == 0 ? 0 : group[group.length - 1] + 1;
    List<HeaderText> headers = new ArrayList<>();
    List<ColumnKind> kinds = new ArrayList<>();
    List<double[]> values = new ArrayList<>();
    List<@Nullable StampColumn> stamps = new ArrayList<>();
    List<@Nullable UnitText> suffixes = new ArrayList<>();
    for (int c = 0; c < table.columns(); c++) {
      boolean beside = c != key && !readings.contains(c) && !followsKey(table, c);
      boolean judged = table.headers().get(c).says(Set.of("validity", "quality", "qc"));
      if (beside && !judged && table.kinds().get(c) != ColumnKind.WORDS) {
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
        HeaderText named = HeaderText.of(name);
        List<String> words = new ArrayList<>(named.words());
        words.addAll(own.words());
        UnitText beside = unitOf(table, units, codes, sensor.getKey());
        UnitText unit = own.unit() != null ? own.unit() : beside != null ? beside : named.unit();
        headers.add(new HeaderText(own.written(), named.name(), unit, words));
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
