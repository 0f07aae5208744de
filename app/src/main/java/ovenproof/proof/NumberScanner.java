package ovenproof.proof;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.NumberPhrase.Scale;

/**
 * Finds numbers in a sentence: in digits and in words, with units, as ranges, compound ("6 min
 * 30"), as fractions, multiples and ordinals, with the hedge before them. English.
 */
final class NumberScanner {

  private static final Pattern TOKEN =
      Pattern.compile(
          "[$€£]|[Lab]\\*|[ck]?m[²³]|in²|ft[³3]\\b|\\d{1,3}(?:,\\d{3})+(?:\\.\\d+)?|\\d+:\\d{2}(?::\\d{2})?|\\d+(?:[.,]\\d+)?|[½¼¾⅓⅔]"
              + "|°\\s?[CcFf]\\b|°|%|×|[A-Za-zÀ-ÿµ]+(?:['’][A-Za-z]+)?|[-–—−/*&+~≈<>≥≤]");

  private static final Map<String, Integer> SMALL = new HashMap<>();
  private static final Map<String, Integer> ORDINALS = new HashMap<>();
  private static final Map<String, Unit> UNITS = new HashMap<>();
  private static final Map<String, Double> GLYPHS =
      Map.of("½", 0.5, "¼", 0.25, "¾", 0.75, "⅓", 1 / 3.0, "⅔", 2 / 3.0);

  static {
    String[] ones =
        ("zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen"
                + " sixteen seventeen eighteen nineteen")
            .split(" ");
    for (int i = 0; i < ones.length; i++) {
      SMALL.put(ones[i], i);
    }
    String[] tens = "twenty thirty forty fifty sixty seventy eighty ninety".split(" ");
    for (int i = 0; i < tens.length; i++) {
      SMALL.put(tens[i], 20 + 10 * i);
    }
    String[] ordinals =
        "first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth"
            .split(" ");
    for (int i = 0; i < ordinals.length; i++) {
      ORDINALS.put(ordinals[i], i + 1);
    }
    SMALL.put("oh", 0);
    SMALL.put("nought", 0);
    SMALL.put("nil", 0);
    unit(Unit.SECOND, "s", "sec", "secs", "second", "seconds");
    unit(Unit.MINUTE, "min", "mins", "minute", "minutes");
    unit(Unit.HOUR, "h", "hr", "hrs", "hour", "hours");
    unit(Unit.GRAM, "g", "gram", "grams", "gramme", "grammes");
    unit(Unit.KILOGRAM, "kg", "kilo", "kilos", "kilogram", "kilograms");
    unit(Unit.OUNCE, "oz", "ounce", "ounces");
    unit(Unit.POUND, "lb", "lbs", "pound", "pounds");
    unit(Unit.MILLIMETRE, "mm", "millimetre", "millimetres", "millimeter", "millimeters");
    unit(Unit.CENTIMETRE, "cm", "centimetre", "centimetres", "centimeter", "centimeters");
    unit(Unit.INCH, "inch", "inches");
    unit(Unit.LITRE, "l", "litre", "litres", "liter", "liters");
    unit(Unit.QUART, "qt", "quart", "quarts");
    unit(Unit.SQUARE_CENTIMETRE, "cm²", "cm2");
    unit(Unit.SQUARE_INCH, "in²", "in2");
    unit(Unit.CUBIC_FOOT, "ft³");
    unit(Unit.LIGHTNESS, "l*", "lightness");
    unit(Unit.WATT, "w", "watt", "watts");
    unit(Unit.KILOWATT, "kw", "kilowatt", "kilowatts");
    unit(Unit.KILOWATT_HOUR, "kwh");
    unit(Unit.WATT_HOUR, "wh");
    unit(Unit.VOLT, "v", "volt", "volts");
    unit(Unit.AMPERE, "amp", "amps");
    unit(Unit.DECIBEL, "db", "dba", "decibel", "decibels");
    unit(Unit.PERCENT, "%", "percent", "pct");
    unit(Unit.KELVIN, "k", "kelvin", "kelvins");
  }

  private static void unit(Unit unit, String... words) {
    for (String word : words) {
      UNITS.put(word, unit);
    }
  }

  /** A word, number or sign with its place. */
  record Token(String text, String lower, int start, int end) {}

  private final String sentence;
  private final List<Token> tokens;
  private int at;

  private NumberScanner(String sentence) {
    this.sentence = sentence;
    this.tokens = tokens(sentence);
  }

  /** All number phrases of a sentence in order, not overlapping. */
  static List<NumberPhrase> scan(String sentence) {
    return new NumberScanner(sentence).scan();
  }

  static boolean isNumberWord(String lower) {
    return SMALL.containsKey(lower) || Wording.is(lower, "hundred|point|half|quarter|dozen");
  }

  static List<Token> tokens(String text) {
    List<Token> tokens = new ArrayList<>();
    Matcher matcher = TOKEN.matcher(text);
    while (matcher.find()) {
      String word = matcher.group();
      tokens.add(new Token(word, word.toLowerCase(Locale.ROOT), matcher.start(), matcher.end()));
    }
    return tokens;
  }

  private List<NumberPhrase> scan() {
    List<NumberPhrase> found = new ArrayList<>();
    while (at < tokens.size()) {
      int begin = at;
      Optional<NumberPhrase> phrase = phrase();
      if (phrase.isPresent()) {
        found.add(phrase.get());
      } else {
        at = begin + 1;
      }
    }
    return found;
  }

  // ---- one phrase ----

  private Optional<NumberPhrase> phrase() {
    int begin = at;
    if (isPronounOne()) {
      return Optional.empty();
    }
    Optional<NumberPhrase> clock = clock(begin);
    if (clock.isPresent()) {
      return clock;
    }
    boolean money = accept("$", "€", "£");
    Optional<Value> first = times().or(this::value);
    if (first.isEmpty()) {
      return ordinal(begin);
    }
    Value low = first.get();
    Optional<NumberPhrase> pair = money ? Optional.empty() : spokenPair(begin, low);
    if (pair.isPresent()) {
      return pair;
    }
    Optional<NumberPhrase> share = share(begin, low);
    if (share.isPresent()) {
      return share;
    }
    if (low.scale == Scale.TIMES) {
      return Optional.of(build(begin, low, low, null, Scale.TIMES));
    }
    @Nullable Unit lowUnit = unit();
    Scale lowScale = money ? Scale.MONEY : lowUnit == null ? scale() : Scale.NONE;
    if (lowUnit != null) {
      low = compound(low, lowUnit);
    }
    return Optional.of(range(begin, low, lowUnit, lowScale, money));
  }

  /** "The quiet one thirty-three decibels": the first of two numbers is none. */
  private boolean isPronounOne() {
    boolean one =
        at > 0
            && at + 1 < tokens.size()
            && peek().equals("one")
            && SMALL.containsKey(tokens.get(at + 1).lower);
    String before = one ? tokens.get(at - 1).lower : "";
    return one
        && Character.isLetter(before.charAt(0))
        && !Wording.is(
            before,
            "in|at|to|for|of|about|only|just|is|was|takes?|took|needs?|needed|costs?|by|and|or|over|under|nearly|almost|around|exactly|from|after|than|goes|it['’]s|that['’]s|gets?|got|scored|scores|with|a");
  }

  /** "Eleven forty-six", "two thirty", "seven oh five": a time, a dial or a price as spoken. */
  private Optional<NumberPhrase> spokenPair(int begin, Value first) {
    int mark = at;
    boolean spoken =
        first.scale == Scale.NONE
            && first.decimals == 0
            && first.number >= 1
            && first.number < 60
            && Character.isLetter(tokens.get(begin).text.charAt(0))
            && at < tokens.size()
            && joined();
    if (spoken) {
      boolean zero = accept("oh", "o");
      Optional<Value> second = words();
      boolean fits =
          second.isPresent()
              && second.get().decimals == 0
              && (zero ? second.get().number < 10 : second.get().number >= 10)
              && second.get().number < 100;
      if (fits) {
        double whole = first.number * 100 + second.get().number;
        if (unit() == null && scale() == Scale.NONE) {
          Value value = new Value(whole, 0, 1, Scale.SPOKEN_PAIR);
          return Optional.of(build(begin, value, value, null, Scale.SPOKEN_PAIR));
        }
        at = mark;
        words();
        Value value = new Value(whole, 0, 1, Scale.NONE);
        @Nullable Unit unit = unit();
        Scale scale = unit == null ? scale() : Scale.NONE;
        return Optional.of(build(begin, value, value, unit, scale));
      }
    }
    at = mark;
    return Optional.empty();
  }

  /** "A quarter of its mass", "two thirds of the top": a share in percent. */
  private Optional<NumberPhrase> share(int begin, Value value) {
    int mark = at;
    boolean fraction = value.number > 0 && value.number < 1 && value.scale == Scale.NONE;
    if (fraction && accept("of") && accept("its", "the", "their", "all", "a")) {
      Value percent = new Value(value.number * 100, 0, 5, Scale.NONE);
      at -= 2;
      return Optional.of(build(begin, percent, percent, Unit.PERCENT, Scale.NONE));
    }
    at = mark;
    return Optional.empty();
  }

  /** "6:30" is read as minutes and seconds, "1:02:30" as hours, minutes and seconds. */
  private Optional<NumberPhrase> clock(int begin) {
    if (!Wording.is(peek(), "\\d+:\\d{2}(:\\d{2})?")) {
      return Optional.empty();
    }
    double seconds = 0;
    for (String part : peek().split(":")) {
      seconds = seconds * 60 + Integer.parseInt(part);
    }
    at++;
    Value value = new Value(seconds / 60, 2, 1 / 60.0, Scale.NONE);
    accept("min", "minutes");
    return Optional.of(build(begin, value, value, Unit.MINUTE, Scale.NONE));
  }

  private NumberPhrase range(
      int begin, Value low, @Nullable Unit lowUnit, Scale lowScale, boolean money) {
    int mark = at;
    boolean joins = accept("to", "–", "—", "-", "−") || (before(begin, "between") && accept("and"));
    if (joins) {
      accept("$", "€", "£");
      Optional<Value> second = value();
      if (second.isPresent()) {
        int single = at;
        @Nullable Unit part = unit();
        if (part != null) {
          second = Optional.of(compound(second.get(), part));
        }
        if (at > single && second.get().step < 1) {
          at = part == null ? single : at;
          if (second.get().number > low.number
              && part != null
              && lowUnit != null
              && part.dimension() == lowUnit.dimension()) {
            return build(begin, low, second.get(), part, lowScale);
          }
        }
        at = single;
      }
      if (second.isPresent() && second.get().number > low.number) {
        @Nullable Unit unit = unit();
        Scale scale = money ? Scale.MONEY : unit == null ? scale() : Scale.NONE;
        boolean sameKind =
            (lowUnit == null || scale == Scale.NONE)
                && (lowUnit == null || unit == null || unit.dimension() == lowUnit.dimension());
        if (sameKind
            && (unit != null || lowUnit != null || scale != Scale.NONE || lowScale == Scale.NONE)) {
          Unit common = unit != null ? unit : lowUnit;
          return build(begin, low, second.get(), common, scale != Scale.NONE ? scale : lowScale);
        }
      }
    }
    at = mark;
    return build(begin, low, low, lowUnit, lowScale);
  }

  private NumberPhrase build(int begin, Value low, Value high, @Nullable Unit unit, Scale scale) {
    HedgeFound hedge = hedgeBefore(begin);
    if (hedge.hedge == Hedge.PLAIN && orSo()) {
      hedge = new HedgeFound(Hedge.ABOUT, hedge.firstToken);
    }
    int start = tokens.get(hedge.firstToken).start;
    int end = tokens.get(at - 1).end;
    int decimals = Math.max(low.decimals, high.decimals);
    double step = Math.min(low.step, high.step);
    return new NumberPhrase(
        start,
        end,
        low.number,
        high.number,
        decimals,
        step,
        unit,
        scale,
        hedge.hedge,
        sentence.substring(start, end));
  }

  /** A number with how finely it is stated. */
  private record Value(double number, int decimals, double step, Scale scale) {}

  private Optional<Value> times() {
    int mark = at;
    Map<String, Double> multiples =
        Map.of("twice", 2.0, "double", 2.0, "thrice", 3.0, "triple", 3.0);
    if (at < tokens.size() && multiples.containsKey(peek())) {
      double number = multiples.get(peek());
      at++;
      return Optional.of(new Value(number, 0, 1, Scale.TIMES));
    }
    Optional<Value> number = value();
    if (number.isPresent() && (accept("times") || accept("×"))) {
      return Optional.of(
          new Value(number.get().number, number.get().decimals, number.get().step, Scale.TIMES));
    }
    at = mark;
    return Optional.empty();
  }

  /** Digits, words, a fraction, or a number and a fraction. */
  private Optional<Value> value() {
    if (at >= tokens.size()) {
      return Optional.empty();
    }
    Optional<Value> number = digits().or(this::words).or(this::fractionWords);
    return number.map(this::andAHalf);
  }

  private Optional<Value> digits() {
    String text = peek();
    if (GLYPHS.containsKey(text)) {
      at++;
      return Optional.of(new Value(GLYPHS.get(text), 2, 0.25, Scale.NONE));
    }
    if (Wording.is(text, "\\d+:\\d{2}(:\\d{2})?")) {
      return Optional.empty();
    }
    if (!Character.isDigit(text.charAt(0))) {
      return Optional.empty();
    }
    at++;
    boolean thousands = Wording.is(text, "\\d{1,3}(,\\d{3})+(\\.\\d+)?");
    String plain = thousands ? text.replace(",", "") : text.replace(',', '.');
    int point = plain.indexOf('.');
    int decimals = point < 0 ? 0 : plain.length() - point - 1;
    Value value =
        new Value(Double.parseDouble(plain), decimals, Math.pow(10, -decimals), Scale.NONE);
    if (at < tokens.size() && GLYPHS.containsKey(peek())) {
      double part = GLYPHS.get(peek());
      at++;
      return Optional.of(new Value(value.number + part, 2, 0.25, Scale.NONE));
    }
    return Optional.of(value);
  }

  /** Nothing but blanks or a hyphen stands between a token and the one before. */
  private boolean joined() {
    return at == 0 || sentence.substring(tokens.get(at - 1).end, tokens.get(at).start).isBlank();
  }

  private Optional<Value> words() {
    int mark = at;
    double total = 0;
    boolean any = false;
    while (at < tokens.size() && (!any || joined())) {
      String word = peek();
      Integer small = SMALL.get(word);
      if (small != null) {
        if (any
            && (total % 10 != 0 || total % 100 == 0 && total < 100 || small >= 10)
            && !(total >= 100 && total % 100 == 0)) {
          break;
        }
        total += small;
        any = true;
        at++;
        if (small >= 20
            && at + 1 < tokens.size()
            && peek().equals("-")
            && SMALL.getOrDefault(tokens.get(at + 1).lower, 99) < 10) {
          at++;
        }
      } else if (word.equals("hundred") && (any || after("a"))) {
        total = (any ? total : 1) * 100;
        any = true;
        at++;
      } else if (any
          && total >= 100
          && word.equals("and")
          && at + 1 < tokens.size()
          && SMALL.containsKey(tokens.get(at + 1).lower)) {
        at++;
      } else if (word.equals("dozen") && (any || after("a"))) {
        total = (any ? total : 1) * 12;
        any = true;
        at++;
        break;
      } else {
        break;
      }
    }
    if (!any) {
      at = mark;
      return Optional.empty();
    }
    return Optional.of(pointWords(new Value(total, 0, 1, Scale.NONE)));
  }

  /** "six point four". */
  private Value pointWords(Value whole) {
    int mark = at;
    if (accept("point") && at < tokens.size() && SMALL.getOrDefault(peek(), 99) < 10) {
      double number = whole.number;
      double place = 0.1;
      int decimals = 0;
      while (at < tokens.size() && joined() && SMALL.getOrDefault(peek(), 99) < 10) {
        number += place * SMALL.getOrDefault(peek(), 0);
        place /= 10;
        decimals++;
        at++;
      }
      return new Value(number, decimals, place * 10, Scale.NONE);
    }
    at = mark;
    return whole;
  }

  /** "half", "half a", "a quarter of a", "a third", "two thirds", "three quarters". */
  private Optional<Value> fractionWords() {
    int mark = at;
    boolean article = accept("a", "an");
    if (accept("half")) {
      accept("a", "an");
      return Optional.of(new Value(0.5, 1, 0.5, Scale.NONE));
    }
    if (accept("quarter")) {
      acceptOfA();
      return Optional.of(new Value(0.25, 2, 0.25, Scale.NONE));
    }
    if (article
        && accept("tenth")
        && accept("of")
        && accept("a")
        && at < tokens.size()
        && peek().equals("point")) {
      return Optional.of(new Value(0.1, 1, 0.1, Scale.NONE));
    }
    at = mark;
    article = accept("a", "an");
    if (article && accept("third", "fifth", "tenth") && at < tokens.size() && peek().equals("of")) {
      double part =
          switch (tokens.get(at - 1).lower) {
            case "third" -> 3;
            case "fifth" -> 5;
            default -> 10;
          };
      return Optional.of(new Value(1 / part, 2, 0.05, Scale.NONE));
    }
    at = mark;
    article = accept("a", "an");
    if (article
        && accept("full", "whole", "good")
        && at < tokens.size()
        && Wording.is(peek(), "point|minute|degree|hour")) {
      return Optional.of(new Value(1, 0, 0.5, Scale.NONE));
    }
    at = mark;
    article = accept("a", "an");
    if (article && at < tokens.size() && peek().equals("point") && !digitFollows(at + 1)) {
      return Optional.of(new Value(1, 0, 1, Scale.NONE));
    }
    boolean unitFollows =
        at < tokens.size()
            && UNITS.containsKey(peek())
            && peek().length() > 3
            && !(peek().equals("second") && wordFollows(at))
            && !isRate(at - 2);
    if (article && unitFollows) {
      return Optional.of(new Value(1, 0, 1, Scale.NONE));
    }
    at = mark;
    return Optional.empty();
  }

  /** "1.24 kWh an hour", "thirty cents a minute": what stands before the article is a unit. */
  private boolean isRate(int token) {
    return token >= 0
        && (UNITS.containsKey(tokens.get(token).lower)
            || Wording.is(tokens.get(token).lower, "cents?|euros?|times|once|twice|degrees?"));
  }

  /** "A second round" is no time, "a second faster" is. */
  private boolean wordFollows(int token) {
    return token + 1 < tokens.size()
        && sentence.substring(tokens.get(token).end, tokens.get(token + 1).start).isBlank()
        && !Wording.is(
            tokens.get(token + 1).lower,
            "faster|slower|quicker|sooner|later|longer|shorter|less|more|or|after|before|than|and|a?part|each");
  }

  private boolean digitFollows(int token) {
    return token < tokens.size() && SMALL.containsKey(tokens.get(token).lower);
  }

  private void acceptOfA() {
    int mark = at;
    if (!(accept("of") && accept("a", "an"))) {
      at = mark;
    }
  }

  /** "… and a half", before or after the unit is read. */
  private Value andAHalf(Value value) {
    int mark = at;
    if (accept("and") && accept("a", "one") && accept("half", "quarter")) {
      boolean half = tokens.get(at - 1).lower.equals("half");
      return new Value(value.number + (half ? 0.5 : 0.25), 2, half ? 0.5 : 0.25, Scale.NONE);
    }
    at = mark;
    if (value.number == Math.floor(value.number) && accept("thirds", "quarters")) {
      double part = tokens.get(at - 1).lower.equals("thirds") ? 3 : 4;
      return new Value(value.number / part, 2, 1 / part, Scale.NONE);
    }
    return value;
  }

  /** "6 minutes 30 (seconds)", "an hour and ten minutes", "2 lb 4 oz": in the first unit. */
  private Value compound(Value first, Unit unit) {
    Value value = andAHalf(first);
    Unit smaller =
        switch (unit) {
          case HOUR -> Unit.MINUTE;
          case MINUTE -> Unit.SECOND;
          case POUND -> Unit.OUNCE;
          default -> null;
        };
    if (smaller == null) {
      return value;
    }
    int mark = at;
    boolean apart = at < tokens.size() && !joined();
    boolean and = accept("and");
    if (and) {
      accept("about", "around", "roughly", "some");
    }
    Optional<Value> second = value();
    if (second.isPresent() && second.get().decimals == 0) {
      int afterNumber = at;
      @Nullable Unit written = unit();
      boolean bareSeconds =
          written == null && !and && unit == Unit.MINUTE && second.get().number < 60;
      boolean compares = apart && at < tokens.size() && COMPARING.contains(peek());
      if ((written == smaller || bareSeconds) && !compares) {
        at = written == null ? afterNumber : at;
        double parts = unit == Unit.POUND ? 16 : 60;
        return new Value(value.number + second.get().number / parts, 2, 1 / parts, Scale.NONE);
      }
    }
    at = mark;
    return value;
  }

  /** "11 min, 42 seconds less than the Alder" are two numbers. */
  private static final java.util.Set<String> COMPARING =
      java.util.Set.of(
          "less", "more", "faster", "slower", "quicker", "longer", "shorter", "sooner", "later",
          "earlier", "ahead", "behind", "before", "after");

  private @Nullable Unit unit() {
    if (at >= tokens.size()) {
      return null;
    }
    int mark = at;
    accept("-");
    if (at < tokens.size()) {
      String word = peek();
      if (word.startsWith("°") && word.length() > 1) {
        at++;
        return word.endsWith("c") ? Unit.CELSIUS : Unit.FAHRENHEIT;
      }
      Unit degrees = degrees();
      if (degrees != null) {
        return degrees;
      }
      if (inches()) {
        return Unit.INCH;
      }
      if (accept("celsius", "centigrade")) {
        return Unit.CELSIUS;
      }
      if (accept("fahrenheit")) {
        return Unit.FAHRENHEIT;
      }
      Unit words = unitOfTwoWords();
      if (words != null) {
        return words;
      }
      Unit unit = UNITS.get(word);
      boolean sharpCase =
          word.length() > 1 || tokens.get(at).text.equals("%") || oneLetter(tokens.get(at).text);
      if (unit != null && sharpCase) {
        at++;
        return unit;
      }
      if (word.equals("per") && at + 1 < tokens.size() && tokens.get(at + 1).lower.equals("cent")) {
        at += 2;
        return Unit.PERCENT;
      }
      if ((word.equals("c") || word.equals("f"))
          && Character.isUpperCase(tokens.get(at).text.charAt(0))
          && adjacent(at)) {
        at++;
        return word.equals("c") ? Unit.CELSIUS : Unit.FAHRENHEIT;
      }
    }
    at = mark;
    return null;
  }

  /** "39 in." is a length where no word follows that "in" could lead to. */
  private boolean inches() {
    boolean in =
        at > 0 && peek().equals("in") && Character.isDigit(tokens.get(at - 1).text.charAt(0));
    if (in) {
      String after = sentence.substring(tokens.get(at).end);
      if (Wording.is(after, "(?s)^\\s*(?:[.,;:)]|$|long\\b|wide\\b|deep\\b|high\\b).*")) {
        at++;
        return true;
      }
    }
    return false;
  }

  /** "cu ft", "cubic feet", "square centimetres", "kilowatt hours", "watt hours". */
  private @Nullable Unit unitOfTwoWords() {
    int mark = at;
    if (accept("cu", "cubic") && accept(".", "ft", "feet", "foot")) {
      return Unit.CUBIC_FOOT;
    }
    at = mark;
    if (accept("square", "sq") && accept("centimetres", "centimetre", "centimeters", "cm")) {
      return Unit.SQUARE_CENTIMETRE;
    }
    at = mark;
    if (accept("square", "sq", "sq.") && accept("inches", "inch", "in")) {
      return Unit.SQUARE_INCH;
    }
    at = mark;
    boolean kilo = at < tokens.size() && peek().startsWith("kilowatt");
    if (accept("kilowatt", "watt")) {
      accept("-");
      if (accept("hours", "hour")) {
        return kilo ? Unit.KILOWATT_HOUR : Unit.WATT_HOUR;
      }
    }
    at = mark;
    return null;
  }

  private static boolean oneLetter(String text) {
    return Wording.is(text, "[sghWVKL]|L\\*");
  }

  private boolean adjacent(int token) {
    return token > 0 && tokens.get(token).start - tokens.get(token - 1).end <= 1;
  }

  private @Nullable Unit degrees() {
    int mark = at;
    if (accept("degrees", "degree", "deg", "°")) {
      if (accept("celsius", "centigrade", "c")) {
        return Unit.CELSIUS;
      }
      if (accept("fahrenheit", "f")) {
        return Unit.FAHRENHEIT;
      }
    }
    at = mark;
    return null;
  }

  private Scale scale() {
    int mark = at;
    if (accept("out") && accept("of") && skip("a", "the")) {
      accept("possible");
      if (accept("10", "ten") && !productFollows()) {
        return Scale.OUT_OF_TEN;
      }
    }
    at = mark;
    if (accept("out") && accept("of") && accept("4", "four") && !productFollows()) {
      return Scale.OUT_OF_FOUR;
    }
    at = mark;
    if (accept("/") && accept("10")) {
      return Scale.OUT_OF_TEN;
    }
    at = mark;
    accept("-");
    if (accept("points", "point")) {
      return Scale.POINTS;
    }
    if (accept("degrees", "degree", "°")) {
      return Scale.DEGREES;
    }
    if (accept(
        "dollars", "euros", "euro", "pounds", "bucks", "quid", "€", "$", "£", "eur", "usd",
        "gbp")) {
      return Scale.MONEY;
    }
    at = mark;
    return Scale.NONE;
  }

  private boolean productFollows() {
    return at < tokens.size()
        && Wording.is(
            peek(), "ovens?|products?|models?|machines?|appliances?|toasters?|fryers?|runs?");
  }

  private Optional<NumberPhrase> ordinal(int begin) {
    at = begin;
    String word = peek();
    Integer place = ORDINALS.get(word);
    if (place == null) {
      return digitOrdinal(begin);
    }
    at++;
    Value value = new Value(place, 0, 1, Scale.ORDINAL);
    return Optional.of(build(begin, value, value, null, Scale.ORDINAL));
  }

  private Optional<NumberPhrase> digitOrdinal(int begin) {
    boolean digits = Wording.is(peek(), "\\d+") && at + 1 < tokens.size();
    if (digits && Wording.is(tokens.get(at + 1).lower, "st|nd|rd|th") && adjacent(at + 1)) {
      Value value = new Value(Double.parseDouble(peek()), 0, 1, Scale.ORDINAL);
      at += 2;
      return Optional.of(build(begin, value, value, null, Scale.ORDINAL));
    }
    return Optional.empty();
  }

  // ---- hedges ----

  private record HedgeFound(Hedge hedge, int firstToken) {}

  private static final List<Map.Entry<String, Hedge>> HEDGES =
      List.of(
          Map.entry("a little more than", Hedge.JUST_OVER),
          Map.entry("slightly more than", Hedge.JUST_OVER),
          Map.entry("a little over", Hedge.JUST_OVER),
          Map.entry("a bit over", Hedge.JUST_OVER),
          Map.entry("slightly over", Hedge.JUST_OVER),
          Map.entry("just over", Hedge.JUST_OVER),
          Map.entry("just above", Hedge.JUST_OVER),
          Map.entry("just past", Hedge.JUST_OVER),
          Map.entry("a shade over", Hedge.JUST_OVER),
          Map.entry("a touch over", Hedge.JUST_OVER),
          Map.entry("a shade under", Hedge.ALMOST),
          Map.entry("a touch under", Hedge.ALMOST),
          Map.entry("close to", Hedge.ALMOST),
          Map.entry("not quite", Hedge.ALMOST),
          Map.entry("well over", Hedge.OVER),
          Map.entry("well under", Hedge.UNDER),
          Map.entry("or so", Hedge.ABOUT),
          Map.entry("a little under", Hedge.ALMOST),
          Map.entry("a bit under", Hedge.ALMOST),
          Map.entry("slightly under", Hedge.ALMOST),
          Map.entry("just under", Hedge.ALMOST),
          Map.entry("just shy of", Hedge.ALMOST),
          Map.entry("almost", Hedge.ALMOST),
          Map.entry("nearly", Hedge.ALMOST),
          Map.entry("more or less", Hedge.ABOUT),
          Map.entry("something like", Hedge.ABOUT),
          Map.entry("in the region of", Hedge.ABOUT),
          Map.entry("about", Hedge.ABOUT),
          Map.entry("around", Hedge.ABOUT),
          Map.entry("roughly", Hedge.ABOUT),
          Map.entry("approximately", Hedge.ABOUT),
          Map.entry("some", Hedge.ABOUT),
          Map.entry("maybe", Hedge.ABOUT),
          Map.entry("perhaps", Hedge.ABOUT),
          Map.entry("circa", Hedge.ABOUT),
          Map.entry("~", Hedge.ABOUT),
          Map.entry("≈", Hedge.ABOUT),
          Map.entry("no less than", Hedge.AT_LEAST),
          Map.entry("not less than", Hedge.AT_LEAST),
          Map.entry("no more than", Hedge.AT_MOST),
          Map.entry("not more than", Hedge.AT_MOST),
          Map.entry("more than", Hedge.OVER),
          Map.entry("longer than", Hedge.OVER),
          Map.entry("greater than", Hedge.OVER),
          Map.entry("over", Hedge.OVER),
          Map.entry("above", Hedge.OVER),
          Map.entry("beyond", Hedge.OVER),
          Map.entry(">", Hedge.OVER),
          Map.entry("at least", Hedge.AT_LEAST),
          Map.entry("≥", Hedge.AT_LEAST),
          Map.entry("less than", Hedge.UNDER),
          Map.entry("fewer than", Hedge.UNDER),
          Map.entry("under", Hedge.UNDER),
          Map.entry("below", Hedge.UNDER),
          Map.entry("within", Hedge.UNDER),
          Map.entry("<", Hedge.UNDER),
          Map.entry("at most", Hedge.AT_MOST),
          Map.entry("up to", Hedge.AT_MOST),
          Map.entry("≤", Hedge.AT_MOST));

  private HedgeFound hedgeBefore(int begin) {
    int first = begin;
    while (first > 0
        && List.of("a", "an", "the", "between", "from", "$", "€", "£")
            .contains(tokens.get(first - 1).lower)) {
      first--;
    }
    Optional<HedgeFound> comparative = comparative(first);
    if (comparative.isPresent()) {
      return comparative.get();
    }
    for (Map.Entry<String, Hedge> entry : HEDGES) {
      String[] words = entry.getKey().split(" ");
      int from = first - words.length;
      boolean matches = from >= 0;
      for (int i = 0; matches && i < words.length; i++) {
        matches = tokens.get(from + i).lower.equals(words[i]);
      }
      if (matches) {
        return new HedgeFound(entry.getValue(), from);
      }
    }
    return new HedgeFound(Hedge.PLAIN, begin);
  }

  private static final java.util.Set<String> UPWARDS =
      java.util.Set.of(
          "more", "longer", "hotter", "warmer", "higher", "later", "heavier", "greater", "larger",
          "louder", "slower", "better");
  private static final java.util.Set<String> DOWNWARDS =
      java.util.Set.of(
          "less", "fewer", "shorter", "cooler", "colder", "lower", "lighter", "smaller", "quieter",
          "cheaper", "faster", "quicker", "sooner", "worse");

  /** "Longer than 57 minutes", "no hotter than 74 °C". */
  private Optional<HedgeFound> comparative(int first) {
    if (first < 2 || !tokens.get(first - 1).lower.equals("than")) {
      return Optional.empty();
    }
    String word = tokens.get(first - 2).lower;
    boolean up = UPWARDS.contains(word);
    if (!up && !DOWNWARDS.contains(word)) {
      return Optional.empty();
    }
    String before = first > 2 ? tokens.get(first - 3).lower : "";
    if (before.equals("no") || before.equals("not")) {
      return Optional.of(new HedgeFound(up ? Hedge.AT_MOST : Hedge.AT_LEAST, first - 3));
    }
    if (Wording.is(before, "little|bit|slightly") && up) {
      return Optional.empty();
    }
    return Optional.of(new HedgeFound(up ? Hedge.OVER : Hedge.UNDER, first - 2));
  }

  // ---- tokens ----

  private String peek() {
    return tokens.get(at).lower;
  }

  private boolean accept(String... words) {
    if (at < tokens.size()) {
      for (String word : words) {
        if (peek().equals(word)) {
          at++;
          return true;
        }
      }
    }
    return false;
  }

  /** "Twelve minutes or so", "twelve minutes or thereabouts". */
  private boolean orSo() {
    int mark = at;
    boolean hedged = accept("or") && accept("so", "thereabouts");
    at = mark;
    return hedged;
  }

  /** Accepts one of the words where it stands; true either way. */
  private boolean skip(String... words) {
    accept(words);
    return true;
  }

  private boolean before(int token, String word) {
    return token > 0 && tokens.get(token - 1).lower.equals(word);
  }

  private boolean after(String word) {
    return at > 0 && tokens.get(at - 1).lower.equals(word);
  }
}
