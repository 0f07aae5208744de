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
          row.putIfAbsent(
              "time", trimmed.substring(0, brace).strip().replaceAll("[\\s:>|\\-]+$", ""));
        }
        rows.add(row);
      } else {
        skipped += trimmed.isEmpty() ? 0 : 1;
      }
    }
    if (rows.size() >= 2 && rows.size() >= skipped) {
      return table(rows, skipped);
    }
    List<Map<String, String>> document = document(parse(String.join("\n", lines).strip()));
    return document.size() < 2 ? null : table(document, 0);
  }

  private static KeyValueLines.@Nullable Rows table(List<Map<String, String>> rows, int skipped) {
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

  /** The rows of a whole document: the longest array in it that can be read as rows. */
  private static List<Map<String, String>> document(@Nullable Object value) {
    List<Map<String, String>> best = new ArrayList<>();
    if (value instanceof List<?> list) {
      best = ofList(list);
    } else if (value instanceof Map<?, ?> map) {
      best = ofColumns(map);
      for (Object part : map.values()) {
        List<Map<String, String>> rows = document(part);
        best = rows.size() > best.size() ? rows : best;
      }
    }
    return best;
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
