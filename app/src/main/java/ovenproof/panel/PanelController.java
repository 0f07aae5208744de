package ovenproof.panel;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import ovenproof.chart.RatingChart;
import ovenproof.core.panel.AssessorCheck;
import ovenproof.core.panel.AttributeAnalysis;
import ovenproof.core.panel.HaloCheck;
import ovenproof.core.panel.PanelAnalysis;
import ovenproof.core.panel.PanelTest;
import ovenproof.core.panel.ProductMean;
import ovenproof.core.panel.Sensitivity;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Who;
import ovenproof.web.Workbench;

/** Tastings as pictures with their warnings; how people mark, for the lead. */
@Controller
class PanelController {
  private final Workbench workbench;

  PanelController(Workbench workbench) {
    this.workbench = workbench;
  }

  /** One attribute on the page. */
  public record Tasted(
      String name,
      String picture,
      String said,
      @Nullable String sees,
      List<MeanRow> rows,
      List<String> warnings) {}

  /** A product's mean. */
  public record MeanRow(String product, String mean, String interval, int marks, String letters) {}

  /** A person on the lead's page. */
  public record Person(String name, String halo, List<PersonRow> rows) {}

  /** A person's marks of one attribute. */
  public record PersonRow(
      String attribute, String level, String repeats, String agrees, String remarks) {}

  @GetMapping("/c/{cid}/panel")
  @MayUse(Audience.OWNER)
  String panel(@PathVariable String cid, Model model) {
    CampaignPanel panel = panelOf(cid, model);
    model.addAttribute("warnings", panel.analysis().warnings());
    model.addAttribute(
        "tasted", panel.analysis().attributes().stream().map(a -> tasted(a, panel)).toList());
    return "panel/panel";
  }

  /** Names and habits of people are the lead's business alone. */
  @GetMapping("/c/{cid}/panel/tasters")
  @MayUse(Audience.OWNER)
  String tasters(
      @PathVariable String cid,
      HttpServletRequest request,
      HttpServletResponse response,
      Model model) {
    CampaignPanel panel = panelOf(cid, model);
    boolean lead = Who.of(request) == Who.LEAD;
    model.addAttribute("lead", lead);
    if (lead) {
      model.addAttribute("people", people(panel.analysis()));
    } else {
      response.setStatus(HttpServletResponse.SC_FORBIDDEN);
    }
    return "panel/tasters";
  }

  private CampaignPanel panelOf(String cid, Model model) {
    Workbench.Sheet sheet = workbench.sheet(cid);
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", sheet.campaign());
    return sheet.derived(CampaignPanel.class, CampaignPanel::of);
  }

  private static Tasted tasted(AttributeAnalysis attribute, CampaignPanel panel) {
    RatingChart.Panel lanes = RatingPicture.of(attribute, panel.ratings());
    List<MeanRow> rows = new ArrayList<>();
    for (int i = 0; i < attribute.products().size(); i++) {
      ProductMean mean = attribute.products().get(i);
      RatingChart.Lane lane = lanes.lanes().get(i);
      rows.add(
          new MeanRow(
              mean.product(),
              one(mean.mean()),
              Double.isNaN(lane.low()) ? "none" : one(lane.low()) + " to " + one(lane.high()),
              mean.marks(),
              mean.groups()));
    }
    return new Tasted(
        attribute.attribute(),
        RatingChart.inPage(List.of(lanes)),
        said(attribute),
        sees(attribute.sensitivity()),
        rows,
        attribute.warnings());
  }

  /** The test of products in a sentence. */
  private static String said(AttributeAnalysis attribute) {
    PanelTest test =
        attribute.tests().stream().filter(t -> t.name().equals("product")).findFirst().orElse(null);
    if (test == null || Double.isNaN(test.p())) {
      return "Nothing could be tested.";
    }
    String p = test.p() < 0.001 ? "below 0.001" : String.format(Locale.ROOT, "%.3f", test.p());
    String sentence =
        test.p() <= PanelAnalysis.SIGNIFICANCE
            ? "Some products differ"
            : "No difference between products was shown";
    return String.format(
        Locale.ROOT, "%s (F %.1f, p %s; %s).", sentence, test.statistic(), p, test.method());
  }

  private static @Nullable String sees(@Nullable Sensitivity seen) {
    if (seen == null || Double.isNaN(seen.detectable())) {
      return null;
    }
    String more =
        Double.isNaN(seen.detectableWithTwiceTheBatches())
            ? ""
            : ", with twice the batches " + one(seen.detectableWithTwiceTheBatches());
    return "This panel can see a difference of "
        + one(seen.detectable())
        + "; with twice the tasters "
        + one(seen.detectableWithTwiceTheTasters())
        + more
        + ".";
  }

  private static List<Person> people(PanelAnalysis analysis) {
    Map<String, List<PersonRow>> rows = new LinkedHashMap<>();
    for (AttributeAnalysis attribute : analysis.attributes()) {
      for (AssessorCheck check : attribute.assessors()) {
        rows.computeIfAbsent(check.assessor(), any -> new ArrayList<>()).add(row(check));
      }
    }
    Set<String> halo = new LinkedHashSet<>();
    analysis.halo().stream()
        .filter(h -> h.finding() == HaloCheck.Finding.HALO)
        .forEach(h -> halo.add(h.assessor()));
    List<Person> people = new ArrayList<>();
    rows.forEach(
        (name, own) ->
            people.add(
                new Person(
                    name, halo.contains(name) ? "marks every attribute alike: a halo" : "", own)));
    return people;
  }

  private static PersonRow row(AssessorCheck check) {
    return new PersonRow(
        check.attribute(),
        Double.isNaN(check.level()) ? "–" : String.format(Locale.ROOT, "%+.1f", check.level()),
        two(check.repeatability()),
        two(check.agreement()),
        String.join("; ", check.remarks()));
  }

  private static String one(double value) {
    return String.format(Locale.ROOT, "%.1f", value);
  }

  private static String two(double value) {
    return Double.isNaN(value) ? "–" : String.format(Locale.ROOT, "%.2f", value);
  }
}
