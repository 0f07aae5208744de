package ovenproof.prep;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Campaign.PlannedRun;
import ovenproof.campaign.Run;
import ovenproof.evidence.photo.RunLabel;
import ovenproof.method.TestPlan;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Rows;
import ovenproof.web.Slug;
import ovenproof.web.Workbench;

/** Labels to print and lay into the frame: a photograph then says itself which run it shows. */
@Controller
class LabelsController {
  private static final int AT_ONCE = 90;
  private final Workbench workbench;

  LabelsController(Workbench workbench) {
    this.workbench = workbench;
  }

  /** One label. */
  public record Label(String text, String product, String words, String code) {}

  @GetMapping("/c/{cid}/labels")
  @MayUse(Audience.OWNER)
  String labels(
      @PathVariable String cid,
      @RequestParam(defaultValue = "") String session,
      @RequestParam(defaultValue = "") String test,
      @RequestParam Map<String, String> query,
      Model model) {
    Campaign c = workbench.sheet(cid).campaign();
    List<Asked> labels = new ArrayList<>();
    for (Wanted wanted : wanted(c)) {
      boolean asked =
          (session.isEmpty() || session.equals(wanted.session()))
              && (test.isEmpty() || test.equals(wanted.test().id()));
      for (int batch = 1; asked && batch <= Math.max(1, wanted.test().batches()); batch++) {
        labels.add(new Asked(wanted, batch));
      }
    }
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", c);
    Rows<Asked> part =
        Rows.of(
            labels,
            AT_ONCE,
            "/c/" + cid + "/labels",
            query,
            l -> name(c, l.wanted()) + " " + l.wanted().run());
    model.addAttribute("part", part);
    model.addAttribute(
        "labels", part.shown().stream().map(l -> label(c, l.wanted(), l.batch())).toList());
    model.addAttribute("count", labels.size());
    model.addAttribute(
        "sessions",
        Stream.concat(
                c.plan().stream().map(PlannedRun::session), c.runs().stream().map(Run::session))
            .filter(Objects::nonNull)
            .distinct()
            .sorted()
            .toList());
    model.addAttribute(
        "tests", c.method().tests().stream().filter(t -> t.photos() != null).toList());
    model.addAttribute("session", session);
    model.addAttribute("test", test);
    return "prep/labels";
  }

  /** A run, begun or planned. */
  private record Wanted(String run, String product, TestPlan test, String which, String session) {}

  /** One batch of a run whose label is asked for. */
  private record Asked(Wanted wanted, int batch) {}

  private static String name(Campaign c, Wanted wanted) {
    return c.product(wanted.product()).map(Campaign.Product::name).orElse(wanted.product());
  }

  /** Runs of photographed tests: what was begun has its key; what is planned gets the one to be. */
  private static List<Wanted> wanted(Campaign c) {
    Map<String, Wanted> all = new LinkedHashMap<>();
    Set<String> begun = new HashSet<>();
    for (Run r : c.runs()) {
      begun.add(PlanOrder.key(r.product(), r.test(), r.variant(), r.replicate()));
      add(all, c, r.id(), r.product(), r.test(), which(r), session(r.session()));
    }
    for (PlannedRun p : c.plan()) {
      if (!begun.contains(PlanOrder.key(p.product(), p.test(), p.variant(), p.replicate()))) {
        String key =
            Slug.of(p.test() + "-" + p.product() + "-" + p.replicate(), "run", all::containsKey);
        add(all, c, key, p.product(), p.test(), "run " + p.replicate(), session(p.session()));
      }
    }
    return List.copyOf(all.values());
  }

  /**
   * A trial has a number of its own kind: its label must not be taken for that of a counted run.
   */
  private static String which(Run run) {
    return (run.kind() == Run.Kind.TRIAL ? "trial " : "run ") + run.replicate();
  }

  private static String session(@org.jspecify.annotations.Nullable String session) {
    return Objects.requireNonNullElse(session, "");
  }

  private static void add(
      Map<String, Wanted> all,
      Campaign c,
      String run,
      String product,
      String test,
      String which,
      String session) {
    c.method()
        .test(test)
        .filter(t -> t.photos() != null)
        .ifPresent(t -> all.put(run, new Wanted(run, product, t, which, session)));
  }

  private static Label label(Campaign c, Wanted wanted, int batch) {
    boolean several = wanted.test().batches() > 1;
    RunLabel label = new RunLabel(wanted.run(), several ? Integer.valueOf(batch) : null, null);
    return new Label(
        label.text(),
        name(c, wanted),
        wanted.test().name() + ", " + wanted.which() + (several ? ", batch " + batch : ""),
        QrPicture.svg(label.text()));
  }
}
