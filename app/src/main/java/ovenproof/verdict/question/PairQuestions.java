package ovenproof.verdict.question;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import ovenproof.core.ranking.Comparison;
import ovenproof.core.ranking.Pairs;
import ovenproof.core.scoring.MoreRuns;
import ovenproof.core.scoring.NodeScore;
import ovenproof.core.scoring.ProductScore;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;

/** Two products held against each other: why they stand where they do, what would split them. */
final class PairQuestions {
  private final AskedVerdict asked;

  PairQuestions(AskedVerdict asked) {
    this.asked = asked;
  }

  /** Why one product stands above another: test by test, adding up to the displayed difference. */
  QuestionAnswer why(String first, String second) {
    ProductScore a = asked.product(first);
    ProductScore b = asked.product(second);
    List<List<Object>> rows = new ArrayList<>();
    BigDecimal total = difference(a.total(), b.total());
    double explained = 0;
    for (NodeScore test : a.total().children()) {
      NodeScore other = b.total().find(test.id()).orElse(test);
      double points =
          test.share() * AnswerWords.shown(test) - other.share() * AnswerWords.shown(other);
      boolean adds = !Double.isNaN(points);
      explained += adds ? points : 0;
      rows.add(
          List.of(
              test.label(),
              AnswerWords.percent(test.share()),
              AnswerWords.text(test),
              AnswerWords.text(other),
              adds ? AnswerWords.signed(points) : "open"));
    }
    String rest = AnswerWords.signed(total.doubleValue() - explained);
    rows.add(List.of("rounding, gates, other than a weighted mean", "", "", "", rest));
    rows.add(
        List.of(
            "total",
            "",
            AnswerWords.text(a.total()),
            AnswerWords.text(b.total()),
            AnswerWords.signed(total.doubleValue())));
    return new QuestionAnswer(
        "why",
        "Why " + a.label() + " and " + b.label() + " stand where they do",
        List.of("test", "weight", a.label(), b.label(), "points of the total"),
        rows,
        whySentences(a, b));
  }

  private List<String> whySentences(ProductScore a, ProductScore b) {
    Optional<Comparison> compared = asked.result().compared();
    int i = compared.map(c -> c.ids().indexOf(a.id())).orElse(-1);
    int j = compared.map(c -> c.ids().indexOf(b.id())).orElse(-1);
    if (compared.isEmpty() || i < 0 || j < 0) {
      return List.of("not both are ranked: " + reason(a) + reason(b));
    }
    Pairs pairs = compared.get().pairs();
    boolean firstAbove = pairs.gap(i, j) >= 0;
    int up = firstAbove ? i : j;
    int down = firstAbove ? j : i;
    String above = firstAbove ? a.label() : b.label();
    String below = firstAbove ? b.label() : a.label();
    Pairs.Separation separation = pairs.separation(up, down);
    String edge = separation.onTheEdge() ? " (on the edge)" : "";
    String first =
        String.format(
            Locale.ROOT,
            "P(%s better than %s) = %.2f.",
            above,
            below,
            pairs.probabilityLow(up, down));
    String second =
        String.format(
            Locale.ROOT,
            "Unrounded difference %.2f points; this field separates the two at %.2f: %s%s.",
            pairs.gap(up, down),
            pairs.needed(up, down),
            separation.separated() ? "separated" : "not separated",
            edge);
    return List.of(first, second);
  }

  private static String reason(ProductScore product) {
    return product.why() == null ? "" : product.label() + ": " + product.why() + ". ";
  }

  private static BigDecimal difference(NodeScore a, NodeScore b) {
    BigDecimal first = a.displayedLow();
    BigDecimal second = b.displayedLow();
    return first == null || second == null ? BigDecimal.ZERO : first.subtract(second);
  }

  /** How many more runs would split two products. */
  QuestionAnswer moreRuns(String first, String second) {
    asked.product(first);
    asked.product(second);
    MoreRuns more;
    try {
      more = MoreRuns.toSplit(asked.scoringCase(), first, second, asked.threads());
    } catch (IllegalArgumentException e) {
      throw new InputException(
          Problem.error(
              Place.of("verdict"),
              String.valueOf(e.getMessage()),
              "two ranked products",
              "products with one run only, or a veto, have no interval to narrow"));
    }
    List<List<Object>> rows = new ArrayList<>();
    for (MoreRuns.Step step : more.steps()) {
      rows.add(
          List.of(
              step.runs(),
              String.format(Locale.ROOT, "%.2f", step.standardError()),
              String.format(Locale.ROOT, "%.2f", step.needed())));
    }
    String gap =
        String.format(
            Locale.ROOT,
            "%s leads %s by %.2f points.",
            asked.label(more.better()),
            asked.label(more.worse()),
            more.gap());
    return new QuestionAnswer(
        "more-runs",
        "How many more runs would split " + asked.label(first) + " and " + asked.label(second),
        List.of("more runs of each test", "standard error", "gap split with 80 % power"),
        rows,
        List.of(gap, cost(more)));
  }

  private String cost(MoreRuns more) {
    if (more.runs() < 0) {
      return "Not even "
          + MoreRuns.MOST
          + " more runs of each would split them, if the gap stays: call it a tie.";
    }
    if (more.runs() == 0) {
      return "The runs there are suffice.";
    }
    double perRun =
        asked.benchMinutes().entrySet().stream()
            .mapToDouble(
                e ->
                    e.getValue()
                        / Math.max(
                            1,
                            asked.campaign().runs().stream()
                                .filter(r -> r.test().equals(e.getKey()))
                                .count()))
            .sum();
    String hours =
        perRun == 0
            ? ""
            : String.format(
                Locale.ROOT,
                ", about %.1f hours on one bench without cooling down",
                2 * more.runs() * perRun / 60);
    return more.runs() + " more runs of every test for both, if the gap stays" + hours + ".";
  }
}
