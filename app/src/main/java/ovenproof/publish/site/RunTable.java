package ovenproof.publish.site;

import static j2html.TagCreator.a;
import static j2html.TagCreator.each;
import static j2html.TagCreator.tbody;
import static j2html.TagCreator.td;
import static j2html.TagCreator.th;
import static j2html.TagCreator.thead;
import static j2html.TagCreator.tr;

import j2html.tags.DomContent;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import ovenproof.campaign.Deviation;
import ovenproof.campaign.Run;
import ovenproof.chart.Sign;
import ovenproof.method.TestPlan;

/** Runs one below the other, each with what became of it. */
final class RunTable {
  private static final DateTimeFormatter WHEN =
      DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm", Locale.ENGLISH);

  private final View view;

  RunTable(View view) {
    this.view = view;
  }

  DomContent table(String page, List<Run> runs) {
    if (runs.isEmpty()) {
      return Elements.quiet("No run is on record.");
    }
    return Elements.wide(
        "Runs",
        j2html.TagCreator.table(
            thead(
                Elements.columns(
                    "Run",
                    "Product",
                    "Test",
                    "Variant",
                    ">Replicate",
                    "When",
                    "Counts",
                    "Deviations")),
            tbody(each(runs, run -> row(page, run)))));
  }

  private DomContent row(String page, Run run) {
    String why = view.edition().campaign().whyNotCounted(run).orElse("counts");
    List<Deviation> deviations = view.edition().campaign().deviationsOf(run.id());
    return tr(
        th(a(run.id()).withHref(SiteAddresses.link(page, view.addresses().run(run.id()))))
            .attr("scope", "row"),
        td(view.edition().name(run.product())),
        td(
            view.edition()
                .campaign()
                .method()
                .test(run.test())
                .map(TestPlan::name)
                .orElse(run.test())),
        td(run.variant()),
        Elements.figure(Integer.toString(run.replicate())),
        td(when(run)).withClass("nowrap"),
        td(view.names().hidden(why)),
        td(each(deviations, this::deviation)));
  }

  private DomContent deviation(Deviation deviation) {
    return j2html.TagCreator.div(
        j2html.TagCreator.rawHtml(Sign.ofDeviationClass(deviation.deviationClass()).svg()),
        j2html.TagCreator.span(
            " class " + deviation.deviationClass() + ", " + view.names().hidden(deviation.what())));
  }

  String when(Run run) {
    return run.started() == null
        ? Objects.requireNonNullElse(run.session(), "–")
        : WHEN.format(run.started().atZone(view.edition().campaign().info().zone()));
  }
}
