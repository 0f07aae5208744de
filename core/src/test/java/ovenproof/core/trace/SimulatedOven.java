package ovenproof.core.trace;

import java.util.SplittableRandom;
import ovenproof.core.quantity.Unit;

/**
 * A two-node heater (air and walls) with a thermostat and a probe that lags, for tests. Everything
 * is invented; the truth is the probe without its calibration error and noise.
 *
 * @param powerWatt while the elements are on
 * @param settingCelsius in the middle of the thermostat's band
 * @param halfBandKelvin of the thermostat; 0 switches nothing off
 * @param probeSeconds time constant of the probe
 * @param noiseKelvin of single readings
 */
record SimulatedOven(
    double powerWatt,
    double settingCelsius,
    double halfBandKelvin,
    double probeSeconds,
    double noiseKelvin) {

  private static final double AIR_JOULE_PER_KELVIN = 900;
  private static final double WALL_JOULE_PER_KELVIN = 2500;
  private static final double AIR_TO_WALL_WATT_PER_KELVIN = 9;
  private static final double WALL_TO_ROOM_WATT_PER_KELVIN = 6;
  static final double ROOM = 21;

  /** What was logged, and the probe's own temperature without any error. */
  record Log(Trace logged, Trace truth, Trace power) {}

  Log run(
      double lengthSeconds, double stepSeconds, double calibrationError, SplittableRandom random) {
    int n = (int) (lengthSeconds / stepSeconds) + 1;
    double[] t = new double[n];
    double[] logged = new double[n];
    double[] truth = new double[n];
    double[] watt = new double[n];
    double air = ROOM;
    double wall = ROOM;
    double probe = ROOM;
    boolean on = true;
    int inner = (int) Math.max(1, Math.round(stepSeconds / 0.25));
    double dt = stepSeconds / inner;
    for (int i = 0; i < n; i++) {
      t[i] = i * stepSeconds;
      truth[i] = probe;
      logged[i] = probe + calibrationError + noiseKelvin * random.nextGaussian();
      watt[i] = on ? powerWatt : 0;
      for (int k = 0; k < inner; k++) {
        on =
            halfBandKelvin == 0
                || (on
                    ? air < settingCelsius + halfBandKelvin
                    : air < settingCelsius - halfBandKelvin);
        double toWall = AIR_TO_WALL_WATT_PER_KELVIN * (air - wall);
        air += ((on ? powerWatt : 0) - toWall) / AIR_JOULE_PER_KELVIN * dt;
        wall +=
            (toWall - WALL_TO_ROOM_WATT_PER_KELVIN * (wall - ROOM)) / WALL_JOULE_PER_KELVIN * dt;
        probe += (air - probe) / probeSeconds * dt;
      }
    }
    return new Log(
        new Trace("centre", t, logged, Unit.CELSIUS),
        new Trace("centre", t, truth, Unit.CELSIUS),
        new Trace("power", t, watt, Unit.WATT));
  }
}
