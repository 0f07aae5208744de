package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Lines of named values: {@code T1=23.5 T2=24.0}, {@code Temp: 23.5 C, Set: 200}, {@code T:210.3
 * /210.0 @:127}, with or without a stamp in front. A line may hold one value only; lines are then
 * put together until a name comes again.
 */
final class KeyValueLines {

  /** A value behind a slash is what a controller aims at. */
  private static final Pattern PAIR =
      Pattern.compile(
          "((?:(?<![\\p{L}\\d])(?=\\d*\\p{L})(?=[\\dA-Fa-f]{8})\\d{1,4})?[\\p{L}@_][\\p{L}\\p{N} _.\\-#%°()\\[\\]/]{0,40}?|@)\\s*(?:[=:]|->|=>)\\s*"
              + "([-+]?\\d+(?:[.,]\\d+)?(?:[eE][-+]?\\d+)?|(?i:nan|ol|open|on|off|true|false|err|error|null|n/a|-{2,})\\b)"
              + "(?![\\p{L}\\d]*[:.]\\d)"
              + "\\s?(°\\s?[CFcf]|ºC|[%CFKVWAs](?![\\p{L}\\d_=:]|\\s*[=:])|kWh|Wh|kW|mV|ms|deg ?[CF]|sec|min)?"
              + "(?:\\s*/\\s*([-+]?\\d+(?:\\.\\d+)?))?");

  private static final Pattern STAMP =
      Pattern.compile(
          "^\\W*?((?:\\d{1,4}[-/.]\\d{1,2}[-/.]\\d{1,4}[T ,_-]+)?\\d{1,2}:\\d{2}(?::\\d{2})?(?:[.,:]\\d+)?"
              + "(?:\\s?[AaPp][Mm])?(?:Z|[+-]\\d{2}:?\\d{2})?)(?=[\\s\\],;>|)\\-]|: |$)");

  private static final Pattern LEADING_NUMBER =
      Pattern.compile(
          "^\\s*(?:[IWEDV] )?[\\[(]?\\s*(\\d+(?:\\.\\d+)?)\\s*(ms|s)?[\\])]?\\s*[:,;|\\- ]\\s*(?=[\\p{L}@])");

  private KeyValueLines() {}

  /** 1773480600000000000 at the end of a line, as databases of series write it. */
  private static final Pattern TRAILING_EPOCH =
      Pattern.compile("\\s(1\\d{9}(?:\\d{3}|\\d{6}|\\d{9})?)\\s*$");

  /** The stamp of a line, as pairs of its own, and what is left. */
  record Stamped(Map<String, String> pairs, String rest) {}

  /** A date with its clock that stands behind a name of its own or of its program. */
  private static final Pattern INNER_STAMP =
      Pattern.compile(
          "(?<![\\d\\p{L}])(\\d{4}[-/]\\d\\d[-/]\\d\\d[T ]\\d\\d:\\d\\d:\\d\\d(?:[.,]\\d+)?(?:Z|[+-]\\d\\d:?\\d\\d)?)(?![\\d:])");

  private static final Pattern OWN_NAME =
      Pattern.compile("[\\p{L}_]*(?i:time|date|stamp|ts|zeit|when)[\\p{L}_]*\\s*[=:]\\s*[\"']?$");

  static Stamped stamped(String line) {
    Matcher stamp = STAMP.matcher(line);
    if (stamp.find()) {
      return new Stamped(Map.of("time", stamp.group(1)), line.substring(stamp.end()));
    }
    StampedLine named = StampedLine.namedMonth(line);
    if (named != null) {
      return new Stamped(Map.of("time", named.stamp()), named.rest());
    }
    Matcher leading = LEADING_NUMBER.matcher(line);
    if (leading.find()) {
      return new Stamped(
          Map.of(leadingName(line, leading), leading.group(1)), line.substring(leading.end()));
    }
    Matcher inner = INNER_STAMP.matcher(line.length() > 400 ? line.substring(0, 400) : line);
    if (inner.find()) {
      String before =
          OWN_NAME
              .matcher(line.substring(0, inner.start()))
              .replaceFirst("")
              .replaceFirst("^\\s*<[\\p{L}\\d_:]+\\s*$", "");
      return new Stamped(
          Map.of("time", inner.group(1)), before + " " + line.substring(inner.end()));
    }
    Matcher trailing = TRAILING_EPOCH.matcher(line);
    if (trailing.find()) {
      return new Stamped(Map.of("time", trailing.group(1)), line.substring(0, trailing.start()));
    }
    return new Stamped(Map.of(), line);
  }

  /** Fractions in brackets are seconds since the machine started, behind a level milliseconds. */
  private static String leadingName(String line, Matcher leading) {
    boolean bracketed = line.stripLeading().startsWith("[") && leading.group(1).contains(".");
    boolean level = Character.isLetter(line.stripLeading().charAt(0));
    String unit = leading.group(2) == null ? bracketed ? "s" : level ? "ms" : "" : leading.group(2);
    return unit.isEmpty() ? "time" : "time (" + unit + ")";
  }

  /** Named values of one line; empty when it holds none. */
  static Map<String, String> parse(String line) {
    Stamped stamped = stamped(line);
    Map<String, String> pairs = new LinkedHashMap<>(stamped.pairs);
    addPairs(stamped.rest.replace("\"", "").replace("{", "").replace("}", ""), pairs);
    boolean ownLine = stamped.rest.matches("[-\\s,\"']*") && line.matches("[-\\s\"']*\\p{L}.*");
    return pairs.size() == stamped.pairs.size() && !ownLine ? Map.of() : pairs;
  }

  private static void addPairs(String rest, Map<String, String> pairs) {
    Matcher pair = PAIR.matcher(rest);
    while (pair.find()) {
      String key = key(pair.group(1));
      String unit = pair.group(3) == null ? "" : pair.group(3);
      if (key.isEmpty() || pairs.size() > 200) {
        continue;
      }
      pairs.putIfAbsent(unique(key, pairs), pair.group(2) + unit);
      if (pair.group(4) != null) {
        pairs.putIfAbsent(key + " set-point", pair.group(4) + unit);
      }
    }
  }

  private static String unique(String key, Map<String, String> pairs) {
    return key.equals("time") && pairs.containsKey("time") ? "time 2" : key;
  }

  /** "ok T" and "INFO Temp" are T and Temp. */
  private static String key(String text) {
    String bare = bareKey(text);
    return bare.matches("[CF]") ? "°" + bare : bare.replaceFirst("\\s+(is|was|are)$", "");
  }

  private static String bareKey(String text) {
    return text.strip()
        .replaceFirst("^(?i:ok|info|debug|data|warn|log|reading|\\[?info\\]?)\\s+", "")
        .replaceAll("^[\\-.]+|[\\-.]+$", "")
        .strip();
  }

  /** Rows and the names of their columns. */
  record Rows(List<String> names, List<String[]> rows, int skipped) {}

  /** Share of lines that hold named values. */
  static double share(List<String> lines) {
    int pairs = 0;
    int filled = 0;
    for (String line : lines) {
      if (!line.isBlank()) {
        filled++;
        pairs += parse(line).isEmpty() ? 0 : 1;
      }
    }
    return filled == 0 ? 0 : (double) pairs / filled;
  }

  /** Puts lines together to rows; null when fewer than two rows come of it. */
  static @Nullable Rows read(List<String> lines) {
    List<Map<String, String>> all = new ArrayList<>();
    int skipped = 0;
    for (String line : lines) {
      Map<String, String> pairs = parse(line);
      if (pairs.isEmpty()) {
        skipped += line.isBlank() ? 0 : 1;
      } else {
        all.add(pairs);
      }
    }
    return together(MomentLines.oneStamp(all), skipped);
  }

  /** One row of neighbours that carry one stamp, or none, until a name comes again. */
  static @Nullable Rows together(List<Map<String, String>> lines, int skipped) {
    Map<String, Integer> columns = new LinkedHashMap<>();
    List<Map<String, String>> rows = new ArrayList<>();
    Map<String, String> open = new LinkedHashMap<>();
    for (Map<String, String> pairs : lines) {
      if (isNext(open, pairs)) {
        rows.add(open);
        open = new LinkedHashMap<>();
      }
      open.putAll(pairs);
      pairs.keySet().forEach(k -> columns.putIfAbsent(k, columns.size()));
    }
    if (!open.isEmpty()) {
      rows.add(open);
    }
    List<String> names = regular(columns, rows);
    List<String[]> cells = new ArrayList<>();
    for (Map<String, String> row : rows) {
      String[] array = names.stream().map(n -> row.getOrDefault(n, "")).toArray(String[]::new);
      boolean filled = java.util.Arrays.stream(array).anyMatch(s -> !s.isEmpty());
      if (filled) {
        cells.add(array);
      }
    }
    return names.isEmpty() || cells.size() < 2 ? null : new Rows(names, cells, skipped);
  }

  private static boolean isNext(Map<String, String> open, Map<String, String> pairs) {
    for (Map.Entry<String, String> pair : pairs.entrySet()) {
      String known = open.get(pair.getKey());
      boolean sameStamp = pair.getKey().startsWith("time") && pair.getValue().equals(known);
      if (known != null && !sameStamp) {
        return true;
      }
    }
    return false;
  }

  /** Names that come only once or twice belong to messages, not to the record. */
  private static List<String> regular(
      Map<String, Integer> columns, List<Map<String, String>> rows) {
    List<String> names = new ArrayList<>();
    for (String name : columns.keySet()) {
      long times = rows.stream().filter(r -> r.containsKey(name)).count();
      if (times >= Math.max(2, 0.02 * rows.size()) || rows.size() < 4) {
        names.add(name);
      }
    }
    return names;
  }
}
