package ovenproof.publish.site;

import static j2html.TagCreator.a;
import static j2html.TagCreator.each;
import static j2html.TagCreator.li;
import static j2html.TagCreator.p;
import static j2html.TagCreator.rawHtml;
import static j2html.TagCreator.span;
import static j2html.TagCreator.table;
import static j2html.TagCreator.tbody;
import static j2html.TagCreator.td;
import static j2html.TagCreator.th;
import static j2html.TagCreator.thead;
import static j2html.TagCreator.tr;
import static j2html.TagCreator.ul;

import j2html.tags.DomContent;
import java.util.List;
import java.util.Map;
import ovenproof.chart.ScoreChart;
import ovenproof.method.TestPlan;
import ovenproof.publish.figure.Scores;
import ovenproof.verdict.Verdict.ProductVerdict;

/** Lists of pages: products, tests, evidence, data. */
final class IndexPages {
  private final View view;

  IndexPages(View view) {
    this.view = view;
  }

  Page products() {
    String path = "products/index.html";
    return new Page(
        path,
        view.edition().verdict().products().size() + " products, each on its own page",
        List.of(p("In the order of the ranking.")),
        List.of(
            Elements.part(
                "products",
                "Products",
                List.of(),
                table(
                        thead(
                            Elements.columns(
                                "Product", ">Rank", ">Score", "0 to 10", ">90 % interval")),
                        tbody(each(view.edition().verdict().products(), x -> productRow(path, x))))
                    .withClass("own-tests"))),
        null);
  }

  private DomContent productRow(String path, ProductVerdict product) {
    return tr(
        th(a(product.name())
                .withHref(SiteAddresses.link(path, view.addresses().product(product.id()))))
            .attr("scope", "row"),
        Elements.figure(Scores.rank(product.rank())),
        Elements.figure(Scores.words(product.score())),
        td(rawHtml(ScoreChart.mini(Scores.tray(product.score())))).withClass("plot-small"),
        Elements.figure(Scores.interval(product.score())));
  }

  Page tests() {
    String path = "tests/index.html";
    return new Page(
        path,
        view.tests().size() + " tests, and what each of them showed",
        List.of(),
        List.of(
            Elements.part(
                "tests",
                "Tests",
                List.of("A test’s page has its measurements, pictures and traces."),
                table(
                    thead(Elements.columns("Test", ">Parts", "What it showed")),
                    tbody(each(view.tests(), t -> testRow(path, t)))))),
        null);
  }

  private DomContent testRow(String path, TestPlan test) {
    String finding = view.findings().test(test);
    String without = finding.substring(test.name().length() + 2);
    return tr(
        th(a(test.name()).withHref(SiteAddresses.link(path, view.addresses().test(test.id()))))
            .attr("scope", "row"),
        Elements.figure(Integer.toString(test.parts())),
        td(without));
  }

  Page evidence() {
    String path = SiteAddresses.EVIDENCE;
    var runs = view.edition().campaign().runs();
    return new Page(
        path,
        "Every figure can be followed to its run and file",
        List.of(
            p(
                "From a score to its criteria and curves, from there to the measurement with its"
                    + " uncertainty, to the runs, and to the files with their fingerprints.")),
        List.of(
            Elements.part(
                "scores",
                "From scores",
                List.of("One page per product and test."),
                Elements.wide("Scores", scoreTable(path))),
            Elements.part(
                "runs",
                "From runs",
                List.of("All runs, also those that do not count."),
                new RunTable(view).table(path, runs))),
        null);
  }

  private DomContent scoreTable(String path) {
    var names = Elements.columns("Product");
    view.tests().forEach(t -> names.with(th(t.name()).attr("scope", "col").withClass("r")));
    return table(
        thead(names),
        tbody(
            each(
                view.edition().verdict().products(),
                product -> {
                  var row = tr(th(product.name()).attr("scope", "row"));
                  for (TestPlan test : view.tests()) {
                    String chain = view.addresses().score(product.id(), test.id());
                    row.with(
                        td(product
                                .test(test.id())
                                .<DomContent>map(
                                    n ->
                                        a(Scores.words(n.score()))
                                            .withHref(SiteAddresses.link(path, chain)))
                                .orElseGet(() -> span("none")))
                            .withClass("fig r"));
                  }
                  return row;
                })));
  }

  Page data(Map<String, String> tables) {
    String path = "data/index.html";
    return new Page(
        path,
        "Everything shown, as tables",
        List.of(p("CSV, UTF-8, comma, in the units of the header; unrounded where computed.")),
        List.of(
            Elements.part(
                "tables",
                "Tables",
                List.of("datapackage.json describes their columns (Frictionless Table Schema)."),
                ul(each(
                        tables.entrySet(),
                        t -> li(a(t.getKey()).withHref(t.getKey()), span(": " + t.getValue()))))
                    .withClass("plain-list"))),
        null);
  }
}
