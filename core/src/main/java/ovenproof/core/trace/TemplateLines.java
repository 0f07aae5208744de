package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Sentences that repeat with other numbers in them, as programs write for people: {@code [12.50]
 * temp 23.5 degC}, {@code 'Oven': Sending state 21.5 °C}. The words before a number are its name;
 * numbers that never change are part of the sentence.
 */
final class TemplateLines {

  private static final Pattern NUMBER =
      Pattern.compile(
          "(?<![\\p{L}\\d_.,])[-+]?\\d+(?:[.,]\\d+)?(?:[eE][-+]?\\d+)?(?![\\d_]|[.,:]\\d)");
  private static final Pattern UNIT =
      Pattern.compile(
          "^\\s*(°\\s?[CFcf]|º\\s?[CF]|℃|℉|(?i:deg(?:rees?)?\\.?\\s?[CF](?:elsius)?|celsius|fahrenheit)"
              + "|kWh|Wh|kW|mV|ms|%|[CFKVWA](?![\\p{L}\\d]))");
  private static final Pattern QUOTED = Pattern.compile("['\"“]([^'\"”]{1,60})['\"”]");
  private static final Set<String> FILLING =
      Set.of(
          "is",
          "was",
          "sending",
          "state",
          "reading",
          "reads",
          "read",
          "value",
          "measured",
          "with",
          "of",
          "the",
          "now",
          "got",
          "to",
          "a",
          "info",
          "debug",
          "d",
          "i",
          "v",
          "w",
          "warn",
          "at",
          "new",
          "current",
          "and",
          "received",
          "sensor",
          "data",
          "log",
          "ok",
          "main",
          "in",
          "are");
  private static final int MOST_NUMBERS = 64;

  private TemplateLines() {}

  /** One line taken apart. */
  private record Parsed(Map<String, String> stamp, String form, List<Slot> slots) {}

  private record Slot(String name, String value, String unit) {}

  /** Null when fewer than half of the lines repeat a sentence with a number that changes. */
  static KeyValueLines.@Nullable Rows read(List<String> lines) {
    List<Parsed> all = new ArrayList<>();
    Map<String, List<Parsed>> byForm = new LinkedHashMap<>();
    int filled = 0;
    for (String line : lines) {
      if (!line.isBlank() && line.length() < 4000) {
        filled++;
        Parsed parsed = parse(line);
        if (!parsed.slots.isEmpty()) {
          all.add(parsed);
          byForm.computeIfAbsent(parsed.form, f -> new ArrayList<>()).add(parsed);
        }
      }
    }
    Map<String, boolean[]> kept = new LinkedHashMap<>();
    int covered = 0;
    for (Map.Entry<String, List<Parsed>> form : byForm.entrySet()) {
      boolean[] changing = changing(form.getValue());
      if (form.getValue().size() >= Math.max(3, 0.02 * filled) && any(changing)) {
        kept.put(form.getKey(), changing);
        covered += form.getValue().size();
      }
    }
    if (covered < 0.5 * filled || covered < 3) {
      return null;
    }
    List<Map<String, String>> named = new ArrayList<>();
    for (Parsed parsed : all) {
      boolean[] changing = kept.get(parsed.form);
      if (changing != null) {
        named.add(pairs(parsed, changing));
      }
    }
    return KeyValueLines.together(named, filled - covered);
  }

  private static boolean any(boolean[] flags) {
    for (boolean flag : flags) {
      if (flag) {
        return true;
      }
    }
    return false;
  }

  private static Parsed parse(String line) {
    KeyValueLines.Stamped stamped = KeyValueLines.stamped(line);
    String rest = stamped.rest();
    Matcher number = NUMBER.matcher(rest);
    StringBuilder form = new StringBuilder();
    List<Slot> slots = new ArrayList<>();
    int from = 0;
    while (number.find() && slots.size() < MOST_NUMBERS) {
      String words = rest.substring(from, number.start());
      form.append(words).append('\u0001');
      Matcher unit = UNIT.matcher(rest.substring(number.end()));
      String unitText = unit.find() ? unit.group(1) : "";
      slots.add(new Slot(name(words), number.group(), unitText));
      from = number.end();
    }
    form.append(rest.substring(from));
    return new Parsed(stamped.pairs(), form.toString(), slots);
  }

  private static String name(String words) {
    Matcher quoted = QUOTED.matcher(words);
    String text = words;
    while (quoted.find()) {
      text = quoted.group(1);
    }
    String bare =
        text.replaceAll("\\[[^\\]]*\\]?|\\([^)]*\\)|<[^>]*>", " ")
            .replaceAll("[^\\p{L}\\d°%_. -]+", " ");
    List<String> kept = new ArrayList<>();
    for (String word : bare.strip().split("\\s+")) {
      boolean filling = FILLING.contains(word.toLowerCase(Locale.ROOT));
      if (!filling && word.matches(".*\\p{L}.*") && !UNIT.matcher(word).matches()) {
        kept.add(word);
      }
    }
    return String.join(" ", kept.subList(Math.max(0, kept.size() - 4), kept.size()));
  }

  /** Numbers that differ between the lines of one form. */
  private static boolean[] changing(List<Parsed> lines) {
    boolean[] changing = new boolean[lines.get(0).slots.size()];
    for (Parsed line : lines) {
      for (int s = 0; s < changing.length; s++) {
        Slot slot = line.slots.get(s);
        changing[s] |= !slot.value.equals(lines.get(0).slots.get(s).value);
      }
    }
    return changing;
  }

  private static Map<String, String> pairs(Parsed parsed, boolean[] changing) {
    Map<String, String> pairs = new LinkedHashMap<>(parsed.stamp);
    for (int s = 0; s < changing.length; s++) {
      Slot slot = parsed.slots.get(s);
      boolean constant = !changing[s] && slot.unit.isEmpty();
      if (!constant) {
        String name = slot.name.isEmpty() ? "value" : slot.name;
        String unique = name;
        for (int n = 2; pairs.containsKey(unique); n++) {
          unique = name + " " + n;
        }
        pairs.put(unique, slot.value + slot.unit);
      }
    }
    return pairs;
  }
}
