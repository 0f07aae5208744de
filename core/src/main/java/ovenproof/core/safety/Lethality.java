package ovenproof.core.safety;

import java.util.List;
import ovenproof.core.trace.Trace;

/**
 * Equivalent time at 70 °C: F70 = ∫ 10^((T − 70)/z) dt, with z = 6.0 K below and 8.3 K above 70 °C,
 * which is the cautious side of the published pairs of time and temperature on either side.
 * Temperatures below 60 °C count for nothing.
 */
public final class Lethality {

  public static final double REFERENCE_CELSIUS = 70;
  public static final double Z_BELOW_KELVIN = 6.0;
  public static final double Z_ABOVE_KELVIN = 8.3;
  public static final double LOWEST_CELSIUS = 60;

  private Lethality() {}

  /** Seconds at 70 °C that one second at this temperature is worth. */
  public static double rate(double celsius) {
    if (!(celsius >= LOWEST_CELSIUS)) {
      return 0;
    }
    double above = celsius - REFERENCE_CELSIUS;
    return Math.pow(10, above / (above < 0 ? Z_BELOW_KELVIN : Z_ABOVE_KELVIN));
  }

  /** Smallest F70 in seconds of several probes in one food; 0 for none. */
  public static double ofColdest(List<Trace> cores, double subtractedKelvin) {
    return cores.stream().mapToDouble(t -> seconds(t, subtractedKelvin)).min().orElse(0);
  }

  /**
   * F70 in seconds of a core temperature, trapezoid rule over its readings; 0 for fewer than two.
   * Nothing is counted across a gap of more than 30 s.
   *
   * @param core in °C
   * @param subtractedKelvin expanded uncertainty (k = 2), taken off the whole curve
   */
  public static double seconds(Trace core, double subtractedKelvin) {
    Trace trace = core.present();
    double step = Math.max(30, 3.5 * trace.medianStepSeconds());
    double sum = 0;
    for (int i = 1; i < trace.size(); i++) {
      double dt = trace.seconds()[i] - trace.seconds()[i - 1];
      if (dt <= step) {
        double before = rate(trace.values()[i - 1] - subtractedKelvin);
        double after = rate(trace.values()[i] - subtractedKelvin);
        sum += dt * (before + after) / 2;
      }
    }
    return sum;
  }
}
