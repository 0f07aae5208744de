package ovenproof.publish.fragment;

import java.math.BigDecimal;
import java.util.List;

/** Numbers and units as a narrator says them. */
public final class Spoken {
  private static final List<String> UNITS =
      List.of(
          "zero",
          "one",
          "two",
          "three",
          "four",
          "five",
          "six",
          "seven",
          "eight",
          "nine",
          "ten",
          "eleven",
          "twelve",
          "thirteen",
          "fourteen",
          "fifteen",
          "sixteen",
          "seventeen",
          "eighteen",
          "nineteen");
  private static final List<String> TENS =
      List.of("", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety");

  private Spoken() {}

  /**
   * A decimal number: {@code 8.1} is "eight point one", {@code −12} "minus twelve".
   *
   * @throws IllegalArgumentException beyond 999,999
   */
  public static String number(BigDecimal value) {
    if (value.signum() < 0) {
      return "minus " + number(value.negate());
    }
    String[] parts = value.toPlainString().split("\\.");
    StringBuilder words = new StringBuilder(whole(Integer.parseInt(parts[0])));
    if (parts.length > 1) {
      words.append(" point");
      parts[1].chars().forEach(digit -> words.append(' ').append(UNITS.get(digit - '0')));
    }
    return words.toString();
  }

  private static String whole(int value) {
    if (value > 999_999) {
      throw new IllegalArgumentException("value must be at most 999,999, found " + value);
    }
    if (value < 20) {
      return UNITS.get(value);
    }
    if (value < 100) {
      return TENS.get(value / 10) + (value % 10 == 0 ? "" : "-" + UNITS.get(value % 10));
    }
    if (value < 1000) {
      return UNITS.get(value / 100) + " hundred" + rest(value % 100, " and ");
    }
    return whole(value / 1000)
        + " thousand"
        + rest(value % 1000, value % 1000 < 100 ? " and " : " ");
  }

  private static String rest(int value, String joint) {
    return value == 0 ? "" : joint + whole(value);
  }

  /**
   * A printed figure with its unit, as said: {@code 6 min 31 s}, {@code 74 °C}, {@code 0.45 kWh}.
   * Anything that is no number stays as it is.
   */
  public static String figure(String printed) {
    StringBuilder said = new StringBuilder();
    for (String word : printed.replace('\u00a0', ' ').split(" ")) {
      said.append(said.isEmpty() ? "" : " ").append(word(word));
    }
    return plural(said.toString());
  }

  private static String word(String word) {
    String plain = word.replace('−', '-');
    if (plain.matches("-?\\d{1,6}(\\.\\d+)?")) {
      return number(new BigDecimal(plain));
    }
    return switch (word) {
      case "s" -> "seconds";
      case "min" -> "minutes";
      case "h" -> "hours";
      case "°C" -> "degrees Celsius";
      case "°F" -> "degrees Fahrenheit";
      case "K" -> "kelvin";
      case "g" -> "grams";
      case "kg" -> "kilograms";
      case "oz" -> "ounces";
      case "lb" -> "pounds";
      case "mm" -> "millimetres";
      case "in" -> "inches";
      case "L" -> "litres";
      case "qt" -> "quarts";
      case "ft" -> "feet";
      case "cu" -> "cubic";
      case "W" -> "watts";
      case "kWh" -> "kilowatt-hours";
      case "%" -> "per cent";
      default -> word;
    };
  }

  private static String plural(String said) {
    return said.replaceAll(
            "(?<![\\w-])one (second|minute|hour|gram|ounce|pound|litre)s\\b", "one $1")
        .replaceAll("(?<![\\w-])one degrees\\b", "one degree");
  }
}
