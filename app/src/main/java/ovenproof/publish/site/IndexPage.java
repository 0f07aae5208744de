package ovenproof.publish.site;

import static j2html.TagCreator.a;
import static j2html.TagCreator.b;
import static j2html.TagCreator.br;
import static j2html.TagCreator.caption;
import static j2html.TagCreator.div;
import static j2html.TagCreator.each;
import static j2html.TagCreator.iff;
import static j2html.TagCreator.join;
import static j2html.TagCreator.p;
import static j2html.TagCreator.rawHtml;
import static j2html.TagCreator.small;
import static j2html.TagCreator.span;
import static j2html.TagCreator.table;
import static j2html.TagCreator.tbody;
import static j2html.TagCreator.td;
import static j2html.TagCreator.text;
import static j2html.TagCreator.th;
import static j2html.TagCreator.thead;
import static j2html.TagCreator.tr;

import j2html.tags.DomContent;
import j2html.tags.specialized.TrTag;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Campaign.Price;
import ovenproof.chart.ScoreChart;
import ovenproof.core.quantity.Rounding;
import ovenproof.method.TestPlan;
import ovenproof.publish.edition.Words;
import ovenproof.publish.figure.Prices;
import ovenproof.publish.figure.Scores;
import ovenproof.verdict.Verdict;
import ovenproof.verdict.Verdict.Node;
import ovenproof.verdict.Verdict.ProductVerdict;

/** The first page: ranking, where the points come from, and what the reader must know besides. */
final class IndexPage {
  private final View view;

  IndexPage(View view) {
    this.view = view;
  }

  Page page() {
    List<DomContent> parts = new ArrayList<>();
    parts.add(ranking());
    parts.add(matrix());
    parts.add(new FactsTable(view).part(SiteAddresses.INDEX));
    new FeaturesTable(view).part().ifPresent(parts::add);
    parts.add(notTested());
    parts.add(acquired());
    parts.add(corrections());
    return new Page(
        SiteAddresses.INDEX,
        view.findings().headline(),
        List.of(
            p(
                view.findings().summary()
                    + " A score is a bead; its tray is the 90 % interval. A tier is a tray too:"
                    + " everything in it lies within the margin of its best product."),
            warnings()),
        parts,
        new StructuredData(view.edition()).list(view.addresses()));
  }

  private DomContent warnings() {
    List<String> warnings = view.edition().verdict().warnings();
    return Elements.folded(warnings, "remarks on the numbers");
  }

  private DomContent ranking() {
    List<String> notes = new ArrayList<>();
    Verdict verdict = view.edition().verdict();
    if (verdict.margin() != null) {
      notes.add(
          "A tier boundary means “worse than that tier’s best”, nothing more. The margin, "
              + Rounding.HALF_UP.text(verdict.margin(), 2)
              + " points, covers all pairs at once.");
      notes.add("Within a tier: by score, then by name.");
    } else {
      notes.add(
          "One run each says nothing of how far a second one would fall: no margin, no rank.");
    }
    notes.add("An interval speaks of the appliances that stood on the bench.");
    return Elements.part("ranking", rankingHeading(), notes, rankingTable(), unranked());
  }

  private String rankingHeading() {
    int tiers = (int) view.edition().ranked().stream().map(ProductVerdict::tier).distinct().count();
    return tiers == 0 ? "Scores without ranks" : tiers == 1 ? "One tier" : tiers + " tiers";
  }

  private DomContent rankingTable() {
    var table = table().withClass("ranks").attr("role", "table");
    table.with(
        thead(
                tr(
                        head(text("Rank"), null),
                        head(text("Product"), null),
                        head(
                            rawHtml(ScoreChart.axis() + "<span class=\"skip\">Picture</span>"),
                            "plot-h"),
                        head(join("Score", br(), "of 10"), null),
                        head(join("90 %", br(), "interval"), null),
                        head(join("Chance of", br(), "being best"), null),
                        head(text("Price"), null))
                    .attr("role", "row"))
            .attr("role", "rowgroup"));
    int tier = 0;
    List<ProductVerdict> ranked = view.edition().ranked();
    while (!view.edition().verdict().tier(++tier).isEmpty()) {
      table.with(tier(tier, view.edition().verdict().tier(tier)));
    }
    if (ranked.isEmpty()) {
      table.with(
          tbody(each(view.edition().unranked(), product -> lane(product, null)))
              .attr("role", "rowgroup")
              .withClass("tier"));
    }
    return table;
  }

  private static DomContent head(DomContent content, @Nullable String style) {
    var cell = th(content).attr("scope", "col").attr("role", "columnheader");
    return style == null ? cell : cell.withClass(style);
  }

  private DomContent tier(int number, List<ProductVerdict> products) {
    var body = tbody().withClass("tier").attr("role", "rowgroup");
    BigDecimal best = products.get(0).score().value();
    Double margin = view.edition().verdict().margin();
    Double lowest = best == null || margin == null ? null : best.doubleValue() - margin;
    String reach =
        best == null || lowest == null
            ? ""
            : "best "
                + Scores.digits(best)
                + ", tray down to "
                + Rounding.HALF_UP.text(Math.max(0, lowest), 2);
    body.with(
        tr(th(b("Tier " + number), span(reach).withClass("quiet"))
                .attr("scope", "rowgroup")
                .attr("role", "rowheader")
                .attr("colspan", "7"))
            .attr("role", "row")
            .withClass("tier-name"));
    for (int i = 0; i < products.size(); i++) {
      ScoreChart.Place place =
          i == products.size() - 1 ? ScoreChart.Place.LAST : ScoreChart.Place.INSIDE;
      ScoreChart.Tier drawn =
          best == null || lowest == null
              ? null
              : new ScoreChart.Tier(best.doubleValue(), Math.max(0, lowest), place);
      body.with(lane(products.get(i), drawn));
    }
    return body;
  }

  private TrTag lane(ProductVerdict product, ScoreChart.@Nullable Tier tier) {
    String href = view.addresses().product(product.id());
    String qualifier = Scores.qualifier(product.score());
    String sentence = product.name() + ": " + Scores.sentence(product.score());
    return tr(
            td(Scores.rank(product.rank())).withClass("fig rk").attr("role", "cell"),
            th(
                    a(product.name()).withHref(href),
                    each(view.findings().reservations(product), r -> small(r)))
                .attr("scope", "row")
                .attr("role", "rowheader"),
            td(rawHtml(ScoreChart.lane(sentence, Scores.tray(product.score()), tier)))
                .withClass("plot")
                .attr("role", "cell"),
            td(
                    iff(!qualifier.isEmpty(), span(qualifier).withClass("unit most")),
                    text(Scores.digits(product.score())))
                .withClass("fig total")
                .attr("role", "cell"),
            td(Scores.interval(product.score())).withClass("fig iv").attr("role", "cell"),
            td(Scores.probability(product.probabilityBest(), product.probabilityBestAtMost()))
                .withClass("fig pb")
                .attr("role", "cell"),
            td(price(product.id())).withClass("fig pr").attr("role", "cell"))
        .attr("role", "row");
  }

  private DomContent price(String product) {
    Optional<Price> price = view.edition().price(product);
    return price
        .<DomContent>map(p -> join(text(Prices.text(p)), small(Frame.day(p.on())).withClass("on")))
        .orElseGet(() -> small("not noted").withClass("on"));
  }

  private DomContent unranked() {
    List<ProductVerdict> unranked = view.edition().unranked();
    if (unranked.isEmpty() || view.edition().ranked().isEmpty()) {
      return rawHtml("");
    }
    return table(
            caption("Without a place"),
            thead(Elements.columns("Product", ">Score", "Why")),
            tbody(
                each(
                    unranked,
                    product ->
                        tr(
                            th(a(product.name()).withHref(view.addresses().product(product.id())))
                                .attr("scope", "row"),
                            td(Scores.words(product.score())).withClass("fig r"),
                            td(why(product))))))
        .withClass("unranked");
  }

  private String why(ProductVerdict product) {
    List<String> reasons = new ArrayList<>(view.findings().reservations(product));
    if (product.score().note() != null) {
      reasons.add(product.score().note());
    }
    return reasons.isEmpty() ? "not enough is known" : String.join("; ", reasons);
  }

  private DomContent matrix() {
    ComparisonTable table = ComparisonTable.of(view.edition());
    return Elements.part(
        "points",
        table.heading(),
        List.of(
            table.rule(),
            "Each figure opens its criteria, curves and runs. “Cannot do” scores what the method"
                + " says; “at most” stands where a run ended at its cap."),
        Elements.wide("Sub-scores", matrixTable(table)));
  }

  private DomContent matrixTable(ComparisonTable rows) {
    TrTag names = tr(th("Product").attr("scope", "col"));
    for (TestPlan test : view.tests()) {
      names.with(
          th(
                  a(test.name()).withHref(view.addresses().test(test.id())),
                  span("●".repeat(Math.min(test.parts(), 10)))
                      .withClass("parts")
                      .attr("aria-hidden", "true"),
                  span(test.parts() + (test.parts() == 1 ? " part" : " parts")).withClass("unit"))
              .attr("scope", "col"));
    }
    names.with(
        th(text("Total"), span(rows.parts() + " parts").withClass("unit")).attr("scope", "col"));
    return table(thead(names), tbody(each(view.edition().verdict().products(), this::matrixRow)))
        .withClass("matrix");
  }

  private DomContent matrixRow(ProductVerdict product) {
    TrTag row =
        tr(
            th(a(product.name()).withHref(view.addresses().product(product.id())))
                .attr("scope", "row"));
    for (TestPlan test : view.tests()) {
      Optional<Node> node = product.test(test.id());
      row.with(
          node.<DomContent>map(
                  n ->
                      td(
                          Elements.score(
                              n.score(), view.addresses().score(product.id(), test.id()))))
              .orElseGet(() -> td(small("none"))));
    }
    return row.with(
        td(
                iff(
                    !Scores.qualifier(product.score()).isEmpty(),
                    small(Scores.qualifier(product.score()))),
                text(Scores.digits(product.score())))
            .withClass("fig total"));
  }

  private DomContent notTested() {
    Campaign campaign = view.edition().campaign();
    List<String> sentences = new ArrayList<>();
    sentences.add("Made for: " + campaign.method().population() + ".");
    for (Campaign.NotRun gap : campaign.notRun()) {
      sentences.add(
          view.edition().name(gap.product())
              + ", "
              + testName(gap.test())
              + ": "
              + state(gap.state())
              + " ("
              + gap.reason()
              + ").");
    }
    sentences.add(
        "How long the appliances last, and how much two of one model differ, was not tested.");
    DomContent leftOut =
        campaign.leftOut().isEmpty()
            ? rawHtml("")
            : table(
                caption("Considered and left out"),
                thead(Elements.columns("Product", "Why")),
                tbody(
                    each(
                        campaign.leftOut(),
                        out -> tr(th(out.name()).attr("scope", "row"), td(out.why())))));
    return Elements.part(
        "not-tested", "What was not tested", List.of(), Elements.bullets(sentences), leftOut);
  }

  private String testName(String id) {
    return view.edition().campaign().method().test(id).map(TestPlan::name).orElse(id);
  }

  static String state(Campaign.NotRun.State state) {
    return switch (state) {
      case CANNOT_DO -> "cannot do it";
      case NOT_ASKED -> "not asked of it";
      case MISSING -> "missing";
    };
  }

  private DomContent acquired() {
    Campaign campaign = view.edition().campaign();
    String disclosure = campaign.info().disclosure();
    DomContent specimens =
        campaign.specimens().isEmpty()
            ? Elements.quiet("No specimen is on record.")
            : table(
                thead(Elements.columns("Product", "Specimen", "How acquired", "What became of it")),
                tbody(each(campaign.specimens(), s -> SpecimenWords.row(view, s))));
    return Elements.part(
        "disclosure",
        disclosure == null ? "How the appliances were acquired is not stated" : "Who paid",
        List.of(),
        Elements.maybe(disclosure),
        Elements.wide("Specimens", specimens));
  }

  private DomContent corrections() {
    List<DomContent> lines = new ArrayList<>();
    for (View.Change change : view.changes()) {
      lines.add(
          tr(
              th(Frame.day(change.on())).attr("scope", "row"),
              td(reason(change), span(change.sentence()))));
    }
    return Elements.part(
        "corrections",
        lines.isEmpty() ? "No corrections so far" : "Corrections",
        List.of("What changed after publication, when, and what it did to the order."),
        lines.isEmpty()
            ? Elements.quiet("Nothing was changed since this was first published.")
            : div(
                table(thead(Elements.columns("When", "What changed")), tbody(each(lines, l -> l)))),
        p(a("All corrections and changes, and every edition as it was").withHref(Editions.PAGE)));
  }

  private static DomContent reason(View.Change change) {
    String why = change.why();
    return iff(why != null, b(why == null ? "" : Words.capital(why) + " "));
  }
}
