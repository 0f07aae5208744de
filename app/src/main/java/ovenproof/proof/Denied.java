package ovenproof.proof;

import java.util.regex.Pattern;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.NumberPhrase.Scale;

/** What a number claims where the words turn it: "not done after nine minutes", "kept 85 %". */
final class Denied {
  private static final Pattern NOT =
      Pattern.compile(
          "(?is).*\\b(not|never|neither|nor|none|nobody|\\w+n['’]t|cannot|failed to|fails to|without being|still un\\w+|un(done|finished|cooked))\\b(?:(?!\\b(but|and|until)\\b)[^,;.])*$");

  private Denied() {}

  /** The number that is claimed of a figure. */
  static NumberPhrase asked(SentenceClaims sentence, NumberPhrase number) {
    return kept(sentence, negated(sentence, number));
  }

  private static final Pattern KEPT =
      Pattern.compile(
          "(?is).*\\b(?:kept|keeps?|retain\\p{L}*|held on to|left with|still weighed|remained)\\s+(?:\\p{L}+\\s+)?$");

  /** "Kept 85 % of its weight" says that 15 % were lost. */
  private static NumberPhrase kept(SentenceClaims sentence, NumberPhrase number) {
    boolean share = number.unit() == Unit.PERCENT && number.low() > 50 && !number.isRange();
    return share && KEPT.matcher(Wording.before(sentence.text(), number.start())).matches()
        ? number.as(100 - number.low(), number.step(), Unit.PERCENT, Scale.NONE)
        : number;
  }

  /** "Not done after nine minutes" says: it took longer. */
  private static NumberPhrase negated(SentenceClaims sentence, NumberPhrase number) {
    boolean denied = NOT.matcher(Wording.before(sentence.text(), number.start())).matches();
    if (denied && number.hedge() == Hedge.OVER) {
      return number.hedged(Hedge.AT_MOST);
    }
    boolean time = number.unit() != null && number.unit().dimension() == Dimension.TIME;
    boolean plain =
        number.hedge() == Hedge.PLAIN
            || number.hedge() == Hedge.UNDER
            || number.hedge() == Hedge.AT_MOST;
    boolean not = denied;
    boolean afterwards =
        number.start() < 20
            && Wording.is(
                sentence.text().substring(0, number.start()),
                "(?is)[\\s*•>-]*(even )?(after|at|by)\\s+")
            && Wording.is(sentence.text(), "(?is).*\\b(not|never|\\w+n['’]t|failed to)\\b.*");
    boolean still =
        Wording.is(
                Wording.before(sentence.text(), number.start()),
                "(?is).*\\b(after|at|by)\\s+(the end of\\s+)?(our\\s+|the\\s+|those\\s+)?$")
            && Wording.is(
                Wording.after(sentence.text(), number.end()),
                "(?is)^[^.;]{0,40}\\b(still|not|never|\\w+n['’]t|un(done|finished|cooked))\\b.*");
    return time && plain && (not || afterwards || still) ? number.hedged(Hedge.AT_LEAST) : number;
  }
}
