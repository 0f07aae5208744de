package ovenproof.ranking;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Run;
import ovenproof.chart.ControlChart;
import ovenproof.chart.ScoreChart;
import ovenproof.desk.Desk;
import ovenproof.desk.Document;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.method.Method;
import ovenproof.publish.figure.Scores;
import ovenproof.verdict.CampaignViews;
import ovenproof.verdict.Verdict;
import ovenproof.verdict.Verdict.Node;
import ovenproof.verdict.Verdict.ProductVerdict;
import ovenproof.verdict.VerdictService.Scored;
import ovenproof.verdict.question.QuestionAnswer;
import ovenproof.verdict.question.ReferenceChart;
import ovenproof.verdict.question.VerdictQuestions;
import ovenproof.verdict.question.YearsQuestions;
import ovenproof.web.MayUse;
import ovenproof.web.MayUse.Audience;
import ovenproof.web.Shown;
import ovenproof.web.WaitingPage;
import ovenproof.web.Workbench;

/** The questions a lead asks of a verdict, two products side by side, and the years. */
@Controller
class QuestionsController {
  private final Workbench workbench;
  private final Desk desk;

  QuestionsController(Workbench workbench, Desk desk) {
    this.workbench = workbench;
    this.desk = desk;
  }

  /** A product to choose. */
  public record Choice(String id, String name) {}

  /** One test of two products. */
  public record Pair(
      String test,
      String parts,
      String first,
      String firstLane,
      String second,
      String secondLane) {}

  /** A chart of the reference appliance. */
  public record Charted(String name, String svg) {}

  @GetMapping("/c/{cid}/verdict/questions")
  @MayUse(Audience.OWNER)
  String questions(@PathVariable String cid, Model model) {
    Workbench.Sheet sheet = sheet(cid, model);
    model.addAttribute("choices", choices(sheet));
    model.addAttribute(
        "tests",
        sheet.campaign().method().tests().stream().map(t -> new Choice(t.id(), t.name())).toList());
    return "ranking/questions";
  }

  @GetMapping("/c/{cid}/verdict/questions/{question}")
  @MayUse(Audience.OWNER)
  String answer(
      @PathVariable String cid,
      @PathVariable String question,
      @RequestParam Map<String, String> query,
      Model model) {
    Workbench.Sheet sheet = sheet(cid, model);
    if (!sheet.ready() || !sheet.scored()) {
      return WaitingPage.show(sheet, "Verdict", model::addAttribute);
    }
    Optional<Scored> scored = sheet.basis();
    if (scored.isEmpty()) {
      throw refused("a campaign without a verdict", "a product, a test and a run");
    }
    Map<String, String> asked = new TreeMap<>(query);
    VerdictQuestions questions = new VerdictQuestions(sheet.campaign(), scored.get(), 2);
    Optional<QuestionAnswer> answer =
        sheet
            .derived(Thinking.class, c -> new Thinking())
            .answer(
                question + asked + versionsOfOthers(question),
                work(sheet, questions, question, asked));
    model.addAttribute("answer", answer.orElse(null));
    model.addAttribute("query", address(query));
    return "ranking/answer";
  }

  /** What looks into other campaigns is asked afresh when one of them changed. */
  private String versionsOfOthers(String question) {
    return question.equals("under")
        ? desk.campaigns().stream()
            .map(c -> c.id() + "@" + c.version())
            .collect(Collectors.joining(" "))
        : "";
  }

  /** The particulars as they stand in an address. */
  private static String address(Map<String, String> query) {
    return query.entrySet().stream()
        .map(
            e ->
                URLEncoder.encode(e.getKey(), StandardCharsets.UTF_8)
                    + "="
                    + URLEncoder.encode(e.getValue(), StandardCharsets.UTF_8))
        .collect(Collectors.joining("&"));
  }

  private Supplier<QuestionAnswer> work(
      Workbench.Sheet sheet,
      VerdictQuestions questions,
      String question,
      Map<String, String> query) {
    return switch (question) {
      case "unseat" -> questions::unseat;
      case "acceptability" -> () -> questions.acceptability(30);
      case "drop-test" -> questions::dropTests;
      case "drop-run" -> questions::dropRuns;
      case "drop-assessor" -> () -> questions.dropAssessors(sheet::measure);
      case "worth" -> questions::worth;
      case "value" -> questions::value;
      case "profiles" -> questions::profiles;
      case "own-scatter" -> questions::spread;
      case "under" -> () -> under(sheet, need(query, "of"), need(query, "version"));
      case "why" -> () -> questions.why(need(query, "a"), need(query, "b"));
      case "more-runs" -> () -> questions.moreRuns(need(query, "a"), need(query, "b"));
      case "suited" -> () -> questions.suited(rules(query));
      case "withdrawn" -> () -> questions.withdrawn(need(query, "product"));
      case "prices" -> () -> questions.prices(day(need(query, "day")));
      case "since" -> () -> since(sheet, questions, need(query, "day"));
      default -> throw refused("no question \"" + question + "\"", "one of the questions page");
    };
  }

  private static String need(Map<String, String> query, String name) {
    String value = query.getOrDefault(name, "").strip();
    if (value.isEmpty()) {
      throw refused("nothing chosen for " + name, "a choice");
    }
    return value;
  }

  /** Rules as typed, or a test and what is asked of it. */
  private static List<String> rules(Map<String, String> query) {
    List<String> rules = new ArrayList<>();
    query.forEach(
        (name, value) -> {
          if (name.startsWith("t.") && !value.isBlank()) {
            String test = name.substring(2);
            rules.add(value.equals("first-tier") ? test + ":first-tier" : test + ">=" + value);
          }
        });
    if (query.containsKey("no-gate")) {
      rules.add("no-gate");
    }
    if (rules.isEmpty()) {
      throw refused("no rule", "at least one test with what is asked of it");
    }
    return rules;
  }

  private static QuestionAnswer since(
      Workbench.Sheet sheet, VerdictQuestions questions, String day) {
    LocalDate date = day(day);
    return questions.moved(VerdictQuestions.asOf(sheet.campaign(), date, sheet::measure), day);
  }

  private static LocalDate day(String day) {
    try {
      return LocalDate.parse(day);
    } catch (DateTimeParseException e) {
      throw refused("the day " + day, "a day such as 2026-03-02");
    }
  }

  // ---------- another method version ----------

  /** What a method version that this desk holds would move in a campaign. */
  private QuestionAnswer under(Workbench.Sheet sheet, String of, String version) {
    Workbench.Sheet chosen =
        sheets(sheet).stream()
            .filter(s -> s.at().id().equals(of))
            .findFirst()
            .orElseThrow(() -> refused("no campaign " + of, "one by the same method"));
    Method method = versions(sheet).get(version);
    if (method == null) {
      throw refused("method version " + version, "one that this desk holds");
    }
    Campaign under = desk.loadWith(of, method);
    return YearsQuestions.rescored(
        chosen.campaign(),
        chosen.basis().orElseThrow(() -> refused("nothing scored there", "a verdict")),
        under,
        chosen.score(under),
        2);
  }

  /** This campaign and every other by the same method, in the order in which they were cooked. */
  private List<Workbench.Sheet> sheets(Workbench.Sheet sheet) {
    List<Workbench.Sheet> sheets = new ArrayList<>(workbench.others(sheet.at().id()));
    sheets.removeIf(o -> !o.campaign().method().id().equals(sheet.campaign().method().id()));
    sheets.add(sheet);
    sheets.sort(Comparator.comparing(s -> begun(s.campaign())));
    return sheets;
  }

  private static Instant begun(Campaign campaign) {
    return campaign.runs().stream()
        .map(Run::started)
        .filter(Objects::nonNull)
        .min(Comparator.naturalOrder())
        .orElse(Instant.MAX);
  }

  /** Every version of the method that the desk holds, by its number; this campaign's own first. */
  private Map<String, Method> versions(Workbench.Sheet sheet) {
    Map<String, Method> versions = new LinkedHashMap<>();
    versions.put(sheet.campaign().method().version(), sheet.campaign().method());
    sheets(sheet)
        .forEach(s -> versions.putIfAbsent(s.campaign().method().version(), s.campaign().method()));
    for (Document revision : desk.revisions(sheet.at().id(), Document.METHOD)) {
      Method method = desk.method(revision.body());
      versions.putIfAbsent(method.version(), method);
    }
    return versions;
  }

  private static InputException refused(String found, String expected) {
    return new InputException(Problem.error(Place.of("questions"), found, expected, ""));
  }

  // ---------- two products ----------

  @GetMapping("/c/{cid}/verdict/compare")
  @MayUse(Audience.OWNER)
  String compare(
      @PathVariable String cid,
      @RequestParam(required = false) @Nullable String a,
      @RequestParam(required = false) @Nullable String b,
      Model model) {
    Workbench.Sheet sheet = sheet(cid, model);
    if (!sheet.ready() || !sheet.scored()) {
      return WaitingPage.show(sheet, "Verdict", model::addAttribute);
    }
    model.addAttribute("choices", choices(sheet));
    List<ProductVerdict> products = sheet.verdict().map(Verdict::products).orElse(List.of());
    boolean enough = products.size() >= 2;
    model.addAttribute("enough", enough);
    if (enough) {
      ProductVerdict first = chosen(products, a, 0);
      ProductVerdict second = chosen(products, b, 1);
      model.addAttribute("first", first);
      model.addAttribute("second", second);
      model.addAttribute("axis", ScoreChart.axis());
      model.addAttribute("pairs", pairs(first, second));
      model.addAttribute("lines", lines(first, second));
      model.addAttribute("told", List.of(told(sheet, first), told(sheet, second)));
      VerdictQuestions questions =
          new VerdictQuestions(sheet.campaign(), sheet.basis().orElseThrow(), 2);
      model.addAttribute("answer", questions.why(first.id(), second.id()));
    }
    return "ranking/compare";
  }

  /** One criterion of two products: points and what was measured. */
  public record Line(
      String name, String first, String firstMeasured, String second, String secondMeasured) {}

  /** What is said of a product beside its scores. */
  public record Told(String name, String place, String price, List<String> limits) {}

  private static List<Line> lines(ProductVerdict first, ProductVerdict second) {
    List<Line> lines = new ArrayList<>();
    for (Node test : first.tests()) {
      second.test(test.id()).ifPresent(other -> lines(test.name(), test, other, lines));
    }
    return lines;
  }

  private static void lines(String above, Node one, Node other, List<Line> lines) {
    Map<String, Node> others = new LinkedHashMap<>();
    other.children().forEach(n -> others.put(n.id(), n));
    for (Node child : one.children()) {
      Node beside = others.get(child.id());
      if (beside != null && child.children().isEmpty()) {
        lines.add(
            new Line(
                above + ", " + child.name(),
                Scores.words(child.score()),
                measured(child),
                Scores.words(beside.score()),
                measured(beside)));
      } else if (beside != null) {
        lines(above + ", " + child.name(), child, beside, lines);
      }
    }
  }

  private static String measured(Node node) {
    return node.measurement() == null ? "–" : Shown.measurement(node.measurement());
  }

  private static Told told(Workbench.Sheet sheet, ProductVerdict p) {
    List<String> limits = new ArrayList<>();
    p.gates().stream()
        .filter(g -> g.state() != Verdict.GateOutcome.State.PASSED)
        .forEach(g -> limits.add(g.words()));
    p.missing().forEach(m -> limits.add("missing: " + m));
    String place =
        p.tier() == null ? "unranked" : "place " + Scores.rank(p.rank()) + ", tier " + p.tier();
    return new Told(p.name(), place, RankingTables.price(sheet.campaign(), p.id()), limits);
  }

  private static ProductVerdict chosen(
      List<ProductVerdict> products, @Nullable String id, int otherwise) {
    return products.stream()
        .filter(p -> p.id().equals(id))
        .findFirst()
        .orElse(products.get(otherwise));
  }

  private static List<Pair> pairs(ProductVerdict first, ProductVerdict second) {
    List<Pair> pairs = new ArrayList<>();
    pairs.add(pair("Total", "", first, first.score(), second, second.score()));
    for (Node test : first.tests()) {
      Optional<Node> other = second.test(test.id());
      String parts = test.parts() + (test.parts() == 1 ? " part" : " parts");
      other.ifPresent(
          o -> pairs.add(pair(test.name(), parts, first, test.score(), second, o.score())));
    }
    return pairs;
  }

  private static Pair pair(
      String name,
      String parts,
      ProductVerdict first,
      Verdict.Score firstScore,
      ProductVerdict second,
      Verdict.Score secondScore) {
    return new Pair(
        name,
        parts,
        Scores.words(firstScore),
        ScoreChart.lane(
            first.name() + ", " + name + ": " + Scores.sentence(firstScore),
            Scores.tray(firstScore),
            null),
        Scores.words(secondScore),
        ScoreChart.lane(
            second.name() + ", " + name + ": " + Scores.sentence(secondScore),
            Scores.tray(secondScore),
            null));
  }

  // ---------- over the years ----------

  @GetMapping("/c/{cid}/verdict/years")
  @MayUse(Audience.OWNER)
  String years(
      @PathVariable String cid,
      @RequestParam(required = false) @Nullable String reference,
      @RequestParam(required = false) @Nullable String bridge,
      Model model) {
    Workbench.Sheet sheet = sheet(cid, model);
    if (!sheet.ready() || !sheet.scored()) {
      return WaitingPage.show(sheet, "Verdict", model::addAttribute);
    }
    model.addAttribute("choices", choices(sheet));
    List<Workbench.Sheet> others = workbench.others(cid);
    model.addAttribute(
        "campaigns",
        others.stream().map(o -> new Choice(o.at().id(), o.campaign().info().title())).toList());
    model.addAttribute("reference", reference);
    if (reference != null && !reference.isBlank()) {
      charts(sheet, others, reference, model);
    }
    if (bridge != null && !bridge.isBlank()) {
      Workbench.Sheet earlier =
          others.stream()
              .filter(o -> o.at().id().equals(bridge))
              .findFirst()
              .orElseThrow(() -> refused("no campaign " + bridge, "one of this desk"));
      model.addAttribute(
          "bridge",
          YearsQuestions.bridge(
              earlier.basis().orElseThrow(() -> refused("nothing scored there", "a verdict")),
              sheet.basis().orElseThrow(() -> refused("nothing scored here", "a verdict")),
              earlier.campaign().info().title()));
    }
    model.addAttribute("later", later(sheet));
    model.addAttribute(
        "sameMethod",
        sheets(sheet).stream()
            .map(o -> new Choice(o.at().id(), o.campaign().info().title()))
            .toList());
    model.addAttribute("versions", versions(sheet).keySet());
    return "ranking/years";
  }

  private static void charts(
      Workbench.Sheet sheet, List<Workbench.Sheet> others, String reference, Model model) {
    List<ReferenceChart.Season> seasons = new ArrayList<>();
    List<Workbench.Sheet> inOrder = new ArrayList<>(others);
    inOrder.sort(Comparator.comparing(o -> begun(o.campaign())));
    Instant now = begun(sheet.campaign());
    for (Workbench.Sheet other : inOrder) {
      boolean cooked = other.campaign().products().stream().anyMatch(p -> p.id().equals(reference));
      if (cooked && begun(other.campaign()).isBefore(now)) {
        seasons.add(new ReferenceChart.Season(other.campaign(), other.measured()));
      }
    }
    seasons.add(new ReferenceChart.Season(sheet.campaign(), sheet.measured()));
    model.addAttribute("answer", YearsQuestions.reference(seasons, reference));
    List<Charted> charts = new ArrayList<>();
    for (ReferenceChart chart : ReferenceChart.of(seasons, reference)) {
      charts.add(new Charted(chart.label(), picture(chart)));
    }
    model.addAttribute("charts", charts);
  }

  private static String picture(ReferenceChart chart) {
    String[] names =
        chart.sessions().stream().map(ReferenceChart.Session::name).toArray(String[]::new);
    double[] z = chart.points().stream().mapToDouble(p -> p.z()).toArray();
    double[] ewma = chart.points().stream().mapToDouble(p -> p.ewma()).toArray();
    double[] limits = chart.points().stream().mapToDouble(p -> p.ewmaLimit()).toArray();
    return new ControlChart(chart.label(), names, z, ewma, limits).svg();
  }

  private static @Nullable QuestionAnswer later(Workbench.Sheet sheet) {
    return YearsQuestions.publication(sheet.campaign())
        .filter(moment -> !YearsQuestions.onlyAfter(sheet.campaign(), moment).isEmpty())
        .map(
            moment ->
                YearsQuestions.later(
                    sheet.score(CampaignViews.asOf(sheet.campaign(), moment)),
                    sheet.score(CampaignViews.startedAfter(sheet.campaign(), moment))))
        .orElse(null);
  }

  // ---------- shared ----------

  private Workbench.Sheet sheet(String cid, Model model) {
    Workbench.Sheet sheet = workbench.sheet(cid);
    model.addAttribute("cid", cid);
    model.addAttribute("campaign", sheet.campaign());
    return sheet;
  }

  private static List<Choice> choices(Workbench.Sheet sheet) {
    return sheet.campaign().products().stream().map(p -> new Choice(p.id(), p.name())).toList();
  }
}
