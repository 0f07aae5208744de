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
import java.util.List;
import java.util.stream.Collectors;
import ovenproof.method.TestPlan;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.figure.Scores;
import ovenproof.verdict.Verdict.ProductVerdict;

/** The table of scores as HTML, Markdown and tabs. */
final class ScoreTable {
  private static final int PRODUCT = 1;

  private final Edition edition;
  private final String source;

  ScoreTable(Edition edition, String source) {
    this.edition = edition;
    this.source = source;
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
    row.add(Fragments.price(edition, product.id()));
    return row;
  }

  String html() {
    TrTag head = tr();
    header().forEach(h -> head.with(th(h).attr("scope", "col")));
    return table(caption(source), thead(head), tbody(each(rows(), ScoreTable::htmlRow))).render()
        + "\n";
  }

  private static TrTag htmlRow(List<String> cells) {
    TrTag row = tr();
    for (int i = 0; i < cells.size(); i++) {
      row.with(i == PRODUCT ? th(cells.get(i)).attr("scope", "row") : td(cells.get(i)));
    }
    return row;
  }

  String markdown() {
    List<String> header = header();
    String rule = header.stream().map(h -> "---").collect(Collectors.joining(" | ", "| ", " |"));
    String body = rows().stream().map(ScoreTable::line).collect(Collectors.joining("\n"));
    return line(header) + "\n" + rule + "\n" + body + "\n\n" + Markup.escaped(source) + "\n";
  }

  private static String line(List<String> cells) {
    return cells.stream().map(Markup::escaped).collect(Collectors.joining(" | ", "| ", " |"));
  }

  String tsv() {
    List<List<String>> all = new ArrayList<>();
    all.add(header());
    all.addAll(rows());
    return all.stream().map(Markup::tabs).collect(Collectors.joining("\n", "", "\n"));
  }
}
