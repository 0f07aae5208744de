package ovenproof.publish.site;

import static j2html.TagCreator.a;
import static j2html.TagCreator.div;
import static j2html.TagCreator.each;
import static j2html.TagCreator.figcaption;
import static j2html.TagCreator.figure;
import static j2html.TagCreator.h3;
import static j2html.TagCreator.iff;
import static j2html.TagCreator.img;
import static j2html.TagCreator.li;
import static j2html.TagCreator.p;
import static j2html.TagCreator.rawHtml;
import static j2html.TagCreator.small;
import static j2html.TagCreator.table;
import static j2html.TagCreator.tbody;
import static j2html.TagCreator.td;
import static j2html.TagCreator.th;
import static j2html.TagCreator.thead;
import static j2html.TagCreator.tr;
import static j2html.TagCreator.ul;

import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import ovenproof.campaign.Campaign.SettingCard;
import ovenproof.campaign.Run;
import ovenproof.chart.ScoreChart;
import ovenproof.method.TestPlan;
import ovenproof.publish.edition.ForAndAgainst;
import ovenproof.publish.edition.ForAndAgainst.Point;
import ovenproof.publish.figure.Prices;
import ovenproof.publish.figure.Scores;
import ovenproof.verdict.Verdict.GateOutcome;
import ovenproof.verdict.Verdict.Node;
import ovenproof.verdict.Verdict.ProductVerdict;

/** One product: what it scored, why, and under which settings. */
final class ProductPage {
  private final View view;
  private final ProductVerdict product;
  private final String path;

  ProductPage(View view, ProductVerdict product) {
    this.view = view;
    this.product = product;
    this.path = view.addresses().product(product.id());
  }

  Page page() {
    List<DomContent> parts = new ArrayList<>();
    parts.add(forAndAgainst());
    parts.add(tests());
    if (!product.gates().isEmpty()) {
      parts.add(gates());
    }
    parts.add(pictures());
    parts.add(facts());
    new FeaturesTable(view).part(product.id()).ifPresent(parts::add);
    parts.add(settings());
    parts.add(runs());
    return new Page(
        path,
        view.findings().product(product),
        List.of(
            lane(),
            p(intro()),
            Elements.bullets(view.findings().reservations(product)),
            Elements.folded(product.missing(), "reasons why something is missing")),
        parts.stream().filter(Objects::nonNull).toList(),
        new StructuredData(view.edition()).product(product));
  }

  private DomContent lane() {
    String sentence = product.name() + ": " + Scores.sentence(product.score());
    return div(
            rawHtml(ScoreChart.axis()),
            div(rawHtml(ScoreChart.lane(sentence, Scores.tray(product.score()), null)))
                .withClass("lane"))
        .withClass("one-lane");
  }

  private String intro() {
    StringBuilder words = new StringBuilder(Scores.sentence(product.score()));
    words.setCharAt(0, Character.toUpperCase(words.charAt(0)));
    words.append('.');
    if (product.rank() != null) {
      words.append(" Rank ").append(Scores.rank(product.rank())).append(" of ");
      words.append(view.edition().ranked().size()).append('.');
    }
    view.edition()
        .price(product.id())
        .ifPresent(
            price ->
                words
                    .append(" Price ")
                    .append(Prices.text(price))
                    .append(price.where() == null ? "" : " at " + price.where())
                    .append(" on ")
                    .append(Frame.day(price.on()))
                    .append('.'));
    return words.toString();
  }

  private DomContent forAndAgainst() {
    ForAndAgainst points = ForAndAgainst.of(view.edition(), product);
    return Elements.part(
        "points",
        points.heading(),
        List.of(
            "Said only where an interval lies wholly above or below the middle of the field, or where"
                + " a limit was missed. Each line opens its evidence."),
        div(
                div(h3("For"), list(points.forIt(), "Nothing that these runs can show.")),
                div(h3("Against"), list(points.against(), "Nothing that these runs can show.")))
            .withClass("two"));
  }

  private DomContent list(List<Point> points, String none) {
    return points.isEmpty()
        ? Elements.quiet(none)
        : ul(each(points, point -> li(a(point.sentence()).withHref(link(point)))))
            .withClass("plain-list");
  }

  private String link(Point point) {
    return point.test() == null
        ? SiteAddresses.link(path, path + "#gates")
        : SiteAddresses.link(path, view.addresses().score(product.id(), point.test()));
  }

  private DomContent tests() {
    return Elements.part(
        "tests",
        "Where its points come from",
        List.of("Place counts all products of the field; equal scores share a place."),
        Elements.wide(
            "Scores by test",
            table(
                    thead(
                        Elements.columns(
                            "Test", ">Parts", ">Score", "0 to 10", ">90 % interval", ">Place")),
                    tbody(each(product.tests(), this::testRow)))
                .withClass("own-tests")));
  }

  private DomContent testRow(Node node) {
    String chain = SiteAddresses.link(path, view.addresses().score(product.id(), node.id()));
    String qualifier = Scores.qualifier(node.score());
    return tr(
        th(a(node.name()).withHref(SiteAddresses.link(path, view.addresses().test(node.id()))))
            .attr("scope", "row"),
        td(Integer.toString(node.parts())).withClass("fig r"),
        td(
                iff(!qualifier.isEmpty(), small(qualifier + " ").withClass("quiet")),
                a(Scores.digits(node.score())).withHref(chain))
            .withClass("fig r"),
        td(rawHtml(ScoreChart.mini(Scores.tray(node.score())))).withClass("plot-small"),
        Elements.figure(Scores.interval(node.score())),
        Elements.figure(node.place() == null ? "–" : node.place().toString()));
  }

  private DomContent gates() {
    return Elements.part(
        "gates",
        "Limits",
        List.of("A limit stands outside the weighing: no strength offsets it."),
        table(
            thead(Elements.columns("Limit", "Test", "What it says")),
            tbody(each(product.gates(), this::gateRow))));
  }

  private DomContent gateRow(GateOutcome gate) {
    return tr(
        th(gate.name()).attr("scope", "row"),
        td(testName(gate.test())),
        td(view.findings().gate(gate)));
  }

  private String testName(String id) {
    return view.edition().campaign().method().test(id).map(TestPlan::name).orElse(id);
  }

  private DomContent pictures() {
    List<DomContent> figures = new ArrayList<>();
    for (TestPlan test : view.tests()) {
      view.edition().countedRuns(product.id(), test.id()).stream()
          .flatMap(run -> view.pictures(run).stream())
          .findFirst()
          .ifPresent(picture -> figures.add(picture(path, picture, test.name())));
    }
    return figures.isEmpty()
        ? rawHtml("")
        : Elements.part(
            "pictures",
            "What came out",
            List.of("The first counted run of each test; all others are on the runs’ pages."),
            div(each(figures, f -> f)).withClass("gallery"));
  }

  /** A picture with its caption. */
  static DomContent picture(String page, View.Picture picture, String caption) {
    return figure(
        img()
            .withSrc(SiteAddresses.link(page, picture.path()))
            .withAlt(picture.sentence())
            .attr("width", picture.width())
            .attr("height", picture.height())
            .attr("loading", "lazy")
            .withClass("photo"),
        figcaption(caption));
  }

  private DomContent facts() {
    return Elements.part(
        "facts",
        "Measured, with the nameplate beside it",
        List.of(),
        Elements.wide("Facts", new FactsTable(view).list(product.id())));
  }

  private DomContent settings() {
    List<SettingCard> cards =
        view.edition().campaign().settingCards().stream()
            .filter(c -> c.product().equals(product.id()))
            .toList();
    return cards.isEmpty()
        ? rawHtml("")
        : Elements.part(
            "settings",
            "How it was set",
            List.of(),
            Elements.wide(
                "Settings",
                table(
                    thead(Elements.columns("Test", "Variant", "Setting", "Chosen")),
                    tbody(each(cards, this::settingRow)))));
  }

  private DomContent settingRow(SettingCard card) {
    return tr(
        th(testName(card.test())).attr("scope", "row"),
        td(card.variant()),
        td(setting(card)),
        td(view.names().hidden(Objects.requireNonNullElse(card.chosenBy(), ""))));
  }

  static String setting(SettingCard card) {
    return Stream.of(
            card.mode(),
            card.preset(),
            card.dial(),
            card.rack() == null ? null : "rack " + card.rack(),
            card.accessory(),
            card.note())
        .filter(Objects::nonNull)
        .reduce((a, b) -> a + ", " + b)
        .orElse("as the method says");
  }

  private DomContent runs() {
    List<Run> runs =
        view.edition().campaign().runs().stream()
            .filter(r -> r.product().equals(product.id()))
            .toList();
    long counted =
        runs.stream().filter(r -> view.edition().campaign().whyNotCounted(r).isEmpty()).count();
    DomContent specimens =
        ul(
            each(
                view.edition().campaign().specimens().stream()
                    .filter(s -> s.product().equals(product.id()))
                    .toList(),
                s ->
                    li(
                        "Specimen "
                            + s.id()
                            + ": "
                            + SpecimenWords.acquired(s)
                            + "; "
                            + SpecimenWords.became(s))));
    return Elements.part(
        "runs",
        counted + " of " + runs.size() + " runs count",
        List.of("Every attempt is kept and listed, also those that do not count."),
        specimens,
        new RunTable(view).table(path, runs));
  }
}
