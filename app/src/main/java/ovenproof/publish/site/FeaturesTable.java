package ovenproof.publish.site;

import static j2html.TagCreator.a;
import static j2html.TagCreator.each;
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
import j2html.tags.specialized.TdTag;
import j2html.tags.specialized.TrTag;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import ovenproof.campaign.Campaign.Product;
import ovenproof.campaign.FeatureChecklist;
import ovenproof.campaign.FeatureState;
import ovenproof.chart.Sign;

/** Which product has which feature. Nothing is shown when nothing was looked at. */
final class FeaturesTable {
  private final View view;
  private final FeatureChecklist checklist;

  FeaturesTable(View view) {
    this.view = view;
    this.checklist = FeatureChecklist.of(view.edition().campaign());
  }

  /** All products side by side. */
  Optional<DomContent> part() {
    if (checklist.isEmpty()) {
      return Optional.empty();
    }
    List<Product> products = view.edition().campaign().products();
    TrTag names = Elements.columns("Feature");
    products.forEach(
        p ->
            names.with(
                th(a(p.name())
                        .withHref(
                            SiteAddresses.link(
                                SiteAddresses.INDEX, view.addresses().product(p.id()))))
                    .attr("scope", "col")));
    return Optional.of(
        Elements.part(
            "features",
            "Which one has what",
            List.of("“Not looked at” is not a no."),
            Elements.wide(
                "Features by product",
                table(thead(names), tbody(each(checklist.features(), f -> row(f, products)))))));
  }

  private TrTag row(String feature, List<Product> products) {
    TrTag row = tr(th(feature).attr("scope", "row"));
    products.forEach(p -> row.with(cell(checklist.state(p.id(), feature))));
    return row;
  }

  static TdTag cell(Optional<FeatureState> said) {
    return said.map(s -> td(words(s.state())))
        .orElseGet(() -> td(small("not looked at").withClass("quiet")));
  }

  private static DomContent words(FeatureState.State state) {
    return switch (state) {
      case YES -> words(Sign.HOLDS, "yes");
      case NO -> words(Sign.ABSENT, "no");
      case NOT_APPLICABLE -> words(Sign.CANNOT, "not applicable");
    };
  }

  private static DomContent words(Sign sign, String words) {
    return span(rawHtml(sign.svg()), text(" " + words)).withClass("nowrap");
  }

  /** One product's features, one below the other, with what was noted. */
  Optional<DomContent> part(String product) {
    List<FeatureState> said =
        checklist.features().stream()
            .map(f -> checklist.state(product, f))
            .flatMap(Optional::stream)
            .toList();
    return said.isEmpty()
        ? Optional.empty()
        : Optional.of(
            Elements.part(
                "features",
                "What it has and has not",
                List.of(),
                Elements.wide(
                    "Features",
                    table(
                        thead(Elements.columns("Feature", "State", "Looked at", "Note")),
                        tbody(each(said, this::line))))));
  }

  private TrTag line(FeatureState said) {
    return tr(
        th(said.feature()).attr("scope", "row"),
        td(words(said.state())),
        td(said.on() == null ? "" : Frame.day(said.on())).withClass("nowrap"),
        td(Objects.requireNonNullElse(view.names().hide(said.note()), ""))
            .withClass("small quiet"));
  }
}
