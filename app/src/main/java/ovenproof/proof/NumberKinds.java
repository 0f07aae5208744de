package ovenproof.proof;

import java.util.function.Predicate;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.NumberPhrase.Scale;

/**
 * What kind of number a phrase states: a score, a price, a temperature or another quantity, and
 * which figures may answer it.
 */
final class NumberKinds {
  private static final Pattern SCORE_WORD =
      Pattern.compile(
          "\\b(scor(e[sd]?|ing)|points?|out of (ten|10)|overall|totals?|rating|rated|marks?|marked|earn(s|ed)|gets?|got|gave|given|ends?|ended|finish(es|ed)|sub-scores?|leads?|lies|tally|verdict|crispness|juiciness|moistness|liking|flavour|taste|texture)\\b",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern NO_SCORE =
      Pattern.compile(
          "(?is).*\\b(version|figure|fig\\.?|chapter|section|page|table|step|method|part|no\\.?|firmware|v|factor of|factor|ratio of|times)\\s*$");

  private NumberKinds() {}

  /** Whether a text speaks of scores or marks. */
  static boolean hasScoreWord(String text) {
    return SCORE_WORD.matcher(text).find();
  }

  static boolean isCheckable(SentenceClaims sentence, NumberPhrase number) {
    return number.unit() != null && !isHourOfEnergy(sentence, number)
        || isScore(sentence, number)
        || number.scale() == Scale.MONEY
        || number.scale() == Scale.DEGREES;
  }

  /** "An hour of heating uses 1.07 kWh": the time that an energy is of. */
  private static boolean isHourOfEnergy(SentenceClaims sentence, NumberPhrase number) {
    return number.unit() == Unit.HOUR
        && number.low() == 1
        && (sentence.numbers().stream()
                .anyMatch(n -> n.unit() != null && n.unit().dimension() == Dimension.ENERGY)
            || Wording.is(
                sentence.text(),
                "(?is).*\\b(kwh|kilowatts?|electricity|energy|draws?|uses?|costs?|consum\\p{L}+)\\b.*"));
  }

  static Predicate<Figure> kindOf(SentenceClaims sentence, NumberPhrase number) {
    if (number.scale() == Scale.OUT_OF_FOUR) {
      return f -> f.take().equals("rated");
    }
    if (isScore(sentence, number)
        || number.unit() == null && number.scale() == Scale.NONE && number.high() <= 10) {
      return f -> f.isScore() || f.kind() == Figure.Kind.MARK;
    }
    if (number.scale() == Scale.MONEY) {
      return f -> f.kind() == Figure.Kind.PRICE;
    }
    Unit unit = number.unit();
    if (number.scale() == Scale.DEGREES
        || unit != null && unit.dimension() == Dimension.TEMPERATURE) {
      return f -> of(f, Dimension.TEMPERATURE) || of(f, Dimension.TEMPERATURE_DIFFERENCE);
    }
    return f -> unit != null && of(f, unit.dimension());
  }

  /** °C that no food's core reaches. */
  private static final double HOTTEST_CORE = 110;

  /** Fifty degrees are a difference rather than an oven's temperature, and 200 are not. */
  static double implausible(NumberPhrase number, Figure figure) {
    if (!isTemperature(number) || figure.unit() == null) {
      return 0;
    }
    double celsius = number.unit() == Unit.FAHRENHEIT ? (number.low() - 32) / 1.8 : number.low();
    double kelvin = number.unit() == Unit.FAHRENHEIT ? number.low() / 1.8 : number.low();
    boolean absolute = figure.unit().dimension() == Dimension.TEMPERATURE;
    if (absolute && figure.take().equals("core-highest") && celsius > HOTTEST_CORE) {
      return -6;
    }
    return absolute ? (celsius < 45 ? -4 : 0) : kelvin > 100 ? -6 : 0;
  }

  private static final Pattern OFF_DIAL =
      Pattern.compile(
          "(?is)^\\s*(?:[CFK]\\s+)?(?:(?:too )?(?:hot|cold|cool|warm|high|low)\\b|(?:above|below|over|under|beyond|short of|off|higher than|lower than|hotter than|cooler than|colder than) (?:the |its |what )?(?:dial|sett?ing|set|number on|knob|thermostat|asked|it is asked)|high\\b|low\\b|off\\b).*");

  /** "Sixteen degrees too hot": how far an oven is off its dial. */
  static double ofTheDial(SentenceClaims sentence, NumberPhrase number, Figure figure) {
    boolean off =
        isTemperature(number)
            && number.low() < 45
            && OFF_DIAL.matcher(Wording.after(sentence.text(), number.end())).matches();
    return off && figure.take().equals("offset") ? 5 : 0;
  }

  static boolean isTemperature(NumberPhrase number) {
    return number.scale() == Scale.DEGREES
        || number.unit() != null && number.unit().dimension() == Dimension.TEMPERATURE;
  }

  private static boolean of(Figure figure, @Nullable Dimension dimension) {
    return !figure.isScore() && figure.unit() != null && figure.unit().dimension() == dimension;
  }

  /** "6.4 out of 10", "6.4 points", "scored 6.4", "overall 7.2", "Hornbeam 6.7". */
  static boolean isScore(SentenceClaims sentence, NumberPhrase number) {
    if (number.scale() == Scale.OUT_OF_TEN
        || number.scale() == Scale.POINTS
        || number.scale() == Scale.OUT_OF_FOUR) {
      return true;
    }
    boolean bare = number.unit() == null && number.scale() == Scale.NONE && number.high() <= 10;
    if (!bare) {
      return false;
    }
    String before = Wording.before(sentence.text(), number.start());
    String after = Wording.after(sentence.text(), number.end());
    if (NO_SCORE.matcher(before).matches() || Wording.is(after, "(?is)^\\s*[×x:/].*")) {
      return false;
    }
    boolean decimal = number.decimals() == 1 || number.decimals() == 2;
    if (decimal && !Wording.is(number.text(), "(?is).*\\b(half|quarter|third)s?\\b.*")) {
      return SCORE_WORD.matcher(sentence.text()).find()
          || Wording.is(
              after,
              "(?is)^\\s*(?:[.,;:!?)—–]|$|(?:and|but|for|with|in|on|at|to|against|while|overall|beats?|from)\\b).*")
          || SCORE_WORD.matcher(sentence.context().sentence().heading()).find()
          || endsWithName(sentence, number)
          || sentence.context().namesTests()
          || sentence.context().sentence().role() == DraftText.Role.CELL
          || Wording.is(before, "(?is).*[—–:.,(]\\s*$|\\s*")
              && Wording.is(after, "(?is)^\\s*(?:[—–.,;)].*|$)");
    }
    return Wording.is(
        before,
        "(?is).*\\b(scor(ed|es|e of|ing)|rated( it)?|rating of|marks? of|gave it|earns?|earned|total of|an overall|overall( score)? (of|is)|scores? (at|to|is|was|between|somewhere between)|totals? (at|to|is|was)|they score|scored? somewhere)\\s+(an?\\s+|only\\s+|just\\s+|between\\s+)?$");
  }

  private static boolean endsWithName(SentenceClaims sentence, NumberPhrase number) {
    return sentence.context().mentions().stream()
        .anyMatch(
            m ->
                m.end() <= number.start()
                    && Wording.is(
                        sentence.text().substring(m.end(), number.start()),
                        "(?is)(['’]s)?\\s*[:(,]?\\s*"));
  }
}
