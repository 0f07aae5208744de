package ovenproof.editor;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import ovenproof.campaign.Campaign;
import ovenproof.core.quantity.Dimension;
import ovenproof.desk.Desk;
import ovenproof.desk.Document;
import ovenproof.editor.CurveForm.Shape;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.method.Criterion;
import ovenproof.method.CurveSpec;
import ovenproof.method.TestPlan;
import ovenproof.web.Choice;
import ovenproof.web.FormProblems;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Workbench;

/** A criterion's value curve, changed by typing, dragging or with the keyboard. */
@Controller
class CurveController {
  private final Desk desk;
  private final Workbench workbench;
  private final MethodPage page;

  CurveController(Desk desk, Workbench workbench) {
    this.desk = desk;
    this.workbench = workbench;
    this.page = new MethodPage(desk, workbench);
  }

  @GetMapping("/c/{cid}/method/curve/{test}/{criterion}")
  @MayUse(Audience.OWNER)
  String curve(
      @PathVariable String cid,
      @PathVariable String test,
      @PathVariable String criterion,
      @RequestParam(defaultValue = "") String shape,
      Model model) {
    Criterion c = frame(cid, test, criterion, model);
    Shape chosen = Shape.named(shape, Shape.of(c.curve()));
    model.addAttribute("revision", desk.document(cid, Document.METHOD).revision());
    Map<String, String> fields = CurveForm.fields(c.curve(), chosen);
    fill(c, chosen, fields, c.curve(), model);
    return "editor/curve";
  }

  private Criterion frame(String cid, String test, String criterion, Model model) {
    Campaign campaign = workbench.sheet(cid).campaign();
    Criterion c = page.criterion(campaign, test, criterion);
    if (!MethodPage.editable(c.curve())) {
      throw new InputException(
          Problem.error(
              Place.of(criterion),
              "a curve without anchors",
              "anchors, a window or steps",
              "change it in the text of the method"));
    }
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", campaign);
    model.addAttribute("frozen", !campaign.countedRuns().isEmpty());
    model.addAttribute("testName", campaign.method().test(test).map(TestPlan::name).orElse(test));
    model.addAttribute("testId", test);
    model.addAttribute("criterion", c);
    return c;
  }

  private static void fill(
      Criterion c, Shape shape, Map<String, String> fields, CurveSpec drawn, Model model) {
    int used =
        (int)
            IntStream.range(0, CurveForm.MOST_ROWS)
                .filter(i -> fields.containsKey("at-" + i))
                .count();
    List<Integer> rows =
        IntStream.range(0, Math.min(CurveForm.MOST_ROWS, used + 2)).boxed().toList();
    model.addAttribute("typed", fields);
    model.addAttribute("shape", shape.name());
    model.addAttribute("rows", rows);
    model.addAttribute(
        "shapes", Stream.of(Shape.values()).map(s -> new Choice(s.name(), s.words())).toList());
    model.addAttribute("picture", CurvePictureForm.of(c.name(), drawn, shape));
    model.addAttribute("units", CurvePictureForm.units(CurveForm.dimension(c.curve())));
    model.addAttribute("unit", CurveForm.unit(c.curve()).symbol());
  }

  @PostMapping("/c/{cid}/method/curve/{test}/{criterion}")
  @MayUse(Audience.OWNER)
  String save(
      @PathVariable String cid,
      @PathVariable String test,
      @PathVariable String criterion,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request,
      HttpServletResponse response) {
    Criterion c = frame(cid, test, criterion, model);
    FormProblems problems = new FormProblems();
    Shape shape = Shape.named(typed.get("shape"), Shape.of(c.curve()));
    Dimension dimension = CurveForm.dimension(c.curve());
    Optional<CurveSpec> curve = CurveForm.read(typed, shape, dimension, problems);
    if (curve.isEmpty()) {
      fill(c, shape, typed, c.curve(), model);
      model.addAttribute("revision", typed.getOrDefault("revision", "0"));
      model.addAttribute("problems", problems.byField());
      response.setStatus(422);
      return "editor/curve";
    }
    MethodText before = page.base(cid, typed);
    MethodText text = before.withCurve(test, criterion, CurveWords.yaml(curve.get()));
    return page.decide(
        cid, page.versioned(cid, text), typed, model::addAttribute, request, response);
  }
}
