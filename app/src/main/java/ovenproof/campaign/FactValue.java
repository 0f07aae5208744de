package ovenproof.campaign;

import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Quantity;

/** A fact of a product, nameplate beside measured. */
public record FactValue(
    String product,
    String fact,
    @Nullable Quantity nameplate,
    @Nullable Quantity measured,
    @Nullable Quantity uncertainty,
    @Nullable String instrument,
    @Nullable String photo,
    @Nullable String note,
    Provenance origin)
    implements Entry {}
