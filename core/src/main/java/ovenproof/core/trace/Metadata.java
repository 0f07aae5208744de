package ovenproof.core.trace;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * What the lines before the table say.
 *
 * @param entries as written, in order
 */
record Metadata(Map<String, String> entries) {

  private static final Pattern ENTRY =
      Pattern.compile("^[#;%!/\"'\\s]*([^:=,;\\t]{2,60}?)\\s*[:=,;\\t]\\s*\"?(.+?)\"?[,;\\t\\s]*$");
  private static final Pattern FREQUENCY = Pattern.compile("([\\d.]+) ?(hz|samples?/s|/s)");
  private static final Pattern SPAN =
      Pattern.compile(
          "([\\d.,]+) ?(ms|msec|milliseconds?|s|sec|secs|seconds?|sekunden?|min|mins|minutes?|minuten|h|hours?)?\\b.*");

  static Metadata of(List<String> lines) {
    Map<String, String> entries = new LinkedHashMap<>();
    for (String line : lines) {
      Matcher m = ENTRY.matcher(line);
      if (m.matches() && entries.size() < 100) {
        entries.putIfAbsent(m.group(1).strip(), m.group(2).strip());
      }
    }
    return new Metadata(entries);
  }

  /** Distance of rows in seconds, null when it is not written. */
  @Nullable Double intervalSeconds() {
    for (Map.Entry<String, String> e : entries.entrySet()) {
      String key = e.getKey().toLowerCase(Locale.ROOT);
      boolean interval =
          key.matches(
              ".*(interval|intervall|sampling|sample ?(rate|period|time)|scan ?rate|log ?(rate|period)|logging rate|rate|period|abtast|cadence|timestep|time ?step|messrate|intervalo|delta ?t|delta_x).*");
      if (interval) {
        Double seconds = span(key, e.getValue().toLowerCase(Locale.ROOT).strip());
        if (seconds != null && seconds > 0) {
          return seconds;
        }
      }
    }
    return null;
  }

  private static @Nullable Double span(String key, String value) {
    Matcher frequency = FREQUENCY.matcher(value);
    if (frequency.find()) {
      return 1 / Double.parseDouble(frequency.group(1));
    }
    TimeText time = new TimeText();
    if (time.parse(value) == TimeText.Kind.CLOCK) {
      return time.durationSeconds;
    }
    Matcher span = SPAN.matcher(value);
    if (!span.matches()) {
      return null;
    }
    String number = span.group(1).replace(',', '.');
    if (!number.matches("\\d+(\\.\\d+)?|\\.\\d+")) {
      return null;
    }
    double n = Double.parseDouble(number);
    String unit = span.group(2) == null ? unitInKey(key) : span.group(2);
    UnitText known = UnitText.wordOrLetter(unit);
    return known == null || !known.isTime() ? null : known.contract(n);
  }

  private static String unitInKey(String key) {
    if (key.matches(".*\\b(ms|msec|millis.*)\\b.*")) {
      return "ms";
    }
    return key.matches(".*\\b(min|minutes?)\\b.*") ? "min" : key.contains("hz") ? "" : "s";
  }

  /** Unit of all temperatures, null when it is not written. */
  @Nullable UnitText temperatureUnit() {
    for (Map.Entry<String, String> e : entries.entrySet()) {
      String key = e.getKey().toLowerCase(Locale.ROOT);
      if (key.contains("unit")
          || key.contains("einheit")
          || key.matches("scale|temperature scale")) {
        for (String part : e.getValue().split("[,;/ ]+")) {
          UnitText unit = UnitText.wordOrLetter(part.replaceAll("[()\\[\\]]", ""));
          if (unit != null && unit.isTemperature()) {
            return unit;
          }
        }
      }
    }
    return null;
  }

  /** A stamp that says when the record started, as written; null when there is none. */
  @Nullable String start() {
    TimeText time = new TimeText();
    String date = null;
    String clock = null;
    for (Map.Entry<String, String> e : entries.entrySet()) {
      String key = e.getKey().toLowerCase(Locale.ROOT);
      TimeText.Kind kind = time.parse(e.getValue());
      boolean starts =
          key.matches(".*(start|begin|first|record(ed)?|trigger|logged|inicio|debut|début).*");
      if (kind == TimeText.Kind.DATE_AND_CLOCK && starts) {
        return e.getValue();
      }
      boolean plain = starts || key.matches(".*(date|datum|fecha|data|time|zeit).*");
      if (kind == TimeText.Kind.DATE && plain && date == null) {
        date = e.getValue();
      } else if (kind == TimeText.Kind.CLOCK && plain && clock == null) {
        clock = e.getValue();
      } else if (kind == TimeText.Kind.DATE_AND_CLOCK && plain && date == null) {
        return e.getValue();
      }
    }
    return date == null ? null : clock == null ? date : date + " " + clock;
  }

  /** A set-point that holds for the whole record, as written; null when there is none. */
  @Nullable String setPoint() {
    for (Map.Entry<String, String> e : entries.entrySet()) {
      String key = e.getKey().toLowerCase(Locale.ROOT);
      boolean set =
          key.matches(
              ".*(set ?-?point|setting|target|dial|sollwert|soll|consigne)( temp(erature)?)?( ?[(\\[].*)?");
      if (set && e.getValue().matches("[-+]?\\d+([.,]\\d+)?\\s*(°|º|deg)?\\s*[CFcf]?")) {
        String unit = HeaderText.of(e.getKey()).unit() == null ? "" : " " + unitLetter(e.getKey());
        return e.getValue() + (e.getValue().matches(".*[CFcf]") ? "" : unit);
      }
    }
    return null;
  }

  private static String unitLetter(String key) {
    UnitText unit = HeaderText.of(key).unit();
    return unit != null && unit.isTemperature() ? unit.unit().symbol() : "";
  }
}
