package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.Component;

/**
 * What is known of a temperature probe. Its calibration is the same in every run, so the component
 * carries the name that all of them share.
 *
 * @param name shared name, such as {@code probe:P3@2026-03}
 * @param calibrationKelvin standard uncertainty of the reading that all runs share
 * @param placementKelvin standard uncertainty from where the probe sits; belongs to the run
 * @param timeConstantSeconds of the probe in oven air, null when unknown
 * @param radiation what the probe may feel of elements and walls instead of the air
 */
public record ProbeAccuracy(
    String name,
    double calibrationKelvin,
    double placementKelvin,
    @Nullable Double timeConstantSeconds,
    Radiation radiation) {

  /** Nothing is known: the uncertainty holds what the trace itself shows, and no more. */
  public static final ProbeAccuracy UNKNOWN = new ProbeAccuracy("probe:unknown", 0, 0, null);

  /** A probe that sees no element and no wall. */
  public ProbeAccuracy(
      String name,
      double calibrationKelvin,
      double placementKelvin,
      @Nullable Double timeConstantSeconds) {
    this(name, calibrationKelvin, placementKelvin, timeConstantSeconds, Radiation.NONE);
  }

  public ProbeAccuracy {
    if (!(calibrationKelvin >= 0) || !(placementKelvin >= 0)) {
      throw new IllegalArgumentException(
          "uncertainties of "
              + name
              + " must be 0 K or more, found "
              + calibrationKelvin
              + " and "
              + placementKelvin);
    }
  }

  /**
   * The components of a quantity that compares places, each with its own probe: calibrations of
   * different probes do not cancel, nor does what they feel unlike of elements and walls.
   *
   * @param share standard uncertainty of the quantity per kelvin that each place may err by
   * @param standardError of the mean of a place, K
   */
  List<Component> ofPlaces(double share, double standardError) {
    List<Component> parts = new ArrayList<>();
    if (calibrationKelvin > 0) {
      parts.add(Component.shared("set of " + name, share * calibrationKelvin));
    }
    parts.addAll(radiation.unlike(share));
    parts.add(Component.run(share * Math.hypot(standardError, placementKelvin)));
    return parts;
  }

  /** Standard uncertainty of one reading in all, without the run's noise. */
  double readingKelvin() {
    double squares = 0;
    for (Component part : components(1, 0)) {
      squares += part.u() * part.u();
    }
    return Math.sqrt(squares);
  }

  /**
   * What is taken off a reading before food is judged: k = 2, placement included; 0 when nobody
   * calibrated the probe or stated its error, for where it sits says nothing about its wire.
   */
  public double expandedKelvin() {
    return isKnown() ? 2 * Math.hypot(calibrationKelvin, placementKelvin) : 0;
  }

  /** Whether anybody calibrated the probe or stated its error. */
  public boolean isKnown() {
    return calibrationKelvin > 0;
  }

  /**
   * The components of a quantity that depends on the reading.
   *
   * @param sensitivity change of the quantity per kelvin that the probe reads high
   * @param runU what else the run adds, in the unit of the quantity
   */
  public List<Component> components(double sensitivity, double runU) {
    List<Component> parts = new ArrayList<>();
    if (calibrationKelvin > 0) {
      parts.add(Component.shared(name, sensitivity * calibrationKelvin));
    }
    parts.addAll(radiation.components(sensitivity));
    parts.add(Component.run(Math.hypot(runU, sensitivity * placementKelvin)));
    return parts;
  }
}
