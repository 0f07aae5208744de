package ovenproof.editor;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.core.quantity.Rounding;
import ovenproof.desk.Desk;
import ovenproof.desk.Document;
import ovenproof.desk.StaleRevisionException;
import ovenproof.input.InputException;
import ovenproof.method.Criterion;
import ovenproof.method.CurveSpec;
import ovenproof.method.Method;
import ovenproof.method.Starters;
import ovenproof.method.TestPlan;
import ovenproof.method.ValueNode;
import ovenproof.publish.figure.Scores;
import ovenproof.verdict.Verdict;
import ovenproof.web.Choice;
import ovenproof.web.FormProblems;
import ovenproof.web.MethodLook;
import ovenproof.web.PageFields;
import ovenproof.web.Shown;
import ovenproof.web.Who;
import ovenproof.web.Workbench;

/** The page of a method and the one way by which a changed method is looked at and kept. */
final class MethodPage {
  private static final int UNPROCESSABLE = 422;
  private static final int CONFLICT = 409;
  private static final int SHOWN_REVISIONS = 20;
  private static final Pattern LAST_NUMBER = Pattern.compile("(\\d{1,9})(?!.*\\d)");

  private final Desk desk;
  private final Workbench workbench;

  MethodPage(Desk desk, Workbench workbench) {
    this.desk = desk;
    this.workbench = workbench;
  }

  /** A revision with its differences to the one before. */
  public record Revision(
      long number, String when, String who, @Nullable String why, List<String> differences) {}

  /** A test in the form. */
  public record TestRow(
      String id,
      String name,
      int parts,
      int runs,
      List<NodeRow> nodes,
      List<Choice> variants,
      String scored) {}

  /**
   * A criterion or a group of them.
   *
   * @param curve in words; empty for a group
   * @param drawn whether the curve has a page on which its anchors are moved
   */
  public record NodeRow(
      String id, String name, int depth, int parts, String curve, boolean drawn) {}

  /** What a change does to one campaign's verdict. */
  public record Effect(String campaign, List<EffectRow> rows) {}

  /** A product's score and rank, now and then. */
  public record EffectRow(
      String name, String now, String then, String rankNow, String rankThen, String moved) {}

  String show(String cid, PageFields model) {
    Campaign c = workbench.sheet(cid).campaign();
    Document newest = desk.document(cid, Document.METHOD);
    model.put("cid", cid);
    model.put("campaign", c);
    model.put("frozen", !c.countedRuns().isEmpty());
    model.put("text", newest.body());
    model.put("revision", newest.revision());
    model.put("lineProblems", List.of());
    model.put("stale", null);
    model.put("look", null);
    model.put("differences", List.of());
    model.put("tests", c.method().tests().stream().map(MethodPage::row).toList());
    model.put("starters", starters());
    model.put("others", others(c.method()));
    model.put("revisions", revisions(cid, c));
    return "editor/method";
  }

  private static TestRow row(TestPlan t) {
    List<NodeRow> nodes = new ArrayList<>();
    nodes(t.criteria(), 0, nodes);
    return new TestRow(
        t.id(),
        t.name(),
        t.parts(),
        t.replicates(),
        nodes,
        t.variants().stream().map(v -> new Choice(v.id(), v.name())).toList(),
        t.scoredVariant().id());
  }

  private static void nodes(List<ValueNode> values, int depth, List<NodeRow> into) {
    for (ValueNode node : values) {
      String curve = node instanceof Criterion c ? CurveWords.of(c.curve()) : "";
      boolean drawn = node instanceof Criterion c && editable(c.curve());
      into.add(new NodeRow(node.id(), node.name(), depth, node.parts(), curve, drawn));
      if (node instanceof ValueNode.Group group) {
        nodes(group.children(), depth + 1, into);
      }
    }
  }

  private List<Choice> starters() {
    return Starters.names().stream()
        .map(n -> new Choice(n, desk.method(Starters.text(n)).title()))
        .toList();
  }

  /** Tests of the starters that this method does not have. */
  private List<Choice> others(Method method) {
    List<Choice> others = new ArrayList<>();
    for (String starter : Starters.names()) {
      Method theirs = desk.method(Starters.text(starter));
      theirs.tests().stream()
          .filter(t -> method.test(t.id()).isEmpty())
          .forEach(
              t ->
                  others.add(
                      new Choice(starter + "/" + t.id(), t.name() + " (" + theirs.title() + ")")));
    }
    return others;
  }

  private List<Revision> revisions(String cid, Campaign c) {
    List<Document> all = desk.revisions(cid, Document.METHOD);
    List<Revision> revisions = new ArrayList<>();
    for (int i = 0; i < Math.min(SHOWN_REVISIONS, all.size()); i++) {
      Document d = all.get(i);
      List<String> differences =
          i + 1 < all.size()
              ? MethodDifference.between(desk.method(all.get(i + 1).body()), desk.method(d.body()))
              : List.of();
      revisions.add(
          new Revision(
              d.revision(), Shown.time(d.at(), c.info().zone()), d.who(), d.why(), differences));
    }
    return revisions;
  }

  // ---------- looking and keeping ----------

  /**
   * Looks at a changed text, and keeps it if the form says {@code do=keep} and nothing is wrong.
   *
   * @param text as it would be saved
   */
  String decide(
      String cid,
      String text,
      Map<String, String> typed,
      PageFields model,
      HttpServletRequest request,
      HttpServletResponse response) {
    show(cid, model);
    model.put("typed", typed);
    model.put("text", text);
    model.put("revision", typed.getOrDefault("revision", "0"));
    Method then;
    try {
      then = desk.method(text);
    } catch (InputException wrong) {
      model.put("lineProblems", wrong.problems());
      response.setStatus(UNPROCESSABLE);
      return "editor/method";
    }
    if ("keep".equals(typed.get("do"))) {
      FormProblems problems = mayKeep(cid, then, typed);
      if (!problems.any()) {
        return keep(cid, text, then, typed, model, request, response);
      }
      model.put("problems", problems.byField());
      response.setStatus(UNPROCESSABLE);
    }
    look(cid, text, then, model);
    return "editor/method";
  }

  private void look(String cid, String text, Method then, PageFields model) {
    Campaign c = workbench.sheet(cid).campaign();
    model.put("differences", MethodDifference.between(c.method(), then));
    MethodLook look = workbench.look(cid, text, then);
    model.put("look", look.key());
    fill(look, model);
  }

  /** What the effect is, or how far computing it has come. */
  void fill(MethodLook look, PageFields model) {
    boolean ready = look.ready();
    model.put("lookReady", ready);
    model.put("lookDone", look.done());
    model.put("lookTotal", look.total());
    model.put("effects", ready ? effects(look) : List.of());
    model.put("lookProblem", ready ? look.problem().orElse(null) : null);
  }

  private static List<Effect> effects(MethodLook look) {
    List<Effect> effects = new ArrayList<>();
    for (MethodLook.Pair pair : look.pairs()) {
      List<EffectRow> rows = new ArrayList<>();
      for (Verdict.ProductVerdict p : pair.now().products()) {
        pair.then()
            .product(p.id())
            .ifPresent(
                after ->
                    rows.add(
                        new EffectRow(
                            p.name(),
                            Scores.words(p.score()),
                            Scores.words(after.score()),
                            Scores.rank(p.rank()),
                            Scores.rank(after.rank()),
                            moved(p, after))));
      }
      effects.add(new Effect(pair.title(), rows));
    }
    return effects;
  }

  private static String moved(Verdict.ProductVerdict now, Verdict.ProductVerdict then) {
    var before = now.score().value();
    var after = then.score().value();
    if (before == null || after == null) {
      return "–";
    }
    double by = after.doubleValue() - before.doubleValue();
    String sign = by > 0 ? "+" : by < 0 ? "−" : "±";
    return sign + Rounding.HALF_UP.text(Math.abs(by), 1);
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
      Method then,
      Map<String, String> typed,
      PageFields model,
      HttpServletRequest request,
      HttpServletResponse response) {
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
      model.put("stale", stale.current());
      model.put("revision", stale.current().revision());
      look(cid, text, then, model);
      response.setStatus(CONFLICT);
      return "editor/method";
    }
  }

  /** The text with a version of its own, where a frozen method was changed without one. */
  String versioned(String cid, MethodText text) {
    Campaign c = workbench.sheet(cid).campaign();
    if (c.countedRuns().isEmpty()) {
      return text.toString();
    }
    return text.withVersion(next(c.method().version())).toString();
  }

  /** The version with its last number one higher; ".1" behind one without a number. */
  static String next(String version) {
    Matcher number = LAST_NUMBER.matcher(version);
    return number.find()
        ? version.substring(0, number.start())
            + (Long.parseLong(number.group(1)) + 1)
            + version.substring(number.end())
        : version + ".1";
  }

  /** The text of the revision that a form was filled from. */
  MethodText base(String cid, Map<String, String> typed) {
    String revision = typed.getOrDefault("revision", "");
    return MethodText.of(
        (revision.matches("\\d{1,9}")
                ? desk.document(cid, Document.METHOD, Long.parseLong(revision))
                : java.util.Optional.<Document>empty())
            .orElseGet(() -> desk.document(cid, Document.METHOD))
            .body());
  }

  /** A criterion of the newest method. */
  Criterion criterion(Campaign c, String test, String id) {
    return c.method()
        .test(test)
        .flatMap(t -> find(t.criteria(), id))
        .orElseThrow(
            () ->
                new InputException(
                    ovenproof.input.Problem.error(
                        ovenproof.input.Place.of(id),
                        "no such criterion",
                        "a criterion of the method",
                        "")));
  }

  private static java.util.Optional<Criterion> find(List<ValueNode> nodes, String id) {
    for (ValueNode node : nodes) {
      if (node instanceof Criterion c && c.id().equals(id)) {
        return java.util.Optional.of(c);
      } else if (node instanceof ValueNode.Group g) {
        var below = find(g.children(), id);
        if (below.isPresent()) {
          return below;
        }
      }
    }
    return java.util.Optional.empty();
  }

  static boolean editable(CurveSpec curve) {
    return curve instanceof CurveSpec.Points
        || curve instanceof CurveSpec.Window
        || curve instanceof CurveSpec.Steps;
  }
}
