package ovenproof.core.trace;

/**
 * The part of a needle's record in which it is in the food. Events are typed by a person a few
 * seconds early or late, a logger runs before and after, and a needle in air shows the air.
 *
 * <p>No core warms by half a kelvin a second, none cools so fast, and none that holds water gets
 * hotter than boiling; where the record does, the needle is on its way or in the air. What is left
 * falls into parts, and the longest is the food. It begins at its coldest reading of the first
 * three minutes: before that the needle takes the food's temperature (own definition; the rates of
 * cores are <em>common practice</em>: below 0.3 K/s even in thin pieces).
 */
public final class FoodContact {
  private static final double LOOK_SECONDS = 180;
  private static final double STEP_SECONDS = 10;
  private static final double FASTEST_CORE_KELVIN_PER_SECOND = 0.5;

  /** A step of the display is no way through the air. */
  private static final double LEAST_JUMP_KELVIN = 3;

  /**
   * Water boils at 100 °C at sea level; beyond that by more than a probe may err is no wet food.
   */
  private static final double HOTTEST_CORE_CELSIUS = 105;

  private FoodContact() {}

  /**
   * The record without the needle's ways in and out.
   *
   * @param needle °C against s, times rising; NaN for gaps
   * @return the same trace when it is empty; an empty one when the needle never was in food
   */
  public static Trace of(Trace needle) {
    Trace present = needle.present();
    if (present.size() == 0) {
      return needle;
    }
    boolean[] air = inAir(present);
    int bestFrom = 0;
    int bestTo = 0;
    int from = 0;
    for (int i = 0; i <= air.length; i++) {
      if (i == air.length || air[i]) {
        if (length(present, from, i) > length(present, bestFrom, bestTo)) {
          bestFrom = from;
          bestTo = i;
        }
        from = i + 1;
      }
    }
    double[] t = present.seconds();
    return bestTo == bestFrom
        ? needle.part(t[0] - 2, t[0] - 1)
        : needle.part(coldest(present, bestFrom, bestTo), t[bestTo - 1]);
  }

  private static double length(Trace trace, int from, int to) {
    return to > from ? trace.seconds()[to - 1] - trace.seconds()[from] : -1;
  }

  /** Readings that are too hot for wet food, or lie on a way too steep for a core. */
  private static boolean[] inAir(Trace trace) {
    double[] t = trace.seconds();
    double[] v = trace.values();
    boolean[] air = new boolean[t.length];
    int from = 0;
    for (int i = 0; i < t.length; i++) {
      while (t[i] - t[from] > STEP_SECONDS && from < i - 1) {
        from++;
      }
      double seconds = t[i] - t[from];
      boolean steep =
          seconds > 0 && Math.abs(v[i] - v[from]) / seconds > FASTEST_CORE_KELVIN_PER_SECOND;
      if (steep && Math.abs(v[i] - v[from]) > LEAST_JUMP_KELVIN) {
        java.util.Arrays.fill(air, from + 1, i + 1, true);
      }
      air[i] |= v[i] > HOTTEST_CORE_CELSIUS;
    }
    return air;
  }

  /** Time of the lowest reading of the first minutes; the last of equals, when it has settled. */
  private static double coldest(Trace trace, int from, int to) {
    double[] t = trace.seconds();
    double[] v = trace.values();
    int best = from;
    for (int i = from; i < to && t[i] - t[from] <= LOOK_SECONDS; i++) {
      if (v[i] < v[best]) {
        best = i;
      }
    }
    return t[best];
  }
}
