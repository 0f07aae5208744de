package ovenproof.proof;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;

/**
 * "Twenty euros less than in February", "it has come down by ten euros", "€20 cheaper than then".
 */
final class PriceChangeReader implements ClaimReader {
  private static final Pattern BEFORE =
      Pattern.compile(
          "(?is).*\\b(?:come down|came down|comes down|gone down|went down|down|dropped|drops|drop|fell|fallen|falls|cut|reduced|lost|shed|sank|sunk|slipped|gone up|went up|came up|risen|rose|climbed|put up|up)\\s+(?:in price\\s+|again\\s+|since \\p{L}+\\s+|then\\s+)*(?:by\\s+|of\\s+)?(?:just\\s+|only\\s+|a\\s+|another\\s+)*$");

  private static final Pattern AFTER =
      Pattern.compile(
          "(?is)^\\s*(?:less|cheaper|lower|more|dearer|higher|off)\\b[^.;]{0,30}?\\b(?:than (?:in|on|before|last|it (?:was|did|cost)|when|at|a|four|five|six|then)|since|the (?:february|january|earlier|old|launch) price|now)\\b.*|^\\s*(?:price )?(?:drop|cut|reduction)\\b.*");

  private static final Pattern UP =
      Pattern.compile("(?is).*\\b(?:up|risen|rose|climbed)\\s+(?:\\p{L}+\\s+){0,3}$");

  private static final Pattern MORE = Pattern.compile("(?is)^\\s*(?:more|dearer|higher)\\b.*");

  private final Figures figures;

  PriceChangeReader(Figures figures) {
    this.figures = figures;
  }

  @Override
  public void read(SentenceClaims sentence) {
    for (NumberPhrase number : sentence.freeNumbers()) {
      String before = Wording.before(sentence.text(), number.start());
      String after = Wording.after(sentence.text(), number.end());
      boolean money =
          number.scale() == Scale.MONEY
              || number.unit() == null
                  && number.scale() == Scale.NONE
                  && number.decimals() == 0
                  && AFTER.matcher(after).matches();
      boolean change =
          money
              && number.low() < figures.lowestPrice()
              && (BEFORE.matcher(before).matches() || AFTER.matcher(after).matches())
              && sentence.context().named().stream()
                  .noneMatch(
                      m ->
                          m.start() >= number.end()
                              && Wording.is(
                                  sentence.text().substring(number.end(), m.start()),
                                  "(?is).*\\bthan\\s+(?:the\\s+)?"));
      if (change) {
        boolean up = UP.matcher(before).matches() || MORE.matcher(after).matches();
        claim(sentence, number, up);
      }
    }
  }

  private void claim(SentenceClaims sentence, NumberPhrase number, boolean isUp) {
    String product = sentence.context().productAt(number.start(), number.end());
    Optional<Double> change = product == null ? Optional.empty() : change(product);
    if (product == null || change.isEmpty()) {
      return;
    }
    double moved = change.get();
    boolean holds = Judge.holds(number, Math.abs(moved), null) && moved != 0 && (moved > 0) == isUp;
    String expected =
        moved == 0
            ? "no change"
            : Judge.text(Math.abs(moved), null, 0) + (moved > 0 ? " more" : " less");
    sentence.add(
        number.start(),
        number.end(),
        Kind.COMPARISON,
        holds ? Finding.SUPPORTED : Finding.CONTRADICTED,
        number.text(),
        expected,
        List.of("prices of " + figures.name(product)),
        figures.name(product) + ", against the earlier price: " + expected);
  }

  /** The latest price less the one before; empty where there is only one. */
  private Optional<Double> change(String product) {
    List<Figure> earlier = figures.earlierPrices(product);
    return earlier.isEmpty()
        ? Optional.empty()
        : figures.of(product).stream()
            .filter(f -> f.kind() == Figure.Kind.PRICE && f.value() != null)
            .map(
                f ->
                    Objects.requireNonNull(f.value())
                        - Objects.requireNonNull(earlier.get(earlier.size() - 1).value()))
            .findFirst();
  }
}
