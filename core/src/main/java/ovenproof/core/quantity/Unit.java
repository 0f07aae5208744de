package ovenproof.core.quantity;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Units as people in a kitchen write them, each with its exact conversion to the unit of the JSON
 * contract.
 *
 * <p>Value in contract unit = (value + {@code offset}) × {@code numerator} / {@code denominator}.
 * The factors are the exact definitions of NIST SP 811 (2008), appendix B.8; the ratio is kept as
 * two numbers so that °F to °C divides by 1.8 once instead of multiplying by a rounded 5/9.
 */
public enum Unit {
  SECOND("s", Dimension.TIME, 1, 1, "sec", "secs", "second", "seconds"),
  MILLISECOND("ms", Dimension.TIME, 1, 1000, "millisecond", "milliseconds"),
  MINUTE("min", Dimension.TIME, 60, 1, "mins", "minute", "minutes", "m′"),
  HOUR("h", Dimension.TIME, 3600, 1, "hr", "hrs", "hour", "hours"),
  CELSIUS("°C", Dimension.TEMPERATURE, 1, 1, "C", "degC", "deg C", "º C", "℃", "celsius"),
  FAHRENHEIT(
      "°F", Dimension.TEMPERATURE, -32, 5, 9, "F", "degF", "deg F", "º F", "℉", "fahrenheit"),
  KELVIN_ABSOLUTE("K (absolute)", Dimension.TEMPERATURE, -273.15, 1, 1),
  KELVIN("K", Dimension.TEMPERATURE_DIFFERENCE, 1, 1, "kelvin"),
  FAHRENHEIT_DIFFERENCE("°F (difference)", Dimension.TEMPERATURE_DIFFERENCE, 5, 9),
  GRAM("g", Dimension.MASS, 1, 1, "gram", "grams", "gr"),
  KILOGRAM("kg", Dimension.MASS, 1000, 1, "kilo", "kilos", "kilogram", "kilograms"),
  OUNCE("oz", Dimension.MASS, 28.349523125, 1, "ounce", "ounces"),
  POUND("lb", Dimension.MASS, 453.59237, 1, "lbs", "pound", "pounds"),
  MILLIMETRE("mm", Dimension.LENGTH, 1, 1, "millimetre", "millimetres", "millimeter"),
  CENTIMETRE("cm", Dimension.LENGTH, 10, 1, "centimetre", "centimetres", "centimeter"),
  METRE("m", Dimension.LENGTH, 1000, 1, "metre", "metres", "meter", "meters"),
  INCH("in", Dimension.LENGTH, 25.4, 1, "inch", "inches", "″"),
  SQUARE_CENTIMETRE("cm²", Dimension.AREA, 1, 1, "cm2"),
  SQUARE_INCH("sq in", Dimension.AREA, 6.4516, 1, "in²", "in2", "square inches"),
  LITRE("L", Dimension.VOLUME, 1, 1, "l", "litre", "litres", "liter", "liters"),
  MILLILITRE("mL", Dimension.VOLUME, 1, 1000, "ml"),
  QUART("qt", Dimension.VOLUME, 0.946352946, 1, "quart", "quarts"),
  CUBIC_FOOT("cu ft", Dimension.VOLUME, 28.316846592, 1, "ft³", "ft3", "cubic feet"),
  WATT("W", Dimension.POWER, 1, 1, "watt", "watts"),
  KILOWATT("kW", Dimension.POWER, 1000, 1, "kilowatt", "kilowatts"),
  KILOWATT_HOUR("kWh", Dimension.ENERGY, 1, 1),
  WATT_HOUR("Wh", Dimension.ENERGY, 1, 1000),
  JOULE("J", Dimension.ENERGY, 1, 3_600_000),
  KILOJOULE("kJ", Dimension.ENERGY, 1, 3600),
  VOLT("V", Dimension.VOLTAGE, 1, 1, "volt", "volts"),
  AMPERE("A", Dimension.CURRENT, 1, 1, "amp", "amps"),
  HERTZ("Hz", Dimension.FREQUENCY, 1, 1),
  NEWTON("N", Dimension.FORCE, 1, 1),
  DECIBEL("dB", Dimension.SOUND_LEVEL, 1, 1, "dBA", "dB(A)"),
  PERCENT("%", Dimension.RATIO, 1, 1, "percent", "per cent"),
  ONE("1", Dimension.RATIO, 100, 1),
  LIGHTNESS("L*", Dimension.COLOUR, 1, 1),
  A_STAR("a*", Dimension.COLOUR, 1, 1),
  B_STAR("b*", Dimension.COLOUR, 1, 1),
  DELTA_E00("ΔE00", Dimension.COLOUR, 1, 1, "dE00", "DE00"),
  /** The browning index: a number of its own, no share and no mark. */
  BROWNING_INDEX("BI", Dimension.COLOUR, 1, 1),
  PIECES("pieces", Dimension.COUNT, 1, 1, "piece", "pcs"),
  POINTS("points", Dimension.POINTS, 1, 1, "point", "pts"),
  JOULE_PER_KELVIN("J/K", Dimension.HEAT_CAPACITY, 1, 1),
  WATT_PER_KELVIN("W/K", Dimension.HEAT_LOSS, 1, 1),
  KELVIN_PER_SECOND("K/s", Dimension.TEMPERATURE_RATE, 1, 1),
  KELVIN_PER_MINUTE("K/min", Dimension.TEMPERATURE_RATE, 1, 60),
  KELVIN_PER_HOUR("K/h", Dimension.TEMPERATURE_RATE, 1, 3600),
  WATT_PER_LITRE("W/L", Dimension.POWER_DENSITY, 1, 1);

  private static final Map<String, Unit> EXACT = new TreeMap<>();
  private static final Map<String, Unit> FOLDED = new TreeMap<>();

  static {
    for (Unit unit : values()) {
      unit.register(unit.symbol);
      for (String alias : unit.aliases) {
        unit.register(alias);
      }
    }
  }

  private final String symbol;
  private final Dimension dimension;
  private final double offset;
  private final double numerator;
  private final double denominator;
  private final String[] aliases;

  Unit(
      String symbol, Dimension dimension, double numerator, double denominator, String... aliases) {
    this(symbol, dimension, 0, numerator, denominator, aliases);
  }

  Unit(
      String symbol,
      Dimension dimension,
      double offset,
      double numerator,
      double denominator,
      String... aliases) {
    this.symbol = symbol;
    this.dimension = dimension;
    this.offset = offset;
    this.numerator = numerator;
    this.denominator = denominator;
    this.aliases = aliases;
  }

  private void register(String word) {
    EXACT.put(word, this);
    FOLDED.putIfAbsent(word.toLowerCase(Locale.ROOT), this);
  }

  public String symbol() {
    return symbol;
  }

  public Dimension dimension() {
    return dimension;
  }

  /** The unit of this dimension in JSON: s, °C, K, g, mm, L, W, kWh, … */
  public Unit contractUnit() {
    return switch (dimension) {
      case TIME -> SECOND;
      case TEMPERATURE -> CELSIUS;
      case TEMPERATURE_DIFFERENCE -> KELVIN;
      case MASS -> GRAM;
      case LENGTH -> MILLIMETRE;
      case AREA -> SQUARE_CENTIMETRE;
      case VOLUME -> LITRE;
      case POWER -> WATT;
      case ENERGY -> KILOWATT_HOUR;
      case RATIO -> PERCENT;
      case TEMPERATURE_RATE -> KELVIN_PER_SECOND;
      default -> this;
    };
  }

  double toContract(double value) {
    return (value + offset) * numerator / denominator;
  }

  double fromContract(double value) {
    return value * denominator / numerator - offset;
  }

  /**
   * The unit that a person's word stands for: its symbol or an alias, case as written first (mW is
   * not MW), then ignoring case. Empty when the word is no unit.
   */
  public static Optional<Unit> named(String word) {
    String trimmed = word.strip();
    Unit exact = EXACT.get(trimmed);
    return Optional.ofNullable(
        exact != null ? exact : FOLDED.get(trimmed.toLowerCase(Locale.ROOT)));
  }

  /** Every symbol and alias, for suggestions. */
  public static Iterable<String> words() {
    return EXACT.keySet();
  }
}
