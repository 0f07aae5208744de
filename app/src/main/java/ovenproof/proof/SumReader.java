package ovenproof.proof;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;

/** Sums over products: "the Siskin and the Dunnock together cost 278 euros". */
final class SumReader implements ClaimReader {
  private static final Pattern TOGETHER =
      Pattern.compile(
          "\\b(?:together|combined|taken together|added up|put together|the pair of them)\\b(?!\\s+with)",
          Pattern.CASE_INSENSITIVE);

  private final Figures figures;
  private final FigureSearch search;

  SumReader(Figures figures, FigureSearch search) {
    this.figures = figures;
    this.search = search;
  }

  @Override
  public void read(SentenceClaims sentence) {
    if (!sums(sentence.text())) {
      return;
    }
    Set<String> named = new LinkedHashSet<>();
    sentence.context().named().forEach(m -> named.add(m.product()));
    for (NumberPhrase number : sentence.freeNumbers()) {
      boolean amount =
          number.scale() == Scale.MONEY || number.unit() != null && number.unit() != Unit.PERCENT;
      if (amount && named.size() >= 2) {
        claim(sentence, number, named);
      }
    }
  }

  /** Whether a text adds products up. */
  static boolean sums(String text) {
    return TOGETHER.matcher(text).find();
  }

  private void claim(SentenceClaims sentence, NumberPhrase number, Set<String> named) {
    Focus focus = sentence.context().at(number.start(), number.end());
    List<Figure> parts = new ArrayList<>();
    for (String product : named) {
      Optional<Figure> part =
          search.best(focus, product, NumberKinds.kindOf(sentence, number)).stream()
              .filter(f -> f.value() != null)
              .findFirst();
      part.ifPresent(parts::add);
    }
    boolean same = parts.stream().map(Figure::use).distinct().count() == 1;
    if (parts.size() != named.size() || !same) {
      return;
    }
    double sum = parts.stream().mapToDouble(f -> Objects.requireNonNull(f.value())).sum();
    @Nullable Unit unit = number.unit();
    double stated = Judge.inUnit(sum, parts.get(0), unit);
    String expected = Judge.text(stated, unit, Math.max(0, number.decimals()));
    sentence.add(
        number.start(),
        number.end(),
        Kind.QUANTITY,
        Judge.holds(number, stated, unit) ? Finding.SUPPORTED : Finding.CONTRADICTED,
        number.text(),
        expected,
        parts.get(0).evidence(),
        "together: "
            + String.join(
                " + ",
                parts.stream()
                    .map(f -> figures.name(f.product()) + " " + ComparisonJudge.shownOrBound(f))
                    .toList())
            + " = "
            + expected);
  }
}
