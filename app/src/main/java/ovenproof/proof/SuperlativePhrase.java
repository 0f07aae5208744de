package ovenproof.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.proof.Vocabulary.Adjective;
import ovenproof.proof.Vocabulary.Direction;

/**
 * A superlative as it stands in a sentence: "the most even", "our best", "among the hottest sides".
 * Ways of speaking that compare nothing ("at best", "its hottest side: 73 °C") are none.
 *
 * @param end after the word itself, without the noun behind it
 * @param word in small letters
 * @param much "most" or "least" before the word, else null
 * @param isAmong whether it only claims to be one of the first
 * @param noun up to two words behind it
 */
record SuperlativePhrase(
    int start, int end, String word, @Nullable String much, boolean isAmong, String noun) {
  private static final Pattern SUPERLATIVE =
      Pattern.compile(
          "\\b(?<among>(?:among|amongst|one of) (?:the|our) )?(?:(?<bare>(?<=\\p{L}\\s)(?:most|least))(?=\\s*(?:[,.;:!?)—–]|$)|\\s+(?:of all|of any|of the|with|at)\\b)|(?<much>most|least)\\s+(?<long>\\p{L}+)|(?<short>(?!(?:hon|mod|int|inter|for|t|r|w|n|ch|l|p|qu|requ|gu|inv|sugg|prot|cont|dig|arr|manif|earn|harv|con|temp|prec|midw|southw|northw|retest|ev|bequ|att|det|inf|mol)est\\b)\\p{L}{2,}est|best|worst))\\b(?<noun>(?:-\\p{L}+|\\s+\\p{L}+){0,2})",
          Pattern.CASE_INSENSITIVE);

  /** Ways of speaking that compare nothing: "at best", "your best bet", "best to". */
  private static final Pattern IDIOM_BEFORE =
      Pattern.compile(
          "(?is).*\\b(at|your|my|his|her|do|does|did|do its|did its|does its|their|next|at the very|tasted|(?:than|as|to|from|between|(?<!one )(?<!oven )(?<!model )with|behind|after|of|by) (?:the|our)|between (?:the|its|their) \\p{L}+ and (?:the|its|their)|between (?:the|its|their))\\s+$");

  private static final Pattern IDIOM_AFTER =
      Pattern.compile(
          "(?is)^\\s*(to\\s+(?!preheat|toast|reach|heat|cook|bake|roast|get|come|warm|brown|(?:an? |about |its |the )?(?:two|\\d))|practice|before|known|way|bet\\b|value\\b|buy\\b|deal\\b|bargain\\b|choice\\b|pick\\b|all-?rounders?\\b|option\\b|thing\\b|of luck|if\\b|when\\b|seller|in mind|(?:and (?:the )?\\p{L}+ )?(?:spots?|places?|corners?|points?|parts?|needles?|probes?|days?|runs?|setting|temperature of the)\\b).*");

  /** "The spread was smallest for Hornbeam": the subject says what of. */
  private static final Pattern SUBJECT =
      Pattern.compile("(?is).*\\b(\\p{L}+)\\s+(?:is|are|was|were)\\s+(?:the\\s+)?$");

  static List<SuperlativePhrase> in(String text) {
    List<SuperlativePhrase> found = new ArrayList<>();
    Matcher matcher = SUPERLATIVE.matcher(text);
    int from = 0;
    while (matcher.find(from)) {
      String group =
          matcher.group("bare") != null ? "bare" : matcher.group("long") != null ? "long" : "short";
      from = matcher.end(group);
      if (!isIdiom(text, matcher.start(), from)) {
        found.add(
            new SuperlativePhrase(
                matcher.start(),
                from,
                matcher.group(group).toLowerCase(Locale.ROOT),
                matcher.group("bare") != null ? matcher.group("bare") : matcher.group("much"),
                matcher.group("among") != null,
                matcher.group("noun").toLowerCase(Locale.ROOT)));
      }
    }
    found.addAll(withNoOther(text));
    return found;
  }

  /** "No other oven makes better cakes": a comparative that leaves nobody above. */
  private static final Pattern NO_OTHER =
      Pattern.compile(
          "\\bno other (?:ovens?|models?|machines?|appliances?|products?|one)?\\b[^.;,]{0,25}?\\b(?:(?<good>better|worse)|more (?<long>\\p{L}+)|(?<short>\\p{L}{2,}er))\\b(?!\\s+than\\b)(?<noun>(?:\\s+\\p{L}+){0,2})",
          Pattern.CASE_INSENSITIVE);

  private static List<SuperlativePhrase> withNoOther(String text) {
    List<SuperlativePhrase> found = new ArrayList<>();
    Matcher matcher = NO_OTHER.matcher(text);
    while (matcher.find()) {
      String noun = matcher.group("noun").toLowerCase(Locale.ROOT);
      String much = matcher.group("long") == null ? null : "most";
      found.add(
          new SuperlativePhrase(
              matcher.start(), matcher.start("noun"), superlative(matcher), much, false, noun));
    }
    return found;
  }

  private static String superlative(Matcher comparative) {
    if (comparative.group("good") != null) {
      return comparative.group("good").equalsIgnoreCase("better") ? "best" : "worst";
    }
    String word =
        comparative.group("long") != null
            ? comparative.group("long")
            : comparative.group("short").replaceFirst("(?i)er$", "est");
    return word.toLowerCase(Locale.ROOT);
  }

  /** "Lost least", "uses the most": the verb says what of. */
  boolean isBare() {
    return word.equals("most") || word.equals("least");
  }

  /** "Highest", "largest": of whatever is spoken of. */
  boolean isOfSize() {
    return Wording.is(word, "(high|low|bigg|small|larg|long|short|great)est");
  }

  boolean hasNoun() {
    for (String after : nouns()) {
      if (Vocabulary.noun(Stems.of(after)) != null) {
        return true;
      }
    }
    return false;
  }

  /** "Best" and "worst" of something that was just measured. */
  boolean isOfQuality() {
    return Wording.is(word, "best|worst|poorest|finest");
  }

  /** "Darkest", "palest": of whichever face or food is spoken of. */
  boolean isOfShade() {
    return Wording.is(word, "(dark|pal|light|brown|blond)est");
  }

  String stem() {
    return Stems.of(word);
  }

  /** "Least even" means the other end. */
  Direction direction(@Nullable Adjective meant) {
    Direction direction =
        meant != null
            ? meant.direction()
            : Wording.is(word, "worst|poorest") ? Direction.LOW : Vocabulary.ofMark(stem());
    return "least".equalsIgnoreCase(much) ? ComparisonJudge.turned(direction) : direction;
  }

  /** "Its hottest side reached 73 °C", "Hottest side: 73 °C": what is measured, not who leads. */
  private static boolean isLabel(String text, int start, int end) {
    boolean owned =
        Wording.is(Wording.before(text, start), "(?is).*(?:\\bits|\\btheir|['’]s)\\s+$")
            || Wording.before(text, start).isBlank()
            || Wording.is(Wording.before(text, start), "(?is).*[,;:(*•-]\\s*$");
    return owned
        && Wording.is(
            Wording.after(text, end),
            "(?is)^\\s+(?:\\p{L}+\\s+){0,2}?(?:sides?|outside|skin|surface|needle|temperature|wall|point)\\s*(?:[:,=]|reached|was|got|gets|is|at|hit)?\\s*(?:to |at |only |just |about )*[\\d~].*");
  }

  private static boolean isIdiom(String text, int start, int end) {
    return Wording.is(Wording.before(text, start), "(?is).*\\b(neither|both)\\b[^,;.]{0,25}$")
        || isLabel(text, start, end)
        || IDIOM_BEFORE.matcher(text.substring(0, start)).matches()
        || IDIOM_AFTER.matcher(text.substring(end)).matches();
  }

  /** "The highest price", "the shortest cord", "the most electricity": the noun says what of. */
  @Nullable Adjective adjective(String text) {
    if (Wording.is(word, "(hott|warm|cool|cold)est")
        && OUTSIDE.matcher(text.substring(end)).matches()) {
      Direction side = Wording.is(word, "(hott|warm)est") ? Direction.HIGH : Direction.LOW;
      return new Adjective(side, List.of("reading"));
    }
    if (isBare()) {
      return ComparedFigures.byVerb(Wording.before(text, start));
    }
    boolean size = Wording.is(word, "(high|low|bigg|small|larg|long|short|great|wid|strong)est");
    if (size) {
      Direction direction =
          Wording.is(word, "(low|small|short)est") ? Direction.LOW : Direction.HIGH;
      for (String after : nouns()) {
        Adjective noun = Vocabulary.noun(Stems.of(after));
        if (noun != null) {
          return noun.towards(direction);
        }
      }
      Matcher subject = SUBJECT.matcher(Wording.before(text, start));
      Adjective said = subject.matches() ? Vocabulary.noun(Stems.of(subject.group(1))) : null;
      if (said != null) {
        return said.towards(direction);
      }
      if (Wording.is(word, "(high|low)est")) {
        boolean scores =
            Wording.is(
                Wording.before(text, start), "(?is).*\\b(?:scores?|scored|rates?|rated)\\s+$");
        return scores || noun.contains("scor")
            ? new Adjective(direction, List.of("score"))
            : new Adjective(direction, List.of());
      }
    }
    Adjective adjective = Vocabulary.adjective(stem());
    return adjective == null && much != null ? Vocabulary.noun(stem()) : adjective;
  }

  private static final Pattern OUTSIDE =
      Pattern.compile(
          "(?is)^\\s*(?:\\p{L}+\\s+){0,2}?(?:sides?|outside|skin|surface|flank|casing|exterior|walls?|housing)\\b.*");

  /** The words behind it, one by one. */
  String[] nouns() {
    return noun.trim().split("[\\s-]+");
  }
}
