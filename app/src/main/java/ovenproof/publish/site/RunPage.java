package ovenproof.publish.site;

import static j2html.TagCreator.a;
import static j2html.TagCreator.br;
import static j2html.TagCreator.code;
import static j2html.TagCreator.div;
import static j2html.TagCreator.each;
import static j2html.TagCreator.figcaption;
import static j2html.TagCreator.figure;
import static j2html.TagCreator.join;
import static j2html.TagCreator.p;
import static j2html.TagCreator.rawHtml;
import static j2html.TagCreator.small;
import static j2html.TagCreator.table;
import static j2html.TagCreator.tbody;
import static j2html.TagCreator.td;
import static j2html.TagCreator.th;
import static j2html.TagCreator.thead;
import static j2html.TagCreator.tr;

import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Campaign.SettingCard;
import ovenproof.campaign.Deviation;
import ovenproof.campaign.Event;
import ovenproof.campaign.Photo;
import ovenproof.campaign.Piece;
import ovenproof.campaign.Run;
import ovenproof.campaign.TraceBinding;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Rounding;
import ovenproof.core.quantity.Unit;
import ovenproof.measure.Measured.Value;
import ovenproof.method.TestPlan;
import ovenproof.publish.figure.Figures;
import ovenproof.publish.figure.UncertaintySource;

/** One run: what happened, what was measured, in which files. */
final class RunPage {
  private final View view;
  private final Run run;
  private final String path;
  private final Campaign campaign;

  RunPage(View view, Run run) {
    this.view = view;
    this.run = run;
    this.path = view.addresses().run(run.id());
    this.campaign = view.edition().campaign();
  }

  Page page() {
    List<DomContent> parts = new ArrayList<>();
    parts.add(measurements());
    parts.add(events());
    parts.add(traces());
    parts.add(pictures());
    parts.add(pieces());
    parts.add(files());
    return new Page(path, heading(), intro(), parts, null);
  }

  private String testName() {
    return campaign.method().test(run.test()).map(TestPlan::name).orElse(run.test());
  }

  private String heading() {
    String ending =
        campaign.eventsOf(run.id()).stream()
            .filter(e -> e.type() == Event.Type.STOP)
            .reduce((first, second) -> second)
            .map(RunPage::ending)
            .orElse("");
    return view.edition().name(run.product()) + ", " + testName() + ", " + run.id() + ending;
  }

  private static String ending(Event stop) {
    String after = Figures.text(stop.elapsedSeconds(), Unit.SECOND);
    return "cap".equals(stop.value())
        ? ": not done at the cap, " + after
        : ": ended after " + after;
  }

  private List<DomContent> intro() {
    List<DomContent> intro = new ArrayList<>();
    intro.add(
        p(
            a(view.edition().name(run.product()))
                .withHref(SiteAddresses.link(path, view.addresses().product(run.product()))),
            rawHtml(" · "),
            a(testName()).withHref(SiteAddresses.link(path, view.addresses().test(run.test()))),
            rawHtml(" · "),
            a("Score")
                .withHref(
                    SiteAddresses.link(path, view.addresses().score(run.product(), run.test())))));
    String counts = campaign.whyNotCounted(run).map(w -> "Does not count: " + w).orElse("Counts");
    intro.add(
        p(
            view.names().hidden(counts)
                + ". Variant "
                + run.variant()
                + ", replicate "
                + run.replicate()
                + (run.specimen() == null ? "" : ", specimen " + run.specimen())
                + (run.started() == null && run.session() == null
                    ? ""
                    : ", " + new RunTable(view).when(run))
                + (run.redoOf() == null ? "" : ". Repeats " + run.redoOf())
                + "."));
    card()
        .forEach(
            c -> intro.add(p("Setting: " + view.names().hidden(ProductPage.setting(c)) + ".")));
    List<Deviation> deviations = campaign.deviationsOf(run.id());
    if (!deviations.isEmpty()) {
      intro.add(Elements.bullets(deviations.stream().map(this::deviation).toList()));
    }
    return intro;
  }

  private List<SettingCard> card() {
    return campaign.settingCards().stream()
        .filter(c -> c.product().equals(run.product()) && c.test().equals(run.test()))
        .filter(c -> c.variant().equals(run.variant()))
        .toList();
  }

  private String deviation(Deviation deviation) {
    String consequence =
        switch (deviation.deviationClass()) {
          case 1 -> "noted";
          case 2 -> "results are looked at with and without";
          default -> "the run is void";
        };
    return view.names()
        .hidden(
            "Deviation of class "
                + deviation.deviationClass()
                + " ("
                + consequence
                + "): "
                + deviation.what()
                + (deviation.note() == null ? "" : "; " + deviation.note()));
  }

  private List<Value> values() {
    return view.edition().measured().values().stream()
        .filter(v -> run.id().equals(v.run()))
        .toList();
  }

  private DomContent measurements() {
    List<Value> values = values();
    if (values.isEmpty()) {
      return Elements.part("measured", "Nothing was measured in this run", List.of());
    }
    return Elements.part(
        "measured",
        values.size() == 1 ? "One measurement" : values.size() + " measurements",
        List.of("± is one standard uncertainty; its sources stand beneath it."),
        Elements.wide(
            "Measurements",
            table(
                thead(Elements.columns("Measure", ">Value", "Uncertainty", "Definition", "From")),
                tbody(each(values, this::measurementRow)))),
        details(values));
  }

  private DomContent measurementRow(Value value) {
    Measurement m = value.value();
    return tr(
        th(m.label(), m.n() > 1 ? " (n = " + m.n() + ")" : "").attr("scope", "row"),
        Elements.figure(Figures.of(m)),
        td(uncertainty(m)).withClass("small"),
        td(view.names().hidden(m.definition())
                + " ("
                + m.id()
                + ", revision "
                + m.revision()
                + ")"
                + (m.note() == null ? "" : ". " + view.names().hidden(m.note())))
            .withClass("small quiet"),
        td(m.evidence().stream()
                .map(view.names()::hidden)
                .map(RunPage::shortened)
                .collect(Collectors.joining(", ")))
            .withClass("small quiet"));
  }

  /** Long fingerprints are printed in full among the files, here by their first digits. */
  private static String shortened(String evidence) {
    return evidence.replaceAll("\\b([0-9a-f]{8})[0-9a-f]{56}\\b", "$1…");
  }

  private static j2html.tags.specialized.ThTag th(String name, String n) {
    return j2html.TagCreator.th(name + n);
  }

  private static DomContent uncertainty(Measurement m) {
    if (m.value() == null || m.uncertainty() == null) {
      return rawHtml("");
    }
    String sources =
        m.components().stream().map(c -> source(c, m)).collect(Collectors.joining("; "));
    return join(
        j2html.TagCreator.text(Figures.withUncertainty(m.value(), m.uncertainty(), m.unit())),
        br(),
        small(sources).withClass("quiet"));
  }

  private static String source(Component component, Measurement m) {
    return UncertaintySource.ofRun(component).what()
        + " "
        + Figures.uncertainty(Math.abs(component.u()), m.unit());
  }

  /** Batches, pieces and faces behind the values, where there is more than one. */
  private DomContent details(List<Value> values) {
    List<Measurement> parts =
        values.stream().filter(v -> v.parts().size() > 1).flatMap(v -> v.parts().stream()).toList();
    return parts.isEmpty()
        ? rawHtml("")
        : j2html.TagCreator.details(
            j2html.TagCreator.summary("The " + parts.size() + " values behind them"),
            Elements.wide(
                "Values behind the measurements",
                table(
                    thead(Elements.columns("Measure", "Of", ">Value")),
                    tbody(
                        each(
                            parts,
                            m ->
                                tr(
                                    j2html.TagCreator.th(m.label()).attr("scope", "row"),
                                    td(subject(m)),
                                    Elements.figure(Figures.of(m))))))));
  }

  private static String subject(Measurement m) {
    return java.util.stream.Stream.of(
            m.subject().batch() == null ? null : "batch " + m.subject().batch(),
            m.subject().piece() == null ? null : "piece " + m.subject().piece(),
            m.subject().face(),
            m.subject().channel())
        .filter(Objects::nonNull)
        .collect(Collectors.joining(", "));
  }

  private DomContent events() {
    List<Event> events = campaign.eventsOf(run.id());
    return events.isEmpty()
        ? rawHtml("")
        : Elements.part(
            "events",
            "What happened",
            List.of("Times since the start of the run."),
            table(
                thead(Elements.columns(">Time", "Event", "Batch", "Value", "Note")),
                tbody(
                    each(
                        events,
                        e ->
                            tr(
                                Elements.figure(Figures.text(e.elapsedSeconds(), Unit.SECOND)),
                                td(e.type().word().replace('-', ' ')),
                                td(e.batch() == null ? "" : e.batch().toString()),
                                td(Objects.requireNonNullElse(view.names().hide(e.value()), "")),
                                td(
                                    Objects.requireNonNullElse(
                                        view.names().hide(e.note()), "")))))));
  }

  private DomContent traces() {
    return view.traces(run).isEmpty()
        ? rawHtml("")
        : Elements.part(
            "traces",
            "Traces",
            List.of(),
            div(each(view.traces(run), t -> figure(rawHtml(t.svg()), figcaption(t.caption())))));
  }

  private DomContent pictures() {
    return view.pictures(run).isEmpty()
        ? rawHtml("")
        : Elements.part(
            "pictures",
            "Pictures",
            List.of("Made smaller; the fingerprints below belong to the files as they came in."),
            div(each(
                    view.pictures(run),
                    x ->
                        ProductPage.picture(
                            path,
                            x,
                            "batch " + x.batch() + (x.face().isEmpty() ? "" : ", " + x.face()))))
                .withClass("gallery"));
  }

  private DomContent pieces() {
    List<Piece> pieces = campaign.pieces().stream().filter(x -> x.run().equals(run.id())).toList();
    return pieces.isEmpty()
        ? rawHtml("")
        : Elements.part(
            "pieces",
            "Weighed",
            List.of(),
            table(
                thead(Elements.columns("Batch", "Piece", "Position", "Lot", ">Before", ">After")),
                tbody(
                    each(
                        pieces,
                        x ->
                            tr(
                                td(Integer.toString(x.batch())),
                                td(x.piece()),
                                td(Objects.requireNonNullElse(x.position(), "")),
                                td(Objects.requireNonNullElse(x.lot(), "")),
                                Elements.figure(weight(x.before())),
                                Elements.figure(weight(x.after())))))));
  }

  private static String weight(@Nullable Quantity quantity) {
    return quantity == null ? "–" : Figures.text(quantity, Rounding.HALF_UP);
  }

  private DomContent files() {
    Set<String> files = new LinkedHashSet<>();
    campaign.photos().stream()
        .filter(x -> x.run().equals(run.id()))
        .map(Photo::file)
        .forEach(files::add);
    campaign.traces().stream().filter(this::serves).map(TraceBinding::file).forEach(files::add);
    values().stream()
        .flatMap(v -> v.value().evidence().stream())
        .map(e -> e.split("[ #@]", 2)[0])
        .filter(e -> view.edition().evidence().fingerprint(e).isPresent())
        .forEach(files::add);
    return files.isEmpty()
        ? Elements.part(
            "files",
            "No file behind it",
            List.of(),
            Elements.quiet(
                "Everything known of this run was typed in by hand; it is listed above."))
        : Elements.part(
            "files",
            "Files as they came in",
            List.of("SHA-256 of each file: whoever has it can check that it is the same."),
            Elements.wide(
                "Files",
                table(
                    thead(Elements.columns("File", ">Bytes", "SHA-256")),
                    tbody(each(files, this::fileRow)))));
  }

  private boolean serves(TraceBinding trace) {
    return run.id().equals(trace.run())
        || (trace.run() == null
            && run.product().equals(trace.product())
            && values().stream()
                .flatMap(v -> v.value().evidence().stream())
                .anyMatch(e -> e.startsWith(trace.file())));
  }

  private DomContent fileRow(String file) {
    boolean named = view.names().mentions(file);
    return tr(
        td(named ? "(name withheld: it holds a person’s name)" : file),
        Elements.figure(
            view.edition().evidence().size(file).map(Object::toString).orElse("missing")),
        td(code(view.edition().evidence().fingerprint(file).orElse("missing")))
            .withClass("fingerprint"));
  }
}
