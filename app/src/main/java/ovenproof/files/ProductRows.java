package ovenproof.files;

import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.FactValue;
import ovenproof.campaign.FeatureState;
import ovenproof.campaign.RatedStep;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.input.Words;
import ovenproof.input.Written;
import ovenproof.method.Method;

/** Reads what is known of products, lots and instruments, apart from runs. */
final class ProductRows {
  private final Context context;

  ProductRows(Context context) {
    this.context = context;
  }

  Optional<Campaign.Product> product(Row row) {
    return row.find("product")
        .flatMap(Written::key)
        .map(
            id ->
                new Campaign.Product(
                    id,
                    row.raw("name").strip(),
                    row.textOrNull("maker"),
                    row.textOrNull("kind"),
                    row.textOrNull("note")));
  }

  Optional<Campaign.LeftOut> leftOut(Row row) {
    return Optional.of(new Campaign.LeftOut(row.raw("name").strip(), row.raw("why").strip()));
  }

  Optional<Campaign.Specimen> specimen(Row row) {
    Optional<String> id = row.find("specimen").flatMap(Written::key);
    Campaign.Acquired acquired =
        row.find("acquired")
            .flatMap(w -> w.word(Campaign.Acquired.class))
            .orElse(Campaign.Acquired.UNKNOWN);
    Campaign.Became became =
        row.find("became")
            .flatMap(w -> w.word(Campaign.Became.class))
            .orElse(Campaign.Became.UNKNOWN);
    LocalDate on = row.find("on").flatMap(Written::date).orElse(null);
    LocalDate becameOn = row.find("became_on").flatMap(Written::date).orElse(null);
    return id.map(
        key ->
            new Campaign.Specimen(
                key,
                row.raw("product").strip(),
                row.textOrNull("serial"),
                acquired,
                row.textOrNull("from"),
                on,
                became,
                becameOn,
                row.textOrNull("note")));
  }

  Optional<Campaign.Price> price(Row row) {
    Optional<Double> amount = row.find("price").flatMap(w -> w.number(0, 1e9));
    Optional<LocalDate> on = row.find("on").flatMap(Written::date);
    String currency =
        row.find("currency").flatMap(ProductRows::currency).orElse(context.currency());
    if (amount.isEmpty() || on.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Campaign.Price(
            row.raw("product").strip(), amount.get(), currency, on.get(), row.textOrNull("where")));
  }

  static Optional<String> currency(Written written) {
    try {
      return Optional.of(Currency.getInstance(written.text()).getCurrencyCode());
    } catch (IllegalArgumentException unknown) {
      written.error("a currency code of three letters (ISO 4217)", "for example EUR");
      return Optional.empty();
    }
  }

  Optional<FactValue> fact(Row row) {
    List<Method.Fact> facts = context.method().map(Method::facts).orElse(List.of());
    Optional<Method.Fact> fact =
        named(row, facts.stream().map(Method.Fact::id).toList(), "a fact of the method")
            .flatMap(id -> facts.stream().filter(f -> f.id().equals(id)).findFirst());
    return fact.map(f -> fact(row, f));
  }

  private FactValue fact(Row row, Method.Fact fact) {
    Dimension dimension = fact.unit().dimension();
    return new FactValue(
        row.raw("product").strip(),
        fact.id(),
        quantity(row, "nameplate", dimension),
        quantity(row, "measured", dimension),
        quantity(row, "uncertainty", Context.ofDifferences(dimension)),
        row.textOrNull("instrument"),
        row.textOrNull("photo"),
        row.textOrNull("note"),
        context.origin(row));
  }

  private static @org.jspecify.annotations.Nullable Quantity quantity(
      Row row, String column, Dimension dimension) {
    return row.find(column).flatMap(w -> w.quantity(dimension)).orElse(null);
  }

  Optional<RatedStep> rated(Row row) {
    List<String> ids =
        context.method().map(Method::ratedFacts).orElse(List.of()).stream()
            .map(Method.RatedFact::id)
            .toList();
    Optional<String> fact = named(row, ids, "a rated fact of the method");
    Optional<Integer> step = row.find("step").flatMap(w -> w.wholeNumber(0, 4));
    if (fact.isEmpty() || step.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new RatedStep(
            row.raw("product").strip(),
            fact.get(),
            row.raw("rater").strip(),
            step.get(),
            row.textOrNull("reason"),
            row.textOrNull("photo"),
            row.textOrNull("note"),
            context.origin(row)));
  }

  Optional<FeatureState> feature(Row row) {
    Optional<FeatureState.State> state =
        row.find("state").flatMap(w -> w.word(FeatureState.State.class));
    LocalDate on = row.find("on").flatMap(Written::date).orElse(null);
    return state.map(
        s ->
            new FeatureState(
                row.raw("product").strip(),
                row.raw("feature").strip(),
                s,
                on,
                row.textOrNull("note"),
                context.origin(row)));
  }

  private Optional<String> named(Row row, List<String> ids, String what) {
    return context.method().isEmpty()
        ? Optional.empty()
        : row.find("fact").flatMap(w -> w.oneOf(ids, what));
  }

  Optional<Campaign.Lot> lot(Row row) {
    LocalDate bought = row.find("bought").flatMap(Written::date).orElse(null);
    return row.find("lot")
        .flatMap(Written::key)
        .map(id -> new Campaign.Lot(id, row.raw("food").strip(), bought, row.textOrNull("note")));
  }

  Optional<Campaign.Instrument> instrument(Row row) {
    Optional<Dimension> quantity = row.find("quantity").flatMap(w -> w.word(Dimension.class));
    Double resolution = difference(row, "resolution", quantity).orElse(null);
    Double uncertainty = difference(row, "uncertainty", quantity).orElse(null);
    Double response =
        row.find("response_time")
            .flatMap(w -> w.quantity(Dimension.TIME))
            .map(Quantity::contract)
            .orElse(null);
    return row.find("instrument")
        .flatMap(Written::key)
        .map(
            id ->
                new Campaign.Instrument(
                    id,
                    row.raw("name").strip(),
                    row.textOrNull("kind"),
                    quantity.map(Words::of).orElse(null),
                    resolution,
                    uncertainty,
                    response,
                    row.textOrNull("note")));
  }

  Optional<Campaign.Calibration> calibration(Row row) {
    Optional<Dimension> quantity = quantityOf(row.raw("instrument").strip());
    Optional<LocalDate> on = row.find("on").flatMap(Written::date);
    Optional<Double> correction = difference(row, "correction", quantity);
    Optional<Double> uncertainty = difference(row, "uncertainty", quantity);
    if (on.isEmpty() || correction.isEmpty() || uncertainty.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Campaign.Calibration(
            row.raw("instrument").strip(),
            on.get(),
            correction.get(),
            uncertainty.get(),
            row.textOrNull("reference"),
            row.textOrNull("note")));
  }

  private Optional<Dimension> quantityOf(String instrument) {
    return context.rows().getOrDefault(Tables.INSTRUMENTS, List.of()).stream()
        .filter(r -> r.raw("instrument").strip().equals(instrument))
        .findFirst()
        .flatMap(r -> Words.named(Dimension.class, r.raw("quantity").strip()));
  }

  /** In the contract unit of the instrument's quantity. */
  private static Optional<Double> difference(Row row, String column, Optional<Dimension> quantity) {
    Optional<Written> written = row.find(column);
    if (written.isPresent() && quantity.isEmpty()) {
      written
          .get()
          .error(
              "an instrument that says what it measures",
              "fill in \"quantity\" in instruments.csv, for example temperature");
      return Optional.empty();
    }
    return written
        .flatMap(w -> quantity.flatMap(q -> w.quantity(Context.ofDifferences(q))))
        .map(Quantity::contract);
  }
}
