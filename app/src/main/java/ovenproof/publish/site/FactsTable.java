package ovenproof.publish.site;

import static j2html.TagCreator.a;
import static j2html.TagCreator.br;
import static j2html.TagCreator.each;
import static j2html.TagCreator.iff;
import static j2html.TagCreator.join;
import static j2html.TagCreator.rawHtml;
import static j2html.TagCreator.small;
import static j2html.TagCreator.span;
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
import java.util.Optional;
import ovenproof.campaign.Campaign.Price;
import ovenproof.campaign.Campaign.Product;
import ovenproof.campaign.Entry;
import ovenproof.campaign.FactValue;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Rounding;
import ovenproof.method.Method.Fact;
import ovenproof.publish.figure.Figures;
import ovenproof.publish.figure.Prices;

/** Facts of the products, measured, with the nameplate beside them. */
final class FactsTable {
  /** A nameplate further off than this is flagged. */
  private final View view;

  FactsTable(View view) {
    this.view = view;
  }

  /** All products side by side. */
  DomContent part(String page) {
    List<Fact> facts = view.edition().campaign().method().facts();
    List<String> flagged = flagged();
    String heading =
        facts.isEmpty()
            ? "Prices"
            : flagged.isEmpty()
                ? "Prices and measured facts"
                : flagged.size() == 1
                    ? "One nameplate is off by more than 10 %"
                    : flagged.size() + " nameplates are off by more than 10 %";
    return Elements.part(
        "facts",
        heading,
        facts.isEmpty()
            ? List.of("Prices as seen on the day that stands beside them.")
            : List.of(
                "Measured by us; the nameplate stands beneath.",
                "Prices as seen on the day that stands beside them."),
        Elements.wide("Prices and facts", table(page, facts)));
  }

  private DomContent table(String page, List<Fact> facts) {
    TrTag names = Elements.columns("Product", ">Price");
    facts.forEach(f -> names.with(th(f.name()).attr("scope", "col").withClass("r")));
    return j2html.TagCreator.table(
        thead(names), tbody(each(view.edition().campaign().products(), p -> row(page, p, facts))));
  }

  private DomContent row(String page, Product product, List<Fact> facts) {
    String address = view.addresses().product(product.id());
    TrTag row =
        tr(
            th(a(product.name()).withHref(SiteAddresses.link(page, address))).attr("scope", "row"),
            td(price(view.edition().price(product.id()))).withClass("fig r"));
    facts.forEach(f -> row.with(td(cell(fact(product.id(), f.id()))).withClass("fig r")));
    return row;
  }

  static DomContent price(Optional<Price> price) {
    return price
        .<DomContent>map(
            p ->
                join(
                    text(Prices.text(p)), br(), small(Frame.day(p.on())).withClass("quiet nowrap")))
        .orElseGet(() -> small("not noted").withClass("quiet"));
  }

  private Optional<FactValue> fact(String product, String fact) {
    return Entry.effective(view.edition().campaign().facts()).stream()
        .filter(v -> v.product().equals(product) && v.fact().equals(fact))
        .reduce((first, second) -> second);
  }

  private static DomContent cell(Optional<FactValue> fact) {
    if (fact.isEmpty()) {
      return small("not measured").withClass("quiet");
    }
    Quantity measured = fact.get().measured();
    Quantity nameplate = fact.get().nameplate();
    return join(
        measured == null ? small("not measured").withClass("quiet") : both(measured),
        nameplate == null
            ? rawHtml("")
            : join(br(), small(plate(nameplate, off(fact.get()))).withClass("quiet nowrap")));
  }

  private static String plate(Quantity nameplate, String off) {
    return off.isEmpty() ? "plate " + nameplate : off + ", " + nameplate;
  }

  private static DomContent both(Quantity quantity) {
    return Elements.dual(Figures.dual(quantity, Rounding.HALF_UP));
  }

  /** {@code 12 % off}, when the nameplate is too far from what was measured. */
  private static String off(FactValue fact) {
    double share = fact.shareOffNameplate().orElse(0);
    return fact.isOffNameplate()
        ? Rounding.HALF_UP.text(Math.abs(share) * 100, 0)
            + Figures.GAP
            + "% "
            + (share > 0 ? "above" : "below")
            + " the plate"
        : "";
  }

  private List<String> flagged() {
    List<String> found = new ArrayList<>();
    for (FactValue value : Entry.effective(view.edition().campaign().facts())) {
      if (!off(value).isEmpty()) {
        found.add(value.product() + " " + value.fact());
      }
    }
    return found;
  }

  /** One product's facts, one below the other. */
  DomContent list(String product) {
    List<TrTag> rows = new ArrayList<>();
    for (Fact fact : view.edition().campaign().method().facts()) {
      fact(product, fact.id()).ifPresent(value -> rows.add(line(fact, value)));
    }
    return rows.isEmpty()
        ? Elements.quiet("No facts were measured.")
        : j2html.TagCreator.table(
            thead(Elements.columns("Fact", ">Measured", ">Nameplate", "How")),
            tbody(each(rows, r -> r)));
  }

  private TrTag line(Fact fact, FactValue value) {
    return tr(
        th(fact.name()).attr("scope", "row"),
        td(value.measured() == null ? span("not measured") : both(value.measured()))
            .withClass("fig r"),
        td(
                value.nameplate() == null ? span("–") : both(value.nameplate()),
                iff(!off(value).isEmpty(), join(br(), small(off(value)))))
            .withClass("fig r"),
        td(Objects.requireNonNullElse(fact.how(), "")).withClass("small quiet"));
  }
}
