package ovenproof.publish.fragment;

import static j2html.TagCreator.caption;
import static j2html.TagCreator.each;
import static j2html.TagCreator.table;
import static j2html.TagCreator.tbody;
import static j2html.TagCreator.td;
import static j2html.TagCreator.th;
import static j2html.TagCreator.thead;
import static j2html.TagCreator.tr;

import j2html.tags.specialized.TrTag;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Entry;
import ovenproof.campaign.FactValue;
import ovenproof.campaign.Photo;
import ovenproof.campaign.Run;
import ovenproof.core.quantity.Rounding;
import ovenproof.method.Method.Fact;
import ovenproof.method.TestPlan;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.edition.Findings;
import ovenproof.publish.edition.ForAndAgainst;
import ovenproof.publish.figure.Figures;
import ovenproof.publish.figure.Prices;
import ovenproof.publish.figure.Scores;
import ovenproof.verdict.Verdict.Node;
import ovenproof.verdict.Verdict.ProductVerdict;

/** All fragments of an edition, as text by file name. */
public final class Fragments {
  private final Edition edition;
  private final Findings findings;

  public Fragments(Edition edition) {
    this.edition = edition;
    this.findings = new Findings(edition);
  }

  public Map<String, String> files() {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("table.html", html());
    files.put("table.md", markdown());
    files.put("table.tsv", tsv());
    files.put("facts.md", factsBoxes());
    files.put("for-and-against.md", forAndAgainst());
    files.put("how-we-tested.md", howWeTested());
    files.put("captions.tsv", captions());
    files.put("narration.md", narration());
    return files;
  }

  private List<String> header() {
    List<String> header =
        new ArrayList<>(List.of("Rank", "Product", "Score", "90 % interval", "Tier"));
    edition.campaign().method().tests().forEach(t -> header.add(t.name()));
    header.add("Price");
    return header;
  }

  private List<List<String>> rows() {
    return edition.verdict().products().stream().map(this::row).toList();
  }

  private List<String> row(ProductVerdict product) {
    List<String> row = new ArrayList<>();
    row.add(Scores.rank(product.rank()));
    row.add(product.name());
    row.add(Scores.words(product.score()));
    row.add(Scores.interval(product.score()));
    row.add(product.tier() == null ? "–" : product.tier().toString());
    for (TestPlan test : edition.campaign().method().tests()) {
      row.add(product.test(test.id()).map(n -> Scores.words(n.score())).orElse("none"));
    }
    row.add(price(product.id()));
    return row;
  }

  private String price(String product) {
    return edition.price(product).map(p -> Prices.text(p) + " on " + p.on()).orElse("not noted");
  }

  /** Below every fragment: what it was computed from. */
  private String source() {
    return (edition.isInvented() ? "Invented: no such products exist. " : "")
        + edition.campaign().info().title()
        + ", method "
        + edition.campaign().method().version()
        + ", verdict "
        + edition.verdict().version()
        + ", "
        + edition.published()
        + ". Scores of 10; two products of one tier are not shown to differ.";
  }

  private String html() {
    TrTag head = tr();
    header().forEach(h -> head.with(th(h).attr("scope", "col")));
    return table(
                caption(source()),
                thead(head),
                tbody(each(rows(), row -> tr(each(row, cell -> td(cell))))))
            .render()
        + "\n";
  }

  private String markdown() {
    List<String> header = header();
    String rule = header.stream().map(h -> "---").collect(Collectors.joining(" | ", "| ", " |"));
    String body = rows().stream().map(Fragments::line).collect(Collectors.joining("\n"));
    return line(header) + "\n" + rule + "\n" + body + "\n\n" + escaped(source()) + "\n";
  }

  private static String line(List<String> cells) {
    return cells.stream().map(Fragments::escaped).collect(Collectors.joining(" | ", "| ", " |"));
  }

  /** Markdown's own signs, and HTML, mean nothing inside a name. */
  static String escaped(String text) {
    return text.replaceAll("\\s+", " ")
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replaceAll("([\\\\`*_{}\\[\\]#|>!~])", "\\\\$1");
  }

  private String tsv() {
    List<List<String>> all = new ArrayList<>();
    all.add(header());
    all.addAll(rows());
    return all.stream().map(Fragments::tabs).collect(Collectors.joining("\n", "", "\n"));
  }

  private static String tabs(List<String> cells) {
    return cells.stream()
        .map(c -> c.replaceAll("[\\t\\r\\n]+", " "))
        .map(c -> c.matches("^[=+\\-@].*") ? "'" + c : c)
        .collect(Collectors.joining("\t"));
  }

  private String factsBoxes() {
    StringBuilder text = new StringBuilder();
    for (Campaign.Product product : edition.campaign().products()) {
      text.append("## ").append(escaped(product.name())).append("\n\n");
      text.append("- Price: ").append(escaped(price(product.id()))).append('\n');
      for (Fact fact : edition.campaign().method().facts()) {
        Entry.effective(edition.campaign().facts()).stream()
            .filter(v -> v.product().equals(product.id()) && v.fact().equals(fact.id()))
            .reduce((first, second) -> second)
            .ifPresent(v -> text.append(fact(fact, v)));
      }
      text.append('\n');
    }
    return text + escaped(source()) + "\n";
  }

  private static String fact(Fact fact, FactValue value) {
    String measured =
        value.measured() == null
            ? "not measured"
            : Figures.dual(value.measured(), Rounding.HALF_UP).toString();
    String plate = value.nameplate() == null ? "" : "; nameplate " + value.nameplate();
    return "- " + escaped(fact.name() + ": " + measured + plate) + "\n";
  }

  private String forAndAgainst() {
    StringBuilder text = new StringBuilder();
    for (ProductVerdict product : edition.verdict().products()) {
      ForAndAgainst points = ForAndAgainst.of(edition, product);
      text.append("## ").append(escaped(findings.product(product))).append("\n\nFor:\n\n");
      points(text, points.forIt());
      text.append("\nAgainst:\n\n");
      points(text, points.against());
      text.append('\n');
    }
    return text + escaped(source()) + "\n";
  }

  private static void points(StringBuilder text, List<ForAndAgainst.Point> points) {
    if (points.isEmpty()) {
      text.append("- nothing that these runs can show\n");
    }
    points.forEach(p -> text.append("- ").append(escaped(p.sentence())).append('\n'));
  }

  private String howWeTested() {
    StringBuilder text = new StringBuilder("## How we tested\n\n");
    text.append(escaped(findings.summary())).append(' ');
    String disclosure = edition.campaign().info().disclosure();
    text.append(
        escaped(
            Objects.requireNonNullElse(
                disclosure, "How the appliances were acquired is not stated.")));
    text.append("\n\n");
    for (TestPlan test : edition.campaign().method().tests()) {
      text.append("- ").append(escaped(how(test))).append('\n');
    }
    return text + "\n" + escaped(source()) + "\n";
  }

  private static String how(TestPlan test) {
    String food = test.sample() == null ? "" : ": " + test.sample().food();
    String runs =
        test.replicates() == 0
            ? ", from facts of each product"
            : ", "
                + test.replicates()
                + (test.replicates() == 1 ? " run" : " runs")
                + " per product";
    return test.name() + food + runs + ", " + test.parts() + " parts of the total";
  }

  private String captions() {
    StringBuilder text = new StringBuilder("file\tcaption\talternative text\n");
    for (Photo photo : edition.campaign().photos()) {
      edition.campaign().run(photo.run()).ifPresent(run -> text.append(pictureLine(photo, run)));
    }
    return text.toString();
  }

  private String pictureLine(Photo photo, Run run) {
    String name = edition.name(run.product());
    String test =
        edition.campaign().method().test(run.test()).map(TestPlan::name).orElse(run.test());
    String score =
        edition
            .verdict()
            .product(run.product())
            .flatMap(p -> p.test(run.test()))
            .map(Node::score)
            .map(s -> ", " + Scores.sentence(s))
            .orElse("");
    String face = photo.face() == null ? "" : ", " + photo.face();
    String batch = photo.batch() == null ? "" : ", batch " + photo.batch();
    return tabs(
            List.of(
                photo.file(),
                name + ", " + test + score,
                "Photograph: "
                    + test
                    + face
                    + batch
                    + " from "
                    + name
                    + ", replicate "
                    + run.replicate()))
        + "\n";
  }

  private String narration() {
    StringBuilder text = new StringBuilder("# Narration sheet\n\n");
    text.append(escaped(findings.headline())).append(".\n\n");
    for (ProductVerdict product : edition.verdict().products()) {
      text.append("## ").append(escaped(product.name())).append("\n\n");
      text.append("- Score: ").append(escaped(spoken(product))).append('\n');
      edition
          .price(product.id())
          .ifPresent(p -> text.append("- Price: ").append(escaped(spoken(p))).append('\n'));
      for (Node test : product.tests()) {
        if (test.score().value() != null) {
          text.append("- ")
              .append(escaped(test.name() + ": " + words(test) + " out of ten"))
              .append('\n');
        }
      }
      text.append('\n');
    }
    return text + escaped(source()) + "\n";
  }

  private static String words(Node test) {
    String qualifier = Scores.qualifier(test.score());
    String number = Spoken.number(Objects.requireNonNull(test.score().value()));
    return qualifier.isEmpty() || qualifier.equals("no interval")
        ? number
        : qualifier + ", " + number;
  }

  private static String spoken(Campaign.Price price) {
    return Spoken.number(java.math.BigDecimal.valueOf(price.amount()).stripTrailingZeros())
        + " "
        + java.util.Currency.getInstance(price.currency()).getDisplayName(java.util.Locale.ENGLISH)
        + ", as of "
        + price.on();
  }

  private static String spoken(ProductVerdict product) {
    if (product.score().value() == null) {
      return Scores.sentence(product.score());
    }
    String said = Spoken.number(product.score().value()) + " out of ten";
    String qualifier = Scores.qualifier(product.score());
    if (product.score().low() != null && product.score().high() != null) {
      said +=
          ", between "
              + Spoken.number(product.score().low())
              + " and "
              + Spoken.number(product.score().high());
    }
    return qualifier.isEmpty() || qualifier.equals("no interval") ? said : qualifier + " " + said;
  }
}
