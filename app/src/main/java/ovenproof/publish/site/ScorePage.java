package ovenproof.publish.site;

import static j2html.TagCreator.a;
import static j2html.TagCreator.div;
import static j2html.TagCreator.each;
import static j2html.TagCreator.figcaption;
import static j2html.TagCreator.figure;
import static j2html.TagCreator.h3;
import static j2html.TagCreator.p;
import static j2html.TagCreator.rawHtml;
import static j2html.TagCreator.table;
import static j2html.TagCreator.tbody;
import static j2html.TagCreator.td;
import static j2html.TagCreator.th;
import static j2html.TagCreator.thead;
import static j2html.TagCreator.tr;

import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import ovenproof.chart.ScoreChart;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.Measurement;
import ovenproof.measure.Measured.Counts;
import ovenproof.measure.Measured.Value;
import ovenproof.method.Criterion;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan;
import ovenproof.method.ValueNode;
import ovenproof.publish.figure.Figures;
import ovenproof.publish.figure.Scores;
import ovenproof.publish.figure.UncertaintySource;
import ovenproof.verdict.Verdict.Node;
import ovenproof.verdict.Verdict.ProductVerdict;

/** The chain of one score: criterion, curve, measurement with its uncertainty, runs. */
final class ScorePage {
  private final View view;
  private final ProductVerdict product;
  private final TestPlan test;
  private final Node node;
  private final String path;

  ScorePage(View view, ProductVerdict product, TestPlan test, Node node) {
    this.view = view;
    this.product = product;
    this.test = test;
    this.node = node;
    this.path = view.addresses().score(product.id(), test.id());
  }

  Page page() {
    List<DomContent> parts = new ArrayList<>();
    parts.add(sum());
    criteria(node, test.criteria(), parts);
    return new Page(
        path,
        product.name() + ", " + test.name() + ": " + Scores.words(node.score()),
        List.of(
            p(capital(Scores.sentence(node.score())) + "."),
            p(
                a("All of " + product.name())
                    .withHref(SiteAddresses.link(path, view.addresses().product(product.id()))),
                rawHtml(" · "),
                a("All of " + test.name())
                    .withHref(SiteAddresses.link(path, view.addresses().test(test.id()))))),
        parts,
        null);
  }

  private static String capital(String words) {
    return Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }

  private DomContent sum() {
    return Elements.part(
        "sum",
        "Its criteria, and how they make the score",
        List.of(capital(MethodWords.combine(test.combine())) + ", from the printed digits."),
        Elements.wide(
            "Criteria of the test",
            table(
                    thead(
                        Elements.columns(
                            "Criterion", ">Parts", ">Score", "0 to 10", ">90 % interval")),
                    tbody(each(rows(node, 0), r -> r)))
                .withClass("own-tests")));
  }

  private List<DomContent> rows(Node parent, int depth) {
    List<DomContent> rows = new ArrayList<>();
    for (Node child : parent.children()) {
      String anchor = view.addresses().name("criterion", child.id());
      DomContent name =
          child.measure() == null ? rawHtml("") : a(child.name()).withHref("#" + anchor);
      rows.add(
          tr(
              th(child.measure() == null ? j2html.TagCreator.text(child.name()) : name)
                  .attr("scope", "row")
                  .withClass("depth-" + Math.min(depth, 3)),
              Elements.figure(Integer.toString(child.parts())),
              Elements.figure(Scores.words(child.score())),
              td(rawHtml(ScoreChart.mini(Scores.tray(child.score())))).withClass("plot-small"),
              Elements.figure(Scores.interval(child.score()))));
      rows.addAll(rows(child, depth + 1));
    }
    return rows;
  }

  private void criteria(Node parent, List<ValueNode> plan, List<DomContent> parts) {
    for (Node child : parent.children()) {
      Optional<ValueNode> planned =
          plan.stream().filter(n -> n.id().equals(child.id())).findFirst();
      if (planned.isPresent() && planned.get() instanceof ValueNode.Group group) {
        criteria(child, group.children(), parts);
      } else if (planned.isPresent() && planned.get() instanceof Criterion criterion) {
        parts.add(criterion(child, criterion));
      }
    }
  }

  private DomContent criterion(Node child, Criterion criterion) {
    List<Value> values =
        view.edition().measured().of(test.id(), criterion.measure()).stream()
            .filter(v -> v.product().equals(product.id()))
            .toList();
    return Elements.part(
        view.addresses().name("criterion", child.id()),
        criterion.name() + ": " + Scores.words(child.score()),
        List.of(
            "Curve: " + CurveWords.of(test, criterion) + ".",
            Objects.requireNonNullElse(criterion.why(), "")),
        curve(criterion),
        measurement(child, values),
        evidence(criterion.measure(), values));
  }

  /** The curve with the whole field on it, so that a reader sees what a value is worth. */
  private DomContent curve(Criterion criterion) {
    return CurveDrawing.of(view.edition(), test.id(), criterion)
        .<DomContent>map(
            drawing ->
                figure(
                    rawHtml(drawing.svg()),
                    figcaption(
                        "What each measurement is worth; beads from the left: "
                            + drawing.key()
                            + ".")))
        .orElse(rawHtml(""));
  }

  private DomContent measurement(Node child, List<Value> values) {
    List<Value> counted = values.stream().filter(v -> v.counts() == Counts.COUNTED).toList();
    Measurement mean = child.measurement();
    if (mean == null && !counted.isEmpty()) {
      mean = new MeanOfRuns(counted).measurement();
    }
    if (mean == null) {
      return Elements.quiet(
          Objects.requireNonNullElse(child.score().note(), "Nothing was measured."));
    }
    return div(
        h3(mean.label() + ": " + Figures.of(mean)),
        p(
            (isOfProduct(values)
                    ? "Of the product itself"
                    : "Mean over " + (child.runs() == 1 ? "one run" : child.runs() + " runs"))
                + uncertainty(mean)
                + ". Definition: "
                + view.names().hidden(mean.definition())
                + " (revision "
                + mean.revision()
                + ")."),
        isOfProduct(values) ? people(values) : rawHtml(""),
        components(mean.components(), mean, isOfProduct(values)));
  }

  /** How the people who rated it differ. */
  private static DomContent people(List<Value> values) {
    return each(
        values.stream()
            .filter(v -> v.value().id().equals(MeasureUse.RATED) && v.value().note() != null)
            .toList(),
        v -> p(capital(Objects.requireNonNull(v.value().note())) + ".").withClass("quiet"));
  }

  private static String uncertainty(Measurement mean) {
    Double value = mean.value();
    return value == null || mean.uncertainty() == null
        ? ""
        : ", " + Figures.withUncertainty(value, mean.uncertainty(), mean.unit());
  }

  /** Where the uncertainty comes from, largest first. */
  private static DomContent components(
      List<Component> components, Measurement of, boolean ofProduct) {
    if (components.isEmpty()) {
      return rawHtml("");
    }
    return Elements.wide(
        "Uncertainty of " + of.label(),
        table(
                thead(Elements.columns("Source of uncertainty", ">Part of it", "Moves also")),
                tbody(
                    each(
                        components,
                        c ->
                            component(
                                c,
                                of,
                                ofProduct
                                    ? UncertaintySource.ofProduct(c)
                                    : UncertaintySource.ofMean(c)))))
            .withClass("components"));
  }

  private static DomContent component(Component c, Measurement of, UncertaintySource source) {
    return tr(
        th(source.what()).attr("scope", "row"),
        Elements.figure(part(c.u(), of)),
        td(source.sharedWith()));
  }

  private static String part(double u, Measurement of) {
    return "±" + Figures.GAP + Figures.uncertainty(Math.abs(u), of.unit());
  }

  private DomContent evidence(String measure, List<Value> values) {
    if (values.isEmpty()) {
      return rawHtml("");
    }
    return isOfProduct(values)
        ? test.measure(measure)
            .map(new ProductRows(view, path, product.id())::of)
            .orElse(rawHtml(""))
        : runs(values);
  }

  /** A fact, a rated fact or a feature has no runs. */
  private static boolean isOfProduct(List<Value> values) {
    return values.stream().allMatch(v -> v.run() == null);
  }

  private DomContent runs(List<Value> values) {
    return Elements.wide(
        "Runs: " + values.get(0).value().label() + " (" + values.get(0).use() + ")",
        table(
            thead(Elements.columns("Run", ">Value", "Counts", "Note")),
            tbody(each(values, this::run))));
  }

  private DomContent run(Value value) {
    return tr(
        th(runName(Objects.requireNonNull(value.run()))).attr("scope", "row"),
        Elements.figure(Figures.of(value.value())),
        td(value.counts() == Counts.COUNTED ? "counts" : "listed only"),
        td(Objects.requireNonNullElse(view.names().hide(value.value().note()), ""))
            .withClass("small quiet"));
  }

  private DomContent runName(String run) {
    return a(run).withHref(SiteAddresses.link(path, view.addresses().run(run)));
  }
}
