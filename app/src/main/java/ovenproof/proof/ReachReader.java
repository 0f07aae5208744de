package ovenproof.proof;

import java.util.List;
import java.util.regex.Pattern;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;

/**
 * "Reached 220 °C", "never got to 220 °C", "failed to hit 165 °F": held against the highest
 * temperature, not against a mean. "Topped out at" states the highest temperature itself and is
 * left to {@link NumberReader}.
 */
final class ReachReader implements ClaimReader {
  static final List<String> PEAKS = List.of("highest", "core-highest");

  private static final Pattern REACH =
      Pattern.compile(
          "(?is).*\\b(?:reach(?:es|ed|ing)?|attain(?:s|ed|ing)?|arrive[sd]? at|come[s]? to|came to|achieve[sd]?|attain(?:s|ed)?|get(?:s|ting)? to|got to|made it to|ma(?:k|d)e|hit(?:s|ting)?|pass(?:es|ed)?|exceed(?:s|ed)?|climb(?:s|ed)? to|clear(?:s|ed)?|g[eo]t(?:s)? past|broke|break|get up to|got up to|touch(?:ed|es)?|see|saw|manage[ds]?|(?:can['’]t|cannot|couldn['’]t) do|does not do|won['’]t do)\\s+(?:even\\s+|the\\s+|its\\s+|a\\s+|as much as\\s+)*$");
  private static final Pattern PAST =
      Pattern.compile(
          "(?is).*\\b(past|exceed(s|ed)?|pass(es|ed)?|broke|break|clear(s|ed)?)\\s+(?:\\w+\\s+)?$");
  private static final String CLIMB =
      "(?is).*\\b(gets?|got|goes|go|went|climb(s|ed)?|rises?|rose)\\s+(?:up\\s+|much\\s+|far\\s+)?$";
  private static final Pattern PEAK_WORD =
      Pattern.compile(
          "(?is).*\\b(only|just|peak(?:ed)?|highest|maximum|max|hottest|most|at best|top(?:ped)?|no more than)\\b.*");
  private static final Pattern NEGATED =
      Pattern.compile(
          "(?is).*\\b(never|not|\\w+n['’]t|failed to|fails to|unable to|cannot|without|neither|nor|short of|no chance)\\b[^,;]*$");

  private static final Pattern OUTSIDE =
      Pattern.compile(
          "(?is).*\\b(?:outside|outer|sides?|skin|surface|casing|case|housing|exterior|walls?|flank|touch)\\b[^.;]{0,40}$");

  private final Figures figures;
  private final FigureSearch search;

  ReachReader(Figures figures, FigureSearch search) {
    this.figures = figures;
    this.search = search;
  }

  @Override
  public void read(SentenceClaims sentence) {
    for (NumberPhrase number : sentence.freeNumbers()) {
      String before = Wording.before(sentence.text(), number.start());
      boolean reach =
          NumberKinds.isTemperature(number)
              && !number.isRange()
              && (number.hedge() == Hedge.PLAIN || number.hedge() == Hedge.AT_LEAST
                  ? REACH.matcher(before).matches()
                  : number.hedge() == Hedge.OVER && Wording.is(before, CLIMB));
      String clause = before.substring(Math.max(0, before.length() - 60));
      boolean negated = NEGATED.matcher(clause).matches();
      boolean yet =
          negated
              && Wording.is(
                  Wording.after(sentence.text(), number.end()),
                  "(?is)^\\s*(?:[CF]\\s+)?(?:yet|by then|at that point|by that time)\\b.*");
      if (yet) {
        sentence.take(number.start(), number.end());
      }
      if (reach && !yet && (negated || !PEAK_WORD.matcher(clause).matches())) {
        claim(sentence, number, negated);
      }
    }
  }

  private void claim(SentenceClaims sentence, NumberPhrase number, boolean negated) {
    String product = sentence.context().productAt(number.start(), number.end());
    if (product == null) {
      return;
    }
    Focus focus = sentence.context().at(number.start(), number.end());
    List<Figure> peaks = search.best(focus, product, f -> PEAKS.contains(f.take()));
    if (peaks.isEmpty() || peaks.get(0).value() == null) {
      return;
    }
    List<Figure> any = search.best(focus, product, f -> f.unit() == Unit.CELSIUS && !f.isScore());
    boolean climb = number.hedge() == Hedge.OVER;
    if (OUTSIDE.matcher(Wording.before(sentence.text(), number.start())).matches()) {
      return;
    }
    if (!climb && any.size() == 1 && any.get(0).take().equals("reading")) {
      return;
    }
    Figure peak = peaks.get(0);
    Unit unit =
        number.scale() == Scale.DEGREES
            ? number.low() > 250 ? Unit.FAHRENHEIT : Unit.CELSIUS
            : number.unit();
    double highest = Judge.inUnit(java.util.Objects.requireNonNull(peak.value()), peak, unit);
    double rounded = Judge.rounded(highest, number.step());
    boolean past =
        number.hedge() == Hedge.OVER
            || PAST.matcher(Wording.before(sentence.text(), number.start())).matches();
    boolean reached =
        past ? (negated ? rounded : highest) > number.low() + 1e-9 : rounded >= number.low() - 1e-9;
    String expected = Judge.text(highest, unit, 1);
    sentence.add(
        number.start(),
        number.end(),
        Kind.QUANTITY,
        reached != negated ? Finding.SUPPORTED : Finding.CONTRADICTED,
        number.text(),
        expected,
        peak.evidence().stream().limit(6).toList(),
        figures.name(product) + ", " + peak.label() + ": the highest was " + expected);
  }
}
