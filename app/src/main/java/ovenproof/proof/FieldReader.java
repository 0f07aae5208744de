package ovenproof.proof;

import java.util.List;
import java.util.Objects;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;

/**
 * Ranges that no product is named for: "toast took between 6 min 12 s and 10 min 50 s" is held
 * against the lowest and the highest of the field.
 */
final class FieldReader implements ClaimReader {
  private final Figures figures;
  private final FigureSearch search;

  FieldReader(Figures figures, FigureSearch search) {
    this.figures = figures;
    this.search = search;
  }

  @Override
  public void read(SentenceClaims sentence) {
    Context context = sentence.context();
    boolean everywhere = EVERYWHERE.matcher(sentence.text()).find();
    if (!everywhere && (!context.mentions().isEmpty() || context.isFirm())) {
      return;
    }
    for (NumberPhrase number : sentence.freeNumbers()) {
      if (number.isRange() && NumberKinds.isCheckable(sentence, number)) {
        claim(sentence, number);
      }
    }
  }

  /** Words that make a range one of the whole field. */
  private static final Pattern EVERYWHERE =
      Pattern.compile(
          "\\b(everywhere|depending on (?:the|which) (?:oven|model|machine)|from oven to oven|across the (?:field|board|eight|ovens)|between (?:the )?(?:best|quickest|fastest|lowest|cheapest) and|from (?:the )?(?:best|quickest|fastest|cheapest) to|all (?:eight|of them|the ovens)|every oven)\\b",
          Pattern.CASE_INSENSITIVE);

  private void claim(SentenceClaims sentence, NumberPhrase number) {
    Focus focus = sentence.context().at(number.start(), number.end());
    String any = figures.campaign().products().get(0).id();
    List<Figure> best = search.best(focus, any, NumberKinds.kindOf(sentence, number));
    if (best.size() != 1) {
      return;
    }
    List<Figure> field = search.field(best.get(0)).stream().filter(f -> f.value() != null).toList();
    if (field.size() < 2) {
      return;
    }
    Unit unit = number.scale() == NumberPhrase.Scale.DEGREES ? Unit.CELSIUS : number.unit();
    if (number.scale() == NumberPhrase.Scale.MONEY && isEarlier(number)) {
      sentence.take(number.start(), number.end());
      return;
    }
    double low = field.stream().mapToDouble(f -> in(f, unit)).min().orElse(Double.NaN);
    double high = field.stream().mapToDouble(f -> in(f, unit)).max().orElse(Double.NaN);
    String expected = Judge.text(low, unit, 1) + " to " + Judge.text(high, unit, 1);
    sentence.add(
        number.start(),
        number.end(),
        Kind.QUANTITY,
        EVERYWHERE.matcher(sentence.text()).find() && finding(number, low, high) == Finding.UNCLEAR
            ? Finding.CONTRADICTED
            : finding(number, low, high),
        number.text(),
        expected,
        best.get(0).evidence().stream().limit(1).toList(),
        best.get(0).label() + ", the whole field: " + expected);
  }

  /** "We bought them for 89 to 239 euros": the range of the prices of an earlier day. */
  private boolean isEarlier(NumberPhrase number) {
    List<Double> then =
        figures.campaign().products().stream()
            .flatMap(p -> figures.earlierPrices(p.id()).stream())
            .map(f -> Objects.requireNonNull(f.value()))
            .sorted()
            .toList();
    return !then.isEmpty()
        && Math.abs(then.get(0) - number.low()) < 1
        && Math.abs(then.get(then.size() - 1) - number.high()) < 1;
  }

  /** The ends are the field's ends, or hold it; a part of the field may be meant. */
  private static Finding finding(NumberPhrase number, double low, double high) {
    boolean ends =
        Math.abs(Judge.rounded(low, number.step()) - number.low()) < number.step() / 2
            && Math.abs(Judge.rounded(high, number.step()) - number.high()) < number.step() / 2;
    boolean near =
        number.low() <= low
            && number.high() >= high
            && number.low() >= low * 0.95
            && number.high() <= high * 1.05;
    boolean part = number.low() >= low - number.step() && number.high() <= high + number.step();
    return ends || near ? Finding.SUPPORTED : part ? Finding.UNCLEAR : Finding.CONTRADICTED;
  }

  private static double in(Figure figure, @Nullable Unit unit) {
    return Judge.inUnit(Objects.requireNonNull(figure.value()), figure, unit);
  }
}
