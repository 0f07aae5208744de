package ovenproof.publish.site;

import static j2html.TagCreator.a;
import static j2html.TagCreator.div;
import static j2html.TagCreator.each;
import static j2html.TagCreator.figcaption;
import static j2html.TagCreator.figure;
import static j2html.TagCreator.h3;
import static j2html.TagCreator.iff;
import static j2html.TagCreator.p;
import static j2html.TagCreator.rawHtml;
import static j2html.TagCreator.small;
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
import java.util.Optional;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Run;
import ovenproof.chart.ScoreChart;
import ovenproof.measure.Measured.Value;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan;
import ovenproof.publish.figure.Scores;
import ovenproof.verdict.Verdict.Node;
import ovenproof.verdict.Verdict.ProductVerdict;

/** One test: how it was done, what was measured of every product, and what it looked like. */
final class TestPage {
  private final View view;
  private final TestPlan test;
  private final String path;

  TestPage(View view, TestPlan test) {
    this.view = view;
    this.test = test;
    this.path = view.addresses().test(test.id());
  }

  Page page() {
    List<DomContent> parts = new ArrayList<>();
    parts.add(scores());
    parts.add(measurements());
    parts.add(pictures());
    parts.add(new BatchStrip(view, test, path).part());
    parts.add(new CavityPart(view, test).part());
    parts.add(traces());
    parts.add(how());
    if (test.replicates() > 0) {
      parts.add(runs());
    }
    return new Page(
        path, view.findings().test(test), List.of(Elements.maybe(test.why())), parts, null);
  }

  private DomContent scores() {
    List<ProductVerdict> products =
        view.edition().verdict().products().stream()
            .filter(p -> p.test(test.id()).isPresent())
            .sorted(java.util.Comparator.comparing(p -> place(p.test(test.id()).orElseThrow())))
            .toList();
    return Elements.part(
        "scores",
        "Scores in this test",
        List.of("Overlapping trays are not told apart by these runs."),
        Elements.wide(
            "Scores of the products",
            table(
                    thead(
                        Elements.columns(
                            ">Place", "Product", "0 to 10", ">Score", ">90 % interval")),
                    tbody(each(products, p -> scoreRow(p, p.test(test.id()).orElseThrow()))))
                .withClass("own-tests")));
  }

  private static int place(Node node) {
    return node.place() == null ? Integer.MAX_VALUE : node.place();
  }

  private DomContent scoreRow(ProductVerdict product, Node node) {
    String qualifier = Scores.qualifier(node.score());
    String chain = view.addresses().score(product.id(), test.id());
    return tr(
        Elements.figure(node.place() == null ? "–" : node.place().toString()),
        th(a(product.name())
                .withHref(SiteAddresses.link(path, view.addresses().product(product.id()))))
            .attr("scope", "row"),
        td(rawHtml(ScoreChart.mini(Scores.tray(node.score())))).withClass("plot-small"),
        td(
                iff(!qualifier.isEmpty(), small(qualifier + " ").withClass("quiet")),
                a(Scores.digits(node.score())).withHref(SiteAddresses.link(path, chain)))
            .withClass("fig r"),
        Elements.figure(Scores.interval(node.score())));
  }

  private DomContent measurements() {
    if (test.measures().isEmpty()) {
      return rawHtml("");
    }
    TrTag names = Elements.columns("Product");
    for (MeasureUse use : test.measures()) {
      names.with(th(name(use)).attr("scope", "col").withClass("r"));
    }
    return Elements.part(
        "measurements",
        "What was measured",
        List.of(
            "Mean over the counted runs, with one standard uncertainty where it is known. “Over” and"
                + " “under” are bounds: the value itself was not seen.",
            "Every single run is on its own page."),
        Elements.wide(
            "Measurements",
            table(
                    thead(names),
                    tbody(each(view.edition().campaign().products(), p -> measurementRow(p))))
                .withClass("measured")));
  }

  private DomContent measurementRow(Campaign.Product product) {
    TrTag row =
        tr(
            th(a(product.name())
                    .withHref(SiteAddresses.link(path, view.addresses().product(product.id()))))
                .attr("scope", "row"));
    for (MeasureUse use : test.measures()) {
      row.with(td(measured(product.id(), use)).withClass("fig r"));
    }
    return row;
  }

  private DomContent measured(String product, MeasureUse use) {
    List<Value> runs = view.edition().measured().counted(test.id(), use.id(), product);
    if (runs.isEmpty()) {
      return small("none").withClass("quiet");
    }
    return new MeanOfRuns(runs).cell();
  }

  private String name(MeasureUse use) {
    return use.name() != null
        ? use.name()
        : view.edition().measured().of(test.id(), use.id()).stream()
            .findFirst()
            .map(v -> v.value().label() + of(use.summary()))
            .orElse(use.id());
  }

  /** What a summary makes of the measure's name. */
  private static String of(MeasureUse.Summary summary) {
    return switch (summary) {
      case MEAN -> "";
      case LARGEST -> ", largest";
      case SMALLEST -> ", smallest";
      case SPREAD -> ", spread";
      case CHANGE, ABSOLUTE_CHANGE -> ", last batch − first";
      case SLOPE -> ", per batch";
      case FACE_DIFFERENCE -> ", first face − last";
    };
  }

  private DomContent pictures() {
    List<DomContent> figures = new ArrayList<>();
    for (ProductVerdict product : view.edition().verdict().products()) {
      Optional<Run> run =
          view.edition().countedRuns(product.id(), test.id()).stream()
              .filter(r -> !view.pictures(r).isEmpty())
              .findFirst();
      run.ifPresent(
          r ->
              faces(r)
                  .forEach(
                      picture ->
                          figures.add(
                              ProductPage.picture(path, picture, caption(product, picture)))));
    }
    return figures.isEmpty()
        ? rawHtml("")
        : Elements.part(
            "pictures",
            "Side by side",
            List.of(
                "First counted run of each product, first batch.",
                "Pictures with a colour chart in the frame are calibrated: the same surface has the same"
                    + " colour on each. Others are as the camera made them; none was brightened."),
            div(each(figures, f -> f)).withClass("gallery"));
  }

  /** One picture of each face of the first batch. */
  private List<View.Picture> faces(Run run) {
    List<View.Picture> chosen = new ArrayList<>();
    for (View.Picture picture : view.pictures(run)) {
      if (chosen.stream().noneMatch(c -> c.face().equals(picture.face()))) {
        chosen.add(picture);
      }
    }
    return chosen;
  }

  private String caption(ProductVerdict product, View.Picture picture) {
    String score = product.test(test.id()).map(n -> ", " + Scores.words(n.score())).orElse("");
    return product.name() + (picture.face().isEmpty() ? "" : ", " + picture.face()) + score;
  }

  private DomContent traces() {
    List<DomContent> figures = new ArrayList<>();
    for (ProductVerdict product : view.edition().verdict().products()) {
      view.edition().countedRuns(product.id(), test.id()).stream()
          .filter(r -> !view.traces(r).isEmpty())
          .findFirst()
          .ifPresent(
              run ->
                  figures.add(
                      figure(
                          h3(
                              a(product.name())
                                  .withHref(
                                      SiteAddresses.link(path, view.addresses().run(run.id())))),
                          rawHtml(view.traces(run).get(0).svg()),
                          figcaption(view.traces(run).get(0).caption()))));
    }
    return figures.isEmpty()
        ? rawHtml("")
        : Elements.part(
            "traces",
            "Temperatures of one run each",
            List.of("The same axes for all. The first counted run; others are on the runs’ pages."),
            div(each(figures, f -> f)).withClass("traces"));
  }

  private DomContent how() {
    return Elements.part("how", "How it was done", List.of(), MethodWords.how(test), cautions());
  }

  private DomContent cautions() {
    return Cautions.of(test);
  }

  private DomContent runs() {
    List<Run> runs =
        view.edition().campaign().runs().stream().filter(r -> r.test().equals(test.id())).toList();
    long counted =
        runs.stream().filter(r -> view.edition().campaign().whyNotCounted(r).isEmpty()).count();
    return Elements.part(
        "runs",
        counted + " of " + runs.size() + " runs count",
        List.of("Trials, void runs and runs that were done again are listed and not scored."),
        new RunTable(view).table(path, runs));
  }
}
