package ovenproof.publish.site;

import static j2html.TagCreator.div;
import static j2html.TagCreator.each;
import static j2html.TagCreator.figcaption;
import static j2html.TagCreator.figure;
import static j2html.TagCreator.h3;
import static j2html.TagCreator.li;
import static j2html.TagCreator.p;
import static j2html.TagCreator.rawHtml;
import static j2html.TagCreator.ul;

import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.List;
import ovenproof.chart.CavityChart;
import ovenproof.measure.CavityStudy;
import ovenproof.measure.CavityWords;
import ovenproof.method.TestPlan;

/** Where each product bakes paler and darker: one map each, on one scale. */
final class CavityPart {
  private final View view;
  private final TestPlan test;

  CavityPart(View view, TestPlan test) {
    this.view = view;
    this.test = test;
  }

  /** Nothing where no piece has a place. */
  DomContent part() {
    CavityStudy study = CavityStudy.of(view.edition().campaign(), view.edition().measured(), test);
    if (study.products().isEmpty()) {
      return rawHtml("");
    }
    List<CavityChart.Place> all = new ArrayList<>();
    study.products().forEach(of -> all.addAll(places(of)));
    double most = CavityChart.most(all);
    String ends = String.valueOf(Math.round(most));
    return Elements.part(
        "cavity",
        "Where it bakes paler and darker",
        List.of(
            "Each bead is one place of the tray from above: how much paler (+) or darker (−) it bakes"
                + " than the mean of all places, in L*. Nothing is painted in between.",
            "Tray: 90 % interval. The tick is no effect. Every oven uses −"
                + ends
                + " to +"
                + ends
                + " L*."),
        div(each(study.products(), of -> map(of, most))).withClass("stack"));
  }

  private DomContent map(CavityStudy.OfProduct of, double most) {
    String name = view.edition().name(of.product());
    List<CavityChart.Place> places = places(of);
    String sentence =
        name + ", lightness of each place against the mean, L*: " + CavityChart.listed(places);
    return figure(
        h3(name + ": " + CavityWords.finding(of)),
        div(
                p("back wall").withClass("small side"),
                rawHtml(new CavityChart(places, most).svg(sentence)),
                p("door").withClass("small side"))
            .withClass("cavity-box"),
        figcaption(
            ul(each(CavityWords.rows(of), r -> li(words(r)))).withClass("list"),
            each(CavityWords.notes(of), n -> p(n).withClass("small quiet"))));
  }

  private static String words(CavityWords.Row row) {
    String figure = row.figure().isEmpty() ? "" : " (" + row.figure() + ")";
    return row.question() + (row.question().endsWith("?") ? " " : ": ") + row.answer() + figure;
  }

  private static List<CavityChart.Place> places(CavityStudy.OfProduct of) {
    return of.map().effects().stream().map(CavityChart.Place::of).toList();
  }
}
