package ovenproof.campaign;

import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Quantity;

/**
 * A value a person read and typed.
 *
 * @param measure id of the reading in the method's test
 * @param uncertainty standard uncertainty, of the dimension of the value; null: the instrument's
 * @param instrument key of the instrument, or null
 */
public record Reading(
    String run,
    String measure,
    @Nullable Integer batch,
    @Nullable String piece,
    @Nullable String face,
    Quantity value,
    @Nullable Quantity uncertainty,
    @Nullable String instrument,
    @Nullable Double elapsedSeconds,
    @Nullable String note,
    Provenance origin)
    implements Entry {}
