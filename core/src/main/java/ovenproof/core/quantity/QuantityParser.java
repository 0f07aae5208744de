package ovenproof.core.quantity;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads quantities as people write them: {@code 230 °C}, {@code 446F}, {@code 12 min 30 s}, {@code
 * 12:30} (minutes and seconds), {@code 1:02:30}, {@code 38 g ± 2 g}, {@code 1,5 kg}, {@code 1 lb 4
 * oz}.
 *
 * <p>A decimal comma is read as a decimal point; {@code 1,500 g} with exactly three digits after
 * one comma is refused as ambiguous. A temperature never becomes a difference: after ± a
 * temperature takes K, or °F/°C meaning steps of that size.
 */
public final class QuantityParser {

  private static final Pattern PART =
      Pattern.compile(
          "\\s*([+\\-−]?)\\s*(\\d+(?:[.,]\\d+)?|[.,]\\d+)\\s*([^\\d\\s+\\-−±.,][^\\d+−±]*)?");

  /** A number and whatever follows, for units with digits in their names: ΔE00, cm2. */
  private static final Pattern SINGLE =
      Pattern.compile("([+\\-−]?)\\s*(\\d+(?:[.,]\\d+)?|[.,]\\d+)\\s*(\\D.*)");

  private static final Pattern CLOCK =
      Pattern.compile("(?:(\\d+):)?(\\d{1,3}):(\\d{2}(?:[.,]\\d+)?)");
  private static final Pattern TOLERANCE = Pattern.compile("±|\\+/-|\\+-");

  private QuantityParser() {}

  /**
   * The quantity of the expected dimension.
   *
   * @throws QuantityFormatException with what was found, what was expected and a remedy
   */
  public static Quantity parse(String text, Dimension expected) {
    String trimmed = text.strip();
    if (expected == Dimension.TIME) {
      Matcher clock = CLOCK.matcher(trimmed);
      if (clock.matches()) {
        return clockTime(clock);
      }
    }
    Matcher single = SINGLE.matcher(trimmed);
    if (single.matches() && Unit.named(single.group(3)).isPresent()) {
      Unit unit = unitOrThrow(trimmed, single.group(3), expected);
      return new Quantity(number(trimmed, single), unit);
    }
    List<Quantity> parts = parts(trimmed, expected);
    return parts.size() == 1 ? parts.get(0) : sum(trimmed, parts, expected);
  }

  /** A quantity with an optional tolerance after ±; a bare tolerance takes the unit before it. */
  public static ToleratedQuantity parseTolerated(String text, Dimension expected) {
    String[] sides = TOLERANCE.split(text, -1);
    if (sides.length > 2) {
      throw new QuantityFormatException(
          text, "one ±", "write " + expected.example() + " ± a tolerance");
    }
    Quantity nominal = parse(sides[0], expected);
    if (sides.length == 1) {
      return new ToleratedQuantity(nominal, new Quantity(0, differenceUnit(nominal.unit())));
    }
    return new ToleratedQuantity(nominal, tolerance(sides[1], nominal));
  }

  /**
   * The quantity in whichever unit is written.
   *
   * @throws QuantityFormatException when there is no number or no known unit
   */
  public static Quantity parseAny(String text) {
    Matcher matcher = PART.matcher(text.strip());
    if (!matcher.lookingAt() || matcher.group(3) == null) {
      throw new QuantityFormatException(text, "a number with its unit", "for example 12 min");
    }
    Unit unit = unitOrThrow(text, matcher.group(3), null);
    return parse(text, unit.dimension());
  }

  private static Quantity tolerance(String text, Quantity nominal) {
    Dimension dimension = differenceUnit(nominal.unit()).dimension();
    Matcher matcher = PART.matcher(text.strip());
    boolean bare = matcher.matches() && matcher.group(3) == null;
    if (bare) {
      return new Quantity(number(text, matcher), differenceUnit(nominal.unit()));
    }
    if (nominal.unit().dimension() == Dimension.TEMPERATURE && matcher.matches()) {
      Optional<Unit> unit = Unit.named(matcher.group(3));
      if (unit.isPresent() && unit.get().dimension() == Dimension.TEMPERATURE) {
        return new Quantity(number(text, matcher), differenceUnit(unit.get()));
      }
    }
    return parse(text, dimension);
  }

  private static Unit differenceUnit(Unit unit) {
    if (unit == Unit.FAHRENHEIT) {
      return Unit.FAHRENHEIT_DIFFERENCE;
    }
    return unit.dimension() == Dimension.TEMPERATURE ? Unit.KELVIN : unit;
  }

  private static Quantity clockTime(Matcher clock) {
    double hours = clock.group(1) == null ? 0 : Double.parseDouble(clock.group(1));
    double minutes = Double.parseDouble(clock.group(2));
    double seconds = Double.parseDouble(clock.group(3).replace(',', '.'));
    return new Quantity(hours * 3600 + minutes * 60 + seconds, Unit.SECOND);
  }

  private static List<Quantity> parts(String text, Dimension expected) {
    List<Quantity> parts = new ArrayList<>();
    Matcher matcher = PART.matcher(text);
    int at = 0;
    while (at < text.length()) {
      if (!matcher.find(at) || matcher.start() != at) {
        throw notA(text, expected);
      }
      parts.add(part(text, matcher, expected));
      at = matcher.end();
    }
    if (parts.isEmpty()) {
      throw notA(text, expected);
    }
    return parts;
  }

  private static Quantity part(String text, Matcher matcher, Dimension expected) {
    double value = number(text, matcher);
    String word = matcher.group(3);
    if (word == null || word.isBlank()) {
      return new Quantity(value, unitless(text, expected));
    }
    return new Quantity(value, unitOrThrow(text, word, expected));
  }

  private static double number(String text, Matcher matcher) {
    String digits = matcher.group(2);
    if (digits.matches("\\d{1,3},\\d{3}")) {
      throw new QuantityFormatException(
          text,
          "a number without thousands separators",
          "write " + digits.replace(",", "") + " or " + digits.replace(',', '.'));
    }
    double value = Double.parseDouble(digits.replace(',', '.'));
    String sign = matcher.group(1);
    return sign.equals("-") || sign.equals("−") ? -value : value;
  }

  private static Unit unitless(String text, Dimension expected) {
    return switch (expected) {
      case RATIO -> Unit.ONE;
      case COUNT -> Unit.PIECES;
      case POINTS -> Unit.POINTS;
      case COLOUR -> Unit.LIGHTNESS;
      default ->
          throw new QuantityFormatException(
              text, expected.words() + " with its unit", "for example " + expected.example());
    };
  }

  private static Unit unitOrThrow(
      String text, String word, @org.jspecify.annotations.Nullable Dimension expected) {
    Unit unit =
        Unit.named(word)
            .orElseThrow(
                () ->
                    new QuantityFormatException(
                        text,
                        expected == null ? "a known unit" : expected.words(),
                        "\""
                            + word.strip()
                            + "\" is not a unit; "
                            + (expected == null ? "" : "for example " + expected.example())));
    if (expected != null && unit.dimension() != expected) {
      throw wrongDimension(text, unit, expected);
    }
    return unit;
  }

  private static QuantityFormatException wrongDimension(
      String text, Unit unit, Dimension expected) {
    boolean difference =
        expected == Dimension.TEMPERATURE_DIFFERENCE && unit.dimension() == Dimension.TEMPERATURE;
    String remedy =
        difference
            ? "a difference of temperatures is written in K (1 K = 1.8 °F)"
            : "for example " + expected.example();
    return new QuantityFormatException(text, expected.words(), remedy);
  }

  private static QuantityFormatException notA(String text, Dimension expected) {
    return new QuantityFormatException(text, expected.words(), "for example " + expected.example());
  }

  /**
   * Only amounts add up in one expression (12 min 30 s, 1 lb 4 oz), each unit smaller than the
   * last.
   */
  private static Quantity sum(String text, List<Quantity> parts, Dimension expected) {
    boolean additive =
        expected == Dimension.TIME || expected == Dimension.MASS || expected == Dimension.LENGTH;
    double total = 0;
    double last = Double.POSITIVE_INFINITY;
    for (Quantity part : parts) {
      double step = part.unit().toContract(1);
      if (!additive || part.value() < 0 || step >= last) {
        throw notA(text, expected);
      }
      last = step;
      total += part.contract();
    }
    Unit contract = parts.get(0).unit().contractUnit();
    return new Quantity(total, contract);
  }
}
