package ovenproof.photopage;

import java.util.ArrayList;
import java.util.List;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import ovenproof.campaign.Campaign;
import ovenproof.chart.CavityChart;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.measure.CavityStudy;
import ovenproof.measure.CavityWords;
import ovenproof.method.TestPlan;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.WaitingPage;
import ovenproof.web.Workbench;

/** Where each oven bakes paler and darker: one map per product, on one scale. */
@Controller
class CavityController {
  private final Workbench workbench;

  CavityController(Workbench workbench) {
    this.workbench = workbench;
  }

  /** One product's map. */
  public record Oven(
      String product,
      String name,
      String finding,
      String basis,
      String chart,
      List<CavityWords.Row> rows,
      List<String> notes) {}

  @GetMapping("/c/{cid}/tests/{test}/cavity")
  @MayUse(Audience.OWNER)
  String cavity(@PathVariable String cid, @PathVariable String test, Model model) {
    Workbench.Sheet sheet = workbench.sheet(cid);
    Campaign c = sheet.campaign();
    TestPlan plan =
        c.method()
            .test(test)
            .orElseThrow(
                () ->
                    new InputException(
                        Problem.error(
                            Place.of("request"),
                            "no such test",
                            "one of this campaign",
                            "go back and choose")));
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", c);
    model.addAttribute("test", plan);
    if (!sheet.ready()) {
      return WaitingPage.show(sheet, "Bench", model::addAttribute);
    }
    CavityStudy study = CavityStudy.of(c, sheet.measured(), plan);
    double most = most(study);
    model.addAttribute("face", study.face() == null ? "" : study.face());
    model.addAttribute("why", study.why());
    model.addAttribute("most", Math.round(most));
    model.addAttribute("ovens", study.products().stream().map(p -> oven(c, p, most)).toList());
    return "photopage/cavity";
  }

  private static double most(CavityStudy study) {
    List<CavityChart.Place> all = new ArrayList<>();
    study.products().forEach(p -> all.addAll(places(p)));
    return CavityChart.most(all);
  }

  private static Oven oven(Campaign c, CavityStudy.OfProduct of, double most) {
    String name = c.product(of.product()).map(Campaign.Product::name).orElse(of.product());
    List<CavityChart.Place> places = places(of);
    String sentence =
        name + ", lightness of each place against the mean, L*: " + CavityChart.listed(places);
    return new Oven(
        of.product(),
        name,
        CavityWords.finding(of),
        of.pieces() + " pieces in " + of.loads() + (of.loads() == 1 ? " batch" : " batches"),
        new CavityChart(places, most).svg(sentence),
        CavityWords.rows(of),
        CavityWords.notes(of));
  }

  private static List<CavityChart.Place> places(CavityStudy.OfProduct of) {
    return of.map().effects().stream().map(CavityChart.Place::of).toList();
  }
}
