package ovenproof.ranking;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import ovenproof.campaign.Campaign;
import ovenproof.chart.ScoreChart;
import ovenproof.core.quantity.Rounding;
import ovenproof.method.TestPlan;
import ovenproof.publish.figure.Scores;
import ovenproof.verdict.Verdict;
import ovenproof.verdict.Verdict.Node;
import ovenproof.verdict.Verdict.ProductVerdict;

/** The ranking and the matrix of sub-scores, for the products of one page. */
final class RankingTables {
  /** A tier with its lanes. */
  public record TierRows(String name, String words, List<Lane> rows) {}

  /** A product in the ranking. */
  public record Lane(
      String id,
      String name,
      String rank,
      String lane,
      String score,
      String interval,
      String best,
      String price,
      List<String> notes) {}

  /** A product in the matrix. */
  public record MatrixRow(String id, String name, String total, List<MatrixCell> cells) {}

  /** A score of a product's test. */
  public record MatrixCell(String test, String testName, String words, String mini) {}

  private final Campaign campaign;
  private final Verdict verdict;
  private final Set<String> shown;

  /**
   * @param shown the products of this page
   */
  RankingTables(Campaign campaign, Verdict verdict, List<ProductVerdict> shown) {
    this.campaign = campaign;
    this.verdict = verdict;
    this.shown = shown.stream().map(ProductVerdict::id).collect(Collectors.toSet());
  }

  List<TierRows> tiers() {
    Map<Integer, List<ProductVerdict>> byTier = new TreeMap<>();
    for (ProductVerdict p : verdict.products()) {
      byTier
          .computeIfAbsent(p.tier() == null ? Integer.MAX_VALUE : p.tier(), t -> new ArrayList<>())
          .add(p);
    }
    List<TierRows> tiers = new ArrayList<>();
    byTier.forEach(
        (tier, products) -> {
          boolean ranked = tier != Integer.MAX_VALUE && verdict.margin() != null;
          List<Lane> rows = new ArrayList<>();
          for (int i = 0; i < products.size(); i++) {
            if (shown.contains(products.get(i).id())) {
              rows.add(lane(products, i, ranked));
            }
          }
          tiers.add(
              new TierRows(
                  tier == Integer.MAX_VALUE ? "Not ranked" : "Tier " + tier,
                  tierWords(products, ranked),
                  rows));
        });
    tiers.removeIf(t -> t.rows().isEmpty());
    return tiers;
  }

  private String tierWords(List<ProductVerdict> products, boolean ranked) {
    var best = products.get(0).score().value();
    if (!ranked || best == null) {
      return "";
    }
    double margin = Objects.requireNonNull(verdict.margin());
    return "best "
        + Scores.digits(best)
        + ", tray down to "
        + Rounding.HALF_UP.text(Math.max(0, best.doubleValue() - margin), 2);
  }

  private Lane lane(List<ProductVerdict> tier, int i, boolean ranked) {
    ProductVerdict p = tier.get(i);
    var best = tier.get(0).score().value();
    ScoreChart.Tier around = null;
    if (ranked && best != null) {
      double lowest = Math.max(0, best.doubleValue() - Objects.requireNonNull(verdict.margin()));
      around =
          new ScoreChart.Tier(
              best.doubleValue(),
              lowest,
              i == tier.size() - 1 ? ScoreChart.Place.LAST : ScoreChart.Place.INSIDE);
    }
    List<String> notes = new ArrayList<>();
    p.gates().stream()
        .filter(g -> g.state() != Verdict.GateOutcome.State.PASSED)
        .forEach(g -> notes.add(g.words()));
    return new Lane(
        p.id(),
        p.name(),
        Scores.rank(p.rank()),
        ScoreChart.lane(
            p.name() + ": " + Scores.sentence(p.score()), Scores.tray(p.score()), around),
        Scores.words(p.score()),
        Scores.interval(p.score()),
        Scores.probability(p.probabilityBest(), p.probabilityBestAtMost()),
        price(campaign, p.id()),
        notes);
  }

  static String price(Campaign campaign, String product) {
    return campaign.prices().stream()
        .filter(x -> x.product().equals(product))
        .max(Comparator.comparing(Campaign.Price::on))
        .map(
            x ->
                Rounding.HALF_UP.text(x.amount(), x.amount() == Math.rint(x.amount()) ? 0 : 2)
                    + "\u00a0"
                    + x.currency())
        .orElse("–");
  }

  List<MatrixRow> matrix() {
    List<MatrixRow> rows = new ArrayList<>();
    for (ProductVerdict p : verdict.products()) {
      if (!shown.contains(p.id())) {
        continue;
      }
      List<MatrixCell> cells = new ArrayList<>();
      for (TestPlan test : campaign.method().tests()) {
        Optional<Node> node = p.test(test.id());
        cells.add(
            new MatrixCell(
                test.id(),
                test.name(),
                node.map(n -> Scores.words(n.score())).orElse("–"),
                node.map(n -> ScoreChart.mini(Scores.tray(n.score()))).orElse("")));
      }
      rows.add(new MatrixRow(p.id(), p.name(), Scores.words(p.score()), cells));
    }
    return rows;
  }
}
