package ovenproof.method;

import java.util.Map;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Unit;

/**
 * A measure of a test: which registered measure is taken, from what, and how its values make one
 * value per run.
 *
 * @param id key within the test
 * @param name name for people; falls back to the registered measure's
 * @param take id of the registered measure: {@code preheat-first}, {@code lightness-mean}, {@code
 *     reading}, {@code mark}, {@code fact}, {@code rated}, {@code feature}, {@code features},
 *     {@code time-to-stop}, {@code mass-loss} …
 * @param unit for readings: their unit
 * @param place channel place, for traces: {@code centre}
 * @param face photo face
 * @param batch one batch only, or null for all
 * @param of the id of the reading, mark, fact, rated fact or feature that is taken, when it is not
 *     {@code id}; for {@code features} the group, null for the whole checklist
 * @param summary how values of batches, pieces and faces make the run's value
 * @param parameters what the registered measure's description lists, as written
 */
public record MeasureUse(
    String id,
    @Nullable String name,
    String take,
    @Nullable Unit unit,
    @Nullable String place,
    @Nullable String face,
    @Nullable Integer batch,
    @Nullable String of,
    Summary summary,
    Map<String, String> parameters) {

  /** Takes a fact as measured. */
  public static final String FACT = "fact";

  /** Takes the mean of the steps of a rated fact. */
  public static final String RATED = "rated";

  /** Takes one feature of the checklist. */
  public static final String FEATURE = "feature";

  /** Takes the share of the checklist, or of one of its groups. */
  public static final String FEATURES = "features";

  public MeasureUse {
    parameters = Map.copyOf(parameters);
  }

  /** The id of the reading, mark or fact that is read. */
  public String ofOrId() {
    return of == null ? id : of;
  }

  /** Whether its values are of a product, not of a run. */
  public boolean ofProduct() {
    return take.equals(FACT) || take.equals(RATED) || ofChecklist();
  }

  /** Whether it reads the feature checklist. */
  public boolean ofChecklist() {
    return take.equals(FEATURE) || take.equals(FEATURES);
  }

  /** How the values inside a run make one. */
  public enum Summary {
    MEAN,
    LARGEST,
    SMALLEST,
    /** Standard deviation over pieces. */
    SPREAD,
    /** Mean of the last batch minus mean of the first. */
    CHANGE,
    /** Absolute value of CHANGE. */
    ABSOLUTE_CHANGE,
    /** Change per batch over three or more back-to-back batches, by least squares. */
    SLOPE,
    /** Mean of the first face minus mean of the last face that the photo plan names. */
    FACE_DIFFERENCE
  }
}
