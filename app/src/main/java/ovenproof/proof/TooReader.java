package ovenproof.proof;

import java.util.List;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;

/** "The cakes came out far too pale": which way a shade is off its target, without a number. */
final class TooReader implements ClaimReader {
  private static final Pattern TOO =
      Pattern.compile(
          "\\btoo (?:(?<pale>pale|light|blond)|(?<dark>dark|brown))\\b(?!\\s+by\\b)",
          Pattern.CASE_INSENSITIVE);

  /** L* that an eye tells apart. */
  private static final double SEEN = 3;

  private final Figures figures;

  TooReader(Figures figures) {
    this.figures = figures;
  }

  @Override
  public void read(SentenceClaims sentence) {
    Matcher matcher = TOO.matcher(sentence.text());
    while (!sentence.isQuestion() && matcher.find()) {
      String product = sentence.context().productAt(matcher.start());
      Focus focus = sentence.context().at(matcher.start(), matcher.end());
      boolean free = sentence.isFree(matcher.start(), matcher.end());
      if (product != null && free && sentence.numbers().isEmpty() && focus.tests().size() == 1) {
        claim(sentence, matcher, product, focus.tests().iterator().next());
      }
    }
  }

  private void claim(SentenceClaims sentence, Matcher matcher, String product, String test) {
    List<Figure> shades =
        figures.of(product).stream()
            .filter(f -> f.take().equals("lightness-difference") && test.equals(f.test()))
            .filter(f -> f.value() != null && Math.abs(f.value()) >= SEEN && f.batch() == null)
            .toList();
    if (shades.size() != 1) {
      return;
    }
    Figure shade = shades.get(0);
    boolean isPale = Objects.requireNonNull(shade.value()) > 0;
    boolean holds = isPale == (matcher.group("pale") != null);
    String expected = ComparisonJudge.shownOrBound(shade);
    sentence.add(
        matcher.start(),
        matcher.end(),
        Kind.QUANTITY,
        holds ? Finding.SUPPORTED : Finding.CONTRADICTED,
        matcher.group(),
        expected,
        shade.evidence(),
        figures.name(product) + ", " + shade.label() + ": " + expected);
  }
}
