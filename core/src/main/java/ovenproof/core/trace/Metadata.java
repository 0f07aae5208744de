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
  private static final Pattern FREQUENCY =
      Pattern.compile(
          "([\\d.]+) ?(?:hz|(?:samples?|readings?|scans?)? ?(?:/|per) ?(s|sec|second|m|min|minute|h|hour)\\b)");
  private static final Pattern SPAN =
      Pattern.compile(
          "([\\d.,]+(?:e[-+]?\\d+)?) ?(ms|msec|milliseconds?|s|sec|secs|seconds?|sekunden?|min|mins|minutes?|minuten|h|hours?)?\\b.*");

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
              ".*(interval|intervall|sampling|sample ?(rate|period|time)|scan ?rate|log ?(rate|period)|logging rate|rate|period|abtast|cadence|timestep|time ?step|messrate|intervalo|intervalle|delta ?t|delta_x|increment|zeitschritt|schrittweite|spacing|Δt).*");
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
      UnitText unit = frequency.group(2) == null ? null : UnitText.wordOrLetter(frequency.group(2));
      return (unit == null ? 1 : unit.contract(1)) / Double.parseDouble(frequency.group(1));
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
    if (!number.matches("(\\d+(\\.\\d*)?|\\.\\d+)(e[-+]?\\d+)?")) {
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

  /** Unit of readings that have no name, as oscilloscopes write it; null when it is not written. */
  @Nullable UnitText readingUnit() {
    for (Map.Entry<String, String> e : entries.entrySet()) {
      if (e.getKey().toLowerCase(Locale.ROOT).matches("(vertical|y)[ _-]?units?([ _-]?label)?")) {
        return UnitText.wordOrLetter(e.getValue());
      }
    }
    return null;
  }

  /** A thermocouple's letter, a range or a switch: no name of a place. */
  private static final Pattern SETTING =
      Pattern.compile(
          "(?i)(type[ -]?)?[JKTNRSBE]([ -]?type)?|tc.*|pt ?\\d+|on|off|[-+]?\\d.*|temp\\w*|.*range.*");

  /** The table with what the lines before it say of its columns: CH1, Oven centre, degC. */
  RawTable describing(RawTable table) {
    List<HeaderText> headers = new java.util.ArrayList<>();
    for (HeaderText header : table.headers()) {
      String said = header.name().isBlank() ? null : entry(header.name());
      headers.add(said == null || !header.isInputName() ? header : described(header, said));
    }
    return new RawTable(
        headers,
        table.kinds(),
        table.values(),
        table.stamps(),
        table.suffixes(),
        table.labels(),
        table.missingWords(),
        table.skipped());
  }

  private @Nullable String entry(String key) {
    return entries.entrySet().stream()
        .filter(e -> e.getKey().equalsIgnoreCase(key))
        .map(Map.Entry::getValue)
        .findFirst()
        .orElse(null);
  }

  private static HeaderText described(HeaderText header, String said) {
    UnitText unit = header.unit();
    String place = "";
    for (String part : said.split("[,;\\t]")) {
      String text = part.strip().replaceAll("^\"|\"$", "");
      UnitText known = UnitText.wordOrLetter(text.replaceAll("[()\\[\\]]", ""));
      unit = unit == null ? known : unit;
      boolean name =
          known == null && text.matches("\\p{L}.{1,40}") && !SETTING.matcher(text).matches();
      place = place.isEmpty() && name ? text : place;
    }
    HeaderText named = HeaderText.of(place.isEmpty() ? header.name() : header.name() + " " + place);
    UnitText own = named.unit() == null ? unit : named.unit();
    return new HeaderText(header.written(), named.name(), own, named.words());
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
