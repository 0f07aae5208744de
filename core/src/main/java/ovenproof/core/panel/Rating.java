package ovenproof.core.panel;

import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * One mark that one person gave to one sample.
 *
 * @param assessor who; null when the table names nobody (then every mark counts as another person)
 * @param product the product tasted
 * @param session the sitting, where there are several; null otherwise
 * @param batch the load of the appliance that the sample came from, the experimental unit; unique
 *     within product and session; null when the table does not say
 * @param attribute what was judged, e.g. crispness
 * @param value the mark
 * @param position place in the serving order of this person in this session, from 1; null when not
 *     recorded
 * @param conditions other crossed circumstances, name to level, e.g. lid on and off; empty mostly
 */
public record Rating(
    @Nullable String assessor,
    String product,
    @Nullable String session,
    @Nullable String batch,
    String attribute,
    double value,
    @Nullable Integer position,
    Map<String, String> conditions) {

  public Rating {
    conditions = Map.copyOf(conditions);
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("value must be finite, found " + value);
    }
  }

  /** A mark without session, batch, order or conditions. */
  public static Rating of(String assessor, String product, String attribute, double value) {
    return new Rating(assessor, product, null, null, attribute, value, null, Map.of());
  }

  public Rating withSession(@Nullable String newSession) {
    return new Rating(assessor, product, newSession, batch, attribute, value, position, conditions);
  }

  public Rating withBatch(@Nullable String newBatch) {
    return new Rating(assessor, product, session, newBatch, attribute, value, position, conditions);
  }

  public Rating withPosition(@Nullable Integer newPosition) {
    return new Rating(assessor, product, session, batch, attribute, value, newPosition, conditions);
  }
}
