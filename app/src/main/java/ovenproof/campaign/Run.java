package ovenproof.campaign;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * One attempt at a planned run; never edited or deleted.
 *
 * @param specimen the appliance used, or null when the product has one only
 * @param session day or half day: the block within which products are compared
 * @param started null for a run whose times are only known as elapsed
 * @param redoOf the run that this one repeats
 * @param cause why it was redone, written before results were seen
 * @param causeAt when the cause was written
 */
public record Run(
    String id,
    String product,
    @Nullable String specimen,
    String test,
    String variant,
    int replicate,
    Kind kind,
    @Nullable String session,
    @Nullable String bench,
    @Nullable Instant started,
    @Nullable String redoOf,
    @Nullable String cause,
    @Nullable Instant causeAt,
    @Nullable String by,
    @Nullable String note) {

  /** Whether a run was declared a trial beforehand. */
  public enum Kind {
    COUNTED,
    TRIAL
  }
}
