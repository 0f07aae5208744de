package ovenproof.proof;

import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.NumberPhrase.Scale;

/**
 * Reads what follows a number: its unit, or the scale that it is on (points, money, out of ten).
 */
final class UnitScanner {
  static final Map<String, Unit> UNITS = new HashMap<>();

  private final TokenCursor cursor;

  UnitScanner(TokenCursor cursor) {
    this.cursor = cursor;
  }

  private static void put(Unit unit, String... words) {
    for (String word : words) {
      UNITS.put(word, unit);
    }
  }

  static {
    put(Unit.SECOND, "s", "sec", "secs", "second", "seconds");
    put(Unit.MINUTE, "min", "mins", "minute", "minutes");
    put(Unit.HOUR, "h", "hr", "hrs", "hour", "hours");
    put(Unit.GRAM, "g", "gram", "grams", "gramme", "grammes");
    put(Unit.KILOGRAM, "kg", "kilo", "kilos", "kilogram", "kilograms");
    put(Unit.OUNCE, "oz", "ounce", "ounces");
    put(Unit.POUND, "lb", "lbs", "pound", "pounds");
    put(Unit.MILLIMETRE, "mm", "millimetre", "millimetres", "millimeter", "millimeters");
    put(Unit.CENTIMETRE, "cm", "centimetre", "centimetres", "centimeter", "centimeters");
    put(Unit.METRE, "m", "metre", "metres", "meter", "meters");
    put(Unit.INCH, "inch", "inches");
    put(Unit.LITRE, "l", "litre", "litres", "liter", "liters");
    put(Unit.QUART, "qt", "quart", "quarts");
    put(Unit.SQUARE_CENTIMETRE, "cm²", "cm2");
    put(Unit.SQUARE_INCH, "in²", "in2");
    put(Unit.CUBIC_FOOT, "ft³");
    put(Unit.LIGHTNESS, "l*", "lightness");
    put(Unit.WATT, "w", "watt", "watts");
    put(Unit.KILOWATT, "kw", "kilowatt", "kilowatts");
    put(Unit.KILOWATT_HOUR, "kwh");
    put(Unit.WATT_HOUR, "wh");
    put(Unit.VOLT, "v", "volt", "volts");
    put(Unit.AMPERE, "amp", "amps");
    put(Unit.DECIBEL, "db", "dba", "decibel", "decibels");
    put(Unit.PERCENT, "%", "percent", "pct");
    put(Unit.KELVIN, "k", "kelvin", "kelvins");
  }

  @Nullable Unit unit() {
    if (cursor.at >= cursor.tokens.size()) {
      return null;
    }
    int mark = cursor.at;
    cursor.accept("-");
    if (cursor.at < cursor.tokens.size()) {
      String word = cursor.peek();
      if (word.startsWith("°") && word.length() > 1) {
        cursor.at++;
        return word.endsWith("c") ? Unit.CELSIUS : Unit.FAHRENHEIT;
      }
      Unit degrees = degrees();
      if (degrees != null) {
        return degrees;
      }
      if (inches()) {
        return Unit.INCH;
      }
      if (cursor.accept("celsius", "centigrade")) {
        return Unit.CELSIUS;
      }
      if (cursor.accept("fahrenheit")) {
        return Unit.FAHRENHEIT;
      }
      Unit words = unitOfTwoWords();
      if (words != null) {
        return words;
      }
      Unit unit = UNITS.get(word);
      boolean sharpCase =
          word.length() > 1
              || cursor.tokens.get(cursor.at).text().equals("%")
              || oneLetter(cursor.tokens.get(cursor.at).text());
      if (unit != null && sharpCase) {
        cursor.at++;
        return unit;
      }
      if (word.equals("per")
          && cursor.at + 1 < cursor.tokens.size()
          && cursor.tokens.get(cursor.at + 1).lower().equals("cent")) {
        cursor.at += 2;
        return Unit.PERCENT;
      }
      if ((word.equals("c") || word.equals("f"))
          && Character.isUpperCase(cursor.tokens.get(cursor.at).text().charAt(0))
          && cursor.adjacent(cursor.at)) {
        cursor.at++;
        return word.equals("c") ? Unit.CELSIUS : Unit.FAHRENHEIT;
      }
    }
    cursor.at = mark;
    return null;
  }

  /** "39 in." is a length where no word follows that "in" could lead to. */
  private boolean inches() {
    boolean in =
        cursor.at > 0
            && cursor.peek().equals("in")
            && Character.isDigit(cursor.tokens.get(cursor.at - 1).text().charAt(0));
    if (in) {
      String after = cursor.sentence.substring(cursor.tokens.get(cursor.at).end());
      if (Wording.is(after, "(?s)^\\s*(?:[.,;:)]|$|long\\b|wide\\b|deep\\b|high\\b).*")) {
        cursor.at++;
        return true;
      }
    }
    return false;
  }

  /** "cu ft", "cubic feet", "square centimetres", "kilowatt hours", "watt hours". */
  private @Nullable Unit unitOfTwoWords() {
    int mark = cursor.at;
    if (cursor.accept("cu", "cubic") && cursor.accept(".", "ft", "feet", "foot")) {
      return Unit.CUBIC_FOOT;
    }
    cursor.at = mark;
    if (cursor.accept("square", "sq")
        && cursor.accept("centimetres", "centimetre", "centimeters", "cm")) {
      return Unit.SQUARE_CENTIMETRE;
    }
    cursor.at = mark;
    if (cursor.accept("square", "sq", "sq.") && cursor.accept("inches", "inch", "in")) {
      return Unit.SQUARE_INCH;
    }
    cursor.at = mark;
    boolean kilo = cursor.at < cursor.tokens.size() && cursor.peek().startsWith("kilowatt");
    if (cursor.accept("kilowatt", "watt")) {
      cursor.accept("-");
      if (cursor.accept("hours", "hour")) {
        return kilo ? Unit.KILOWATT_HOUR : Unit.WATT_HOUR;
      }
    }
    cursor.at = mark;
    return null;
  }

  private static boolean oneLetter(String text) {
    return Wording.is(text, "[sghWVKL]|L\\*");
  }

  private @Nullable Unit degrees() {
    int mark = cursor.at;
    if (cursor.accept("degrees", "degree", "deg", "°")) {
      if (cursor.accept("celsius", "centigrade", "c")) {
        return Unit.CELSIUS;
      }
      if (cursor.accept("fahrenheit", "f")) {
        return Unit.FAHRENHEIT;
      }
    }
    cursor.at = mark;
    return null;
  }

  Scale scale() {
    int mark = cursor.at;
    if (cursor.accept("out") && cursor.accept("of") && cursor.skip("a", "the")) {
      cursor.accept("possible");
      if (cursor.accept("10", "ten") && !productFollows()) {
        return Scale.OUT_OF_TEN;
      }
    }
    cursor.at = mark;
    if (cursor.accept("out")
        && cursor.accept("of")
        && cursor.accept("4", "four")
        && !productFollows()) {
      return Scale.OUT_OF_FOUR;
    }
    cursor.at = mark;
    if (cursor.accept("/") && cursor.accept("10")) {
      return Scale.OUT_OF_TEN;
    }
    cursor.at = mark;
    cursor.accept("-");
    if (cursor.accept("points", "point", "units", "unit")) {
      return Scale.POINTS;
    }
    if (cursor.accept("degrees", "degree", "°")) {
      return Scale.DEGREES;
    }
    if (cursor.accept(
        "dollars", "euros", "euro", "pounds", "bucks", "quid", "€", "$", "£", "eur", "usd",
        "gbp")) {
      return Scale.MONEY;
    }
    cursor.at = mark;
    return Scale.NONE;
  }

  private boolean productFollows() {
    return cursor.at < cursor.tokens.size()
        && Wording.is(
            cursor.peek(),
            "ovens?|products?|models?|machines?|appliances?|toasters?|fryers?|runs?");
  }
}
