package ovenproof.proof;

import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.proof.Mentions.ProductMention;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;
import ovenproof.proof.Vocabulary.Adjective;
import ovenproof.proof.Vocabulary.Direction;

/**
 * "The hottest we measured", "most even", "our best". Supported only where the tier margin
 * separates the product from all others, within what was tested.
 */
final class SuperlativeReader implements ClaimReader {
  private static final Pattern SUPERLATIVE =
      Pattern.compile(
          "\\b(?<among>(?:among|one of) the )?(?:(?<much>most|least)\\s+(?<long>\\p{L}+)|(?<short>\\p{L}{2,}est|best|worst))\\b",
          Pattern.CASE_INSENSITIVE);

  private final Figures figures;
  private final FigureSearch search;

  SuperlativeReader(Figures figures, FigureSearch search) {
    this.figures = figures;
    this.search = search;
  }

  @Override
  public void read(SentenceClaims sentence) {
    Matcher matcher = SUPERLATIVE.matcher(sentence.text());
    while (matcher.find()) {
      String word = matcher.group("long") != null ? matcher.group("long") : matcher.group("short");
      String stem = Stems.of(word.toLowerCase(Locale.ROOT));
      Adjective adjective = Vocabulary.adjective(stem);
      boolean mark =
          figures.all().stream()
              .anyMatch(f -> f.kind() == Figure.Kind.MARK && f.words().contains(stem));
      if ((adjective != null || mark) && sentence.isFree(matcher.start(), matcher.end())) {
        claim(sentence, matcher, stem, adjective);
      }
    }
  }

  private void claim(
      SentenceClaims sentence, Matcher matcher, String stem, @Nullable Adjective adjective) {
    String product = product(sentence.context(), matcher.start());
    String said = matcher.group().strip();
    if (product == null) {
      return;
    }
    List<Figure> uses = search.uses(sentence.context(), adjective, stem, product);
    if (uses.isEmpty()) {
      sentence.add(
          matcher.start(),
          matcher.end(),
          Kind.SUPERLATIVE,
          Finding.UNSUPPORTED,
          said,
          null,
          List.of(),
          "nothing that was measured says this");
      return;
    }
    Direction direction = adjective == null ? Direction.HIGH : adjective.direction();
    if ("least".equalsIgnoreCase(matcher.group("much"))) {
      direction = direction == Direction.HIGH ? Direction.LOW : Direction.HIGH;
    }
    boolean among = matcher.group("among") != null;
    List<ComparisonOutcome> outcomes = new java.util.ArrayList<>();
    for (Figure use : uses) {
      Separation separation = new Separation(search.field(use), direction);
      outcomes.add(
          among
              ? amongBest(use, separation)
              : ComparisonOutcome.of(extreme(use, separation, this::name)));
    }
    ComparisonOutcome first = outcomes.get(0);
    boolean agree = outcomes.stream().allMatch(o -> o.finding == first.finding);
    sentence.add(
        matcher.start(),
        matcher.end(),
        Kind.SUPERLATIVE,
        agree ? first.finding : Finding.UNCLEAR,
        said,
        first.expected,
        uses.get(0).evidence(),
        agree ? first.why : "the words fit several figures, and they differ");
  }

  private static @Nullable String product(Context context, int offset) {
    String before = null;
    for (ProductMention mention : context.mentions()) {
      if (mention.start() < offset) {
        before = mention.product();
      }
    }
    return before != null ? before : context.productAt(offset);
  }

  private ComparisonOutcome amongBest(Figure use, Separation separation) {
    List<Figure> ordered = separation.ordered();
    if (ordered.isEmpty() || Separation.level(use) == null) {
      return new ComparisonOutcome(Finding.UNSUPPORTED, null, "it was not measured");
    }
    Figure best = ordered.get(0);
    boolean apart = separation.separated(best, use);
    String expected = name(best.product()) + " " + ComparisonReader.shownOrBound(best);
    return new ComparisonOutcome(
        apart ? Finding.CONTRADICTED : Finding.SUPPORTED,
        expected,
        apart
            ? "separated from the first, " + expected
            : "not separated from the first, " + expected);
  }

  private record ComparisonOutcome(Finding finding, @Nullable String expected, String why) {
    static ComparisonOutcome of(Extreme extreme) {
      return new ComparisonOutcome(extreme.finding(), extreme.expected(), extreme.why());
    }
  }

  /** Whether a figure is the extreme of its field, and surely so. */
  record Extreme(Finding finding, @Nullable String expected, String why) {}

  static Extreme extreme(Figure use, Separation separation, UnaryOperator<String> names) {
    List<Figure> ordered = separation.ordered();
    if (Separation.level(use) == null || ordered.size() < 2) {
      return new Extreme(Finding.UNSUPPORTED, null, "there is nothing to compare it with");
    }
    Figure first = ordered.get(0);
    String lead = names.apply(first.product()) + " " + ComparisonReader.shownOrBound(first);
    if (!first.product().equals(use.product())
        && separation.signed(first) > separation.signed(use)) {
      return new Extreme(
          Finding.CONTRADICTED,
          lead,
          "that is "
              + lead
              + "; "
              + names.apply(use.product())
              + " had "
              + ComparisonReader.shownOrBound(use));
    }
    for (Figure other : ordered) {
      boolean same = other.product().equals(use.product());
      boolean bound = use.kind() != Figure.Kind.PRICE && !separation.separated(use, other);
      if (!same && bound) {
        return new Extreme(
            Finding.UNCLEAR,
            lead,
            "first by figures, but not separated from "
                + names.apply(other.product())
                + " ("
                + ComparisonReader.shownOrBound(other)
                + "): say \"among\"");
      }
    }
    return new Extreme(
        Finding.SUPPORTED, lead, "separated from all others that were tested: " + lead);
  }

  private String name(String product) {
    return figures.campaign().product(product).map(p -> p.name()).orElse(product);
  }
}
