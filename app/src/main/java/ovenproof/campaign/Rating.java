package ovenproof.campaign;

import org.jspecify.annotations.Nullable;

/**
 * A mark that one taster gave one sample.
 *
 * @param assessor key or role; never published
 * @param order serving position in the session, from 1
 */
public record Rating(
    String session,
    String assessor,
    String run,
    @Nullable Integer batch,
    String mark,
    double value,
    @Nullable Integer order,
    @Nullable String code,
    @Nullable Double minutesSinceRemoval,
    @Nullable String note,
    Provenance origin)
    implements Entry {}
