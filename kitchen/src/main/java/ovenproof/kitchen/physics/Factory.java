package ovenproof.kitchen.physics;

/** Where thermostats are set, well or badly: what makes a dial right or wrong. */
public final class Factory {

  private static final double STEP = 1;
  private static final double SETTLE_SECONDS = 5400;
  private static final double LOOK_SECONDS = 1800;
  private static final double ROOM = 21;

  private Factory() {}

  /**
   * The oven with its thermostat set so that, at nominal mains and in a room of 21 °C, the air at
   * the centre holds {@code set + offset} in the mean.
   */
  public static Oven adjusted(Oven oven, double setCelsius, double offsetKelvin) {
    Oven candidate = oven;
    for (int i = 0; i < 6; i++) {
      double miss = setCelsius + offsetKelvin - steadyAir(candidate, setCelsius, 230);
      candidate =
          candidate.with(
              candidate.thermostat().withBias(candidate.thermostat().biasKelvin() + miss));
    }
    return candidate;
  }

  /** Time-mean of the empty oven's air at the centre after an hour and a half. */
  public static double steadyAir(Oven oven, double setCelsius, double volts) {
    Cavity cavity = new Cavity(oven, ROOM);
    double sum = 0;
    int n = 0;
    for (double t = 0; t < SETTLE_SECONDS + LOOK_SECONDS; t += STEP) {
      cavity.step(
          STEP,
          Cavity.Demand.HOLD,
          setCelsius,
          volts,
          ROOM,
          Cavity.Door.SHUT,
          Cavity.FoodHeat.NONE);
      if (t >= SETTLE_SECONDS) {
        sum += cavity.air();
        n++;
      }
    }
    return sum / n;
  }
}
