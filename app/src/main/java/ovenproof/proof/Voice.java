package ovenproof.proof;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Who says a sentence, and of what: the desk of a tested product, the maker, nobody at all (a
 * supposition, a question), or the desk of something that was not in the test.
 */
enum Voice {
  /** The desk states it of what was tested. */
  OURS("it was said of what was tested", ""),
  /** "Suppose an oven needed twenty minutes", "imagine", "what if". */
  SUPPOSED(
      "this is supposed, not stated",
      "\\b(suppose|supposing|imagine|what if|let['’]s say|say you had|hypothetical(?:ly)?|in theory|"
          + "(?:would|could|might)(?: not|n['’]t)? (?:\\p{L}+ )?have|without (?:the|that|this|our) (?:cap|limit|ceiling|veto|gate)|had it (?:not|been)|were it not|"
          + "if (?:an?|your|some|every) (?:\\p{L}+ )?(?:oven|machine|toaster|appliance)|if you (?:had|owned|wanted|bake|cook|roast|toast|set|need|run|turn|heat|leave|buy)|would you|how would you like|(?:we|you|i|they)['’]d (?:set|use|put|turn|go|need|want|have))\\b"),
  /** "The maker promises 250 °C", "on paper", "the leaflet says". */
  MAKERS(
      "this is what the maker says; nothing of it was measured as such",
      "\\b(?:(?:makers?|manufacturers?|brochure|leaflet|spec(?:ification)?s?(?: sheet)?|advert(?:s|ising|isement)?|packaging|press release|website|sales pitch|marketing)\\b[^.;]{0,30}\\b(?:says?|said|claims?|claimed|promises?|promised|states?|stated|quotes?|quoted|gives?|talks? of|advertis\\p{L}+|boasts?|puts?|lists?|rates?)|promises you|advertised(?: as| at)?|on paper|according to (?:the|its) (?:maker|manufacturer|box|leaflet|brochure)|supposed to (?:reach|take|be|get|use)|(?:we|you) (?:were|are) promised)\\b"),
  /** "My old gas oven", "last year's model", "a microwave". */
  OTHERS(
      "this speaks of something that was not in the test",
      "\\b(?:(?:gas|conventional|full-?size[d]?|built-?in|proper|big|range|kitchen|wall|ordinary|normal) (?:ovens?|cookers?|stoves?)|microwaves?|pop-?up toasters?|(?:my|our|your|grandma['’]s|mother['’]s|his|her) (?:old|previous|last|own|kitchen|mother['’]s)|(?:previous|earlier|older|last year['’]s|predecessor|its predecessor|the outgoing) (?:models?|versions?|generations?|ovens?|reviews?|rounds?|tests?)|predecessor|last (?:year|time|autumn|spring)|years ago|in an earlier|in a previous|back in (?:19|20)\\d\\d|pizza place|restaurant)\\b"),
  /** "Bake at 180 °C for 25 minutes", "the recipe asks for". */
  RECIPES(
      "this is a recipe's number, not a measurement",
      "\\brecipes?\\b[^.;]{0,25}\\b(?:says?|asks?|calls?|wants?|gives?|needs?)\\b|^\\s*(?:\\d+[.)]\\s*)?(?:Preheat|Bake|Roast|Mix|Stir|Whisk|Knead|Leave|Rest|Fold|Add|Heat|Grill|Slide|Pour|Season|Line|Brush|Serve|Cook|Turn|Let)\\b(?! (?:time|times|test|tests|score|scores|up\\b))[^.]{0,60}\\b(?:for|at|to|until|with)\\b");

  private final String why;
  private final Pattern words;

  Voice(String why, String words) {
    this.why = why;
    this.words = Pattern.compile(words, this.caseMatters() ? 0 : Pattern.CASE_INSENSITIVE);
  }

  private boolean caseMatters() {
    return name().equals("RECIPES");
  }

  /** Why nothing that was measured can contradict it. */
  String why() {
    return why;
  }

  /**
   * The voice of the clause that a number stands in; a whole sentence may be supposed.
   *
   * @param named where tested products are named: what follows a name is said of it
   */
  static Voice of(String sentence, int offset, List<Integer> named) {
    for (Voice voice : values()) {
      if (voice != OURS && voice.speaks(sentence, offset, named)) {
        return voice;
      }
    }
    return OURS;
  }

  private boolean speaks(String sentence, int offset, List<Integer> named) {
    if (this == SUPPOSED || this == RECIPES) {
      return words.matcher(sentence).find();
    }
    int start = start(sentence, offset);
    Matcher matcher = words.matcher(sentence.substring(start, end(sentence, offset)));
    boolean found = matcher.find();
    return found
        && (this == MAKERS
            || named.stream().noneMatch(n -> n > start + matcher.end() && n < offset));
  }

  private static final Pattern TURN =
      Pattern.compile(
          "[;:!?]|,?\\s\\b(?:but|while|whereas|yet|although|though|however|in fact|we measured|we found|we saw|we never)\\b",
          Pattern.CASE_INSENSITIVE);

  /**
   * Where the part of a sentence around a place begins, behind words that turn to something else.
   */
  private static int start(String sentence, int offset) {
    Matcher matcher = TURN.matcher(sentence);
    int start = 0;
    while (matcher.find() && matcher.end() <= offset) {
      start = matcher.start();
    }
    return start;
  }

  private static int end(String sentence, int offset) {
    Matcher matcher = TURN.matcher(sentence);
    return matcher.find(offset) ? matcher.start() : sentence.length();
  }
}
