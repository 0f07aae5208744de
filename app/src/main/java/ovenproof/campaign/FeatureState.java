package ovenproof.campaign;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A line of the feature checklist: whether a product has a feature.
 *
 * <p>Without an entry nothing is known of it, which is none of the three states.
 *
 * @param feature name of the feature as it is printed; the same for all products
 * @param on the day it was looked at; null when not said
 */
public record FeatureState(
    String product,
    String feature,
    State state,
    @Nullable LocalDate on,
    @Nullable String note,
    Provenance origin)
    implements Entry {

  /** Whether the product has it. */
  public enum State {
    YES,
    NO,
    /** The question makes no sense for this product: a door light without a door. */
    NOT_APPLICABLE
  }
}
