package ovenproof.home;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Run;
import ovenproof.chart.Sign;
import ovenproof.method.TestPlan;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Rows;
import ovenproof.web.Workbench;

/** A campaign's overview: product by test by replicate, and what waits. */
@Controller
class CampaignController {
  private static final int PRODUCTS_AT_ONCE = 40;
  private static final int WAITING_AT_ONCE = 40;
  private final Workbench workbench;

  CampaignController(Workbench workbench) {
    this.workbench = workbench;
  }

  /** A product's cells. */
  public record Row(Campaign.Product product, List<Cell> cells) {}

  /** A test of a product: signs and words. */
  public record Cell(String test, String signs, String words) {}

  @GetMapping("/c/{cid}")
  @MayUse(Audience.OWNER)
  String campaign(@PathVariable String cid, @RequestParam Map<String, String> query, Model model) {
    Workbench.Sheet sheet = workbench.sheet(cid);
    Campaign c = sheet.campaign();
    List<TestPlan> tests = c.method().tests().stream().filter(t -> t.replicates() > 0).toList();
    Rows<Campaign.Product> part =
        Rows.of(c.products(), PRODUCTS_AT_ONCE, "/c/" + cid, query, Campaign.Product::name);
    List<Row> rows = new ArrayList<>();
    Map<String, List<Run>> runs = new LinkedHashMap<>();
    c.runs()
        .forEach(
            r -> runs.computeIfAbsent(r.product() + "/" + r.test(), k -> new ArrayList<>()).add(r));
    RunState.All states = RunState.all(sheet);
    for (Campaign.Product product : part.shown()) {
      rows.add(
          new Row(
              product,
              tests.stream()
                  .map(
                      t ->
                          cell(
                              c,
                              product,
                              t,
                              runs.getOrDefault(product.id() + "/" + t.id(), List.of()),
                              states))
                  .toList()));
    }
    List<String> waiting = Waiting.of(sheet);
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", c);
    model.addAttribute("tests", tests);
    model.addAttribute("rows", rows);
    model.addAttribute("part", part);
    model.addAttribute("waiting", waiting.stream().limit(WAITING_AT_ONCE).toList());
    model.addAttribute(
        "headline",
        c.products().size()
            + " products, "
            + tests.size()
            + " tests, "
            + c.runs().size()
            + " runs; "
            + waiting.size()
            + (waiting.size() == 1 ? " thing waits." : " things wait."));
    model.addAttribute("more", Math.max(0, waiting.size() - WAITING_AT_ONCE));
    return "home/campaign";
  }

  private static Cell cell(
      Campaign c, Campaign.Product product, TestPlan test, List<Run> runs, RunState.All states) {
    Optional<Campaign.NotRun> not =
        c.notRun().stream()
            .filter(n -> n.product().equals(product.id()) && n.test().equals(test.id()))
            .findFirst();
    if (runs.isEmpty() && not.isPresent()) {
      String words = not.get().state().name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
      return new Cell(test.id(), Sign.CANNOT.svg(), words);
    }
    StringBuilder signs = new StringBuilder();
    int counted = 0;
    int running = 0;
    for (Run run : runs) {
      RunState state = states.of(run);
      signs.append(state.sign().svg());
      counted += state == RunState.COUNTED ? 1 : 0;
      running += state == RunState.RUNNING ? 1 : 0;
    }
    for (int i = counted + running; i < test.replicates(); i++) {
      signs.append(Sign.EMPTY.svg());
    }
    String words =
        counted + " of " + test.replicates() + (running > 0 ? ", " + running + " running" : "");
    return new Cell(test.id(), signs.toString(), words);
  }
}
