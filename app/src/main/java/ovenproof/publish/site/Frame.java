package ovenproof.publish.site;

import static j2html.TagCreator.a;
import static j2html.TagCreator.aside;
import static j2html.TagCreator.b;
import static j2html.TagCreator.body;
import static j2html.TagCreator.details;
import static j2html.TagCreator.div;
import static j2html.TagCreator.each;
import static j2html.TagCreator.footer;
import static j2html.TagCreator.h1;
import static j2html.TagCreator.head;
import static j2html.TagCreator.header;
import static j2html.TagCreator.html;
import static j2html.TagCreator.iff;
import static j2html.TagCreator.li;
import static j2html.TagCreator.link;
import static j2html.TagCreator.main;
import static j2html.TagCreator.meta;
import static j2html.TagCreator.nav;
import static j2html.TagCreator.p;
import static j2html.TagCreator.rawHtml;
import static j2html.TagCreator.script;
import static j2html.TagCreator.section;
import static j2html.TagCreator.small;
import static j2html.TagCreator.span;
import static j2html.TagCreator.summary;
import static j2html.TagCreator.title;
import static j2html.TagCreator.ul;

import j2html.tags.DomContent;
import java.time.LocalDate;
import java.util.List;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.edition.Words;

/** What stands around every page: head, navigation, what is invented, and how it was made. */
final class Frame {
  private static final String MARK =
      "<svg viewBox=\"0 0 30 30\" aria-hidden=\"true\"><path d=\"M2 15v12h26V15\" fill=\"none\""
          + " stroke=\"currentColor\" stroke-width=\"3.5\"/><circle cx=\"18.5\" cy=\"18.5\""
          + " r=\"6.5\" fill=\"currentColor\"/><path d=\"M9 3h12\" stroke=\"currentColor\""
          + " stroke-width=\"3.5\"/></svg>";

  private record Door(String name, String path) {}

  private static final List<Door> DOORS =
      List.of(
          new Door("Ranking", SiteAddresses.INDEX),
          new Door("Products", "products/index.html"),
          new Door("Tests", "tests/index.html"),
          new Door("Method", SiteAddresses.METHOD),
          new Door("Evidence", SiteAddresses.EVIDENCE));

  private final Edition edition;
  private final List<Door> doors;

  /**
   * @param standing whether the site has a standing list
   */
  Frame(Edition edition, boolean standing) {
    this.edition = edition;
    this.doors = new java.util.ArrayList<>(DOORS);
    if (standing) {
      doors.add(new Door("Standing list", StandingList.PAGE));
    }
  }

  /** The whole document. */
  String render(Page page) {
    return "<!doctype html>\n"
        + html(
                head(
                    meta().withCharset("utf-8"),
                    meta().withName("viewport").withContent("width=device-width, initial-scale=1"),
                    title(page.heading() + " · " + edition.campaign().info().title()),
                    iff(edition.isInvented(), meta().withName("robots").withContent("noindex")),
                    link()
                        .withRel("icon")
                        .withHref(SiteAddresses.link(page.path(), SiteAddresses.MARK))
                        .withType("image/svg+xml"),
                    link()
                        .withRel("stylesheet")
                        .withHref(SiteAddresses.link(page.path(), SiteAddresses.STYLE)),
                    iff(page.structuredData() != null, structuredData(page))),
                body(
                    a("To the content").withClass("skip").withHref("#main"),
                    top(page),
                    invented(),
                    where(),
                    main(
                            section(h1(page.heading()), each(page.intro(), c -> c))
                                .withClass("lead"),
                            each(page.parts(), c -> c))
                        .withId("main"),
                    foot(page)))
            .withLang("en")
            .render()
        + "\n";
  }

  private static DomContent structuredData(Page page) {
    String json = page.structuredData() == null ? "" : page.structuredData();
    return script(rawHtml(json)).withType("application/ld+json");
  }

  private DomContent top(Page page) {
    return header(
            a(
                    rawHtml(MARK),
                    span(edition.campaign().info().title()),
                    small(edition.campaign().info().kitchen()))
                .withClass("mark")
                .withHref(SiteAddresses.link(page.path(), SiteAddresses.INDEX)),
            nav(
                    ul(each(doors, door -> li(door(page, door)))),
                    details(summary(span("Pages")), ul(each(doors, door -> li(door(page, door))))))
                .withClass("stages")
                .attr("aria-label", "Pages"))
        .withClass("top");
  }

  private static DomContent door(Page page, Door door) {
    var link = a(door.name()).withHref(SiteAddresses.link(page.path(), door.path()));
    return belongs(page.path(), door.path())
        ? link.attr("aria-current", current(page, door))
        : link;
  }

  private static String current(Page page, Door door) {
    return page.path().equals(door.path()) ? "page" : "true";
  }

  private static boolean belongs(String path, String door) {
    int slash = door.indexOf('/');
    return slash < 0 ? path.equals(door) : path.startsWith(door.substring(0, slash + 1));
  }

  private DomContent invented() {
    return iff(
        edition.isInvented(),
        aside(b("Invented. "), span("No such products, people, kitchen or prices exist."))
            .attr("aria-label", "Invented")
            .withClass("invented"));
  }

  private DomContent where() {
    return section(
            span(b(edition.campaign().info().title())),
            span("method " + edition.campaign().method().version()),
            span("verdict " + edition.verdict().version()),
            span("published " + day(edition.published())))
        .attr("aria-label", "This edition")
        .withClass("where");
  }

  private DomContent foot(Page page) {
    return footer(
            div(
                p(
                    span("Published by "),
                    b(edition.campaign().info().kitchen()),
                    span(" on " + day(edition.published()) + ". Every figure links to what it was"),
                    span(" computed from. "),
                    a("All data as tables")
                        .withHref(SiteAddresses.link(page.path(), "data/index.html"))),
                p("Made with Ovenproof. Numbers are rounded once, from the stored value, after"
                        + " conversion; floors are rounded up.")
                    .withClass("quiet")))
        .withClass("foot small");
  }

  static String day(LocalDate date) {
    return Words.day(date);
  }
}
