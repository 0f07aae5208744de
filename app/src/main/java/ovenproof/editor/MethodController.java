package ovenproof.editor;

import jakarta.servlet.http.HttpServletRequest;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import ovenproof.campaign.Campaign;
import ovenproof.desk.Desk;
import ovenproof.desk.Document;
import ovenproof.desk.StaleRevisionException;
import ovenproof.input.InputException;
import ovenproof.method.Method;
import ovenproof.method.ValueNode;
import ovenproof.publish.figure.Scores;
import ovenproof.verdict.Verdict;
import ovenproof.web.FormProblems;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Shown;
import ovenproof.web.Who;
import ovenproof.web.Workbench;

/** The method: as a table, as text, its revisions and what a change does. */
@Controller
class MethodController {
  private final Desk desk;
  private final Workbench workbench;

  MethodController(Desk desk, Workbench workbench) {
    this.desk = desk;
    this.workbench = workbench;
  }

  /** A revision with its differences to the one before. */
  public record Revision(
      long number,
      String when,
      String who,
      @org.jspecify.annotations.Nullable String why,
      List<String> differences) {}

  /** A product's score now and then. */
  public record Effect(String name, String now, String then) {}

  @GetMapping("/c/{cid}/method")
  @MayUse(Audience.OWNER)
  String method(@PathVariable String cid, Model model) {
    Campaign c = workbench.sheet(cid).campaign();
    List<Document> all = desk.revisions(cid, Document.METHOD);
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", c);
    model.addAttribute("frozen", !c.countedRuns().isEmpty());
    model.addAttribute("text", all.get(0).body());
    model.addAttribute("revision", all.get(0).revision());
    model.addAttribute("lineProblems", List.of());
    model.addAttribute("stale", null);
    model.addAttribute("effect", List.of());
    model.addAttribute("differences", List.of());
    Map<String, String> criteria = new HashMap<>();
    c.method().tests().forEach(t -> criteria.put(t.id(), names(t.criteria())));
    model.addAttribute("criteria", criteria);
    List<Revision> revisions = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      Document d = all.get(i);
      List<String> differences =
          i + 1 < all.size()
              ? MethodDifference.between(desk.method(all.get(i + 1).body()), desk.method(d.body()))
              : List.of();
      revisions.add(
          new Revision(
              d.revision(), Shown.time(d.at(), c.info().zone()), d.who(), d.why(), differences));
    }
    model.addAttribute("revisions", revisions);
    return "editor/method";
  }

  private static String names(List<ValueNode> nodes) {
    return nodes.stream()
        .map(n -> n.name() + " (" + n.parts() + ")")
        .collect(Collectors.joining(", "));
  }

  @PostMapping("/c/{cid}/method")
  @MayUse(Audience.OWNER)
  String save(
      @PathVariable String cid,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request,
      jakarta.servlet.http.HttpServletResponse response) {
    String text = typed.getOrDefault("text", "").replace("\r\n", "\n");
    method(cid, model);
    model.addAttribute("typed", typed);
    model.addAttribute("text", text);
    Method then;
    try {
      then = desk.method(text);
    } catch (InputException wrong) {
      model.addAttribute("lineProblems", wrong.problems());
      response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
      return "editor/method";
    }
    effect(cid, then, model);
    if (!"keep".equals(typed.get("do"))) {
      return "editor/method";
    }
    FormProblems problems = mayKeep(cid, then, typed);
    if (problems.any()) {
      model.addAttribute("problems", problems.byField());
      return "editor/method";
    }
    return keep(cid, text, typed, model, request, response);
  }

  /** A frozen method asks for a version of its own and a reason. */
  private FormProblems mayKeep(String cid, Method then, Map<String, String> typed) {
    FormProblems problems = new FormProblems();
    Campaign c = workbench.sheet(cid).campaign();
    if (c.countedRuns().isEmpty() || c.method().equals(then)) {
      return problems;
    }
    problems.need(
        "why", typed.get("why"), "the reason for changing a method that has counted runs");
    if (c.method().version().equals(then.version())) {
      problems.add(
          "why",
          "The version is still "
              + then.version()
              + ". A changed method needs a new one, in the line “version:”.");
    }
    return problems;
  }

  private String keep(
      String cid,
      String text,
      Map<String, String> typed,
      Model model,
      HttpServletRequest request,
      jakarta.servlet.http.HttpServletResponse response) {
    String revision = typed.getOrDefault("revision", "0");
    String why = typed.getOrDefault("why", "").strip();
    try {
      desk.saveMethod(
          cid,
          revision.matches("\\d{1,9}") ? Long.parseLong(revision) : 0,
          text,
          Who.of(request).word(),
          why.isEmpty() ? null : why);
      return "redirect:/c/" + cid + "/method";
    } catch (StaleRevisionException stale) {
      model.addAttribute("stale", stale.current());
      model.addAttribute("revision", stale.current().revision());
      response.setStatus(HttpStatus.CONFLICT.value());
      return "editor/method";
    }
  }

  private void effect(String cid, Method then, Model model) {
    Workbench.Sheet sheet = workbench.sheet(cid);
    model.addAttribute("differences", MethodDifference.between(sheet.campaign().method(), then));
    if (sheet.verdict().isEmpty()) {
      return;
    }
    Verdict now = sheet.verdict().get();
    Verdict changed;
    try {
      changed = workbench.under(cid, then);
    } catch (InputException notScorable) {
      return;
    }
    List<Effect> effects = new ArrayList<>();
    for (Verdict.ProductVerdict p : now.products()) {
      String after = changed.product(p.id()).map(x -> Scores.words(x.score())).orElse("–");
      effects.add(new Effect(p.name(), Scores.words(p.score()), after));
    }
    model.addAttribute("effect", effects);
  }
}
