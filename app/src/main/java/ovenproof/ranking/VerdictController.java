package ovenproof.ranking;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import ovenproof.campaign.Campaign;
import ovenproof.chart.ScoreChart;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Rounding;
import ovenproof.desk.Desk;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.measure.Measured;
import ovenproof.method.Criterion;
import ovenproof.method.TestPlan;
import ovenproof.method.ValueNode;
import ovenproof.publish.figure.Scores;
import ovenproof.verdict.Verdict;
import ovenproof.verdict.Verdict.Node;
import ovenproof.verdict.Verdict.ProductVerdict;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Shown;
import ovenproof.web.WaitingPage;
import ovenproof.web.Workbench;

/** Ranking, matrix, weights, and the way down from a score to its files. */
@Controller
class VerdictController {
  private static final int MOST_PARTS = 10;
  private final Workbench workbench;
  private final FrozenVerdicts frozen;

  VerdictController(Desk desk, Workbench workbench) {
    this.workbench = workbench;
    this.frozen = new FrozenVerdicts(desk);
  }

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

  /** A slider. */
  public record Weight(String id, String name, int parts, int yours) {}

  @GetMapping("/c/{cid}/verdict")
  @MayUse(Audience.OWNER)
  String verdict(@PathVariable String cid, @RequestParam Map<String, String> query, Model model) {
    Workbench.Sheet sheet = workbench.sheet(cid);
    Campaign campaign = sheet.campaign();
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", campaign);
    if (!sheet.scored()) {
      return WaitingPage.show(sheet, "Verdict", model::addAttribute);
    }
    Optional<Verdict> scored = sheet.verdict();
    model.addAttribute("verdict", scored.orElse(null));
    model.addAttribute("headline", headline(scored));
    model.addAttribute(
        "lead", "A score is a bead; its tray is the 90 % interval. A tier is a tray too.");
    scored.ifPresent(verdict -> fill(model, sheet, verdict, query));
    frozen.show(sheet, scored.orElse(null), model::addAttribute);
    return "ranking/verdict";
  }

  private static String headline(Optional<Verdict> scored) {
    if (scored.isEmpty()) {
      return "Nothing to score yet";
    }
    List<String> best = scored.get().tier(1).stream().map(ProductVerdict::name).toList();
    if (best.isEmpty()) {
      return "Scores so far; nothing is ranked yet";
    }
    return best.size() == 1
        ? best.get(0) + " leads"
        : best.size() > 4
            ? best.size() + " products share the first tier"
            : String.join(", ", best.subList(0, best.size() - 1))
                + " and "
                + best.get(best.size() - 1)
                + " lead; the runs cannot tell them apart";
  }

  private void fill(
      Model model, Workbench.Sheet sheet, Verdict verdict, Map<String, String> query) {
    Campaign campaign = sheet.campaign();
    model.addAttribute("axis", ScoreChart.axis());
    model.addAttribute(
        "margin", verdict.margin() == null ? "" : Rounding.HALF_UP.text(verdict.margin(), 2));
    model.addAttribute("tiers", tiers(campaign, verdict));
    model.addAttribute("matrix", matrix(campaign, verdict));
    weights(model, sheet, verdict, query);
  }

  private static List<TierRows> tiers(Campaign campaign, Verdict verdict) {
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
            rows.add(lane(campaign, verdict, products, i, ranked));
          }
          tiers.add(
              new TierRows(
                  tier == Integer.MAX_VALUE ? "Not ranked" : "Tier " + tier,
                  tierWords(verdict, products, ranked),
                  rows));
        });
    return tiers;
  }

  private static String tierWords(Verdict verdict, List<ProductVerdict> products, boolean ranked) {
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

  private static Lane lane(
      Campaign campaign, Verdict verdict, List<ProductVerdict> tier, int i, boolean ranked) {
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

  private static List<MatrixRow> matrix(Campaign campaign, Verdict verdict) {
    List<MatrixRow> rows = new ArrayList<>();
    for (ProductVerdict p : verdict.products()) {
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

  // ---------- weights ----------

  @GetMapping("/c/{cid}/verdict/weights")
  @MayUse(Audience.OWNER)
  String weights(@PathVariable String cid, @RequestParam Map<String, String> query, Model model) {
    Workbench.Sheet sheet = workbench.sheet(cid);
    sheet.verdict().ifPresent(verdict -> weights(model, sheet, verdict, query));
    return "ranking/weights";
  }

  private static void weights(
      Model model, Workbench.Sheet sheet, Verdict verdict, Map<String, String> query) {
    Map<String, Integer> parts = new LinkedHashMap<>();
    List<Weight> weights = new ArrayList<>();
    boolean changed = false;
    for (TestPlan test : sheet.campaign().method().tests()) {
      int yours = parts(query.get("w." + test.id()), test.parts());
      changed |= yours != test.parts();
      parts.put(test.id(), yours);
      weights.add(new Weight(test.id(), test.name(), test.parts(), yours));
    }
    boolean nothing = parts.values().stream().allMatch(p -> p == 0);
    model.addAttribute(
        "weightProblem", nothing ? "Every test has 0 parts; give one of them a part." : null);
    model.addAttribute("weights", weights);
    model.addAttribute(
        "yours",
        changed && !nothing
            ? OtherParts.of(sheet.basis().orElseThrow(), parts)
            : OtherParts.asPublished(verdict));
  }

  private static int parts(@Nullable String typed, int fallback) {
    return typed != null && typed.matches("\\d{1,2}")
        ? Math.min(MOST_PARTS, Integer.parseInt(typed))
        : fallback;
  }

  // ---------- down to the files ----------

  /** A test of one product. */
  public record TestRows(
      String id, String name, String words, String parts, List<CriterionRows> criteria) {}

  /** A criterion, its curve, its runs. */
  public record CriterionRows(
      String name, String words, String measured, String curve, List<RunRow> runs) {}

  /** A value and where it came from. */
  public record RunRow(
      @Nullable String run, String value, String components, List<Source> evidence) {}

  /** A file, or an entry's key. */
  public record Source(String name, boolean isFile) {}

  @GetMapping("/c/{cid}/verdict/{product}")
  @MayUse(Audience.OWNER)
  String product(
      @PathVariable String cid,
      @PathVariable String product,
      @RequestParam(required = false) @Nullable String test,
      Model model) {
    Workbench.Sheet sheet = workbench.sheet(cid);
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", sheet.campaign());
    if (!sheet.scored()) {
      return WaitingPage.show(sheet, "Verdict", model::addAttribute);
    }
    ProductVerdict scored =
        sheet
            .verdict()
            .flatMap(v -> v.product(product))
            .orElseThrow(
                () ->
                    new InputException(
                        Problem.error(
                            Place.of(product), "no such product", "a product with a verdict", "")));
    List<TestRows> tests = new ArrayList<>();
    for (Node node : scored.tests()) {
      if (test == null || node.id().equals(test)) {
        TestPlan plan = sheet.campaign().method().test(node.id()).orElseThrow();
        List<CriterionRows> criteria = new ArrayList<>();
        criteria(sheet, plan, product, node, plan.criteria(), criteria);
        tests.add(
            new TestRows(
                node.id(),
                node.name(),
                Scores.sentence(node.score()),
                node.parts()
                    + (node.parts() == 1 ? " part" : " parts")
                    + ", "
                    + node.runs()
                    + (node.runs() == 1 ? " run" : " runs"),
                criteria));
      }
    }
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", sheet.campaign());
    model.addAttribute("product", scored);
    model.addAttribute("total", Scores.sentence(scored.score()));
    model.addAttribute("tests", tests);
    return "ranking/product";
  }

  private static void criteria(
      Workbench.Sheet sheet,
      TestPlan test,
      String product,
      Node node,
      List<ValueNode> values,
      List<CriterionRows> rows) {
    for (Node child : node.children()) {
      ValueNode value =
          values.stream().filter(v -> v.id().equals(child.id())).findFirst().orElse(null);
      if (value instanceof Criterion criterion) {
        rows.add(criterion(sheet, test, product, child, criterion));
      } else if (value instanceof ValueNode.Group group) {
        criteria(sheet, test, product, child, group.children(), rows);
      }
    }
  }

  private static CriterionRows criterion(
      Workbench.Sheet sheet, TestPlan test, String product, Node node, Criterion criterion) {
    List<Measured.Value> values = sheet.measured().counted(test.id(), criterion.measure(), product);
    List<RunRow> runs = new ArrayList<>();
    for (Measured.Value value : values) {
      Measurement m = value.value();
      String components =
          m.components().stream()
              .map(c -> c.source() + " " + Rounding.HALF_UP.text(Math.abs(c.u()), 2))
              .collect(Collectors.joining(", "));
      List<Source> sources =
          m.evidence().stream()
              .map(e -> e.replaceAll("[#@ ].*", ""))
              .distinct()
              .map(
                  e ->
                      new Source(
                          e,
                          sheet.campaign().evidence().stream().anyMatch(f -> f.path().equals(e))))
              .toList();
      String why = m.note() == null ? "" : (components.isEmpty() ? "" : "; ") + m.note();
      runs.add(new RunRow(value.run(), Shown.measurement(m), components + why, sources));
    }
    String measured =
        node.measurement() == null
            ? "Nothing measured."
            : node.measurement().label()
                + ": "
                + Shown.measurement(node.measurement())
                + ". "
                + node.measurement().definition();
    return new CriterionRows(
        criterion.name() + ", " + criterion.parts() + (criterion.parts() == 1 ? " part" : " parts"),
        Scores.sentence(node.score()),
        measured,
        CurvePicture.of(criterion, values.stream().map(Measured.Value::value).toList()),
        runs);
  }
}
