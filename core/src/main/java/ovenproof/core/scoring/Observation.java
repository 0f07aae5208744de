package ovenproof.core.scoring;

import java.util.List;
import ovenproof.core.measure.Component;

/**
 * What one run says of a variable.
 *
 * @param run key of the run
 * @param low the value, or the lower bound of a censored one (−∞ for "below high")
 * @param high the value, or the upper bound (∞ for "above low")
 * @param components uncertainty of the value by source, signed by sensitivity. Only shared sources
 *     are used for scores: what belongs to the run is already in the deviation between runs. A gate
 *     that must hold in every run uses all of them.
 */
public record Observation(String run, double low, double high, List<Component> components) {

  public Observation {
    components = List.copyOf(components);
    if (!(low <= high) || low == Double.POSITIVE_INFINITY || high == Double.NEGATIVE_INFINITY) {
      throw new IllegalArgumentException(
          "run " + run + ": low must not exceed high, found " + low + " and " + high);
    }
  }

  public static Observation of(String run, double value, Component... components) {
    return new Observation(run, value, value, List.of(components));
  }

  /** Known to lie above a cap only. */
  public static Observation above(String run, double low) {
    return new Observation(run, low, Double.POSITIVE_INFINITY, List.of());
  }

  public static Observation below(String run, double high) {
    return new Observation(run, Double.NEGATIVE_INFINITY, high, List.of());
  }

  public boolean censored() {
    return low != high;
  }
}
