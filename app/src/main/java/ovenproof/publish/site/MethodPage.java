package ovenproof.publish.site;

import static j2html.TagCreator.a;
import static j2html.TagCreator.caption;
import static j2html.TagCreator.div;
import static j2html.TagCreator.each;
import static j2html.TagCreator.h3;
import static j2html.TagCreator.join;
import static j2html.TagCreator.li;
import static j2html.TagCreator.ol;
import static j2html.TagCreator.p;
import static j2html.TagCreator.rawHtml;
import static j2html.TagCreator.table;
import static j2html.TagCreator.tbody;
import static j2html.TagCreator.td;
import static j2html.TagCreator.th;
import static j2html.TagCreator.thead;
import static j2html.TagCreator.tr;

import j2html.tags.DomContent;
import j2html.tags.specialized.TrTag;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import ovenproof.method.Criterion;
import ovenproof.method.Gate;
import ovenproof.method.Method;
import ovenproof.method.TestPlan;
import ovenproof.method.TestPlan.PanelMark;
import ovenproof.method.ValueNode;

/** What was decided before anything was seen. */
final class MethodPage {
  private final View view;
  private final Method method;

  MethodPage(View view) {
    this.view = view;
    this.method = view.edition().campaign().method();
  }

  Page page() {
    List<DomContent> parts = new ArrayList<>();
    parts.add(weights());
    for (TestPlan test : method.tests()) {
      parts.add(test(test));
    }
    if (!method.ratedFacts().isEmpty()) {
      parts.add(rated());
    }
    if (!method.features().isEmpty()) {
      parts.add(features());
    }
    parts.add(numbers());
    parts.add(instruments());
    parts.add(
        Elements.part(
            "cautions", "Heat, mains and raw food can hurt", List.of(), Cautions.usual()));
    return new Page(
        SiteAddresses.METHOD,
        method.title() + ": " + method.tests().size() + " tests, weighed before anything was seen",
        List.of(
            p(
                "Method "
                    + method.id()
                    + ", version "
                    + method.version()
                    + ". Made for: "
                    + method.population()
                    + "."),
            Elements.maybe(method.why())),
        parts,
        null);
  }

  private DomContent weights() {
    return Elements.part(
        "weights",
        "What weighs how much",
        List.of(
            "Weights are whole parts. "
                + "The total is a "
                + MethodWords.combine(method.scoring().combine())
                + "."),
        table(
            thead(Elements.columns("Test", ">Parts", "Why")),
            tbody(
                each(
                    method.tests(),
                    t ->
                        tr(
                            th(a(t.name()).withHref(view.addresses().test(t.id())))
                                .attr("scope", "row"),
                            Elements.figure(Integer.toString(t.parts())),
                            td(Objects.requireNonNullElse(t.why(), "")))))),
        profiles());
  }

  private DomContent profiles() {
    return method.profiles().isEmpty()
        ? rawHtml("")
        : table(
            caption("Other readers, other weights"),
            thead(Elements.columns("Reader", "Parts")),
            tbody(
                each(
                    method.profiles(),
                    profile ->
                        tr(
                            th(profile.name()).attr("scope", "row"),
                            td(
                                method.tests().stream()
                                    .map(
                                        t ->
                                            t.name()
                                                + " "
                                                + profile.parts().getOrDefault(t.id(), t.parts()))
                                    .reduce((x, y) -> x + ", " + y)
                                    .orElse(""))))));
  }

  private DomContent test(TestPlan test) {
    List<TrTag> rows = new ArrayList<>();
    criteria(test, test.criteria(), 0, rows);
    DomContent criteria =
        rows.isEmpty()
            ? rawHtml("")
            : Elements.wide(
                "Criteria of " + test.name(),
                table(
                    caption("Criteria: " + MethodWords.combine(test.combine())),
                    thead(
                        Elements.columns(
                            "Criterion", ">Parts", "From measurement to points", "Why")),
                    tbody(each(rows, r -> r))));
    return Elements.part(
        view.addresses().name("method", test.id()),
        test.name(),
        test.why() == null ? List.of() : List.of(test.why()),
        MethodWords.how(test),
        criteria,
        gates(test.gates()),
        marks(test.marks()),
        Cautions.of(test));
  }

  private void criteria(TestPlan test, List<ValueNode> nodes, int depth, List<TrTag> rows) {
    for (ValueNode node : nodes) {
      rows.add(
          tr(
              th(node.name()).attr("scope", "row").withClass("depth-" + Math.min(depth, 3)),
              Elements.figure(Integer.toString(node.parts())),
              td(worth(test, node)),
              td(Objects.requireNonNullElse(node.why(), ""))));
      if (node instanceof ValueNode.Group group) {
        criteria(test, group.children(), depth + 1, rows);
      }
    }
  }

  private static String worth(TestPlan test, ValueNode node) {
    if (node instanceof Criterion criterion) {
      return CurveWords.of(test, criterion);
    }
    return node instanceof ValueNode.Group group ? MethodWords.combine(group.combine()) : "";
  }

  private static DomContent gates(List<Gate> gates) {
    return gates.isEmpty()
        ? rawHtml("")
        : div(h3("Limits"), Elements.bullets(gates.stream().map(MethodWords::gate).toList()));
  }

  private static DomContent marks(List<PanelMark> marks) {
    return marks.isEmpty()
        ? rawHtml("")
        : div(
            h3("Marks of the panel"),
            each(
                marks,
                mark ->
                    join(
                        p(mark.name() + ": " + (int) mark.lowest() + " to " + (int) mark.highest()),
                        Elements.bullets(
                            mark.anchors().stream()
                                .map(a -> Math.round(a.point()) + ": " + a.means())
                                .toList()))));
  }

  private DomContent rated() {
    return Elements.part(
        "rated",
        "Rated facts",
        List.of("Two people choose a step independently; the mean counts."),
        div(
            each(
                method.ratedFacts(),
                fact ->
                    div(
                        h3(fact.name()),
                        ol(each(fact.steps(), s -> li(s)))
                            .attr("start", "0")
                            .withClass("steps")))));
  }

  private DomContent features() {
    return Elements.part(
        "features",
        "The checklist",
        List.of("Looked for on every product. What nobody looked at is not a no."),
        Elements.wide(
            "Features that are looked for",
            table(
                thead(Elements.columns("Feature", "Group", ">Parts", "Why")),
                tbody(
                    each(
                        method.features(),
                        f ->
                            tr(
                                th(f.name()).attr("scope", "row"),
                                td(f.group() == null ? "" : f.group()),
                                Elements.figure(
                                    f.parts() == 0 ? "listed only" : Integer.toString(f.parts())),
                                td(f.why() == null ? "" : f.why()).withClass("small quiet")))))));
  }

  private DomContent numbers() {
    return Elements.part(
        "numbers",
        "How to read the numbers",
        List.of(),
        Elements.bullets(
            List.of(
                "A score runs from 0 to 10. Its interval holds the score of these appliances with"
                    + " 90 % confidence; a measurement’s ± is one standard uncertainty.",
                "Totals follow from the printed sub-scores, level by level, rounded half up.",
                "Tiers come from one margin for all pairs at once; two products of one tier are not"
                    + " shown to differ, nor to be equal.",
                "Runs that ended at their cap are bounds, not values.",
                "Both unit systems come from the stored value and are rounded once, last: degrees"
                    + " whole, masses and lengths to about three figures. A difference of"
                    + " temperatures is in K (1 K = 1.8 °F); nothing is added to it.",
                "Temperatures that food must reach are floors and are rounded up in both systems;"
                    + " highest allowed values are rounded down.",
                view.edition().verdict().draws()
                    + " draws, seed "
                    + view.edition().verdict().seed()
                    + ": anyone gets the same numbers from the same data.")));
  }

  private DomContent instruments() {
    var instruments = view.edition().campaign().instruments();
    return instruments.isEmpty()
        ? rawHtml("")
        : Elements.part(
            "instruments",
            "Measured with",
            List.of(
                "An error of calibration is shared by everything measured with the instrument."),
            Elements.wide(
                "Instruments",
                table(
                    thead(Elements.columns("Instrument", "Kind", "Last check", "Correction ± u")),
                    tbody(each(instruments, i -> InstrumentWords.row(view, i))))));
  }
}
