package ovenproof.publish.fragment;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.List;
import java.util.Locale;

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

  private static final List<String> ORDINALS =
      List.of(
          "zeroth",
          "first",
          "second",
          "third",
          "fourth",
          "fifth",
          "sixth",
          "seventh",
          "eighth",
          "ninth",
          "tenth",
          "eleventh",
          "twelfth",
          "thirteenth",
          "fourteenth",
          "fifteenth",
          "sixteenth",
          "seventeenth",
          "eighteenth",
          "nineteenth");
  private static final BigDecimal MILLION = BigDecimal.valueOf(1_000_000);

  private Spoken() {}

  /** {@code the sixteenth of March twenty twenty-six}. */
  static String day(LocalDate date) {
    return "the "
        + ordinal(date.getDayOfMonth())
        + " of "
        + date.getMonth().getDisplayName(TextStyle.FULL, Locale.ENGLISH)
        + " "
        + year(date.getYear());
  }

  private static String ordinal(int day) {
    if (day < 20) {
      return ORDINALS.get(day);
    }
    String tens = TENS.get(day / 10);
    return day % 10 == 0
        ? tens.substring(0, tens.length() - 1) + "ieth"
        : tens + "-" + ORDINALS.get(day % 10);
  }

  private static String year(int year) {
    boolean pairs = year >= 1000 && year <= 9999 && year % 100 >= 10;
    return pairs ? whole(year / 100) + " " + whole(year % 100) : whole(year);
  }

  /** {@code one hundred and nineteen euros fifty}. */
  static String money(BigDecimal amount, String currency) {
    BigDecimal whole = amount.setScale(0, RoundingMode.DOWN);
    int cents =
        amount.subtract(whole).movePointRight(2).setScale(0, RoundingMode.HALF_UP).intValue();
    boolean one = whole.compareTo(BigDecimal.ONE) == 0;
    String name =
        switch (currency) {
          case "EUR" -> one ? "euro" : "euros";
          case "USD" -> one ? "dollar" : "dollars";
          case "GBP" -> one ? "pound" : "pounds";
          default -> currency;
        };
    return number(whole) + " " + name + (cents == 0 ? "" : " " + whole(cents));
  }

  /**
   * A decimal number: {@code 8.1} is "eight point one", {@code −12} "minus twelve"; in digits from
   * a million on.
   */
  public static String number(BigDecimal value) {
    if (value.signum() < 0) {
      return "minus " + number(value.negate());
    }
    if (value.compareTo(MILLION) >= 0) {
      return value.toPlainString();
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
      case "cm" -> "centimetres";
      case "cm²" -> "square centimetres";
      case "sq" -> "square";
      case "dB" -> "decibels";
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
            "(?<![\\w-])(?<!point )one (second|minute|hour|gram|ounce|pound|litre)s\\b", "one $1")
        .replaceAll("(?<![\\w-])(?<!point )one degrees\\b", "one degree");
  }
}
