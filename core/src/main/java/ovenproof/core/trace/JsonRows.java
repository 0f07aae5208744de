package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Rows from JSON: one object per line, an array of objects, an object that holds such an array, an
 * array of arrays, or an object of arrays of one length. Nested names are joined by points. Only
 * what a log needs is read; a line that is no JSON is counted and skipped.
 */
final class JsonRows {

  private static final int DEEPEST = 12;

  private final String text;
  private int i;

  private JsonRows(String text) {
    this.text = text;
  }

  /** An error of form; never leaves this class. */
  private static final class NoJson extends RuntimeException {
    private static final long serialVersionUID = 1;

    NoJson() {
      super(null, null, false, false);
    }
  }

  /** Null when this is no JSON with at least two rows. */
  static KeyValueLines.@Nullable Rows read(List<String> lines) {
    List<Map<String, String>> rows = new ArrayList<>();
    int skipped = 0;
    for (String line : lines) {
      String trimmed = line.strip().replaceAll(",$", "");
      int brace = trimmed.indexOf('{');
      Object value = brace < 0 ? null : parse(trimmed.substring(brace));
      if (value instanceof Map<?, ?> map && trimmed.endsWith("}")) {
        Map<String, String> row = flat(map);
        if (brace > 0) {
          row.putIfAbsent("time", stampIn(trimmed.substring(0, brace).strip()));
        }
        rows.add(row);
      } else {
        skipped += trimmed.isEmpty() ? 0 : 1;
      }
    }
    boolean perLine = rows.size() >= 2 && rows.size() >= skipped;
    Object whole = perLine && !lines.get(0).stripLeading().startsWith("[") ? null : whole(lines);
    if (whole instanceof List<?> list && SenMlRows.is(list)) {
      return table(SenMlRows.of(list), 0);
    }
    if (perLine) {
      return table(rows, skipped);
    }
    List<Map<String, String>> document = document(whole);
    return document.size() < 2 ? null : table(document, 0);
  }

  private static @Nullable Object whole(List<String> lines) {
    return parse(String.join("\n", lines).strip());
  }

  /** What a program wrote in front of an object: its stamp, or all of it when that is none. */
  private static String stampIn(String before) {
    String stamp = KeyValueLines.stamped(before + " ").pairs().get("time");
    return stamp == null ? before.replaceAll("[\\s:>|\\-]+$", "") : stamp;
  }

  private static KeyValueLines.@Nullable Rows table(List<Map<String, String>> rows, int skipped) {
    rows.forEach(JsonRows::openMessage);
    Map<String, Integer> columns = new LinkedHashMap<>();
    for (Map<String, String> row : rows) {
      for (String key : row.keySet()) {
        if (columns.size() < 4096) {
          columns.putIfAbsent(key, columns.size());
        }
      }
    }
    List<String> names = List.copyOf(columns.keySet());
    List<String[]> cells = new ArrayList<>();
    for (Map<String, String> row : rows) {
      cells.add(names.stream().map(n -> row.getOrDefault(n, "")).toArray(String[]::new));
    }
    return names.isEmpty() ? null : new KeyValueLines.Rows(names, cells, skipped);
  }

  /** Named values inside a message count as the row's own. */
  private static void openMessage(Map<String, String> row) {
    for (String key : List.of("MESSAGE", "message", "msg", "log", "line")) {
      Map<String, String> pairs = KeyValueLines.parse(row.getOrDefault(key, ""));
      if (!pairs.isEmpty()) {
        row.remove(key);
        pairs.forEach(row::putIfAbsent);
      }
    }
  }

  /** The rows of a whole document: the longest array in it that can be read as rows. */
  private static List<Map<String, String>> document(@Nullable Object value) {
    List<Map<String, String>> best = new ArrayList<>();
    if (value instanceof List<?> list) {
      best = ofList(flattened(list));
      if (list.size() == 1 && list.get(0) instanceof Map<?, ?> only) {
        best = document(only);
      }
      List<Map<String, String>> series = ofSeries(list);
      best = series.size() > best.size() ? series : best;
    } else if (value instanceof Map<?, ?> map) {
      best = ofNamedSeries(map);
      List<Map<String, String>> columns = ofColumns(map);
      best = columns.size() > best.size() ? columns : best;
      List<Map<String, String>> labelled = ofLabelled(map);
      best = !labelled.isEmpty() && labelled.size() >= best.size() ? labelled : best;
      List<Map<String, String>> named = ofNamedArrays(map);
      best = named.size() > best.size() ? named : best;
      for (Object part : map.values()) {
        List<Map<String, String>> rows = renamed(document(part), map);
        best = rows.size() > best.size() ? rows : best;
      }
    }
    return best;
  }

  /** A list of lists of objects, one for each sensor, is one list. */
  private static List<?> flattened(List<?> list) {
    boolean nested =
        !list.isEmpty()
            && list.stream()
                .allMatch(x -> x instanceof List<?> l && !l.isEmpty() && l.get(0) instanceof Map);
    List<Object> all = new ArrayList<>();
    if (nested) {
      list.forEach(x -> all.addAll((List<?>) x));
    }
    return nested ? all : list;
  }

  private static List<Map<String, String>> ofList(List<?> list) {
    List<Map<String, String>> rows = new ArrayList<>();
    for (Object item : list) {
      if (item instanceof Map<?, ?> map) {
        rows.add(flat(map));
      } else if (item instanceof List<?> cells) {
        Map<String, String> row = new LinkedHashMap<>();
        for (int c = 0; c < cells.size(); c++) {
          row.put("column " + (c + 1), String.valueOf(cells.get(c)));
        }
        rows.add(row);
      }
    }
    return rows;
  }

  /** {"columns": ["time", "centre"], "data": [[0, 21.5], [1, 21.6]]}. */
  private static List<Map<String, String>> ofNamedArrays(Map<?, ?> map) {
    List<String> names = new ArrayList<>();
    List<?> data = List.of();
    for (Object part : map.values()) {
      if (part instanceof List<?> list && list.size() >= 2) {
        boolean words = list.stream().allMatch(x -> x instanceof String || x instanceof Map);
        if (words && list.size() <= 4096 && names.isEmpty()) {
          list.forEach(x -> names.add(nameOf(x)));
        } else if (list.get(0) instanceof List<?> && list.size() > data.size()) {
          data = list;
        }
      }
    }
    List<Map<String, String>> rows = new ArrayList<>();
    for (Object item : data) {
      if (item instanceof List<?> cells && cells.size() == names.size()) {
        Map<String, String> row = new LinkedHashMap<>();
        for (int c = 0; c < names.size(); c++) {
          row.put(names.get(c), String.valueOf(cells.get(c)));
        }
        rows.add(row);
      }
    }
    return rows;
  }

  /** What a series or column calls itself, with its unit. */
  private static String nameOf(Object value) {
    if (!(value instanceof Map<?, ?> map)) {
      return String.valueOf(value);
    }
    String name = "";
    for (String key :
        List.of("name", "label", "sensor", "channel", "target", "id", "text", "title")) {
      if (name.isEmpty() && map.get(key) instanceof String found) {
        name = found;
      }
    }
    if (name.isEmpty()) {
      name = ofLabels(map);
    }
    return map.get("unit") instanceof String unit && !unit.isEmpty()
        ? name + " (" + unit + ")"
        : name;
  }

  /** {"metric": {"name": "temp", "place": "left"}}: all that tells one series from another. */
  private static String ofLabels(Map<?, ?> map) {
    for (Object part : map.values()) {
      if (part instanceof Map<?, ?> labels
          && !labels.isEmpty()
          && labels.values().stream().allMatch(v -> v instanceof String)) {
        return String.join(" ", labels.values().stream().map(String::valueOf).toList());
      }
    }
    return "";
  }

  /** [{"name": "centre", "points": [[0, 21.5], [1, 21.6]]}, …]: moments of all series in one. */
  private static List<Map<String, String>> ofSeries(List<?> list) {
    Map<String, Map<String, String>> rows = new LinkedHashMap<>();
    for (Object item : list) {
      String name = item instanceof Map<?, ?> ? nameOf(item) : "";
      if (!(item instanceof Map<?, ?> map) || name.isEmpty()) {
        return List.of();
      }
      for (Object part : map.values()) {
        if (part instanceof List<?> points) {
          points.forEach(point -> addPoint(point, name, rows));
        }
      }
    }
    return rows.values().stream().sorted(JsonRows::byTime).toList();
  }

  /** {"centre": [[0, 21.5], [1, 21.6]], "left": [[0, 20.9], …]}. */
  private static List<Map<String, String>> ofNamedSeries(Map<?, ?> map) {
    Map<String, Map<String, String>> rows = new LinkedHashMap<>();
    for (Map.Entry<?, ?> e : map.entrySet()) {
      boolean points =
          e.getValue() instanceof List<?> list
              && list.size() >= 2
              && list.stream().allMatch(x -> x instanceof List<?> pair && pair.size() == 2);
      if (points) {
        ((List<?>) e.getValue()).forEach(p -> addPoint(p, String.valueOf(e.getKey()), rows));
      }
    }
    return rows.values().stream().sorted(JsonRows::byTime).toList();
  }

  /**
   * {"labels": [t0, t1], "datasets": [{"label": "centre", "data": [21.5, 21.6]}]}, as charts keep
   * it.
   */
  private static List<Map<String, String>> ofLabelled(Map<?, ?> map) {
    List<?> labels = List.of();
    for (Object part : map.values()) {
      boolean times = part instanceof List<?> list && list.size() >= 2 && isFlat(list);
      labels = times ? (List<?>) part : labels;
    }
    List<Map<String, String>> rows = new ArrayList<>();
    labels.forEach(l -> rows.add(new LinkedHashMap<>(Map.of("time", String.valueOf(l)))));
    int series = 0;
    for (Object part : map.values()) {
      for (Object item : part instanceof List<?> list ? list : List.of()) {
        for (Object data : item instanceof Map<?, ?> one ? one.values() : List.of()) {
          if (data instanceof List<?> values && values.size() == rows.size() && isFlat(values)) {
            series++;
            for (int r = 0; r < rows.size(); r++) {
              rows.get(r).put(nameOf(item), String.valueOf(values.get(r)));
            }
          }
        }
      }
    }
    return series == 0 ? List.of() : rows;
  }

  private static boolean isFlat(List<?> list) {
    return list.stream().noneMatch(x -> x instanceof Map || x instanceof List);
  }

  /** Names that stand beside the rows: {"field1": "temperature"} for rows of field1. */
  private static List<Map<String, String>> renamed(
      List<Map<String, String>> rows, Map<?, ?> beside) {
    Map<String, String> names = new LinkedHashMap<>();
    for (Object part : beside.values()) {
      if (part instanceof Map<?, ?> map) {
        map.forEach(
            (k, v) -> {
              if (String.valueOf(k).matches("(field|ch|channel|sensor|input)_?\\d+")
                  && v instanceof String name
                  && name.matches(".*\\p{L}.*")) {
                names.put(String.valueOf(k), name);
              }
            });
      }
    }
    if (names.isEmpty()) {
      return rows;
    }
    return rows.stream()
        .map(
            row -> {
              Map<String, String> renamed = new LinkedHashMap<>();
              row.forEach((k, v) -> renamed.putIfAbsent(names.getOrDefault(k, k), v));
              return renamed;
            })
        .toList();
  }

  /** A pair of time and value; of two numbers the larger by far is the time. */
  private static void addPoint(Object point, String name, Map<String, Map<String, String>> rows) {
    List<?> pair =
        point instanceof List<?> list
            ? list
            : point instanceof Map<?, ?> map ? List.copyOf(map.values()) : List.of();
    if (pair.size() != 2) {
      return;
    }
    String first = String.valueOf(pair.get(0));
    String second = String.valueOf(pair.get(1));
    boolean timeLast = number(second) > 1e9 && Math.abs(number(first)) < 1e6;
    String time = timeLast ? second : first;
    rows.computeIfAbsent(time, t -> new LinkedHashMap<>(Map.of("time", t)))
        .put(name, timeLast ? first : second);
  }

  private static int byTime(Map<String, String> a, Map<String, String> b) {
    String x = a.getOrDefault("time", "");
    String y = b.getOrDefault("time", "");
    double difference = number(x) - number(y);
    return Double.isNaN(difference) ? x.compareTo(y) : (int) Math.signum(difference);
  }

  private static double number(String text) {
    try {
      return Double.parseDouble(text);
    } catch (NumberFormatException noNumber) {
      return Double.NaN;
    }
  }

  /** {"time": [0, 1, 2], "temp": [20, 21, 22]}. */
  private static List<Map<String, String>> ofColumns(Map<?, ?> map) {
    List<Map<String, String>> rows = new ArrayList<>();
    int length = -1;
    for (Object value : map.values()) {
      if (value instanceof List<?> list
          && list.stream().noneMatch(x -> x instanceof Map || x instanceof List)) {
        length = Math.max(length, list.size());
      }
    }
    for (int r = 0; r < length; r++) {
      Map<String, String> row = new LinkedHashMap<>();
      for (Map.Entry<?, ?> e : map.entrySet()) {
        if (e.getValue() instanceof List<?> list && list.size() == length) {
          row.put(String.valueOf(e.getKey()), String.valueOf(list.get(r)));
        }
      }
      rows.add(row);
    }
    return rows;
  }

  private static Map<String, String> flat(Map<?, ?> map) {
    Map<String, String> row = new LinkedHashMap<>();
    flatten("", map, row, 0);
    String unit = row.remove("attributes.unit_of_measurement");
    if (unit != null) {
      row.put("unit", unit);
    }
    return row;
  }

  private static void flatten(String prefix, Object value, Map<String, String> row, int depth) {
    if (depth > DEEPEST) {
      return;
    }
    if (value instanceof Map<?, ?> map) {
      map.forEach(
          (k, v) ->
              flatten(prefix.isEmpty() ? String.valueOf(k) : prefix + "." + k, v, row, depth + 1));
    } else if (value instanceof List<?> list) {
      for (int k = 0; k < Math.min(list.size(), 256); k++) {
        flatten(prefix + "[" + k + "]", list.get(k), row, depth + 1);
      }
    } else {
      row.put(prefix, String.valueOf(value));
    }
  }

  /** Maps, lists and strings (numbers stay as written); null when the text is no JSON. */
  private static @Nullable Object parse(String json) {
    try {
      JsonRows parser = new JsonRows(json);
      Object value = parser.value(0);
      parser.blanks();
      return parser.i == json.length() ? value : null;
    } catch (NoJson e) {
      return null;
    }
  }

  private Object value(int depth) {
    blanks();
    if (i >= text.length() || depth > 40) {
      throw new NoJson();
    }
    return switch (text.charAt(i)) {
      case '{' -> object(depth);
      case '[' -> array(depth);
      case '"', '\'' -> string();
      default -> bare();
    };
  }

  private Map<String, Object> object(int depth) {
    Map<String, Object> map = new LinkedHashMap<>();
    i++;
    blanks();
    while (peek() != '}') {
      String key = peek() == '"' || peek() == '\'' ? string() : bare();
      blanks();
      expect(':');
      map.put(key, value(depth + 1));
      blanks();
      if (peek() == ',') {
        i++;
        blanks();
      } else if (peek() != '}') {
        throw new NoJson();
      }
    }
    i++;
    return map;
  }

  private List<Object> array(int depth) {
    List<Object> list = new ArrayList<>();
    i++;
    blanks();
    while (peek() != ']') {
      list.add(value(depth + 1));
      blanks();
      if (peek() == ',') {
        i++;
        blanks();
      } else if (peek() != ']') {
        throw new NoJson();
      }
    }
    i++;
    return list;
  }

  private String string() {
    char quote = text.charAt(i++);
    StringBuilder result = new StringBuilder();
    while (peek() != quote) {
      char c = text.charAt(i++);
      if (c != '\\') {
        result.append(c);
        continue;
      }
      char escaped = peek();
      i++;
      switch (escaped) {
        case 'n', 'r', 't', 'b', 'f' -> result.append(' ');
        case 'u' -> {
          if (i + 4 > text.length() || !text.substring(i, i + 4).matches("[0-9a-fA-F]{4}")) {
            throw new NoJson();
          }
          result.append((char) Integer.parseInt(text.substring(i, i + 4), 16));
          i += 4;
        }
        default -> result.append(escaped);
      }
    }
    i++;
    return result.toString();
  }

  /** Numbers, true, false, null, NaN – and names without quotes. */
  private String bare() {
    int start = i;
    while (i < text.length() && ",:}] \t\n\r".indexOf(text.charAt(i)) < 0) {
      i++;
    }
    String word = text.substring(start, i);
    if (!word.matches("[-+]?[\\p{Alnum}_.+\\-]+")) {
      throw new NoJson();
    }
    return word.equals("null") ? "" : word;
  }

  private char peek() {
    if (i >= text.length()) {
      throw new NoJson();
    }
    return text.charAt(i);
  }

  private void expect(char c) {
    if (peek() != c) {
      throw new NoJson();
    }
    i++;
  }

  private void blanks() {
    while (i < text.length() && text.charAt(i) <= ' ') {
      i++;
    }
  }
}
