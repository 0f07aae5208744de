package ovenproof.publish.site;

import static j2html.TagCreator.a;
import static j2html.TagCreator.div;
import static j2html.TagCreator.each;
import static j2html.TagCreator.p;
import static j2html.TagCreator.table;
import static j2html.TagCreator.tbody;
import static j2html.TagCreator.td;
import static j2html.TagCreator.text;
import static j2html.TagCreator.th;
import static j2html.TagCreator.thead;
import static j2html.TagCreator.tr;

import j2html.tags.DomContent;
import j2html.tags.specialized.TrTag;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Entry;
import ovenproof.campaign.FactValue;
import ovenproof.campaign.FeatureChecklist;
import ovenproof.campaign.FeatureState;
import ovenproof.campaign.RatedStep;
import ovenproof.core.quantity.Quantity;
import ovenproof.measure.FeatureMeasures;
import ovenproof.method.MeasureUse;
import ovenproof.method.Method;

/** The rows of a table that a value of a product, not of a run, was read from. */
final class ProductRows {
  private final View view;
  private final Campaign campaign;
  private final String page;
  private final String product;

  ProductRows(View view, String page, String product) {
    this.view = view;
    this.campaign = view.edition().campaign();
    this.page = page;
    this.product = product;
  }

  DomContent of(MeasureUse use) {
    return switch (use.take()) {
      case MeasureUse.FEATURE, MeasureUse.FEATURES ->
          rows("features", features(use), "Feature", "State", ">Parts", "Looked at", "Note");
      case MeasureUse.RATED ->
          rows("rated", steps(use), "Person", ">Step", "What that step is", "Reason");
      default -> rows("facts", facts(use), "Fact", ">Measured", ">±", "Note");
    };
  }

  private DomContent rows(String table, List<TrTag> rows, String... columns) {
    String file = "data/" + table + ".csv";
    DomContent source =
        p(
            text(rows.isEmpty() ? "No row of " : "From "),
            a(table + ".csv").withHref(SiteAddresses.link(page, file)),
            text(rows.isEmpty() ? " says anything of it." : ", the rows of " + name() + ":"));
    return rows.isEmpty()
        ? source
        : div(
            source,
            Elements.wide(
                "Rows of " + table + ".csv",
                table(thead(Elements.columns(columns)), tbody(each(rows, r -> r)))));
  }

  private String name() {
    return campaign.product(product).map(Campaign.Product::name).orElse(product);
  }

  private List<TrTag> features(MeasureUse use) {
    FeatureChecklist checklist = FeatureChecklist.of(campaign);
    List<TrTag> rows = new ArrayList<>();
    for (Method.Feature feature : FeatureMeasures.taken(campaign.method(), use)) {
      var said = checklist.state(product, feature.name());
      rows.add(
          tr(
              th(feature.name()).attr("scope", "row"),
              FeaturesTable.cell(said),
              Elements.figure(Integer.toString(feature.parts())),
              td(said.map(FeatureState::on).map(Frame::day).orElse("")).withClass("nowrap"),
              quiet(said.map(FeatureState::note).orElse(""))));
    }
    return rows;
  }

  /** Raters have no names in public; two people are told apart by their order. */
  private List<TrTag> steps(MeasureUse use) {
    List<String> words =
        campaign.method().ratedFacts().stream()
            .filter(f -> f.id().equals(use.ofOrId()))
            .findFirst()
            .map(Method.RatedFact::steps)
            .orElse(List.of());
    List<TrTag> rows = new ArrayList<>();
    for (RatedStep step : Entry.effective(campaign.ratedSteps())) {
      if (step.product().equals(product) && step.fact().equals(use.ofOrId())) {
        rows.add(
            tr(
                th("person " + (rows.size() + 1)).attr("scope", "row"),
                Elements.figure(Integer.toString(step.step())),
                td(step.step() < words.size() ? words.get(step.step()) : ""),
                quiet(Objects.requireNonNullElse(step.reason(), ""))));
      }
    }
    return rows;
  }

  private List<TrTag> facts(MeasureUse use) {
    List<TrTag> rows = new ArrayList<>();
    for (FactValue fact : Entry.effective(campaign.facts())) {
      if (fact.product().equals(product) && fact.fact().equals(use.ofOrId())) {
        rows.add(
            tr(
                th(fact.fact()).attr("scope", "row"),
                Elements.figure(written(fact.measured())),
                Elements.figure(written(fact.uncertainty())),
                quiet(Objects.requireNonNullElse(fact.note(), ""))));
      }
    }
    return rows;
  }

  private static String written(@org.jspecify.annotations.Nullable Quantity quantity) {
    return quantity == null ? "–" : quantity.toString();
  }

  private DomContent quiet(String words) {
    return td(view.names().hidden(words)).withClass("small quiet");
  }
}
