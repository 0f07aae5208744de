package ovenproof.editor;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import ovenproof.campaign.Campaign;
import ovenproof.desk.Desk;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.method.Starters;
import ovenproof.method.TestPlan;
import ovenproof.method.ValueNode;
import ovenproof.web.FormProblems;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.MethodLook;
import ovenproof.web.Slug;
import ovenproof.web.Workbench;

/** The method: as a form, as text, its revisions and what a change does. */
@Controller
class MethodController {
  private static final int MOST = 100;
  private final Workbench workbench;
  private final MethodPage page;

  MethodController(Desk desk, Workbench workbench) {
    this.workbench = workbench;
    this.page = new MethodPage(desk, workbench);
  }

  @GetMapping("/c/{cid}/method")
  @MayUse(Audience.OWNER)
  String method(@PathVariable String cid, Model model) {
    return page.show(cid, model::addAttribute);
  }

  /** The text as it was typed. */
  @PostMapping("/c/{cid}/method")
  @MayUse(Audience.OWNER)
  String save(
      @PathVariable String cid,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request,
      HttpServletResponse response) {
    String text = typed.getOrDefault("text", "").replace("\r\n", "\n");
    return page.decide(cid, text, typed, model::addAttribute, request, response);
  }

  /** A starter in place of the text; looked at first, kept as any other change. */
  @PostMapping("/c/{cid}/method/starter")
  @MayUse(Audience.OWNER)
  String starter(
      @PathVariable String cid,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request,
      HttpServletResponse response) {
    String starter = typed.getOrDefault("starter", "");
    if (!Starters.names().contains(starter)) {
      throw unknown("starter");
    }
    return page.decide(cid, Starters.text(starter), typed, model::addAttribute, request, response);
  }

  /** Ticks, parts, runs and variants, put into the text at their places. */
  @PostMapping("/c/{cid}/method/form")
  @MayUse(Audience.OWNER)
  String form(
      @PathVariable String cid,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request,
      HttpServletResponse response) {
    Campaign c = workbench.sheet(cid).campaign();
    MethodText before = page.base(cid, typed);
    MethodText text = before;
    FormProblems problems = new FormProblems();
    for (TestPlan test : c.method().tests()) {
      text = test(text, test, typed, problems);
    }
    String added = typed.getOrDefault("add", "");
    if (added.contains("/")) {
      String[] which = added.split("/", 2);
      if (!Starters.names().contains(which[0])) {
        throw unknown("starter");
      }
      text = text.withTestOf(MethodText.of(Starters.text(which[0])), which[1]);
    }
    if (problems.any()) {
      page.show(cid, model::addAttribute);
      model.addAttribute("typed", typed);
      model.addAttribute("problems", problems.byField());
      response.setStatus(422);
      return "editor/method";
    }
    boolean changed = !text.toString().equals(before.toString());
    String kept = changed ? page.versioned(cid, text) : text.toString();
    return page.decide(cid, kept, typed, model::addAttribute, request, response);
  }

  private static MethodText test(
      MethodText text, TestPlan test, Map<String, String> typed, FormProblems problems) {
    String id = test.id();
    if (typed.containsKey("shown/" + id) && !typed.containsKey("keep/" + id)) {
      return text.withoutTest(id);
    }
    MethodText changed = text;
    int parts = number(typed, problems, "parts/" + id, test.parts());
    if (parts != test.parts()) {
      changed = changed.withNumber(id, "parts", parts);
    }
    int runs = number(typed, problems, "runs/" + id, test.replicates());
    if (runs != test.replicates()) {
      changed = changed.withNumber(id, "replicates", runs);
    }
    changed = nodes(changed, test.id(), test.criteria(), typed, problems);
    return variants(changed, test, typed);
  }

  private static MethodText nodes(
      MethodText text,
      String test,
      java.util.List<ValueNode> nodes,
      Map<String, String> typed,
      FormProblems problems) {
    MethodText changed = text;
    for (ValueNode node : nodes) {
      int parts = number(typed, problems, "parts/" + test + "/" + node.id(), node.parts());
      if (parts != node.parts()) {
        changed = changed.withParts(test, node.id(), parts);
      }
      if (node instanceof ValueNode.Group group) {
        changed = nodes(changed, test, group.children(), typed, problems);
      }
    }
    return changed;
  }

  private static MethodText variants(MethodText text, TestPlan test, Map<String, String> typed) {
    MethodText changed = text;
    String id = test.id();
    String name = typed.getOrDefault("variant/" + id, "").strip();
    if (!name.isEmpty()) {
      String key =
          Slug.of(
              name,
              "variant",
              taken -> test.variants().stream().anyMatch(v -> v.id().equals(taken)));
      changed = changed.withVariant(id, key, name);
    }
    String dropped = typed.getOrDefault("drop-variant/" + id, "");
    if (!dropped.isEmpty()) {
      changed = changed.withoutVariant(id, dropped);
    }
    String scored = typed.getOrDefault("scored/" + id, test.scoredVariant().id());
    boolean known = test.variants().stream().anyMatch(v -> v.id().equals(scored));
    return known && !scored.equals(test.scoredVariant().id())
        ? changed.withScoredVariant(id, scored)
        : changed;
  }

  private static int number(
      Map<String, String> typed, FormProblems problems, String field, int fallback) {
    String text = typed.getOrDefault(field, String.valueOf(fallback)).strip();
    if (text.matches("\\d{1,3}") && Integer.parseInt(text) <= MOST) {
      return Integer.parseInt(text);
    }
    problems.add(field, "Found “" + text + "”, expected a whole number from 0 to " + MOST + ".");
    return fallback;
  }

  /** How far computing the effect has come, or the effect. */
  @GetMapping("/c/{cid}/method/effect/{key}")
  @MayUse(Audience.OWNER)
  String effect(@PathVariable String cid, @PathVariable String key, Model model) {
    MethodLook look =
        workbench.look(key).orElseThrow(() -> unknown("look; look at the effect again"));
    model.addAttribute("cid", cid);
    model.addAttribute("look", key);
    page.fill(look, model::addAttribute);
    return "editor/effect";
  }

  private static InputException unknown(String what) {
    return new InputException(
        Problem.error(Place.of("request"), "no such " + what, "one of this desk", "go back"));
  }
}
