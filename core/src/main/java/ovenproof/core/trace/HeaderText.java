package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * What the header of one column says.
 *
 * @param written as it stands in the file
 * @param name without its unit
 * @param unit null when none is written
 * @param words lower-case words of the name, split at case changes, digits and signs
 */
record HeaderText(String written, String name, @Nullable UnitText unit, List<String> words) {

  private static final Pattern BRACKETS =
      Pattern.compile("[(\\[{<]\\s*([^()\\[\\]{}<>]*?)\\s*[)\\]}>]");
  private static final Pattern LAST_PART =
      Pattern.compile("^(.*?\\S)\\s*([,;/:_|\\- ]|\\bin\\b)\\s*([^,;/:_|\\- ]+(?: ?[CFcf])?)$");

  static final Set<String> TIME =
      Set.of(
          "time",
          "zeit",
          "uhrzeit",
          "hora",
          "heure",
          "temps",
          "tijd",
          "ora",
          "tempo",
          "tid",
          "czas",
          "aika",
          "timestamp",
          "datetime",
          "stamp",
          "elapsed",
          "seconds",
          "second",
          "sec",
          "secs",
          "millis",
          "ms",
          "xvalue",
          "minutes",
          "epoch",
          "unix",
          "unixtime",
          "时间",
          "時間",
          "時刻",
          "время",
          "uptime",
          "runtime",
          "duration",
          "clock",
          "ts",
          "laufzeit",
          "zeitstempel",
          "tiempo",
          "time_ms",
          "sekunden",
          "msec",
          "horodatage",
          "čas",
          "tijdstip",
          "tidspunkt",
          "klokkeslæt",
          "klokkeslett",
          "klockslag",
          "tidpunkt",
          "kello",
          "kellonaika",
          "godzina",
          "saat",
          "시간",
          "시각",
          "zeitpunkt",
          "日時",
          "час",
          "ώρα",
          "orario",
          "jam",
          "heureutc",
          "zaman",
          "óra",
          "timp",
          "ชั่วโมง",
          "idő");
  static final Set<String> DATE =
      Set.of(
          "date",
          "datum",
          "fecha",
          "data",
          "日期",
          "дата",
          "dato",
          "päivä",
          "day",
          "날짜",
          "日付",
          "tarih",
          "päivämäärä",
          "ημερομηνία",
          "fechahora",
          "dátum",
          "dag");
  static final Set<String> INDEX =
      Set.of(
          "index", "no", "nr", "num", "number", "sample", "samples", "scan", "record", "row", "id",
          "count", "counter", "#", "idx", "messung", "序号", "point", "entry", "lfd", "line", "seq",
          "n", "reading", "step_no", "№", "sno", "item");
  static final Set<String> SET_POINT =
      Set.of(
          "set",
          "setpoint",
          "setpt",
          "setp",
          "sp",
          "sv",
          "target",
          "soll",
          "sollwert",
          "consigne",
          "desired",
          "setting",
          "goal",
          "requested",
          "settemp",
          "targettemp",
          "setto",
          "consigna",
          "setpoints",
          "tset",
          "tsoll",
          "demand",
          "commanded",
          "ziel",
          "zieltemperatur",
          "设定",
          "设定值",
          "设定温度",
          "目标温度",
          "設定",
          "設定温度",
          "目标",
          "目標温度",
          "børverdi",
          "børværdi",
          "börvärde",
          "asetus",
          "gewenst",
          "zadana",
          "zadaná",
          "žádaná",
          "nastaveno",
          "уставка",
          "설정온도");
  static final Set<String> DUTY =
      Set.of(
          "duty",
          "output",
          "out",
          "pwm",
          "drive",
          "op",
          "mv",
          "cv",
          "dutycycle",
          "ssr",
          "pid",
          "stellgrad",
          "level",
          "throttle",
          "powerpct");
  static final Set<String> SWITCH =
      Set.of(
          "relay",
          "heater",
          "element",
          "elements",
          "door",
          "fan",
          "heat",
          "heating",
          "switch",
          "on",
          "burner",
          "contactor",
          "heizung",
          "relais",
          "light",
          "lamp",
          "top",
          "bottom");
  static final Set<String> STATUS =
      Set.of(
          "state",
          "status",
          "stage",
          "mode",
          "phase",
          "step",
          "segment",
          "program",
          "event",
          "note",
          "notes",
          "comment",
          "comments",
          "alarm",
          "error",
          "fault",
          "marker",
          "message",
          "flags",
          "flag",
          "remark",
          "zustand",
          "bemerkung",
          "profile",
          "alarms",
          "msg",
          "err",
          "errors",
          "warn",
          "warning",
          "stat");
  static final Set<String> TEMPERATURE =
      Set.of(
          "temp",
          "temps",
          "temperature",
          "temperatures",
          "temperatur",
          "température",
          "temperatura",
          "tc",
          "thermocouple",
          "probe",
          "rtd",
          "pt",
          "thermo",
          "therm",
          "pv",
          "celsius",
          "fahrenheit",
          "lämpötila",
          "温度",
          "температура",
          "thermistor",
          "ntc",
          "oven",
          "kiln",
          "pit",
          "grill",
          "smoker",
          "toaster",
          "fryer",
          "airfryer",
          "griddle",
          "meat",
          "food",
          "core",
          "centre",
          "center",
          "ambient",
          "temperatuur",
          "air",
          "cavity",
          "chamber",
          "wall",
          "surface",
          "rack",
          "ist",
          "istwert",
          "actual",
          "measured",
          "process",
          "tmp",
          "deg",
          "degc",
          "degf",
          "tempc",
          "tempf",
          "bt",
          "et",
          "furnace",
          "teplota",
          "sıcaklık",
          "θερμοκρασία",
          "hőmérséklet",
          "온도",
          "気温",
          "temperature1",
          "temperatură",
          "temperatuurmeting",
          "ofen",
          "ovn",
          "ugn",
          "uuni",
          "trouba",
          "piec",
          "piekarnik",
          "печь",
          "печи",
          "духовка",
          "fırın",
          "cuptor",
          "four",
          "horno",
          "forno");
  static final Set<String> POWER =
      Set.of(
          "power",
          "watt",
          "watts",
          "leistung",
          "puissance",
          "potencia",
          "pwr",
          "wattage",
          "wirkleistung",
          "vermogen",
          "potenza",
          "功率",
          "電力",
          "effekt",
          "potência",
          "teho",
          "moc",
          "výkon",
          "мощность",
          "потужність",
          "güç",
          "전력",
          "消費電力",
          "putere",
          "teljesítmény",
          "ισχύς");
  static final Set<String> VOLTAGE =
      Set.of(
          "volt",
          "volts",
          "voltage",
          "mains",
          "spannung",
          "tension",
          "vac",
          "vrms",
          "line",
          "spanning",
          "tensione",
          "voltaje",
          "urms",
          "电压",
          "電圧",
          "tensão",
          "tensión",
          "spænding",
          "spenning",
          "spänning",
          "jännite",
          "napięcie",
          "napětí",
          "напряжение",
          "напруга",
          "gerilim",
          "전압",
          "feszültség",
          "tensiune",
          "τάση");
  static final Set<String> CURRENT =
      Set.of(
          "current",
          "amp",
          "amps",
          "ampere",
          "strom",
          "courant",
          "irms",
          "amperage",
          "stroom",
          "corriente",
          "电流",
          "電流",
          "corrente",
          "strøm",
          "ström",
          "virta",
          "prąd",
          "proud",
          "ток",
          "струм",
          "akım",
          "전류",
          "áram",
          "curent",
          "ρεύμα");
  static final Set<String> ENERGY =
      Set.of(
          "energy",
          "kwh",
          "wh",
          "energie",
          "consumption",
          "verbrauch",
          "énergie",
          "energia",
          "cumulative",
          "电量",
          "電力量",
          "energi",
          "energía",
          "энергия",
          "enerji",
          "전력량",
          "zużycie",
          "spotřeba",
          "kulutus",
          "forbruk",
          "förbrukning");
  static final Set<String> HUMIDITY =
      Set.of(
          "humidity",
          "rh",
          "humid",
          "hum",
          "feuchte",
          "luftfeuchtigkeit",
          "humidité",
          "humedad",
          "湿度",
          "rhum",
          "umidità",
          "umidade",
          "luftfeuchte",
          "fugtighed",
          "fugt",
          "luftfuktighet",
          "fuktighet",
          "fukt",
          "kosteus",
          "vocht",
          "luchtvochtigheid",
          "vochtigheid",
          "wilgotność",
          "vlhkost",
          "влажность",
          "вологість",
          "nem",
          "습도",
          "páratartalom",
          "umiditate",
          "υγρασία",
          "feuchtigkeit");
  static final Set<String> FREQUENCY = Set.of("freq", "frequency", "hz", "frequenz");
  static final Set<String> MASS =
      Set.of("mass", "weight", "gewicht", "masse", "poids", "peso", "gram", "grams", "scale");
  static final Set<String> AMBIENT =
      Set.of(
          "ambient",
          "room",
          "amb",
          "raum",
          "outside",
          "umgebung",
          "ambiant",
          "ambiante",
          "tamb",
          "ambiente",
          "environment",
          "kitchen",
          "raumtemperatur",
          "outdoor",
          "rum",
          "rom",
          "rumstemperatur",
          "romtemperatur",
          "huone",
          "kamer",
          "omgeving",
          "otoczenie",
          "otoczenia",
          "pokój",
          "okolí",
          "pokoj",
          "воздух",
          "воздуха",
          "комната",
          "oda",
          "실온",
          "室温",
          "pièce",
          "salle",
          "habitación",
          "stanza",
          "sala",
          "kamertemperatuur",
          "omgivning",
          "omgivelser",
          "innendørs",
          "inne");
  static final Set<String> COLD_JUNCTION =
      Set.of(
          "cj",
          "cjc",
          "junction",
          "board",
          "chip",
          "die",
          "mcu",
          "cpu",
          "vergleichsstelle",
          "logger",
          "coldjunction",
          "onboard",
          "device",
          "case",
          "pcb",
          "tcj",
          "tcold",
          "ptemp",
          "tref",
          "cjtemp",
          "coldend",
          "coldj");
  static final Set<String> CORE =
      Set.of(
          "core",
          "meat",
          "food",
          "kern",
          "kerntemperatur",
          "chicken",
          "roast",
          "coeur",
          "cœur",
          "thigh",
          "breast",
          "crumb",
          "loaf",
          "bread",
          "cake",
          "dough",
          "potato",
          "beef",
          "pork",
          "turkey",
          "fish",
          "egg",
          "product",
          "wing",
          "kjernetemperatur",
          "kärntemperatur",
          "kernetemperatur",
          "kerntemperatuur",
          "gargut");
  static final Set<String> CENTRE =
      Set.of(
          "centre",
          "center",
          "oven",
          "cavity",
          "chamber",
          "mitte",
          "pit",
          "grill",
          "smoker",
          "airfryer",
          "kiln",
          "middle",
          "garraum",
          "ofen",
          "pv",
          "main",
          "central",
          "four",
          "horno",
          "forno",
          "centro",
          "mid",
          "ofentemperatur",
          "ovn",
          "ugn",
          "uuni",
          "trouba",
          "trouby",
          "piec",
          "pieca",
          "piekarnik",
          "печь",
          "печи",
          "духовка",
          "духовки",
          "fırın",
          "cuptor",
          "炉内",
          "炉内温度",
          "오븐",
          "garraumtemperatur",
          "oventemperatuur",
          "ovntemperatur",
          "ugnstemperatur");

  /** Quantities that a logger may keep beside temperatures and that nothing here measures with. */
  static final Set<String> OTHER =
      Set.of(
          "pressure",
          "press",
          "baro",
          "barometer",
          "barometric",
          "bar",
          "hpa",
          "mbar",
          "kpa",
          "pa",
          "psi",
          "druck",
          "luftdruck",
          "luftdruk",
          "luftryck",
          "lufttryk",
          "pression",
          "presión",
          "pressione",
          "pressão",
          "ciśnienie",
          "tlak",
          "давление",
          "тиск",
          "paine",
          "nyomás",
          "気圧",
          "气压",
          "기압",
          "wind",
          "windspeed",
          "gust",
          "gusts",
          "rain",
          "rainfall",
          "regen",
          "niederschlag",
          "precip",
          "precipitation",
          "pluie",
          "lluvia",
          "lux",
          "illuminance",
          "luminosity",
          "brightness",
          "helligkeit",
          "uv",
          "solar",
          "irradiance",
          "co",
          "co2",
          "eco2",
          "tvoc",
          "voc",
          "iaq",
          "gas",
          "methane",
          "no2",
          "o2",
          "oxygen",
          "do",
          "ph",
          "orp",
          "tds",
          "ec",
          "conductivity",
          "salinity",
          "turbidity",
          "pm25",
          "pm10",
          "pm",
          "battery",
          "batt",
          "bat",
          "vbat",
          "batterie",
          "battv",
          "rssi",
          "snr",
          "lqi",
          "wifi",
          "linkquality",
          "altitude",
          "elevation",
          "ele",
          "latitude",
          "longitude",
          "lat",
          "lon",
          "lng",
          "gps",
          "rpm",
          "speed",
          "velocity",
          "flow",
          "flowrate",
          "torque",
          "force",
          "distance",
          "moisture",
          "heap",
          "memory",
          "uptimes",
          "pf",
          "lambda",
          "cosphi",
          "dir",
          "direction",
          "ppm",
          "dust",
          "noise",
          "sound",
          "accel",
          "gyro",
          "mag",
          "validity",
          "quality",
          "qc",
          "crc",
          "checksum",
          "version",
          "firmware",
          "station",
          "stationid",
          "serial",
          "sn",
          "resistance",
          "ohm",
          "ohms",
          "millisecond",
          "milliseconds",
          "year",
          "month",
          "hour",
          "minute",
          "jahr",
          "monat",
          "stunde");

  /** What a power factor is called. */
  static final Set<String> POWER_FACTOR =
      Set.of("pf", "powerfactor", "lambda", "cosphi", "cosφ", "leistungsfaktor");

  /** How readings scatter: not a reading itself. */
  static final Set<String> SCATTER =
      Set.of("std", "sd", "stdev", "stddev", "stderr", "sem", "variance", "sigma", "stdabw");

  static final Set<String> RATE =
      Set.of("rate", "ror", "slope", "deriv", "derivative", "delta", "ramp");

  private static final Pattern SCALE_BEFORE =
      Pattern.compile("[x×*]? ?(0[.,]0?1|1/100?) ?[x×*]? ?(\\D.{0,8})");
  private static final Pattern SCALE_BEHIND = Pattern.compile("(\\D{1,8}?) ?[x×*] ?(100?)");
  private static final Pattern PATH =
      Pattern.compile("\\p{L}[\\p{L}\\d_\\-]*([./][\\p{L}\\d_\\-]+)+");
  private static final List<Set<String>> ELECTRIC =
      List.of(
          POWER, VOLTAGE, CURRENT, ENERGY, Set.of("electric", "electrical", "meter", "ac", "plug"));
  private static final List<Set<String>> PLACES_AND_QUANTITIES =
      List.of(
          CENTRE,
          CORE,
          AMBIENT,
          COLD_JUNCTION,
          SET_POINT,
          POWER,
          VOLTAGE,
          CURRENT,
          ENERGY,
          HUMIDITY,
          DUTY,
          STATUS,
          TIME,
          DATE,
          TEMPERATURE);

  static HeaderText of(String written) {
    String text = written.strip().replaceAll("^[\"'#%]+\\s*|[\"']+$", "").strip();
    if (text.isEmpty()) {
      return make(written, written.strip(), null, written.strip());
    }
    if (PATH.matcher(text).matches()) {
      HeaderText path = path(written, text);
      if (path != null) {
        return path;
      }
    }
    Matcher brackets = BRACKETS.matcher(text);
    while (brackets.find()) {
      UnitText unit = bracketed(brackets.group(1));
      if (unit != null) {
        String rest = text.substring(0, brackets.start()) + " " + text.substring(brackets.end());
        return make(written, tidy(rest), unit, text);
      }
    }
    Matcher last = LAST_PART.matcher(commaPart(text));
    if (last.matches()) {
      UnitText unit = trailing(last.group(3), last.group(2));
      boolean hours = last.group(3).equalsIgnoreCase("std"); // or the standard deviation
      if (unit != null && (!hours || of(last.group(1)).saysTime())) {
        boolean keep = last.group(2).equals("_") || last.group(2).equals("-");
        return make(written, keep ? text : tidy(last.group(1)), unit, text);
      }
    }
    Matcher multiplied = MULTIPLIED.matcher(text);
    HeaderText single = multiplied.matches() ? of(multiplied.group(1)) : null;
    if (single != null && single.unit != null) {
      UnitText unit = single.unit;
      double scale = unit.scale() / Double.parseDouble(multiplied.group(2));
      return make(written, tidy(text), new UnitText(unit.unit(), scale), text);
    }
    return make(written, tidy(text), glued(text), text);
  }

  /** temp_c_x100: the header says by what readings were multiplied. */
  private static final Pattern MULTIPLIED = Pattern.compile("(?i)(.+?)[ _]*[x×*] ?(100?0?)");

  /** oven/power/w and temps.centre: the last step says the place or the unit. */
  private static @Nullable HeaderText path(String written, String text) {
    int at = Math.max(text.lastIndexOf('.'), text.lastIndexOf('/'));
    String last = text.substring(at + 1);
    List<String> before = words(text.substring(0, at));
    boolean electric = ELECTRIC.stream().anyMatch(set -> before.stream().anyMatch(set::contains));
    boolean warm = before.stream().anyMatch(TEMPERATURE::contains);
    boolean letter = electric && last.matches("[wvaWVA]") || warm && last.matches("[cfCF]");
    UnitText unit = letter ? UnitText.wordOrLetter(last) : UnitText.word(last);
    if (unit != null) {
      boolean quotient = text.indexOf('/') == at && text.charAt(at) == '/' && text.indexOf('.') < 0;
      return new HeaderText(written, quotient ? text.substring(0, at) : text, unit, words(text));
    }
    HeaderText own = of(last);
    boolean says = PLACES_AND_QUANTITIES.stream().anyMatch(own::says);
    return says ? new HeaderText(written, text, own.unit, own.words) : null;
  }

  /** "Temp, °C (serial numbers)": what follows the unit is no part of it. */
  private static String commaPart(String text) {
    int comma = text.indexOf(", ");
    int bracket = text.indexOf('(');
    return comma > 0 && bracket > comma ? text.substring(0, bracket).strip() : text;
  }

  private static @Nullable UnitText bracketed(String inside) {
    UnitText whole = UnitText.wordOrLetter(inside);
    if (whole != null) {
      return whole;
    }
    UnitText scaled = scaled(inside);
    if (scaled != null) {
      return scaled;
    }
    for (String part : inside.split("[,;/ ]+")) {
      UnitText unit = UnitText.word(part);
      if (unit != null) {
        return unit;
      }
    }
    return null;
  }

  /** 0.1C, 1/10 °C, °C x 10: readings in tenths, as controllers keep them. */
  private static @Nullable UnitText scaled(String inside) {
    Matcher before = SCALE_BEFORE.matcher(inside);
    Matcher behind = SCALE_BEHIND.matcher(inside);
    boolean first = before.matches();
    if (!first && !behind.matches()) {
      return null;
    }
    String digits = first ? before.group(1) : behind.group(2);
    UnitText unit = UnitText.wordOrLetter(first ? before.group(2) : behind.group(1));
    double scale = digits.contains("100") || digits.contains("01") ? 0.01 : 0.1;
    return unit == null ? null : new UnitText(unit.unit(), unit.scale() * scale);
  }

  /** A single letter behind a blank must be a capital, or "Temp a" would be in ampere. */
  private static @Nullable UnitText trailing(String token, String separator) {
    UnitText word = UnitText.word(token);
    if (word != null) {
      return word;
    }
    if (separator.equals(" ") || separator.equals("-")) {
      return token.matches("[CFKVW]") ? UnitText.wordOrLetter(token) : null;
    }
    return UnitText.wordOrLetter(token);
  }

  /** tempF, TempC, T1C – and a header that is nothing but a unit. */
  private static @Nullable UnitText glued(String text) {
    UnitText whole = UnitText.word(text);
    if (whole != null || text.equals("s")) {
      return whole == null ? UnitText.wordOrLetter(text) : whole;
    }
    Matcher m =
        Pattern.compile("(?i:.*(?:temp|temperature|deg|tc|probe|t)\\d*)(°? ?[CF])$").matcher(text);
    if (m.matches()) {
      return UnitText.wordOrLetter(m.group(1));
    }
    int degree = UnitText.fold(text).lastIndexOf('°');
    if (degree >= 0) {
      UnitText unit = UnitText.word(UnitText.fold(text).substring(degree));
      if (unit != null) {
        return unit;
      }
    }
    Matcher time = Pattern.compile("(?i).*time(ms|sec|s|min)$").matcher(text.strip());
    return time.matches() ? UnitText.wordOrLetter(time.group(1).toLowerCase(Locale.ROOT)) : null;
  }

  private static HeaderText make(
      String written, String name, @Nullable UnitText unit, String fallback) {
    String chosen = name.isEmpty() ? fallback : name;
    return new HeaderText(written, chosen, unit, words(chosen));
  }

  private static String tidy(String text) {
    return text.replaceAll("\\s+", " ").replaceAll("[\\s,;:/]+$", "").strip();
  }

  private static List<String> words(String name) {
    String split =
        name.replaceAll("([a-zß-ÿ])([A-Z])", "$1 $2").replaceAll("(\\p{L})(\\d)", "$1 $2");
    List<String> words = new ArrayList<>();
    for (String word : split.toLowerCase(Locale.ROOT).split("[^\\p{L}\\d#№%]+")) {
      if (!word.isEmpty()) {
        words.add(word);
      }
    }
    String together = name.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}]", "");
    if (!together.isEmpty() && !words.contains(together)) {
      words.add(together);
    }
    words.addAll(compounds(words));
    return words;
  }

  private static final Pattern COMPOUND =
      Pattern.compile("(\\p{L}{3,}?)s?(temperatur|temperatuur|temperature|temp|feuchte|spannung)");

  /** Ofentemperatur is an Ofen and a Temperatur. */
  private static List<String> compounds(List<String> words) {
    List<String> parts = new ArrayList<>();
    for (String word : words) {
      Matcher compound = COMPOUND.matcher(word);
      if (compound.matches()) {
        parts.add(compound.group(1));
        parts.add(compound.group(2));
      }
    }
    return parts;
  }

  boolean says(Set<String> vocabulary) {
    return words.stream().anyMatch(vocabulary::contains)
        || isIdeographic() && vocabulary.stream().anyMatch(w -> isIdeograph(w) && name.contains(w));
  }

  /** Names without blanks between their words, as in 炉内温度. */
  private boolean isIdeographic() {
    return name.chars().anyMatch(c -> c >= 0x2e80);
  }

  private static boolean isIdeograph(String word) {
    return word.length() >= 2 && word.charAt(0) >= 0x2e80;
  }

  boolean saysTime() {
    return says(TIME) || (unit != null && unit.isTime()) || name.equals("t");
  }

  boolean saysIndex() {
    return says(INDEX) && !says(TEMPERATURE);
  }

  /** T1, TC2, CH3, Ch 4, K1, Probe 2: names that loggers give to inputs. */
  boolean isInputName() {
    return name.matches(
        "(?i)(t|tc|ch|chan|channel|k|probe|sensor|temp|input|ai|in|kanal|canal|"
            + "thermocouple|p|s)[ _.\\-]*\\d+.*");
  }
}
