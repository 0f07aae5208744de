package ovenproof.core.trace;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Unit;

/**
 * The units that loggers write: with damaged degree signs, in brackets, in several languages.
 *
 * @param unit as the quantities know it
 * @param scale factor on top, for units finer than those (µs, mV, mA, mW)
 */
record UnitText(Unit unit, double scale) {

  private static final Map<String, UnitText> WORDS = new HashMap<>();

  static {
    add(
        Unit.CELSIUS,
        1,
        "°c",
        "degc",
        "deg c",
        "degreesc",
        "degrees c",
        "degree c",
        "celsius",
        "centigrade",
        "degcelsius",
        "degrees celsius",
        "degree celsius",
        "℃",
        "gradc",
        "grad c",
        "°celsius",
        "graus c",
        "grados c",
        "摄氏度",
        "oc",
        "°с",
        "degree_c",
        "degrees_c",
        "deg_c",
        "cel",
        "grader c",
        "℃.",
        "deg. c",
        "deg.c",
        "°c.");
    add(
        Unit.FAHRENHEIT,
        1,
        "°f",
        "degf",
        "deg f",
        "degreesf",
        "degrees f",
        "degree f",
        "fahrenheit",
        "degfahrenheit",
        "degrees fahrenheit",
        "degree fahrenheit",
        "℉",
        "of",
        "degree_f",
        "degrees_f",
        "deg_f",
        "deg. f",
        "deg.f",
        "°fahrenheit");
    add(Unit.KELVIN_ABSOLUTE, 1, "kelvin", "°k", "degk", "deg k");
    add(
        Unit.SECOND,
        1,
        "sec",
        "secs",
        "second",
        "seconds",
        "sekunden",
        "sekunde",
        "sek",
        "segundos",
        "segundo",
        "secondes",
        "seconde",
        "secondi",
        "seconden",
        "sekund",
        "秒",
        "сек",
        "초");
    add(
        Unit.MILLISECOND,
        1,
        "ms",
        "msec",
        "msecs",
        "millis",
        "millisecond",
        "milliseconds",
        "millisec",
        "millisekunden",
        "毫秒");
    add(Unit.SECOND, 1e-6, "us", "µs", "μs", "usec", "micros", "microseconds", "microsecond");
    add(Unit.SECOND, 1e-9, "ns", "nanos", "nanoseconds");
    add(
        Unit.MINUTE,
        1,
        "min",
        "mins",
        "minute",
        "minutes",
        "minuten",
        "minutos",
        "minuti",
        "分",
        "мин");
    add(Unit.HOUR, 1, "hr", "hrs", "hour", "hours", "stunden", "std", "heures", "horas", "ore");
    add(Unit.HOUR, 24, "day", "days", "tage", "jours", "dias");
    add(Unit.WATT, 1, "watt", "watts", "вт", "瓦");
    add(Unit.WATT, 1e-3, "mw", "milliwatts");
    add(Unit.KILOWATT, 1, "квт", "kw", "kilowatt", "kilowatts");
    add(
        Unit.KILOWATT_HOUR,
        1,
        "квт·ч",
        "квтч",
        "kwh",
        "kw-h",
        "kw·h",
        "kw h",
        "kilowatthours",
        "kilowatt hours");
    add(Unit.WATT_HOUR, 1, "wh", "watthours", "watt hours", "w·h", "w-h");
    add(Unit.JOULE, 1, "joule", "joules");
    add(Unit.KILOJOULE, 1, "kj");
    add(Unit.KILOJOULE, 1000, "mj");
    add(Unit.VOLT, 1, "volt", "volts", "vac", "vrms", "v ac", "vdc", "v rms", "vac rms");
    add(Unit.VOLT, 1e-3, "mv", "millivolt", "millivolts");
    add(Unit.AMPERE, 1, "amp", "amps", "ampere", "amperes", "arms", "a rms", "aac", "a ac");
    add(Unit.AMPERE, 1e-3, "ma", "milliamp", "milliamps");
    add(Unit.HERTZ, 1, "hz", "hertz");
    add(
        Unit.PERCENT,
        1,
        "%",
        "percent",
        "pct",
        "%rh",
        "% rh",
        "rh%",
        "rh",
        "prozent",
        "%r.h.",
        "% r.h.");
    add(Unit.GRAM, 1, "gram", "grams");
    add(Unit.KILOGRAM, 1, "kg");
    add(Unit.KELVIN_PER_MINUTE, 1, "°c/min", "c/min", "k/min", "degc/min");
    add(Unit.KELVIN_PER_SECOND, 1, "°c/s", "c/s", "k/s");
  }

  private static final Map<String, UnitText> LETTERS =
      Map.ofEntries(
          Map.entry("C", new UnitText(Unit.CELSIUS, 1)),
          Map.entry("F", new UnitText(Unit.FAHRENHEIT, 1)),
          Map.entry("K", new UnitText(Unit.KELVIN_ABSOLUTE, 1)),
          Map.entry("c", new UnitText(Unit.CELSIUS, 1)),
          Map.entry("f", new UnitText(Unit.FAHRENHEIT, 1)),
          Map.entry("k", new UnitText(Unit.KELVIN_ABSOLUTE, 1)),
          Map.entry("s", new UnitText(Unit.SECOND, 1)),
          Map.entry("S", new UnitText(Unit.SECOND, 1)),
          Map.entry("m", new UnitText(Unit.MINUTE, 1)),
          Map.entry("h", new UnitText(Unit.HOUR, 1)),
          Map.entry("H", new UnitText(Unit.HOUR, 1)),
          Map.entry("d", new UnitText(Unit.HOUR, 24)),
          Map.entry("W", new UnitText(Unit.WATT, 1)),
          Map.entry("w", new UnitText(Unit.WATT, 1)),
          Map.entry("J", new UnitText(Unit.JOULE, 1)),
          Map.entry("V", new UnitText(Unit.VOLT, 1)),
          Map.entry("v", new UnitText(Unit.VOLT, 1)),
          Map.entry("A", new UnitText(Unit.AMPERE, 1)),
          Map.entry("a", new UnitText(Unit.AMPERE, 1)),
          Map.entry("g", new UnitText(Unit.GRAM, 1)));

  private static void add(Unit unit, double scale, String... words) {
    for (String word : words) {
      WORDS.put(word, new UnitText(unit, scale));
    }
  }

  /** A word of two letters or more, or a degree sign with its letter; null when it is no unit. */
  static @Nullable UnitText word(String text) {
    return WORDS.get(fold(text));
  }

  /** Single letters too: only where nothing but a unit can stand. */
  static @Nullable UnitText wordOrLetter(String text) {
    UnitText word = word(text);
    if (word != null) {
      return word;
    }
    return LETTERS.get(text.strip());
  }

  /** Degree signs that survived a wrong encoding become one; blanks and case are levelled. */
  static String fold(String text) {
    String levelled = text.strip();
    return isPlain(levelled) ? levelled.toLowerCase(Locale.ROOT) : folded(levelled);
  }

  private static boolean isPlain(String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c <= ' ' || c > '~') {
        return false;
      }
    }
    return true;
  }

  private static String folded(String text) {
    return text.replace("\u00c2\u00b0", "°")
        .replace("\u00ef\u00bf\u00bd", "°")
        .replace('\u00ba', '°')
        .replace('\u02da', '°')
        .replace('\u2103', '℃')
        .replace('\ufffd', '°')
        .replace('\u00f8', '°')
        .replace('\u00a1', '°') // MacRoman read as Latin-1, and the reverse
        .replace('\u221e', '°')
        .replace('\uff70', '°')
        .replace("° ", "°")
        .replaceAll("\\s+", " ")
        .toLowerCase(Locale.ROOT);
  }

  boolean isTime() {
    return unit.contractUnit() == Unit.SECOND;
  }

  boolean isTemperature() {
    return unit.contractUnit() == Unit.CELSIUS;
  }

  double contract(double value) {
    return ovenproof.core.quantity.Quantity.of(value * scale, unit).contract();
  }
}
