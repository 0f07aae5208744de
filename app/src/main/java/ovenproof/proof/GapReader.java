package ovenproof.proof;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.ComparedProducts.Compared;
import ovenproof.proof.ComparisonJudge.Outcome;
import ovenproof.proof.Mentions.ProductMention;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Proof.Kind;
import ovenproof.proof.Vocabulary.Adjective;
import ovenproof.proof.Vocabulary.Direction;

/**
 * Distances that name both ends but no order: "between Alder and Hornbeam there are two seconds",
 * "the gap to the Siskin is half a point", "ten euros separate the two".
 */
final class GapReader implements ClaimReader {
  private static final Pattern BETWEEN = Pattern.compile("(?is).*\\bbetween\\s+(?:the\\s+)?$");

  private static final Pattern AND = Pattern.compile("(?is)\\s*and\\s+(?:the\\s+)?");

  private static final Pattern LIE =
      Pattern.compile(
          "(?is)[^.;:]{0,30}?\\b(?:there (?:are|is|was|were)|lies?|lay|is|are|was|were|amounts? to)\\s+(?:just\\s+|only\\s+|a\\s+|about\\s+|some\\s+|no more than\\s+)*");

  private static final Pattern GAP_TO =
      Pattern.compile(
          "(?is).*\\b(?:gap|lead|distance|margin|difference|advantage)\\s+(?:to|over|from|on)\\s+(?:the\\s+)?$");

  private static final Pattern SEPARATE =
      Pattern.compile("(?is)^\\s*(?:separates?|divides?|stand between|lie between)\\b.*");

  private final Figures figures;
  private final FigureSearch search;
  private final ComparisonJudge judge;

  GapReader(Figures figures, FigureSearch search) {
    this.figures = figures;
    this.search = search;
    this.judge = new ComparisonJudge(figures, search);
  }

  @Override
  public void read(SentenceClaims sentence) {
    for (NumberPhrase number : sentence.freeNumbers()) {
      boolean amount =
          !number.isRange()
              && (number.unit() != null
                  || number.scale() == Scale.POINTS
                  || number.scale() == Scale.MONEY
                  || number.scale() == Scale.DEGREES);
      if (amount) {
        List<String> ends = ends(sentence, number);
        if (ends.size() == 2) {
          claim(sentence, number, ends.get(0), ends.get(1));
        }
      }
    }
  }

  private static List<String> ends(SentenceClaims sentence, NumberPhrase number) {
    String text = sentence.text();
    List<ProductMention> named = sentence.context().named();
    for (int i = 0; i < named.size(); i++) {
      ProductMention a = named.get(i);
      boolean before = a.end() <= number.start();
      boolean toOne = before && GAP_TO.matcher(Wording.before(text, a.start())).matches();
      @Nullable String holder = sentence.context().inherited();
      if (toOne
          && holder != null
          && !holder.equals(a.product())
          && LIE.matcher(text.substring(a.end(), number.start())).matches()) {
        return List.of(holder, a.product());
      }
      if (i + 1 < named.size()) {
        ProductMention b = named.get(i + 1);
        boolean pair = AND.matcher(text.substring(a.end(), b.start())).matches();
        boolean between =
            pair
                && b.end() <= number.start()
                && BETWEEN.matcher(Wording.before(text, a.start())).matches()
                && LIE.matcher(text.substring(b.end(), number.start())).matches();
        boolean separate =
            pair
                && a.start() >= number.end()
                && SEPARATE.matcher(text.substring(number.end(), a.start())).matches();
        if (between || separate) {
          return List.of(a.product(), b.product());
        }
      }
    }
    return List.of();
  }

  private void claim(SentenceClaims sentence, NumberPhrase number, String a, String b) {
    Optional<Figure> use = use(sentence, number, a);
    if (use.isEmpty()) {
      return;
    }
    Compared compared = new Compared(a, b, number.end(), figures.name(b));
    Direction direction = isLower(use.get(), b) ? Direction.LOW : Direction.HIGH;
    Outcome found = judge.outcome(use.get(), compared, direction, Optional.of(number));
    sentence.add(
        number.start(),
        number.end(),
        Kind.COMPARISON,
        found.finding(),
        number.text(),
        found.expected(),
        found.evidence(),
        use.get().label() + ": " + found.why());
  }

  /** A distance names no order, so it is held against the one there is. */
  private boolean isLower(Figure own, String other) {
    @Nullable Double level = Separation.level(own);
    return level != null
        && search.field(own).stream()
            .filter(f -> f.product().equals(other))
            .map(Separation::level)
            .anyMatch(l -> l != null && level < l);
  }

  /** What was spoken of last, where the unit fits; else what the unit and the words say. */
  private Optional<Figure> use(SentenceClaims sentence, NumberPhrase number, String product) {
    @Nullable Figure spoken = sentence.spokenOf();
    @Nullable Unit unit = number.unit();
    boolean fits =
        spoken != null
            && (unit != null && !spoken.isScore() && ComparedFigures.sameKind(unit, spoken)
                || number.scale() == Scale.POINTS && spoken.isScore());
    if (fits) {
      return search.field(java.util.Objects.requireNonNull(spoken)).stream()
          .filter(f -> f.product().equals(product))
          .findFirst();
    }
    @Nullable Adjective adjective =
        ComparedFigures.byUnit(number, Wording.before(sentence.text(), number.start()));
    return adjective == null
        ? Optional.empty()
        : search
            .uses(
                sentence.context().at(number.start(), number.end()),
                adjective,
                "",
                product,
                Optional.ofNullable(unit))
            .stream()
            .findFirst();
  }
}
