package ovenproof.campaign;

import org.jspecify.annotations.Nullable;

/**
 * A departure from the method.
 *
 * @param deviationClass 1 note; 2 analyse with and without; 3 void
 */
public record Deviation(
    String run, int deviationClass, String what, @Nullable String note, Provenance origin)
    implements Entry {}
