package ovenproof.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.NumberPhrase.Scale;

/**
 * Gives bare numbers the unit that speech leaves out: "Siskin took six fifty-two", "the dial at two
 * thirty", "Plover needed forty-nine minutes, Siskin fifty-four".
 */
final class Elliptic {
  private static final Pattern DIAL =
      Pattern.compile(
          "(?is).*\\b(dial(?:led)?|set|setting|degrees?|thermostat|runs?|sits?|held|holds?|peaked?|topped|hot)\\b[^.;]{0,40}$");

  /** "Fifteen points too dark": points of lightness. */
  private static final Pattern TOO_DARK =
      Pattern.compile(
          "(?is)^\\s*(?:too (?:dark|light|pale|brown)|(?:darker|lighter|paler|browner) than (?:wanted|the target|(?:we|you|i) want(?:ed)?|intended|(?:it|they) should)|(?:off|from) (?:the )?(?:target|wanted))\\b.*");

  /** "Too dark by fifteen units", "paler than wanted, by about 14 points". */
  private static final Pattern TOO_DARK_BY =
      Pattern.compile(
          "(?is).*\\b(?:too (?:dark|light|pale|brown)|(?:darker|lighter|paler|browner) than (?:wanted|the target|we wanted|intended))\\s*,?\\s*by\\s+(?:a good\\s+|some\\s+)?$");

  /** "To get to two twenty", "reaches two thirty": what is reached is no time. */
  private static final Pattern GET_TO =
      Pattern.compile(
          "(?is).*\\b(?:(?:gets?|got|getting|goes|go|went|comes?|came|heats?|heated|heating|up) (?:\\p{L}+ )?to|reach(?:es|ed|ing)?|hits?|thinks|means|set to|asked for|ask for)\\s+$");

  private static final Pattern MONEY =
      Pattern.compile(
          "(?is).*\\b(costs?|price[ds]?|sells?|paid|euros?|dollars?|for sale)\\b[^.;]{0,25}$");
  private static final Pattern FREE_BEFORE =
      Pattern.compile(
          "(?is)\\s*|.*[,;(:—–]\\s*|.*\\b(took|takes|needed|needs|wanted|at|in|with|about|around|nearly|almost|just|over|under|than|to|gets?|got|gave|scored|scores|lost|ran|runs|was|is|by|for|hit|reached|only|managed|needing|taking|\\p{L}+)\\s+$");
  private static final Pattern FREE_AFTER =
      Pattern.compile(
          "(?is)^\\s*(?:[.,;:!?()—–]|$|are\\b|is\\b|was\\b|and\\b|but\\b|while\\b|then\\b|which\\b|for\\b|on average|in\\b|too\\b|with\\b|from\\b|overall\\b|before\\b|below\\b|above\\b|hot\\b|cold\\b|flat\\b|exactly\\b|here\\b|there\\b|again\\b|apiece\\b|or so\\b|past\\b|apart\\b|to\\b|so\\b|because\\b|if\\b|when\\b|as\\b|it\\b|they\\b|we\\b|i\\b|you\\b|the\\b|now\\b|okay\\b|by\\b|at\\b|on\\b|after\\b|that\\b|this\\b|these\\b|compared\\b|against\\b|while\\b|where\\b|despite\\b|thanks\\b|of its\\b|(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|eighteen|nineteen)\\b).*");

  private Elliptic() {}

  /**
   * Numbers with their units, where one may be read.
   *
   * @param before numbers with units in the paragraph so far
   */
  static List<NumberPhrase> complete(
      String text, List<NumberPhrase> numbers, List<NumberPhrase> before) {
    List<NumberPhrase> all = new ArrayList<>();
    List<NumberPhrase> carriers = new ArrayList<>(before);
    for (NumberPhrase number : fromBehind(text, numbers)) {
      int from = number.low() < SMALL ? Math.max(0, before.size() - 1) : 0;
      List<NumberPhrase> likely = carriers.subList(from, carriers.size());
      @Nullable NumberPhrase carrying =
          opposed(text, number) && !likely.isEmpty()
              ? likely.get(likely.size() - 1)
              : nearest(number, inSentence(number, carriers, before.size()).orElse(likely));
      NumberPhrase read =
          number.scale() == Scale.POINTS
                  && (TOO_DARK.matcher(Wording.after(text, number.end())).matches()
                      || TOO_DARK_BY.matcher(Wording.before(text, number.start())).matches())
              ? number.as(number.low(), number.step(), Unit.LIGHTNESS, Scale.NONE)
              : number.scale() == Scale.SPOKEN_PAIR
                  ? pair(text, number, carrying)
                  : price(text, number)
                      ? number.as(number.low(), number.step(), null, Scale.MONEY)
                      : heat(text, number) || core(text, number) || fahrenheit(text, number)
                          ? number.as(number.low(), number.step(), null, Scale.DEGREES)
                          : carrying != null && carries(text, number, carrying)
                              ? carried(number, carrying)
                              : number;
      all.add(read);
      if (hasUnit(read)) {
        carriers.add(read);
      }
    }
    return all;
  }

  /** "50.9 and 51.3 decibels": the unit behind a list is that of all its numbers. */
  private static List<NumberPhrase> fromBehind(String text, List<NumberPhrase> numbers) {
    List<NumberPhrase> all = new ArrayList<>(numbers);
    for (int i = all.size() - 2; i >= 0; i--) {
      NumberPhrase number = all.get(i);
      NumberPhrase next = all.get(i + 1);
      boolean listed =
          number.unit() == null
              && number.scale() == Scale.NONE
              && next.unit() != null
              && near(number.low(), next.low())
              && number.decimals() == next.decimals()
              && Wording.is(
                  text.substring(number.end(), Math.max(number.end(), next.start())),
                  "(?is)\\s*(?:,|and|or|,\\s*and|against|versus)\\s*");
      if (listed) {
        all.set(i, number.as(number.low(), next.step(), next.unit(), Scale.NONE));
      }
    }
    return all;
  }

  /** "Costs a hundred and forty-nine". */
  private static boolean price(String text, NumberPhrase number) {
    boolean listed =
        Wording.is(text, "(?is)[\\s*•-]*(?:the |current |our |and )*prices?\\b.*")
            && number.low() < 2000
            && number.low() == Math.floor(number.low())
            && Wording.is(Wording.before(text, number.start()), "(?is).*(?:\\p{L}|[:,(])\\s+$")
            && FREE_AFTER.matcher(Wording.after(text, number.end())).matches();
    if (listed && number.unit() == null && number.scale() == Scale.NONE && number.low() >= 20) {
      return true;
    }
    return number.unit() == null
        && number.scale() == Scale.NONE
        && number.low() >= 20
        && FREE_AFTER.matcher(Wording.after(text, number.end())).matches()
        && Wording.is(
            Wording.before(text, number.start()),
            "(?is).*\\b(costs?|cost you|sells? for|priced at|yours for|price is|(?:i|you|we) (?:had|have|spend|spent|paid|pay|save[sd]?))\\s+(?:just |only |you |a )*$");
  }

  /** "A hundred and sixty-five, if you think in Fahrenheit". */
  private static boolean fahrenheit(String text, NumberPhrase number) {
    return number.unit() == null
        && number.scale() == Scale.NONE
        && number.low() >= 100
        && number.low() <= 600
        && Wording.is(Wording.after(text, number.end()), "(?is)^[^.;\\d]{0,30}\\bfahrenheit\\b.*");
  }

  /** "Cook it to seventy-four in the middle", "seventy is plenty for poultry". */
  private static boolean core(String text, NumberPhrase number) {
    return number.unit() == null
        && number.scale() == Scale.NONE
        && number.low() >= 50
        && number.low() <= 100
        && (Wording.is(
                Wording.before(text, number.start()),
                "(?is).*\\b(?:cook|cooked|cooks|roast|roasted|heat|bring|take|brought|taken)\\b[^.;,]{0,20}\\bto\\s+$")
            || Wording.is(
                Wording.after(text, number.end()),
                "(?is)^\\s*(?:in the (?:middle|centre|center|core)|at the core|inside|is (?:plenty|enough|safe|fine)[^.;]{0,25}\\b(?:poultry|turkey|chicken|meat)|in the thickest)\\b.*"));
  }

  /** "It gets to two hundred and twenty": nothing else that is reached has such a size. */
  private static boolean heat(String text, NumberPhrase number) {
    return number.unit() == null
        && number.scale() == Scale.NONE
        && number.low() >= 100
        && number.low() <= 500
        && FREE_AFTER.matcher(Wording.after(text, number.end())).matches()
        && Wording.is(
            Wording.before(text, number.start()),
            "(?is).*\\b(gets? (?:up )?to|got (?:up )?to|reach(?:es|ed)?|set (?:it |them )?to|means|really means|is really|gives you|gets you|set at|(?:was|were|sat|stood|stuck|stopped|stays?|stayed|settle[sd]?|ended) at|(?:says|said|reads|read|shows|showed)(?: only| just)?|dial(?:led)?(?: to| at)?|(?:tops?|topped|maxe?[sd]) out at|peak(?:s|ed) at|(?:sits?|sat|stops?|stuck|stays?)(?: \\p{L}+)? at)\\s+(?:a )?$");
  }

  /** Of the numbers before, the one of the most similar size; the later of two. */
  private static @Nullable NumberPhrase nearest(NumberPhrase number, List<NumberPhrase> carriers) {
    NumberPhrase best = null;
    double least = Double.POSITIVE_INFINITY;
    for (NumberPhrase carrier : carriers) {
      double apart =
          number.low() > 0 && carrier.low() > 0
              ? Math.abs(Math.log(number.low() / carrier.low()))
              : Double.POSITIVE_INFINITY;
      if (apart <= least) {
        best = carrier;
        least = apart;
      }
    }
    return best;
  }

  /** Units of the sentence itself go before those of the sentences before it. */
  private static Optional<List<NumberPhrase>> inSentence(
      NumberPhrase number, List<NumberPhrase> carriers, int before) {
    List<NumberPhrase> here =
        carriers.subList(before, carriers.size()).stream()
            .filter(c -> near(number.low(), c.low()))
            .toList();
    return here.isEmpty() ? Optional.empty() : Optional.of(here);
  }

  /** Small numbers count things; only the last unit is lent to them. */
  private static final double SMALL = 20;

  /** How many numbers of the paragraph a bare one may borrow its unit from. */
  private static final int REMEMBERED = 8;

  /** The last numbers that have a unit or a scale. */
  static List<NumberPhrase> remembered(List<NumberPhrase> before, List<NumberPhrase> numbers) {
    List<NumberPhrase> all = new ArrayList<>(before);
    numbers.stream().filter(Elliptic::hasUnit).forEach(all::add);
    return List.copyOf(all.subList(Math.max(0, all.size() - REMEMBERED), all.size()));
  }

  private static boolean hasUnit(NumberPhrase number) {
    return number.unit() != null
        || number.scale() == Scale.OUT_OF_TEN
        || number.scale() == Scale.POINTS
        || number.scale() == Scale.DEGREES
        || number.scale() == Scale.MONEY
        || number.scale() == Scale.NONE && number.decimals() == 1 && number.high() <= 10;
  }

  private static NumberPhrase pair(
      String text, NumberPhrase number, @Nullable NumberPhrase carrying) {
    String before = Wording.before(text, number.start());
    double whole = number.low();
    double minutes = Math.floor(whole / 100) + whole % 100 / 60;
    if (MONEY.matcher(before).matches()) {
      return number.as(whole, 1, null, Scale.MONEY);
    }
    boolean afterTime =
        carrying != null
            && carrying.unit() == Unit.MINUTE
            && Wording.is(before, "(?is).*\\b(?:seconds?|minutes?|\\p{L}+|\\d) to\\s+$");
    if (whole % 10 == 0 && whole >= 100 && (afterTime || GET_TO.matcher(before).matches())) {
      return number.as(whole, 1, null, Scale.DEGREES);
    }
    boolean dial = DIAL.matcher(before).matches() || whole % 100 >= 60;
    boolean times = carrying != null && carrying.unit() == Unit.MINUTE;
    return dial && !(times && whole % 100 < 60 && !Wording.is(before, "(?is).*\\bdial\\b.*"))
        ? number.as(whole, 1, null, Scale.DEGREES)
        : number.as(minutes, 1 / 60.0, Unit.MINUTE, Scale.NONE);
  }

  private static boolean carries(String text, NumberPhrase number, NumberPhrase carrying) {
    boolean bare =
        number.unit() == null
            && number.scale() == Scale.NONE
            && (number.decimals() <= 2
                || Wording.is(number.text(), "(?is).*\\b(half|quarter)\\b.*"));
    boolean coarse =
        number.decimals() < 2 || carrying.decimals() == 2 && carrying.unit() != Unit.MINUTE;
    return bare
        && (coarse || Wording.is(number.text(), "(?is).*\\b(half|quarter)\\b.*"))
        && (number.decimals() != 1
            || opposed(text, number)
            || carrying.unit() != null && number.high() > 10)
        && !Wording.is(number.text(), "(?i)one")
        && !Wording.is(
            Wording.before(text, number.start()),
            "(?is).*\\b(of all|all|all of|of the|the other|these|those|out of|(?:scores?|totals?) (?:\\p{L}+ ){0,2}(?:at|to))\\s+$")
        && (near(number.low(), carrying.low()) || opposed(text, number))
        && FREE_BEFORE.matcher(Wording.before(text, number.start())).matches()
        && FREE_AFTER.matcher(Wording.after(text, number.end())).matches();
  }

  /** "Fifteen degrees … compared with one point four": what is opposed has the same unit. */
  private static boolean opposed(String text, NumberPhrase number) {
    return Wording.is(
        Wording.before(text, number.start()),
        "(?is).*\\b(compared with|compared to|against|versus|vs\\.?|as opposed to|rather than|instead of|where\\p{L}* .{0,25} (?:had|has|showed|managed|only))\\s+(?:just |only )?$");
  }

  /** An elided unit joins numbers of one size. */
  private static boolean near(double a, double b) {
    return a > 0 && b > 0 && a / b < 2.5 && b / a < 2.5;
  }

  private static NumberPhrase carried(NumberPhrase number, NumberPhrase carrying) {
    boolean heat = carrying.unit() == Unit.CELSIUS || carrying.unit() == Unit.FAHRENHEIT;
    if (heat) {
      return number.as(number.low(), number.step(), null, Scale.DEGREES);
    }
    boolean score = carrying.unit() == null && carrying.scale() == Scale.NONE;
    return number.as(
        number.low(), number.step(), carrying.unit(), score ? Scale.OUT_OF_TEN : carrying.scale());
  }
}
