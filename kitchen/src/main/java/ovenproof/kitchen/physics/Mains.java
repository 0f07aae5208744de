package ovenproof.kitchen.physics;

/**
 * The voltage at the sockets over one session: a level, a slow wave, and perhaps a sag.
 *
 * @param level V
 * @param swing V, amplitude of the wave
 * @param phase of the wave, radians
 * @param sagVolts how much lower it is from {@code sagFrom} on
 * @param sagFrom seconds of the session
 */
public record Mains(double level, double swing, double phase, double sagVolts, double sagFrom) {

  public static final double NOMINAL_VOLTS = 230;

  private static final double WAVE_SECONDS = 1900;
  private static final double SAG_SECONDS = 240;

  public static Mains steady(double volts) {
    return new Mains(volts, 0, 0, 0, 0);
  }

  /** Power of a resistive heater: it goes with the square of the voltage. */
  public static double watts(double ratedWatts, double volts) {
    double ratio = volts / NOMINAL_VOLTS;
    return ratedWatts * ratio * ratio;
  }

  /** Volts at a time of the session. */
  public double volts(double sessionSeconds) {
    double wave = swing * Math.sin(phase + 2 * Math.PI * sessionSeconds / WAVE_SECONDS);
    double sag = (sessionSeconds - sagFrom) / SAG_SECONDS;
    return level + wave - sagVolts * Math.min(1, Math.max(0, sag));
  }
}
