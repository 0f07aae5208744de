package ovenproof.ranking;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import ovenproof.desk.Desk;
import ovenproof.desk.Document;
import ovenproof.desk.StaleRevisionException;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.publish.edition.EditionJson;
import ovenproof.publish.edition.FrozenEdition;
import ovenproof.verdict.Verdict;
import ovenproof.web.FormProblems;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Shown;
import ovenproof.web.Who;
import ovenproof.web.Workbench;

/** Freezing a verdict, and reading what was frozen. */
@Controller
class FreezeController {
  private final Desk desk;
  private final Workbench workbench;
  private final VerdictController verdicts;
  private final FrozenVerdicts frozen;

  FreezeController(Desk desk, Workbench workbench, VerdictController verdicts) {
    this.desk = desk;
    this.workbench = workbench;
    this.verdicts = verdicts;
    this.frozen = new FrozenVerdicts(desk);
  }

  @PostMapping("/c/{cid}/verdict/freeze")
  @MayUse(Audience.OWNER)
  String freeze(
      @PathVariable String cid,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    Workbench.Sheet sheet = workbench.sheet(cid);
    FormProblems problems = new FormProblems();
    String why = problems.need("why", typed.get("why"), "what it is frozen for");
    Optional<Verdict> verdict = sheet.verdict();
    if (verdict.isEmpty()) {
      problems.add("why", "There is no verdict yet that could be frozen.");
    }
    String last = typed.getOrDefault("last", "0");
    long revision = last.matches("\\d{1,9}") ? Long.parseLong(last) : 0;
    if (!problems.any()) {
      FrozenEdition now = frozen.now(sheet, verdict.orElseThrow(), (int) revision + 1, why);
      try {
        long number =
            desk.freeze(cid, revision, EditionJson.of(now).toString(), Who.of(request).word(), why);
        return "redirect:/c/" + cid + "/frozen/" + number;
      } catch (StaleRevisionException meanwhile) {
        problems.add(
            "why",
            "The "
                + meanwhile.current().who()
                + " froze one meanwhile (number "
                + meanwhile.current().revision()
                + ", below). Send again to freeze another.");
      }
    }
    verdicts.verdict(cid, Map.of(), model);
    model.addAttribute("problems", problems.byField());
    model.addAttribute("typed", typed);
    return "ranking/verdict";
  }

  @GetMapping("/c/{cid}/frozen/{number}")
  @MayUse(Audience.OWNER)
  String frozen(@PathVariable String cid, @PathVariable long number, Model model) {
    Workbench.Sheet sheet = workbench.sheet(cid);
    FrozenEdition kept =
        frozen
            .find(cid, number)
            .orElseThrow(
                () ->
                    new InputException(
                        Problem.error(
                            Place.of("number"),
                            "no verdict frozen under " + number,
                            "one of the page Verdict",
                            "")));
    Document document = desk.document(cid, Document.VERDICT, number).orElseThrow();
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", sheet.campaign());
    model.addAttribute("kept", kept);
    model.addAttribute("number", number);
    model.addAttribute(
        "when",
        Shown.time(document.at(), sheet.campaign().info().zone()) + " by the " + document.who());
    return "ranking/frozen";
  }
}
