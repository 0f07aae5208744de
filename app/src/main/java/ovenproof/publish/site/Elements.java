package ovenproof.publish.site;

import static j2html.TagCreator.a;
import static j2html.TagCreator.details;
import static j2html.TagCreator.div;
import static j2html.TagCreator.each;
import static j2html.TagCreator.h2;
import static j2html.TagCreator.header;
import static j2html.TagCreator.join;
import static j2html.TagCreator.li;
import static j2html.TagCreator.p;
import static j2html.TagCreator.rawHtml;
import static j2html.TagCreator.section;
import static j2html.TagCreator.small;
import static j2html.TagCreator.span;
import static j2html.TagCreator.summary;
import static j2html.TagCreator.td;
import static j2html.TagCreator.th;
import static j2html.TagCreator.tr;
import static j2html.TagCreator.ul;

import j2html.tags.ContainerTag;
import j2html.tags.DomContent;
import j2html.tags.specialized.TdTag;
import j2html.tags.specialized.TrTag;
import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.chart.ScoreChart;
import ovenproof.publish.figure.Dual;
import ovenproof.publish.figure.Scores;
import ovenproof.verdict.Verdict.Score;

/** What pages are put together from. */
final class Elements {

  private Elements() {}

  /** A section with its heading in the margin column. */
  static DomContent part(String anchor, String heading, List<String> notes, DomContent... content) {
    return section(
            header(h2(heading).withId(anchor), each(notes, n -> p(n).withClass("quiet"))),
            div(content))
        .withClass("part")
        .attr("aria-labelledby", anchor);
  }

  /** A table that may be wider than the screen: it scrolls by itself, also by keyboard. */
  static DomContent wide(String label, DomContent table) {
    return div(table)
        .withClass("wide")
        .attr("role", "region")
        .attr("aria-label", label)
        .attr("tabindex", "0");
  }

  /** A figure in both unit systems. */
  static DomContent dual(Dual dual) {
    if (dual.second() == null) {
      return span(dual.first()).withClass("nowrap");
    }
    return join(
        span(dual.first()).withClass("nowrap"), small(dual.second()).withClass("quiet nowrap"));
  }

  static TdTag figure(Dual dual) {
    return td(dual(dual)).withClass("fig r");
  }

  static TdTag figure(String digits) {
    return td(digits).withClass("fig r");
  }

  static TrTag columns(String... names) {
    TrTag row = tr();
    for (String name : names) {
      boolean right = name.startsWith(">");
      String words = right ? name.substring(1) : name;
      if (words.isEmpty()) {
        row.with(td());
      } else {
        var cell = th(words).attr("scope", "col");
        row.with(right ? cell.withClass("r") : cell);
      }
    }
    return row;
  }

  /** A score with its word, and its tray beneath; links to its chain when an address is given. */
  static DomContent score(Score score, @Nullable String href) {
    String qualifier = Scores.qualifier(score);
    DomContent digits =
        switch (score.known()) {
          case INTERVAL -> span(Scores.digits(score));
          case VALUE_ONLY -> span(Scores.digits(score));
          case AT_MOST, AT_LEAST -> join(small(qualifier), Scores.digits(score));
          case CANNOT_DO -> join(Scores.digits(score), small(qualifier));
          case BOUNDS -> join(Scores.interval(score), small(qualifier));
          case NOT_ASKED, NONE -> small(qualifier);
        };
    DomContent shown = href == null ? span(digits).withClass("plain") : a(digits).withHref(href);
    return join(shown, rawHtml(ScoreChart.mini(Scores.tray(score))));
  }

  static DomContent bullets(List<String> sentences) {
    return ul(each(sentences, s -> li(s))).withClass("plain-list");
  }

  /** Few sentences as they are; more than three behind their number. */
  static DomContent folded(List<String> sentences, String what) {
    List<String> said = sentences.stream().map(ovenproof.publish.edition.Words::capital).toList();
    if (said.size() <= 3) {
      return said.isEmpty() ? rawHtml("") : bullets(said);
    }
    return details(summary(said.size() + " " + what), bullets(said));
  }

  /** A paragraph, or nothing. */
  static DomContent maybe(@Nullable String sentence) {
    return sentence == null || sentence.isBlank() ? rawHtml("") : p(sentence);
  }

  static ContainerTag<?> quiet(String sentence) {
    return p(sentence).withClass("quiet");
  }
}
