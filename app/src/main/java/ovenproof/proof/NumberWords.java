package ovenproof.proof;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.NumberPhrase.Scale;

/**
 * Reads the number itself, without unit or hedge: digits, words, fractions, "six point four", "an
 * hour and ten minutes".
 */
final class NumberWords {
  static final Map<String, Integer> SMALL = new HashMap<>();

  static final Map<String, Integer> ORDINALS = new HashMap<>();

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
  }

  private final TokenCursor cursor;
  private final UnitScanner units;

  NumberWords(TokenCursor cursor, UnitScanner units) {
    this.cursor = cursor;
    this.units = units;
  }

  static boolean isNumberWord(String lower) {
    return SMALL.containsKey(lower) || Wording.is(lower, "hundred|point|half|quarter|dozen");
  }

  /** A number with how finely it is stated. */
  record Value(double number, int decimals, double step, Scale scale) {}

  Optional<Value> times() {
    int mark = cursor.at;
    Map<String, Double> multiples =
        Map.of("twice", 2.0, "double", 2.0, "thrice", 3.0, "triple", 3.0);
    if (cursor.at < cursor.tokens.size() && multiples.containsKey(cursor.peek())) {
      double number = multiples.get(cursor.peek());
      cursor.at++;
      return Optional.of(new Value(number, 0, 1, Scale.TIMES));
    }
    Optional<Value> number = value();
    if (number.isPresent() && (cursor.accept("times") || cursor.accept("×"))) {
      return Optional.of(
          new Value(
              number.get().number(), number.get().decimals(), number.get().step(), Scale.TIMES));
    }
    cursor.at = mark;
    return Optional.empty();
  }

  /** Digits, words, a fraction, or a number and a fraction. */
  Optional<Value> value() {
    if (cursor.at >= cursor.tokens.size()) {
      return Optional.empty();
    }
    Optional<Value> number = digits().or(this::words).or(this::fractionWords);
    return number.map(this::andAHalf);
  }

  private Optional<Value> digits() {
    String text = cursor.peek();
    if (GLYPHS.containsKey(text)) {
      cursor.at++;
      return Optional.of(new Value(GLYPHS.get(text), 2, 0.25, Scale.NONE));
    }
    if (Wording.is(text, "\\d+:\\d{2}(:\\d{2})?")) {
      return Optional.empty();
    }
    if (!Character.isDigit(text.charAt(0))) {
      return Optional.empty();
    }
    cursor.at++;
    boolean thousands = Wording.is(text, "\\d{1,3}(,\\d{3})+(\\.\\d+)?");
    String plain = thousands ? text.replace(",", "") : text.replace(',', '.');
    int point = plain.indexOf('.');
    int decimals = point < 0 ? 0 : plain.length() - point - 1;
    Value value =
        new Value(Double.parseDouble(plain), decimals, Math.pow(10, -decimals), Scale.NONE);
    if (cursor.at < cursor.tokens.size() && GLYPHS.containsKey(cursor.peek())) {
      double part = GLYPHS.get(cursor.peek());
      cursor.at++;
      return Optional.of(new Value(value.number() + part, 2, 0.25, Scale.NONE));
    }
    return Optional.of(value);
  }

  Optional<Value> words() {
    int mark = cursor.at;
    double total = 0;
    boolean any = false;
    while (cursor.at < cursor.tokens.size() && (!any || cursor.joined())) {
      String word = cursor.peek();
      Integer small = SMALL.get(word);
      if (small != null) {
        if (any
            && (total % 10 != 0 || total % 100 == 0 && total < 100 || small >= 10)
            && !(total >= 100 && total % 100 == 0)) {
          break;
        }
        total += small;
        any = true;
        cursor.at++;
        if (small >= 20
            && cursor.at + 1 < cursor.tokens.size()
            && cursor.peek().equals("-")
            && SMALL.getOrDefault(cursor.tokens.get(cursor.at + 1).lower(), 99) < 10) {
          cursor.at++;
        }
      } else if (word.equals("hundred") && (any || cursor.after("a"))) {
        total = (any ? total : 1) * 100;
        any = true;
        cursor.at++;
      } else if (any
          && total >= 100
          && word.equals("and")
          && cursor.at + 1 < cursor.tokens.size()
          && SMALL.containsKey(cursor.tokens.get(cursor.at + 1).lower())) {
        cursor.at++;
      } else if (word.equals("dozen") && (any || cursor.after("a"))) {
        total = (any ? total : 1) * 12;
        any = true;
        cursor.at++;
        break;
      } else {
        break;
      }
    }
    if (!any) {
      cursor.at = mark;
      return Optional.empty();
    }
    return Optional.of(pointWords(new Value(total, 0, 1, Scale.NONE)));
  }

  /** "six point four". */
  private Value pointWords(Value whole) {
    int mark = cursor.at;
    if (cursor.accept("point")
        && cursor.at < cursor.tokens.size()
        && SMALL.getOrDefault(cursor.peek(), 99) < 10) {
      double number = whole.number();
      double place = 0.1;
      int decimals = 0;
      while (cursor.at < cursor.tokens.size()
          && cursor.joined()
          && SMALL.getOrDefault(cursor.peek(), 99) < 10) {
        number += place * SMALL.getOrDefault(cursor.peek(), 0);
        place /= 10;
        decimals++;
        cursor.at++;
      }
      return new Value(number, decimals, place * 10, Scale.NONE);
    }
    cursor.at = mark;
    return whole;
  }

  /** "half", "half a", "a quarter of a", "a third", "two thirds", "three quarters". */
  private Optional<Value> fractionWords() {
    int mark = cursor.at;
    boolean article = cursor.accept("a", "an");
    if (cursor.accept("half")) {
      cursor.accept("a", "an");
      return Optional.of(new Value(0.5, 1, 0.5, Scale.NONE));
    }
    if (cursor.accept("quarter")) {
      acceptOfA();
      return Optional.of(new Value(0.25, 2, 0.25, Scale.NONE));
    }
    if (article
        && cursor.accept("tenth")
        && cursor.accept("of")
        && cursor.accept("a")
        && cursor.at < cursor.tokens.size()
        && cursor.peek().equals("point")) {
      return Optional.of(new Value(0.1, 1, 0.1, Scale.NONE));
    }
    cursor.at = mark;
    article = cursor.accept("a", "an");
    if (article
        && cursor.accept("third", "fifth", "tenth")
        && cursor.at < cursor.tokens.size()
        && cursor.peek().equals("of")) {
      double part =
          switch (cursor.tokens.get(cursor.at - 1).lower()) {
            case "third" -> 3;
            case "fifth" -> 5;
            default -> 10;
          };
      return Optional.of(new Value(1 / part, 2, 0.05, Scale.NONE));
    }
    cursor.at = mark;
    article = cursor.accept("a", "an");
    if (article
        && cursor.accept("full", "whole", "good")
        && cursor.at < cursor.tokens.size()
        && Wording.is(cursor.peek(), "point|minute|degree|hour")) {
      return Optional.of(new Value(1, 0, 0.5, Scale.NONE));
    }
    cursor.at = mark;
    article = cursor.accept("a", "an");
    if (article
        && cursor.at < cursor.tokens.size()
        && cursor.peek().equals("point")
        && !digitFollows(cursor.at + 1)) {
      return Optional.of(new Value(1, 0, 1, Scale.NONE));
    }
    boolean unitFollows =
        cursor.at < cursor.tokens.size()
            && UnitScanner.UNITS.containsKey(cursor.peek())
            && cursor.peek().length() > 3
            && !(cursor.peek().equals("second") && wordFollows(cursor.at))
            && !isRate(cursor.at - 2);
    if (article && unitFollows) {
      return Optional.of(new Value(1, 0, 1, Scale.NONE));
    }
    cursor.at = mark;
    return Optional.empty();
  }

  /** "1.24 kWh an hour", "thirty cents a minute": what stands before the article is a unit. */
  private boolean isRate(int token) {
    return token >= 0
        && (UnitScanner.UNITS.containsKey(cursor.tokens.get(token).lower())
            || Wording.is(
                cursor.tokens.get(token).lower(), "cents?|euros?|times|once|twice|degrees?"));
  }

  /** "A second round" is no time, "a second faster" is. */
  private boolean wordFollows(int token) {
    return token + 1 < cursor.tokens.size()
        && cursor
            .sentence
            .substring(cursor.tokens.get(token).end(), cursor.tokens.get(token + 1).start())
            .isBlank()
        && !Wording.is(
            cursor.tokens.get(token + 1).lower(),
            "faster|slower|quicker|sooner|later|longer|shorter|less|more|or|after|before|than|and|a?part|each");
  }

  private boolean digitFollows(int token) {
    return token < cursor.tokens.size() && SMALL.containsKey(cursor.tokens.get(token).lower());
  }

  private void acceptOfA() {
    int mark = cursor.at;
    if (!(cursor.accept("of") && cursor.accept("a", "an"))) {
      cursor.at = mark;
    }
  }

  /** "… and a half", before or after the unit is read. */
  private Value andAHalf(Value value) {
    int mark = cursor.at;
    if (cursor.accept("and") && cursor.accept("a", "one") && cursor.accept("half", "quarter")) {
      boolean half = cursor.tokens.get(cursor.at - 1).lower().equals("half");
      return new Value(value.number() + (half ? 0.5 : 0.25), 2, half ? 0.5 : 0.25, Scale.NONE);
    }
    cursor.at = mark;
    if (value.number() == Math.floor(value.number()) && cursor.accept("thirds", "quarters")) {
      double part = cursor.tokens.get(cursor.at - 1).lower().equals("thirds") ? 3 : 4;
      return new Value(value.number() / part, 2, 1 / part, Scale.NONE);
    }
    return value;
  }

  /** "6 minutes 30 (seconds)", "an hour and ten minutes", "2 lb 4 oz": in the first unit. */
  Value compound(Value first, Unit unit) {
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
    int mark = cursor.at;
    boolean apart = cursor.at < cursor.tokens.size() && !cursor.joined();
    boolean and = cursor.accept("and");
    if (and) {
      cursor.accept("about", "around", "roughly", "some");
    }
    Optional<Value> second = value();
    if (second.isPresent() && second.get().decimals() == 0) {
      int afterNumber = cursor.at;
      @Nullable Unit written = units.unit();
      boolean bareSeconds =
          written == null && !and && unit == Unit.MINUTE && second.get().number() < 60;
      boolean compares =
          apart && cursor.at < cursor.tokens.size() && COMPARING.contains(cursor.peek());
      if ((written == smaller || bareSeconds) && !compares) {
        cursor.at = written == null ? afterNumber : cursor.at;
        double parts = unit == Unit.POUND ? 16 : 60;
        return new Value(value.number() + second.get().number() / parts, 2, 1 / parts, Scale.NONE);
      }
    }
    cursor.at = mark;
    return value;
  }

  /** "11 min, 42 seconds less than the Alder" are two numbers. */
  private static final Set<String> COMPARING =
      Set.of(
          "less", "more", "faster", "slower", "quicker", "longer", "shorter", "sooner", "later",
          "earlier", "ahead", "behind", "before", "after");
}
