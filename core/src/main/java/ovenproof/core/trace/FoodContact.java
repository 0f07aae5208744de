package ovenproof.core.trace;

/**
 * The part of a needle's record in which it is in the food. Events are typed by a person a few
 * seconds early or late, and a needle in hot air shows the air.
 *
 * <p>Going in: food is at its coldest when the needle goes in, so what lies before the lowest
 * reading of the first three minutes is the needle on its way. Coming out: no core warms by half a
 * kelvin a second, so from where the last three minutes rise faster the needle is in the air of the
 * oven (own definition; the rates of cores are <em>common practice</em>: below 0.3 K/s even in thin
 * pieces).
 */
public final class FoodContact {
  private static final double LOOK_SECONDS = 180;
  private static final double STEP_SECONDS = 10;
  private static final double FASTEST_CORE_KELVIN_PER_SECOND = 0.5;

  private FoodContact() {}

  /**
   * The record without the needle's ways in and out.
   *
   * @param needle °C against s, times rising; NaN for gaps
   * @return the same trace when it is empty
   */
  public static Trace of(Trace needle) {
    Trace present = needle.present();
    if (present.size() == 0) {
      return needle;
    }
    double in = lowest(present);
    return needle.part(in, out(present, in));
  }

  /** Time of the lowest reading of the first minutes; the last of equals, when it has settled. */
  private static double lowest(Trace trace) {
    double[] t = trace.seconds();
    double[] v = trace.values();
    int best = 0;
    for (int i = 1; i < t.length && t[i] - t[0] <= LOOK_SECONDS; i++) {
      if (v[i] < v[best]) {
        best = i;
      }
    }
    return t[best];
  }

  /** Start of the first rise in the last minutes that is too fast for a core, else the end. */
  private static double out(Trace trace, double in) {
    double[] t = trace.seconds();
    double[] v = trace.values();
    double end = t[t.length - 1];
    int from = 0;
    for (int i = 0; i < t.length; i++) {
      while (t[i] - t[from] > STEP_SECONDS) {
        from++;
      }
      boolean late = end - t[i] <= LOOK_SECONDS && t[from] > in + LOOK_SECONDS;
      double seconds = t[i] - t[from];
      if (late && seconds > 0 && (v[i] - v[from]) / seconds > FASTEST_CORE_KELVIN_PER_SECOND) {
        return t[from];
      }
    }
    return end;
  }
}
