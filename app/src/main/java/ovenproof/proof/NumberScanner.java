package ovenproof.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.NumberPhrase.Scale;

/**
 * Finds numbers in a sentence: in digits and in words, with units, as ranges, compound ("6 min
 * 30"), as fractions, multiples and ordinals, with the hedge before them. English.
 */
final class NumberScanner {
  private final TokenCursor cursor;
  private final UnitScanner units;
  private final NumberWords numbers;
  private final Hedges hedges;

  private NumberScanner(TokenCursor cursor) {
    this.cursor = cursor;
    this.units = new UnitScanner(cursor);
    this.numbers = new NumberWords(cursor, units);
    this.hedges = new Hedges(cursor);
  }

  /** All number phrases of a sentence in order, not overlapping. */
  static List<NumberPhrase> scan(String sentence) {
    return new NumberScanner(new TokenCursor(sentence)).scan();
  }

  private List<NumberPhrase> scan() {
    List<NumberPhrase> found = new ArrayList<>();
    while (cursor.at < cursor.tokens.size()) {
      int begin = cursor.at;
      Optional<NumberPhrase> phrase = phrase();
      if (phrase.isPresent()) {
        found.add(phrase.get());
      } else {
        cursor.at = begin + 1;
      }
    }
    return found;
  }

  private Optional<NumberPhrase> phrase() {
    int begin = cursor.at;
    if (isPronounOne()) {
      return Optional.empty();
    }
    Optional<NumberPhrase> clock = clock(begin);
    if (clock.isPresent()) {
      return clock;
    }
    boolean money = cursor.accept("$", "€", "£");
    Optional<NumberWords.Value> first = numbers.times().or(numbers::value);
    if (first.isEmpty()) {
      return ordinal(begin);
    }
    NumberWords.Value low = first.get();
    Optional<NumberPhrase> pair = money ? Optional.empty() : spokenPair(begin, low);
    if (pair.isPresent()) {
      return pair;
    }
    Optional<NumberPhrase> share = share(begin, low);
    if (share.isPresent()) {
      return share;
    }
    if (low.scale() == Scale.TIMES) {
      return Optional.of(build(begin, low, low, null, Scale.TIMES));
    }
    @Nullable Unit lowUnit = units.unit();
    Scale lowScale = money ? Scale.MONEY : lowUnit == null ? units.scale() : Scale.NONE;
    if (lowUnit != null) {
      low = numbers.compound(low, lowUnit);
    }
    return Optional.of(range(begin, low, lowUnit, lowScale, money));
  }

  /** "The quiet one thirty-three decibels": the first of two numbers is none. */
  private boolean isPronounOne() {
    boolean one =
        cursor.at > 0
            && cursor.at + 1 < cursor.tokens.size()
            && cursor.peek().equals("one")
            && NumberWords.SMALL.containsKey(cursor.tokens.get(cursor.at + 1).lower());
    String before = one ? cursor.tokens.get(cursor.at - 1).lower() : "";
    return one
        && Character.isLetter(before.charAt(0))
        && !Wording.is(
            before,
            "in|at|to|for|of|about|only|just|is|was|takes?|took|needs?|needed|costs?|by|and|or|over|under|nearly|almost|around|exactly|from|after|than|goes|it['’]s|that['’]s|gets?|got|scored|scores|with|a");
  }

  /** "Eleven forty-six", "two thirty", "seven oh five": a time, a dial or a price as spoken. */
  private Optional<NumberPhrase> spokenPair(int begin, NumberWords.Value first) {
    int mark = cursor.at;
    boolean spoken =
        first.scale() == Scale.NONE
            && first.decimals() == 0
            && first.number() >= 1
            && first.number() < 60
            && Character.isLetter(cursor.tokens.get(begin).text().charAt(0))
            && cursor.at < cursor.tokens.size()
            && cursor.joined();
    if (spoken) {
      boolean zero = cursor.accept("oh", "o");
      Optional<NumberWords.Value> second = numbers.words();
      boolean fits =
          second.isPresent()
              && second.get().decimals() == 0
              && (zero ? second.get().number() < 10 : second.get().number() >= 10)
              && second.get().number() < 100;
      if (fits) {
        double whole = first.number() * 100 + second.get().number();
        if (units.unit() == null && units.scale() == Scale.NONE) {
          NumberWords.Value value = new NumberWords.Value(whole, 0, 1, Scale.SPOKEN_PAIR);
          return Optional.of(build(begin, value, value, null, Scale.SPOKEN_PAIR));
        }
        cursor.at = mark;
        numbers.words();
        NumberWords.Value value = new NumberWords.Value(whole, 0, 1, Scale.NONE);
        @Nullable Unit unit = units.unit();
        Scale scale = unit == null ? units.scale() : Scale.NONE;
        return Optional.of(build(begin, value, value, unit, scale));
      }
    }
    cursor.at = mark;
    return Optional.empty();
  }

  /** "A quarter of its mass", "two thirds of the top": a share in percent. */
  private Optional<NumberPhrase> share(int begin, NumberWords.Value value) {
    int mark = cursor.at;
    boolean fraction = value.number() > 0 && value.number() < 1 && value.scale() == Scale.NONE;
    if (fraction && cursor.accept("of") && cursor.accept("its", "the", "their", "all", "a")) {
      NumberWords.Value percent = new NumberWords.Value(value.number() * 100, 0, 5, Scale.NONE);
      cursor.at -= 2;
      return Optional.of(build(begin, percent, percent, Unit.PERCENT, Scale.NONE));
    }
    cursor.at = mark;
    return Optional.empty();
  }

  /** "6:30" is read as minutes and seconds, "1:02:30" as hours, minutes and seconds. */
  private Optional<NumberPhrase> clock(int begin) {
    if (!Wording.is(cursor.peek(), "\\d+:\\d{2}(:\\d{2})?")) {
      return Optional.empty();
    }
    double seconds = 0;
    for (String part : cursor.peek().split(":")) {
      seconds = seconds * 60 + Integer.parseInt(part);
    }
    cursor.at++;
    NumberWords.Value value = new NumberWords.Value(seconds / 60, 2, 1 / 60.0, Scale.NONE);
    cursor.accept("min", "minutes");
    return Optional.of(build(begin, value, value, Unit.MINUTE, Scale.NONE));
  }

  private NumberPhrase range(
      int begin, NumberWords.Value low, @Nullable Unit lowUnit, Scale lowScale, boolean money) {
    int mark = cursor.at;
    boolean joins =
        cursor.accept("to", "–", "—", "-", "−")
            || (cursor.before(begin, "between") && cursor.accept("and"));
    if (joins) {
      cursor.accept("$", "€", "£");
      Optional<NumberWords.Value> second = numbers.value();
      if (second.isPresent()) {
        int single = cursor.at;
        @Nullable Unit part = units.unit();
        if (part != null) {
          second = Optional.of(numbers.compound(second.get(), part));
        }
        if (cursor.at > single && second.get().step() < 1) {
          cursor.at = part == null ? single : cursor.at;
          if (second.get().number() > low.number()
              && part != null
              && lowUnit != null
              && part.dimension() == lowUnit.dimension()) {
            return build(begin, low, second.get(), part, lowScale);
          }
        }
        cursor.at = single;
      }
      if (second.isPresent() && second.get().number() > low.number()) {
        @Nullable Unit unit = units.unit();
        Scale scale = money ? Scale.MONEY : unit == null ? units.scale() : Scale.NONE;
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
    cursor.at = mark;
    return build(begin, low, low, lowUnit, lowScale);
  }

  /** "An hour" is meant to some ten minutes, not to half an hour. */
  private static final double WHOLE_HOUR = 1 / 6.0;

  private static final double TENTH = 0.1;

  private NumberPhrase build(
      int begin, NumberWords.Value low, NumberWords.Value high, @Nullable Unit unit, Scale scale) {
    Hedges.HedgeFound hedge = hedges.hedgeBefore(begin);
    if (hedge.hedge() == Hedge.PLAIN && cursor.orSo()) {
      hedge = new Hedges.HedgeFound(Hedge.ABOUT, hedge.firstToken());
    }
    if (hedge.hedge() == Hedge.PLAIN) {
      hedge = new Hedges.HedgeFound(cursor.orBeyond(), hedge.firstToken());
    }
    int start = cursor.tokens.get(hedge.firstToken()).start();
    int end = cursor.tokens.get(cursor.at - 1).end();
    int decimals = Math.max(low.decimals(), high.decimals());
    double step = Math.min(low.step(), high.step());
    if (unit == Unit.METRE && step >= 1) {
      step = TENTH;
    }
    if (unit == Unit.HOUR && step >= 1) {
      step = WHOLE_HOUR;
    }
    return new NumberPhrase(
        start,
        end,
        low.number(),
        high.number(),
        decimals,
        step,
        unit,
        scale,
        hedge.hedge(),
        cursor.sentence.substring(start, end));
  }

  private Optional<NumberPhrase> ordinal(int begin) {
    cursor.at = begin;
    String word = cursor.peek();
    Integer place = NumberWords.ORDINALS.get(word);
    if (place == null) {
      return digitOrdinal(begin);
    }
    cursor.at++;
    NumberWords.Value value = new NumberWords.Value(place, 0, 1, Scale.ORDINAL);
    return Optional.of(build(begin, value, value, null, Scale.ORDINAL));
  }

  private Optional<NumberPhrase> digitOrdinal(int begin) {
    boolean digits = Wording.is(cursor.peek(), "\\d+") && cursor.at + 1 < cursor.tokens.size();
    if (digits
        && Wording.is(cursor.tokens.get(cursor.at + 1).lower(), "st|nd|rd|th")
        && cursor.adjacent(cursor.at + 1)) {
      NumberWords.Value value =
          new NumberWords.Value(Double.parseDouble(cursor.peek()), 0, 1, Scale.ORDINAL);
      cursor.at += 2;
      return Optional.of(build(begin, value, value, null, Scale.ORDINAL));
    }
    return Optional.empty();
  }
}
