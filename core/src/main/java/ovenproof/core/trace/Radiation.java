package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.List;
import ovenproof.core.measure.Component;

/**
 * What a bare junction feels of elements and walls instead of the air. It cannot be read off the
 * trace; it is the largest part of the budget of an air temperature.
 *
 * @param appliance names the source that the runs of one appliance share
 * @param alikeKelvin standard uncertainty that probes of one make share in every appliance: it
 *     cancels when appliances are compared
 * @param unlikeKelvin standard uncertainty from appliance to appliance, from place to place in one,
 *     and between heating and holding
 */
public record Radiation(String appliance, double alikeKelvin, double unlikeKelvin) {

  /** For a probe that sees neither, such as a needle in food. */
  public static final Radiation NONE = new Radiation("none", 0, 0);

  public Radiation {
    if (!(alikeKelvin >= 0) || !(unlikeKelvin >= 0)) {
      throw new IllegalArgumentException(
          "uncertainties must be 0 K or more, found " + alikeKelvin + " and " + unlikeKelvin);
    }
  }

  /** Components of a quantity that depends on one reading. */
  List<Component> components(double sensitivity) {
    List<Component> parts = new ArrayList<>();
    if (alikeKelvin > 0) {
      parts.add(Component.shared("radiation", sensitivity * alikeKelvin));
    }
    parts.addAll(unlike(sensitivity));
    return parts;
  }

  /** Components of a quantity in which the alike part cancels, such as a difference in time. */
  List<Component> unlike(double sensitivity) {
    return unlikeKelvin > 0
        ? List.of(Component.shared("radiation:" + appliance, sensitivity * unlikeKelvin))
        : List.of();
  }
}
