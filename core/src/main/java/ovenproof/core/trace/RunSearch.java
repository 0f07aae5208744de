package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.List;

/**
 * The heat-ups in a record of a whole day: each from where the temperature begins to rise to where
 * the next one begins. A rise counts when it is half of all the record covers, and at least 50 K,
 * so that neither cycling nor an opened door is taken for a new run (own definition).
 */
public final class RunSearch {

  private static final double SMALLEST_RISE_KELVIN = 50;
  private static final double LEAD_KELVIN = 3;

  /** A fall that is made up sooner, and within half of what was held before, is a door. */
  private static final double LONGEST_DOOR_SECONDS = 300;

  private RunSearch() {}

  /**
   * One heat-up and what follows it.
   *
   * @param startSecond where the rise begins, from the first reading's clock
   * @param endSecond where the next rise begins, or the last reading
   */
  public record HeatUp(double startSecond, double endSecond) {}

  /**
   * All heat-ups in order; empty when nothing rises far enough.
   *
   * @param trace °C against s, times rising; NaN allowed
   */
  public static List<HeatUp> in(Trace trace) {
    Trace present = trace.present();
    double[] t = present.seconds();
    double[] v = present.values();
    List<Double> starts = new ArrayList<>();
    double rise = Math.max(SMALLEST_RISE_KELVIN, 0.5 * range(v));
    int low = 0;
    int high = 0;
    boolean rising = false;
    double fell = Double.NEGATIVE_INFINITY;
    double began = 0;
    for (int i = 0; i < v.length; i++) {
      if (!rising) {
        low = v[i] < v[low] ? i : low;
        if (v[i] >= v[low] + rise) {
          if (t[i] - fell > Math.min(LONGEST_DOOR_SECONDS, (fell - began) / 2)) {
            began = t[lead(v, low, i)];
            starts.add(began);
          }
          rising = true;
          high = i;
        }
      } else {
        high = v[i] > v[high] ? i : high;
        if (v[i] <= v[high] - rise) {
          rising = false;
          fell = t[i];
          low = i;
        }
      }
    }
    List<HeatUp> runs = new ArrayList<>();
    for (int k = 0; k < starts.size(); k++) {
      double end = k + 1 < starts.size() ? starts.get(k + 1) : present.lastSecond();
      runs.add(new HeatUp(starts.get(k), end));
    }
    return runs;
  }

  private static double range(double[] v) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (double x : v) {
      low = Math.min(low, x);
      high = Math.max(high, x);
    }
    return v.length == 0 ? 0 : high - low;
  }

  /** The last reading near the lowest one before the rise. */
  private static int lead(double[] v, int low, int risen) {
    int i = risen;
    while (i > low && v[i] > v[low] + LEAD_KELVIN) {
      i--;
    }
    return i;
  }
}
