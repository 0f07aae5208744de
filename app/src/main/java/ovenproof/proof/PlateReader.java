package ovenproof.proof;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;

/** "11 percent less than its plate says": what was measured against what the maker states. */
final class PlateReader implements ClaimReader {
  private static final Pattern AFTER =
      Pattern.compile(
          "(?is)^\\s*(?<side>less|fewer|smaller|lower|below|under|short of|more|larger|higher|above|over)\\s+(?:than\\s+)?(?:(?:what|the one|that)\\s+)?(?:on\\s+)?(?:(?:the|its)\\s+(?:promised|claimed|advertised|stated|nominal)|(?:its|the|their)\\s+(?:own\\s+)?(?:name\\s?plate|plate|maker|manufacturer|box|label|rating|claim|promise|brochure|spec|specification))\\b.*");

  /** "Falls short by 3.7 litres", "misses its promise by 114 W". */
  private static final Pattern SHORT_BY =
      Pattern.compile(
          "(?is).*\\b(?:falls? short|fell short|short|misses (?:its|the) \\p{L}+|missed (?:its|the) \\p{L}+|overstated|exaggerat\\p{L}+|overpromises)\\s+by\\s+(?:only\\s+|just\\s+|about\\s+)*$");

  private final Figures figures;
  private final FigureSearch search;

  PlateReader(Figures figures, FigureSearch search) {
    this.figures = figures;
    this.search = search;
  }

  @Override
  public void read(SentenceClaims sentence) {
    @Nullable Unit unit = null;
    for (NumberPhrase phrase : sentence.freeNumbers()) {
      NumberPhrase number = goingOn(sentence, phrase, unit);
      Matcher matcher = AFTER.matcher(Wording.after(sentence.text(), number.end()));
      if (number.unit() != null && matcher.matches()) {
        claim(sentence, number, matcher.group("side").toLowerCase(Locale.ROOT));
      } else if (number.unit() != null
          && (phrase.unit() == null
              || SHORT_BY.matcher(Wording.before(sentence.text(), number.start())).matches())) {
        claim(sentence, number, "short of");
        unit = number.unit();
      }
    }
  }

  /** "… falls short by 3.7 litres, the Whimbrel by only 0.8". */
  private static NumberPhrase goingOn(
      SentenceClaims sentence, NumberPhrase number, @Nullable Unit unit) {
    boolean bare =
        unit != null
            && number.unit() == null
            && Wording.is(
                Wording.before(sentence.text(), number.start()),
                "(?is).*\\bby\\s+(?:only\\s+|just\\s+|about\\s+)*$");
    return bare ? number.as(number.low(), number.step(), unit, NumberPhrase.Scale.NONE) : number;
  }

  private void claim(SentenceClaims sentence, NumberPhrase number, String side) {
    String product = sentence.context().productAt(number.start());
    if (product == null) {
      return;
    }
    Focus focus = sentence.context().at(number.start(), number.end());
    List<Figure> plates =
        search.best(focus, product, f -> f.kind() == Figure.Kind.NAMEPLATE && fits(number, f));
    if (plates.size() != 1) {
      return;
    }
    Figure plate = plates.get(0);
    String fact = plate.use().substring("plate:".length());
    Optional<Figure> measured =
        figures.of(product).stream()
            .filter(f -> f.kind() == Figure.Kind.FACT && isOf(f, fact) && f.value() != null)
            .findFirst();
    measured.ifPresent(m -> compare(sentence, number, side, m, plate));
  }

  private static boolean fits(NumberPhrase number, Figure plate) {
    Unit unit = number.unit();
    Unit own = plate.unit();
    return unit == Unit.PERCENT
        || unit != null && own != null && unit.dimension() == own.dimension();
  }

  /** A scored fact goes by the name of its use; both share the fact's words. */
  private static boolean isOf(Figure figure, String fact) {
    return figure.use().equals(fact)
        || figure.words().containsAll(Stems.ofAll(fact.replace('-', ' ')));
  }

  private static void compare(
      SentenceClaims sentence, NumberPhrase number, String side, Figure measured, Figure plate) {
    double stated = Objects.requireNonNull(plate.value());
    boolean share = number.unit() == Unit.PERCENT;
    double gap =
        share
            ? (Objects.requireNonNull(measured.value()) / stated - 1) * 100
            : Objects.requireNonNull(measured.value()) - stated;
    boolean below = Wording.is(side, "less|fewer|smaller|lower|below|under|short of");
    Judge.Ruling ruling =
        Judge.rule(
            number,
            measured.asDifference(below ? -gap : gap, share ? Unit.PERCENT : measured.unit()),
            number.unit());
    sentence.add(
        number.start(),
        number.end(),
        Kind.COMPARISON,
        ruling.finding() == Finding.UNSUPPORTED ? Finding.UNCLEAR : ruling.finding(),
        number.text(),
        ruling.expected(),
        measured.evidence(),
        "measured "
            + ComparisonJudge.shownOrBound(measured)
            + ", nameplate "
            + ComparisonJudge.shownOrBound(plate));
  }
}
