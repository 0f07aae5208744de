package ovenproof.campaign;

import org.jspecify.annotations.Nullable;

/** A worded step that one person chose for a rated fact, with the reason. */
public record RatedStep(
    String product,
    String fact,
    String rater,
    int step,
    @Nullable String reason,
    @Nullable String photo,
    @Nullable String note,
    Provenance origin)
    implements Entry {}
