package ovenproof.core.quantity;

/** What kind of quantity a number is; numbers of different dimensions never convert or compare. */
public enum Dimension {
  TIME("a time", "12 min 30 s"),
  TEMPERATURE("a temperature", "230 °C or 446 °F"),
  /** A distance between two temperatures; always written in K (1 K = 1.8 °F). */
  TEMPERATURE_DIFFERENCE("a temperature difference", "5 K"),
  MASS("a mass", "38 g"),
  LENGTH("a length", "12 mm"),
  AREA("an area", "25 cm²"),
  VOLUME("a volume", "20 L"),
  POWER("a power", "1800 W"),
  ENERGY("an energy", "0.45 kWh"),
  VOLTAGE("a voltage", "230 V"),
  CURRENT("a current", "10 A"),
  FREQUENCY("a frequency", "50 Hz"),
  FORCE("a force", "12 N"),
  SOUND_LEVEL("a sound level", "52 dB"),
  /** A share or ratio; per cent and plain 1. */
  RATIO("a share", "12 %"),
  /** CIE lightness, chroma coordinates and colour differences; one step of each is 1. */
  COLOUR("a colour value", "62"),
  COUNT("a count", "4"),
  /** Points of a scale: panel marks, rated steps, scores. */
  POINTS("points of a scale", "7.5"),
  HEAT_CAPACITY("a heat capacity", "4200 J/K"),
  HEAT_LOSS("a heat loss coefficient", "4.5 W/K"),
  TEMPERATURE_RATE("a temperature rate", "5 K/s"),
  POWER_DENSITY("a power density", "90 W/L");

  private final String words;
  private final String example;

  Dimension(String words, String example) {
    this.words = words;
    this.example = example;
  }

  /** The dimension in words, with its article, as an error message says it. */
  public String words() {
    return words;
  }

  /** One way of writing such a quantity that {@link QuantityParser} reads. */
  public String example() {
    return example;
  }
}
