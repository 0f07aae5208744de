package ovenproof.bench;

import jakarta.servlet.http.HttpServletRequest;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Entry;
import ovenproof.campaign.Event;
import ovenproof.campaign.Run;
import ovenproof.desk.Desk;
import ovenproof.desk.EntryKind;
import ovenproof.desk.NewEntry;
import ovenproof.desk.StoredEntry;
import ovenproof.home.RunState;
import ovenproof.method.TestPlan;
import ovenproof.web.Choice;
import ovenproof.web.FormProblems;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Moment;
import ovenproof.web.Rows;
import ovenproof.web.Shown;
import ovenproof.web.Slug;
import ovenproof.web.Workbench;

/** Runs: the list of them, beginning one, doing one again. */
@Controller
class BenchController {
  private static final int MOST_LINES = 100;
  private final Desk desk;
  private final Workbench workbench;
  private final RunPage page;

  BenchController(Desk desk, Workbench workbench) {
    this.desk = desk;
    this.workbench = workbench;
    this.page = new RunPage(desk);
  }

  /** A run in the list. */
  public record RunLine(
      String id,
      String product,
      String test,
      int replicate,
      String started,
      String sign,
      String state) {}

  @GetMapping("/c/{cid}/bench")
  @MayUse(Audience.OWNER)
  String bench(
      @PathVariable String cid,
      @RequestParam(defaultValue = "") String product,
      @RequestParam(defaultValue = "") String test,
      @RequestParam(defaultValue = "") String planned,
      @RequestParam Map<String, String> query,
      Model model) {
    Workbench.Sheet sheet = workbench.sheet(cid);
    Campaign c = sheet.campaign();
    RunState.All states = RunState.all(sheet);
    List<Run> chosen =
        c.runs().stream()
            .filter(r -> product.isEmpty() || r.product().equals(product))
            .filter(r -> test.isEmpty() || r.test().equals(test))
            .toList();
    String productName = c.product(product).map(Campaign.Product::name).orElse("");
    String testName = c.method().test(test).map(TestPlan::name).orElse("");
    String comma = productName.isEmpty() || testName.isEmpty() ? "" : ", ";
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", c);
    model.addAttribute("filter", productName + comma + testName);
    model.addAttribute("product", product);
    model.addAttribute("test", test);
    model.addAttribute("count", chosen.size());
    Rows<RunLine> part =
        Rows.of(
            chosen.stream().map(r -> line(c, r, states.of(r))).toList(),
            MOST_LINES,
            "/c/" + cid + "/bench",
            query,
            r -> r.id() + " " + r.product() + " " + r.test() + " " + r.state());
    model.addAttribute("part", part);
    model.addAttribute("runs", part.shown());
    form(c, product, test, planned, model);
    return "bench/bench";
  }

  private static RunLine line(Campaign c, Run run, RunState state) {
    return new RunLine(
        run.id(),
        c.product(run.product()).map(Campaign.Product::name).orElse(run.product()),
        c.method().test(run.test()).map(TestPlan::name).orElse(run.test()),
        run.replicate(),
        Shown.time(run.started(), c.info().zone()),
        state.sign().svg(),
        state.words());
  }

  /** A new run: filled from the plan, else from what the list is filtered by. */
  private static void form(Campaign c, String product, String test, String planned, Model model) {
    Map<String, String> typed = new HashMap<>();
    typed.put("product", product);
    c.method().test(test).ifPresent(t -> typed.put("which", t.id() + "/" + t.scoredVariant().id()));
    String[] parts = planned.split("/");
    if (parts.length == 4) {
      typed.put("product", parts[0]);
      typed.put("which", parts[1] + "/" + parts[2]);
      typed.put("replicate", parts[3]);
      c.plan().stream()
          .filter(
              p ->
                  planned.equals(
                      p.product() + "/" + p.test() + "/" + p.variant() + "/" + p.replicate()))
          .findFirst()
          .ifPresent(
              p -> {
                typed.put("session", p.session());
                typed.put("bench", p.bench());
              });
    }
    model.addAttribute("typed", typed);
    model.addAttribute("planned", planned);
    model.addAttribute(
        "products", c.products().stream().map(p -> new Choice(p.id(), p.name())).toList());
    model.addAttribute("tests", tests(c));
    model.addAttribute(
        "specimens",
        c.specimens().size() > c.products().size()
            ? c.specimens().stream().map(s -> new Choice(s.id(), s.id())).toList()
            : List.of());
    model.addAttribute(
        "kinds",
        List.of(new Choice("COUNTED", "counted"), new Choice("TRIAL", "trial, never scored")));
  }

  private static List<Choice> tests(Campaign c) {
    return c.method().tests().stream()
        .filter(t -> t.replicates() > 0)
        .flatMap(
            t ->
                t.variants().stream()
                    .map(
                        v ->
                            new Choice(
                                t.id() + "/" + v.id(),
                                t.variants().size() == 1 ? t.name() : t.name() + ", " + v.name())))
        .toList();
  }

  // ---------- beginning ----------

  /** What a run is begun with, before it has a number and a key. */
  private record Begun(
      String product,
      TestPlan test,
      String variant,
      Run.Kind kind,
      @Nullable Integer replicate,
      @Nullable String specimen,
      @Nullable String session,
      @Nullable String bench,
      @Nullable String redoOf,
      @Nullable String cause,
      @Nullable String note) {}

  @PostMapping("/c/{cid}/runs")
  @MayUse(Audience.OWNER)
  String begin(
      @PathVariable String cid,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    Workbench.Sheet sheet = workbench.sheet(cid);
    Campaign c = sheet.campaign();
    String replicate = typed.getOrDefault("replicate", "").strip();
    if (!replicate.isEmpty() && !replicate.matches("[1-9]\\d?")) {
      FormProblems problems = new FormProblems();
      problems.add("replicate", "Found “" + replicate + "”, expected a number from 1 to 99.");
      bench(cid, "", "", "", Map.of(), model);
      model.addAttribute("problems", problems.byField());
      model.addAttribute("typed", typed);
      model.addAttribute("planned", "typed");
      return "bench/bench";
    }
    String product =
        c.product(typed.getOrDefault("product", ""))
            .orElseThrow(() -> Bench.unknown("product"))
            .id();
    String[] which = typed.getOrDefault("which", "").split("/", 2);
    TestPlan test = c.method().test(which[0]).orElseThrow(() -> Bench.unknown("test"));
    String variant = which.length > 1 ? which[1] : test.scoredVariant().id();
    if (test.variants().stream().noneMatch(v -> v.id().equals(variant))) {
      throw Bench.unknown("variant");
    }
    Run.Kind kind = "TRIAL".equals(typed.get("kind")) ? Run.Kind.TRIAL : Run.Kind.COUNTED;
    Begun begun =
        new Begun(
            product,
            test,
            variant,
            kind,
            replicate.isEmpty() ? null : Integer.valueOf(replicate),
            specimen(c, product, Bench.said(typed, "specimen")),
            Bench.said(typed, "session"),
            Bench.said(typed, "bench"),
            null,
            null,
            Bench.said(typed, "note"));
    return begin(cid, sheet, begun, Bench.key(desk, typed), request);
  }

  private static @Nullable String specimen(Campaign c, String product, @Nullable String chosen) {
    List<String> own =
        c.specimens().stream()
            .filter(s -> s.product().equals(product))
            .map(Campaign.Specimen::id)
            .toList();
    return chosen != null && own.contains(chosen) ? chosen : own.stream().findFirst().orElse(null);
  }

  private String begin(
      String cid, Workbench.Sheet sheet, Begun begun, String key, HttpServletRequest request) {
    Optional<StoredEntry> sent =
        sheet.entries().stream().filter(e -> e.key().equals(key + "-r")).findFirst();
    if (sent.isPresent() && sent.get().body() instanceof Run before) {
      return Bench.toRun(cid, before.id());
    }
    NewEntry.Stamp stamp = Moment.of(request, desk.clock().instant());
    Run run = run(sheet, begun, stamp);
    Event start =
        new Event(
            run.id(),
            Event.Type.START,
            0,
            stamp.at(),
            null,
            null,
            null,
            new Entry.Provenance(key + "-s", stamp.who(), stamp.at(), null));
    desk.append(
        cid,
        List.of(
            new NewEntry(key + "-r", EntryKind.RUN, run, stamp, null),
            new NewEntry(key + "-s", EntryKind.EVENT, start, stamp, null)));
    return Bench.toRun(cid, run.id());
  }

  private static Run run(Workbench.Sheet sheet, Begun begun, NewEntry.Stamp stamp) {
    Campaign c = sheet.campaign();
    int replicate = begun.replicate() == null ? free(sheet, begun) : begun.replicate();
    String wanted =
        begun.test().id()
            + "-"
            + begun.product()
            + (begun.kind() == Run.Kind.TRIAL ? "-trial-" : "-")
            + replicate;
    return new Run(
        Slug.of(wanted, "run", taken -> c.run(taken).isPresent()),
        begun.product(),
        begun.specimen(),
        begun.test().id(),
        begun.variant(),
        replicate,
        begun.kind(),
        begun.session(),
        begun.bench(),
        stamp.at(),
        begun.redoOf(),
        begun.cause(),
        begun.cause() == null ? null : stamp.at(),
        stamp.who(),
        begun.note());
  }

  /** The lowest replicate that no run of the kind holds; void and redone runs hold none. */
  private static int free(Workbench.Sheet sheet, Begun begun) {
    RunState.All states = RunState.all(sheet);
    Set<Integer> held = new HashSet<>();
    for (Run r : sheet.campaign().runs()) {
      RunState state = states.of(r);
      boolean same =
          r.product().equals(begun.product())
              && r.test().equals(begun.test().id())
              && r.variant().equals(begun.variant())
              && r.kind() == begun.kind();
      if (same && state != RunState.VOID && state != RunState.REDONE) {
        held.add(r.replicate());
      }
    }
    int replicate = 1;
    while (held.contains(replicate)) {
      replicate++;
    }
    return replicate;
  }

  @PostMapping("/c/{cid}/runs/{id}/redo")
  @MayUse(Audience.OWNER)
  String redo(
      @PathVariable String cid,
      @PathVariable String id,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    Workbench.Sheet sheet = workbench.sheet(cid);
    Run run = Bench.run(sheet.campaign(), id);
    FormProblems problems = new FormProblems();
    String cause =
        problems.need(
            "cause", typed.get("cause"), "the cause, before the results of the new run are seen");
    if (problems.any()) {
      return page.again(sheet, cid, run, typed, problems, model::addAttribute);
    }
    Begun begun =
        new Begun(
            run.product(),
            Bench.test(sheet.campaign(), run),
            run.variant(),
            run.kind(),
            run.replicate(),
            run.specimen(),
            run.session(),
            run.bench(),
            run.id(),
            cause,
            null);
    return begin(cid, sheet, begun, Bench.key(desk, typed), request);
  }
}
