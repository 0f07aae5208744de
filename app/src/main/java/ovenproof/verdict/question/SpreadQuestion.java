package ovenproof.verdict.question;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import ovenproof.core.scoring.ProductScore;
import ovenproof.core.scoring.Scoring;
import ovenproof.core.scoring.ScoringResult;
import ovenproof.core.scoring.ScoringRules;

/** What each product's own scatter between runs would do to intervals and tiers. */
final class SpreadQuestion {
  private final AskedVerdict asked;

  SpreadQuestion(AskedVerdict asked) {
    this.asked = asked;
  }

  /** Each product's own deviation between runs, pulled towards the field, beside the pooled one. */
  QuestionAnswer spread() {
    ScoringRules rules = asked.scoringCase().rules();
    ScoringResult pooled =
        Scoring.score(
            asked.scoringCase().withRules(rules.withSpread(ScoringRules.Spread.POOLED)),
            asked.threads());
    ScoringResult own =
        Scoring.score(
            asked.scoringCase().withRules(rules.withSpread(ScoringRules.Spread.SHRUNKEN)),
            asked.threads());
    List<List<Object>> rows = new ArrayList<>();
    for (ProductScore product : asked.result().products()) {
      rows.add(
          List.of(
              product.label(),
              AnswerWords.text(product.total()),
              interval(pooled, product.id()),
              tier(pooled, product.id()),
              interval(own, product.id()),
              tier(own, product.id())));
    }
    return new QuestionAnswer(
        "spread",
        "If each product had its own scatter",
        List.of(
            "product",
            "score",
            "90 %, pooled scatter",
            "tier, pooled",
            "90 %, own scatter",
            "tier, own"),
        rows,
        List.of(
            "Pooled: one deviation between runs for the whole field. Own: each product's deviation,"
                + " pulled towards the field's as far as few runs demand (empirical Bayes). Scores do"
                + " not change. The method decides which one counts; this verdict uses the "
                + (rules.spread() == ScoringRules.Spread.POOLED ? "pooled" : "own")
                + " one."));
  }

  private static String tier(ScoringResult in, String product) {
    return in.product(product).map(ProductScore::tier).map(String::valueOf).orElse("unranked");
  }

  private static String interval(ScoringResult in, String product) {
    return in.product(product)
        .map(p -> p.total().interval())
        .map(i -> String.format(Locale.ROOT, "%.1f to %.1f", i.low(), i.high()))
        .orElse("none");
  }
}
