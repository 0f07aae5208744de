package ovenproof.proof;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Unit;
import ovenproof.method.Gate;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;
import ovenproof.verdict.Verdict.GateOutcome;
import ovenproof.verdict.Verdict.ProductVerdict;

/**
 * What only the verdict knows: the chance of being the best ("86 percent", "one in three") and
 * whose score a limit has capped.
 */
final class VerdictReader implements ClaimReader {
  private static final Pattern CHANCE =
      Pattern.compile(
          "\\b(?:chances?|probabilit(?:y|ies)|odds|likel(?:y|ihood)|bet)\\b",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern ONE_IN =
      Pattern.compile(
          "\\b(?<part>one|two|three|four|five|six|seven|eight|nine|\\d{1,2})\\s+(?:chance\\s+)?(?:in|out of|to)\\s+(?<whole>two|three|four|five|six|seven|eight|nine|ten|\\d{1,3})\\b(?!\\s+(?:ovens?|models?|minutes?|tests?))",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern CAPPED =
      Pattern.compile(
          "(?is)^(?:['’]s)?\\s*(?:(?:\\p{L}+\\s+){0,2}?)(?:(?:is|was|are|were|gets?|got|has been|had been)\\s+(?:also\\s+|only\\s+)?)(?<not>not\\s+)?(?:capped|held down|limited by our (?:rule|cap))\\b(?!\\s+(?:at|by)\\s+(?:nine|9|57|15|fifteen|sixty|60)).*");

  /** Percentage points that two sets of draws may differ by. */
  private static final double DRAWS = 1.5;

  private final Figures figures;

  VerdictReader(Figures figures) {
    this.figures = figures;
  }

  @Override
  public void read(SentenceClaims sentence) {
    if (CHANCE.matcher(sentence.text()).find() && !sentence.isQuestion()) {
      chances(sentence);
    }
    capped(sentence);
  }

  // ---- chances ----

  private void chances(SentenceClaims sentence) {
    for (NumberPhrase number : sentence.freeNumbers()) {
      if (number.unit() == Unit.PERCENT && !number.isRange()) {
        chance(sentence, number);
      }
    }
    Matcher matcher = ONE_IN.matcher(sentence.text());
    while (matcher.find()) {
      double share =
          100.0 * whole(matcher.group("part")) / Math.max(1, whole(matcher.group("whole")));
      NumberPhrase percent =
          new NumberPhrase(
              matcher.start(),
              matcher.end(),
              share,
              share,
              0,
              10,
              Unit.PERCENT,
              Scale.NONE,
              Hedge.ABOUT,
              matcher.group());
      if (sentence.isFree(matcher.start(), matcher.end())) {
        chance(sentence, percent);
      }
    }
  }

  private static int whole(String word) {
    return Wording.is(word, "\\d+") ? Integer.parseInt(word) : QuantifierReader.number(word);
  }

  private void chance(SentenceClaims sentence, NumberPhrase number) {
    @Nullable String product = sentence.context().productAt(number.start(), number.end());
    Optional<ProductVerdict> verdict =
        product == null ? Optional.empty() : figures.verdict().product(product);
    @Nullable Double best = verdict.map(ProductVerdict::probabilityBest).orElse(null);
    if (product == null || best == null) {
      return;
    }
    double percent = 100 * best;
    String expected = Judge.text(percent, Unit.PERCENT, 0);
    sentence.add(
        number.start(),
        number.end(),
        Kind.QUANTITY,
        Judge.holds(number, percent, Unit.PERCENT) || Math.abs(percent - number.low()) <= DRAWS
            ? Finding.SUPPORTED
            : Finding.CONTRADICTED,
        number.text(),
        expected,
        List.of("verdict " + figures.verdict().version()),
        figures.name(product) + ", probability of being the best: " + expected);
  }

  // ---- caps ----

  private void capped(SentenceClaims sentence) {
    for (Mentions.ProductMention mention : sentence.context().mentions()) {
      Matcher matcher = CAPPED.matcher(Wording.after(sentence.text(), mention.end()));
      boolean time = sentence.text().toLowerCase(Locale.ROOT).contains("minute");
      if (matcher.matches() && !time) {
        cap(sentence, mention, matcher.group("not") != null);
      }
    }
  }

  private void cap(SentenceClaims sentence, Mentions.ProductMention mention, boolean isDenied) {
    Set<String> capped = new TreeSet<>();
    for (ProductVerdict product : figures.verdict().products()) {
      if (product.gates().stream().anyMatch(VerdictReader::caps)) {
        capped.add(figures.name(product.id()));
      }
    }
    boolean holds = capped.contains(figures.name(mention.product())) != isDenied;
    int end = sentence.text().toLowerCase(Locale.ROOT).indexOf("capped", mention.end());
    int to = end < 0 ? mention.end() : end + "capped".length();
    if (!sentence.isFree(mention.start(), to)) {
      return;
    }
    String expected = capped.isEmpty() ? "none" : String.join(", ", capped);
    sentence.add(
        mention.start(),
        to,
        Kind.RANK,
        holds ? Finding.SUPPORTED : Finding.CONTRADICTED,
        sentence.text().substring(mention.start(), to),
        expected,
        List.of("verdict " + figures.verdict().version()),
        "capped by a limit: " + expected);
  }

  private static boolean caps(GateOutcome gate) {
    return gate.kind() == Gate.Kind.CEILING && gate.state() == GateOutcome.State.FIRED;
  }
}
