package ovenproof.ranking;

import jakarta.servlet.http.HttpServletResponse;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import ovenproof.campaign.Campaign;
import ovenproof.chart.ScoreChart;
import ovenproof.core.quantity.Rounding;
import ovenproof.desk.Desk;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.method.TestPlan;
import ovenproof.publish.figure.Scores;
import ovenproof.verdict.Verdict;
import ovenproof.verdict.Verdict.ProductVerdict;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Rows;
import ovenproof.web.WaitingPage;
import ovenproof.web.Workbench;

/** Ranking, matrix, weights, and the way down from a score to its files. */
@Controller
class VerdictController {
  private static final int MOST_PARTS = 10;
  private static final int PRODUCTS_AT_ONCE = 40;
  private final Workbench workbench;
  private final FrozenVerdicts frozen;

  VerdictController(Desk desk, Workbench workbench) {
    this.workbench = workbench;
    this.frozen = new FrozenVerdicts(desk);
  }

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
    Rows<ProductVerdict> part =
        Rows.of(
            verdict.products(),
            PRODUCTS_AT_ONCE,
            "/c/" + campaign.info().id() + "/verdict",
            query,
            ProductVerdict::name);
    RankingTables tables = new RankingTables(campaign, verdict, part.shown());
    model.addAttribute("part", part);
    model.addAttribute("tiers", tables.tiers());
    model.addAttribute("matrix", tables.matrix());
    weights(model, sheet, verdict, query);
  }

  // ---------- weights ----------

  @GetMapping("/c/{cid}/verdict/weights")
  @MayUse(Audience.OWNER)
  @Nullable String weights(
      @PathVariable String cid,
      @RequestParam Map<String, String> query,
      Model model,
      HttpServletResponse response) {
    Workbench.Sheet sheet = workbench.sheet(cid);
    if (!sheet.scored()) {
      // Something was entered meanwhile: the page keeps what it shows until the new verdict is
      // there.
      response.setStatus(204);
      return null;
    }
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
    List<OtherParts> yours =
        changed && !nothing
            ? OtherParts.of(sheet.basis().orElseThrow(), parts)
            : OtherParts.asPublished(verdict);
    Map<String, String> asked = Map.of("find", query.getOrDefault("find", ""));
    model.addAttribute("yours", Rows.of(yours, PRODUCTS_AT_ONCE, "", asked, OtherParts::name));
  }

  private static int parts(@Nullable String typed, int fallback) {
    return typed != null && typed.matches("\\d{1,2}")
        ? Math.min(MOST_PARTS, Integer.parseInt(typed))
        : fallback;
  }

  // ---------- down to the files ----------

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
    List<ScoreChain.TestRows> tests = new ScoreChain(cid, sheet, product).tests(scored, test);
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", sheet.campaign());
    model.addAttribute("product", scored);
    model.addAttribute("total", Scores.sentence(scored.score()));
    model.addAttribute("tests", tests);
    return "ranking/product";
  }
}
