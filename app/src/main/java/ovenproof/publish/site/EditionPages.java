package ovenproof.publish.site;

import static j2html.TagCreator.a;
import static j2html.TagCreator.div;
import static j2html.TagCreator.each;
import static j2html.TagCreator.join;
import static j2html.TagCreator.p;
import static j2html.TagCreator.rawHtml;
import static j2html.TagCreator.span;
import static j2html.TagCreator.table;
import static j2html.TagCreator.tbody;
import static j2html.TagCreator.td;
import static j2html.TagCreator.th;
import static j2html.TagCreator.thead;
import static j2html.TagCreator.tr;

import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.publish.edition.EditionChange;
import ovenproof.publish.edition.EditionChange.Move;
import ovenproof.publish.edition.EditionHistory;
import ovenproof.publish.edition.FrozenEdition;
import ovenproof.publish.edition.FrozenEdition.Standing;
import ovenproof.publish.edition.FrozenEdition.TestStanding;
import ovenproof.publish.edition.Words;

/** The page of corrections and changes, and the frozen page of an edition. */
final class EditionPages {
  private EditionPages() {}

  /**
   * Corrections and changes, the newest first, and every edition as it was.
   *
   * @param newestPage where the newest edition's frozen page lies
   * @param inquiries what was asked since
   */
  static Page corrections(EditionHistory history, String newestPage, InquiryPart inquiries) {
    List<DomContent> parts = new ArrayList<>();
    history.changes().forEach(change -> parts.add(change(change)));
    inquiries.part().ifPresent(parts::add);
    parts.add(kept(history, newestPage));
    int changes = history.changes().size();
    return new Page(
        Editions.PAGE,
        changes == 0
            ? "Corrections and changes: none so far"
            : "Corrections and changes: " + Words.count(changes, "new edition", "new editions"),
        List.of(
            p(
                "A published edition stays as it was. What changed afterwards is stated here: when,"
                    + " why, and what it did to the order.")),
        parts,
        null);
  }

  private static DomContent change(EditionChange change) {
    FrozenEdition after = change.after();
    List<String> notes =
        List.of(
            "Published " + Frame.day(after.published()) + ".",
            "Verdict " + change.before().verdict() + " became " + after.verdict() + ".");
    return Elements.part(
        "edition-" + after.number(),
        "Edition " + after.number(),
        notes,
        p(span("Why: " + Words.capital(Editions.why(change)))),
        p(change.effectOnRanks()),
        headline(change),
        method(change),
        change.moves().isEmpty()
            ? Elements.quiet("No printed figure is different.")
            : Elements.wide(
                "Table of what edition " + after.number() + " changed",
                table(
                    thead(Elements.columns("Product", "What", "Was", "Is now")),
                    tbody(each(change.moves(), EditionPages::move)))));
  }

  private static DomContent headline(EditionChange change) {
    String was = change.before().headline();
    String is = change.after().headline();
    return was.isEmpty() || was.equals(is)
        ? rawHtml("")
        : p("The heading was “" + was + "”; it is “" + is + "”.");
  }

  private static DomContent method(EditionChange change) {
    String was = change.before().method();
    String is = change.after().method();
    return was.isEmpty() || was.equals(is)
        ? rawHtml("")
        : p("The method was " + was + "; it is " + is + ".");
  }

  private static DomContent move(Move move) {
    return tr(
        th(move.name()).attr("scope", "row"),
        td(move.kind() == EditionChange.Kind.LISTED ? "in the list" : move.what()),
        td(move.was() == null ? "–" : move.was()).withClass("fig"),
        td(move.is() == null ? "–" : move.is()).withClass("fig"));
  }

  private static DomContent kept(EditionHistory history, String newestPage) {
    List<DomContent> rows = new ArrayList<>();
    for (int i = history.editions().size() - 1; i >= 0; i--) {
      FrozenEdition edition = history.editions().get(i);
      boolean newest = i == history.editions().size() - 1;
      String known = Editions.page(edition);
      rows.add(row(edition, known == null && newest ? newestPage : known));
    }
    return Elements.part(
        "editions",
        "All editions",
        List.of("Each as it was printed on its day."),
        div(
            table(
                thead(Elements.columns("Edition", "Published", "Finding", "Verdict")),
                tbody(each(rows, r -> r)))));
  }

  private static DomContent row(FrozenEdition edition, @Nullable String page) {
    String name = "Edition " + edition.number();
    DomContent link = page == null ? span(name) : a(name).withHref(page);
    return tr(
        th(link).attr("scope", "row"),
        td(Frame.day(edition.published())),
        td(edition.headline().isEmpty() ? "not kept" : edition.headline()),
        td(edition.verdict()));
  }

  /** An edition as printed: kept as it is from now on. */
  static Page frozen(FrozenEdition edition, String path) {
    return new Page(
        path,
        edition.headline(),
        List.of(
            p(
                join(
                    "Edition "
                        + edition.number()
                        + ", kept as it was published on "
                        + Frame.day(edition.published())
                        + ". ",
                    a("What changed since").withHref(SiteAddresses.link(path, Editions.PAGE)),
                    "."))),
        List.of(
            Elements.part(
                "ranking",
                "As printed",
                List.of(
                    Words.capital(Words.count(edition.countedRuns(), "counted run", "counted runs"))
                        + ", method "
                        + edition.method()
                        + ", verdict "
                        + edition.verdict()
                        + "."),
                Elements.wide(
                    "Table of printed scores",
                    table(
                        thead(columns(edition)), tbody(each(edition.products(), s -> printed(s))))),
                p(
                    join(
                        a("The whole verdict").withHref("verdict.json"),
                        " as JSON, and this page ",
                        a("as text").withHref("edition.txt"),
                        ".")))),
        null);
  }

  private static DomContent columns(FrozenEdition edition) {
    List<String> names = new ArrayList<>(List.of(">Rank", "Product", ">Score", ">90 % interval"));
    if (!edition.products().isEmpty()) {
      edition.products().get(0).tests().stream()
          .map(TestStanding::name)
          .forEach(n -> names.add(">" + n));
    }
    names.add("Price");
    return Elements.columns(names.toArray(new String[0]));
  }

  private static DomContent printed(Standing product) {
    return tr(
        Elements.figure(product.rank()),
        th(product.name()).attr("scope", "row"),
        Elements.figure(product.score()),
        Elements.figure(product.interval()),
        each(product.tests(), t -> Elements.figure(t.score())),
        td(product.price() == null ? "not noted" : product.price()));
  }
}
