package ovenproof.proof;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;

/**
 * How far one batch lies from the one before: "the second batch was 12 points darker", "30 L*
 * darker than the first", "a change of less than two".
 */
final class BatchReader implements ClaimReader {
  private static final Pattern BATCHES =
      Pattern.compile(
          "\\b(?:second|2nd|next|later|following) (?:batch|lot|load|round|go|time|tray|helping|helpings|slices|set|one)\\b"
              + "|\\bthan (?:the|its) first\\b|\\bbatch(?:es)? (?:two|2|to batch)\\b|\\bbetween (?:the )?(?:two )?batches\\b|\\bsecond time (?:round|around)\\b|\\bback[- ]to[- ]back\\b|\\bfrom (?:one )?batch (?:one )?to\\b|\\b(?:make|makes|made|making|do|does|did) (?:toast |it )?(?:twice|again)\\b",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern SHIFT =
      Pattern.compile(
          "\\b(worse|better|darker|lighter|paler|browner|points?|change[sd]?|drift(?:s|ed)?|shift(?:s|ed)?|differ(?:s|ed|ence)?|apart|off|closer)\\b|L\\*",
          Pattern.CASE_INSENSITIVE);

  private final Figures figures;

  BatchReader(Figures figures) {
    this.figures = figures;
  }

  @Override
  public void read(SentenceClaims sentence) {
    boolean named = BATCHES.matcher(sentence.text()).find();
    boolean before = sentence.context().speaksOfBatches();
    if (!(named || before) || !SHIFT.matcher(sentence.text()).find() && !before) {
      return;
    }
    boolean shift = SHIFT.matcher(sentence.text()).find();
    for (NumberPhrase number : sentence.freeNumbers()) {
      if (isShade(number, named || before && shift)) {
        claim(sentence, number);
      }
    }
  }

  /** Points without a word for a score, L*, or a bare number beside others of them. */
  private static boolean isShade(NumberPhrase number, boolean named) {
    boolean lightness = number.unit() != null && number.unit().dimension() == Dimension.COLOUR;
    return lightness
        || number.scale() == Scale.POINTS
        || named
            && number.unit() == null
            && number.scale() == Scale.NONE
            && number.decimals() <= 1
            && number.low() > (number.decimals() == 0 ? 4 : 10);
  }

  private void claim(SentenceClaims sentence, NumberPhrase number) {
    Optional<String> listed =
        Optional.ofNullable(NumberProducts.listed(sentence, sentence.numbers(), number));
    String product = listed.orElse(sentence.context().productAt(number.start(), number.end()));
    if (product == null) {
      return;
    }
    Set<String> tests = sentence.context().at(number.start(), number.end()).tests();
    List<Figure> changes =
        figures.of(product).stream()
            .filter(f -> f.take().endsWith(":change") && f.value() != null)
            .filter(f -> tests.isEmpty() || tests.contains(f.test()) || f.test() == null)
            .toList();
    if (changes.size() != 1) {
      return;
    }
    Figure change = changes.get(0);
    Judge.Ruling ruling =
        Judge.rule(number, change.withValue(Math.abs(value(change))), Unit.LIGHTNESS);
    boolean score =
        ruling.finding() != Finding.SUPPORTED
            && number.scale() == Scale.POINTS
            && Wording.is(sentence.text(), "(?is).*\\b(scor\\p{L}+|ahead|behind)\\b.*");
    if (score) {
      return;
    }
    boolean lost =
        Wording.is(
            Wording.before(sentence.text(), number.start()),
            "(?is).*\\b(lost|loses?|drops?|dropped|gains?|gained)\\s+(?:\\p{L}+\\s+)?$");
    if (lost) {
      return;
    }
    boolean other =
        ruling.finding() == Finding.CONTRADICTED
            && Wording.is(
                Wording.before(sentence.text(), number.start()),
                "(?is).*\\b(instead of|rather than|against|compared with|compared to|not)\\s+$");
    sentence.speaksOf(
        change, number.as(number.low(), number.step(), Unit.LIGHTNESS, NumberPhrase.Scale.NONE));
    sentence.add(
        number.start(),
        number.end(),
        Kind.COMPARISON,
        other ? Finding.UNCLEAR : ruling.finding(),
        number.text(),
        ruling.expected(),
        change.evidence(),
        figures.name(product) + ", second batch against the first: " + ruling.why());
  }

  private static double value(Figure figure) {
    return java.util.Objects.requireNonNull(figure.value());
  }
}
