package ovenproof.prep;

import jakarta.servlet.http.HttpServletRequest;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Campaign.NotRun;
import ovenproof.campaign.Campaign.PlannedRun;
import ovenproof.campaign.Run;
import ovenproof.chart.Sign;
import ovenproof.desk.Desk;
import ovenproof.desk.Document;
import ovenproof.desk.Field;
import ovenproof.home.RunState;
import ovenproof.method.TestPlan;
import ovenproof.web.Choice;
import ovenproof.web.FieldDocument;
import ovenproof.web.FormProblems;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Rows;
import ovenproof.web.Who;
import ovenproof.web.Workbench;

/** The plan: runs to be done with their place, and what is not run and why. */
@Controller
class PlanController {
  private static final int AT_ONCE = 60;
  private final Desk desk;
  private final Workbench workbench;
  private final FieldDocument fields;

  PlanController(Desk desk, Workbench workbench, FieldDocument fields) {
    this.desk = desk;
    this.workbench = workbench;
    this.fields = fields;
  }

  /** A planned run; {@code run} is the attempt that did it, or empty. */
  public record Line(
      String key,
      PlannedRun planned,
      String product,
      String test,
      String place,
      String run,
      String sign,
      String state) {}

  /** A test that a product is not put through. */
  public record Excused(String key, String product, String test, String state, String reason) {}

  @GetMapping("/c/{cid}/plan")
  @MayUse(Audience.OWNER)
  String plan(@PathVariable String cid, @RequestParam Map<String, String> query, Model model) {
    Workbench.Sheet sheet = workbench.sheet(cid);
    Campaign c = sheet.campaign();
    List<Line> lines = lines(sheet);
    long open = lines.stream().filter(l -> l.run().isEmpty()).count();
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", c);
    model.addAttribute("revision", desk.document(cid, Document.FIELD).revision());
    model.addAttribute("count", lines.size());
    model.addAttribute("open", open);
    boolean all = "all".equals(query.get("show"));
    model.addAttribute("all", all);
    Rows<Line> part =
        Rows.of(
            lines.stream().filter(l -> all || l.run().isEmpty()).toList(),
            AT_ONCE,
            "/c/" + cid + "/plan",
            query,
            l -> l.product() + " " + l.test() + " " + l.place());
    model.addAttribute("part", part);
    model.addAttribute("lines", part.shown());
    model.addAttribute("excused", excused(c));
    model.addAttribute(
        "asked", PlanOrder.missing(c.method(), c.products(), c.plan(), c.notRun()).size());
    model.addAttribute(
        "products", c.products().stream().map(p -> new Choice(p.id(), p.name())).toList());
    model.addAttribute("tests", variants(c));
    model.addAttribute("states", Choice.of(NotRun.State.values()));
    return "prep/plan";
  }

  private static List<Choice> variants(Campaign c) {
    List<Choice> choices = new ArrayList<>();
    for (TestPlan t : c.method().tests()) {
      for (TestPlan.Variant v : t.variants()) {
        if (t.replicates() > 0) {
          String name = t.variants().size() == 1 ? t.name() : t.name() + ", " + v.name();
          choices.add(new Choice(t.id() + "/" + v.id(), name));
        }
      }
    }
    return choices;
  }

  private static List<Line> lines(Workbench.Sheet sheet) {
    Campaign c = sheet.campaign();
    Map<String, String> products = new HashMap<>();
    c.products().forEach(p -> products.put(p.id(), p.name()));
    Map<String, Run> done = new HashMap<>();
    RunState.All states = RunState.all(sheet);
    for (Run r : c.runs()) {
      RunState state = states.of(r);
      if (state == RunState.COUNTED || state == RunState.RUNNING) {
        done.put(PlanOrder.key(r.product(), r.test(), r.variant(), r.replicate()), r);
      }
    }
    return c.plan().stream()
        .sorted(
            Comparator.comparing((PlannedRun p) -> p.session() == null ? "~" : p.session())
                .thenComparing(PlanOrder::place))
        .map(p -> line(c, p, products, done, states))
        .toList();
  }

  private static Line line(
      Campaign c,
      PlannedRun p,
      Map<String, String> products,
      Map<String, Run> done,
      RunState.All states) {
    String key = PlanOrder.key(p.product(), p.test(), p.variant(), p.replicate());
    Run run = done.get(key);
    String test = c.method().test(p.test()).map(t -> name(t, p.variant())).orElse(p.test());
    List<String> place = new ArrayList<>();
    if (p.session() != null) {
      place.add(p.session());
    }
    if (p.bench() != null) {
      place.add("bench " + p.bench());
    }
    return new Line(
        key,
        p,
        products.getOrDefault(p.product(), p.product()),
        test,
        place.isEmpty() ? "–" : String.join(", ", place),
        run == null ? "" : run.id(),
        (run == null ? Sign.EMPTY : states.of(run).sign()).svg(),
        run == null ? "to do" : states.of(run).words());
  }

  private static String name(TestPlan test, String variant) {
    return test.variants().size() == 1
        ? test.name()
        : test.name()
            + ", "
            + test.variants().stream()
                .filter(v -> v.id().equals(variant))
                .map(TestPlan.Variant::name)
                .findFirst()
                .orElse(variant);
  }

  private static List<Excused> excused(Campaign c) {
    List<Excused> excused = new ArrayList<>();
    for (NotRun n : c.notRun()) {
      excused.add(
          new Excused(
              key(n),
              c.product(n.product()).map(Campaign.Product::name).orElse(n.product()),
              c.method().test(n.test()).map(TestPlan::name).orElse(n.test()),
              Choice.words(n.state()),
              n.reason()));
    }
    return excused;
  }

  private static String key(NotRun n) {
    return n.product() + "/" + n.test() + "/" + Objects.requireNonNullElse(n.variant(), "");
  }

  // ---------- changes ----------

  @PostMapping("/c/{cid}/plan/all")
  @MayUse(Audience.OWNER)
  String planAll(
      @PathVariable String cid,
      @RequestParam Map<String, String> typed,
      HttpServletRequest request) {
    Campaign c = workbench.sheet(cid).campaign();
    fields.change(
        cid,
        typed,
        FieldDocument.ADDS,
        f -> {
          List<PlannedRun> plan = new ArrayList<>(f.plan());
          plan.addAll(PlanOrder.missing(c.method(), f.products(), f.plan(), f.notRun()));
          return f.withPlan(plan);
        },
        Who.of(request).word(),
        "planned what the method asks");
    return back(cid);
  }

  @PostMapping("/c/{cid}/plan")
  @MayUse(Audience.OWNER)
  String add(
      @PathVariable String cid,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    Campaign c = workbench.sheet(cid).campaign();
    FormProblems problems = new FormProblems();
    String[] test = chosen(c, typed, "test", problems);
    String product = product(c, typed, "product", problems);
    String number = problems.need("replicate", typed.get("replicate"), "a number from 1 to 99");
    if (!number.isEmpty() && !number.matches("[1-9]\\d?")) {
      problems.add("replicate", "Found “" + number + "”, expected a number from 1 to 99.");
    }
    if (!problems.any()) {
      int replicate = Integer.parseInt(number);
      String key = PlanOrder.key(product, test[0], test[1], replicate);
      boolean there = c.plan().stream().anyMatch(p -> key(p).equals(key));
      if (there) {
        problems.add("replicate", "That run is planned already.");
      } else {
        fields.change(
            cid,
            typed,
            FieldDocument.ADDS,
            f -> f.withPlan(Field.plus(f.plan(), planned(f, product, test, replicate, typed))),
            Who.of(request).word(),
            "planned " + key);
      }
    }
    return problems.any() ? again(cid, typed, problems, model) : back(cid);
  }

  private static PlannedRun planned(
      Field f, String product, String[] test, int replicate, Map<String, String> typed) {
    int last = f.plan().stream().mapToInt(PlanOrder::place).max().orElse(0);
    return new PlannedRun(
        product,
        test[0],
        test[1],
        replicate,
        said(typed, "session"),
        said(typed, "bench"),
        last + 1);
  }

  private static String key(PlannedRun p) {
    return PlanOrder.key(p.product(), p.test(), p.variant(), p.replicate());
  }

  @PostMapping("/c/{cid}/plan/move")
  @MayUse(Audience.OWNER)
  String move(
      @PathVariable String cid,
      @RequestParam Map<String, String> typed,
      HttpServletRequest request) {
    String key = typed.getOrDefault("planned", "");
    String where = typed.getOrDefault("do", "");
    fields.change(
        cid,
        typed,
        FieldDocument.ADDS,
        f ->
            f.withPlan(where.equals("drop") ? without(f.plan(), key) : moved(f.plan(), key, where)),
        Who.of(request).word(),
        (where.equals("drop") ? "no longer planned: " : "moved in the plan: ") + key);
    return back(cid);
  }

  private static List<PlannedRun> without(List<PlannedRun> plan, String key) {
    return plan.stream().filter(p -> !key(p).equals(key)).toList();
  }

  /** Swaps places with the neighbour in the same session. */
  private static List<PlannedRun> moved(List<PlannedRun> plan, String key, String where) {
    List<PlannedRun> sorted = new ArrayList<>(plan);
    sorted.sort(
        Comparator.comparing((PlannedRun p) -> p.session() == null ? "~" : p.session())
            .thenComparing(PlanOrder::place));
    int at =
        IntStream.range(0, sorted.size())
            .filter(i -> key(sorted.get(i)).equals(key))
            .findFirst()
            .orElse(-1);
    int other = where.equals("later") ? at + 1 : at - 1;
    boolean stays =
        at < 0
            || other < 0
            || other >= sorted.size()
            || !Objects.equals(sorted.get(at).session(), sorted.get(other).session());
    if (stays) {
      return plan;
    }
    java.util.Collections.swap(sorted, at, other);
    List<PlannedRun> numbered = new ArrayList<>();
    for (PlannedRun p : sorted) {
      numbered.add(
          new PlannedRun(
              p.product(),
              p.test(),
              p.variant(),
              p.replicate(),
              p.session(),
              p.bench(),
              numbered.size() + 1));
    }
    return numbered;
  }

  @PostMapping("/c/{cid}/not-run")
  @MayUse(Audience.OWNER)
  String notRun(
      @PathVariable String cid,
      @RequestParam Map<String, String> typed,
      Model model,
      HttpServletRequest request) {
    Campaign c = workbench.sheet(cid).campaign();
    FormProblems problems = new FormProblems();
    String[] test = chosen(c, typed, "which", problems);
    String product = product(c, typed, "of", problems);
    String reason = problems.need("reason", typed.get("reason"), "why it is not run");
    NotRun.State state =
        List.of(NotRun.State.values()).stream()
            .filter(s -> s.name().equals(typed.get("state")))
            .findFirst()
            .orElse(null);
    if (state == null) {
      problems.add("state", "Choose which of the three it is.");
    }
    if (!problems.any() && counted(c, product, test[0])) {
      problems.add(
          "which",
          "It has counted runs of this product. Void those by a class 3 deviation first, or leave"
              + " it.");
    }
    if (problems.any() || state == null) {
      return again(cid, typed, problems, model);
    }
    TestPlan plan = c.method().test(test[0]).orElseThrow();
    NotRun added =
        new NotRun(product, test[0], plan.variants().size() == 1 ? null : test[1], state, reason);
    fields.change(
        cid,
        typed,
        FieldDocument.ADDS,
        f -> {
          List<NotRun> others =
              f.notRun().stream().filter(n -> !key(n).equals(key(added))).toList();
          return f.withNotRun(Field.plus(others, added));
        },
        Who.of(request).word(),
        "not run: " + product + ", " + test[0] + ": " + reason);
    return back(cid);
  }

  private static boolean counted(Campaign c, String product, String test) {
    return c.countedRuns().stream()
        .anyMatch(r -> r.product().equals(product) && r.test().equals(test));
  }

  @PostMapping("/c/{cid}/not-run/drop")
  @MayUse(Audience.OWNER)
  String runAfterAll(
      @PathVariable String cid,
      @RequestParam Map<String, String> typed,
      HttpServletRequest request) {
    String key = typed.getOrDefault("excused", "");
    fields.change(
        cid,
        typed,
        FieldDocument.ADDS,
        f -> f.withNotRun(f.notRun().stream().filter(n -> !key(n).equals(key)).toList()),
        Who.of(request).word(),
        "to be run after all: " + key);
    return back(cid);
  }

  // ---------- shared ----------

  private static String[] chosen(
      Campaign c, Map<String, String> typed, String field, FormProblems problems) {
    String value = typed.getOrDefault(field, "");
    if (variants(c).stream().noneMatch(v -> v.id().equals(value))) {
      problems.add(field, "Choose one of the tests.");
      return new String[] {"", ""};
    }
    return value.split("/", 2);
  }

  private static String product(
      Campaign c, Map<String, String> typed, String field, FormProblems problems) {
    String value = typed.getOrDefault(field, "");
    if (c.product(value).isEmpty()) {
      problems.add(field, "Choose one of the products.");
    }
    return value;
  }

  private static @Nullable String said(Map<String, String> typed, String field) {
    String text = typed.getOrDefault(field, "").strip();
    return text.isEmpty() ? null : text;
  }

  private String again(String cid, Map<String, String> typed, FormProblems problems, Model model) {
    plan(cid, Map.of(), model);
    model.addAttribute("typed", typed);
    model.addAttribute("problems", problems.byField());
    return "prep/plan";
  }

  private static String back(String cid) {
    return "redirect:/c/" + cid + "/plan";
  }
}
