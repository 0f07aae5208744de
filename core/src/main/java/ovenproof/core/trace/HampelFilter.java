package ovenproof.core.trace;

import java.util.Arrays;

/**
 * Finds single wrong readings in a smooth curve (F. R. Hampel's identifier: distance from the
 * median of a moving window, in units of the window's median absolute deviation). Only a reading
 * beside a jump of half the floor is put to the test, which leaves every spike that matters to be
 * found and makes a clean record cheap.
 *
 * @param sigmas how many standard deviations from the median are too many
 * @param windowSeconds width of the moving window, never fewer than seven samples
 * @param floor smallest distance that counts, in the unit of the trace
 */
public record HampelFilter(double sigmas, double windowSeconds, double floor) {

  /** 5 standard deviations in 15 s, common practice; nothing below 1 K matters to an oven. */
  public static HampelFilter withDefaults() {
    return new HampelFilter(5, 15, 1);
  }

  /**
   * What the filter found.
   *
   * @param trace with NaN in place of each spike, the same object when there was none
   * @param spikes how many
   */
  public record Cleaned(Trace trace, int spikes) {}

  /** The trace without its spikes. Empty and short traces come back as they are. */
  public Cleaned clean(Trace trace) {
    double[] values = trace.values();
    if (values.length < 7) {
      return new Cleaned(trace, 0);
    }
    double step = Math.max(trace.medianStepSeconds(), 1e-9);
    int half = (int) Math.min(50, Math.max(3, Math.round(windowSeconds / step / 2)));
    double jump = Math.max(floor / 2, 4 * Medians.noise(values));
    double[] cleaned = null;
    int spikes = 0;
    double[] window = new double[2 * half + 1];
    for (int i = 0; i < values.length; i++) {
      if (besideJump(values, i, jump) && isSpike(values, i, half, window)) {
        if (cleaned == null) {
          cleaned = values.clone();
        }
        cleaned[i] = Double.NaN;
        spikes++;
      }
    }
    return cleaned == null ? new Cleaned(trace, 0) : new Cleaned(trace.withValues(cleaned), spikes);
  }

  private static boolean besideJump(double[] values, int i, double jump) {
    return (i > 0 && Math.abs(values[i] - values[i - 1]) > jump)
        || (i + 1 < values.length && Math.abs(values[i + 1] - values[i]) > jump);
  }

  private boolean isSpike(double[] values, int i, int half, double[] window) {
    int n = 0;
    for (int j = Math.max(0, i - half); j <= Math.min(values.length - 1, i + half); j++) {
      if (Double.isFinite(values[j])) {
        window[n++] = values[j];
      }
    }
    Arrays.sort(window, 0, n);
    double median = Medians.ofSorted(window, 0, n);
    for (int j = 0; j < n; j++) {
      window[j] = Math.abs(window[j] - median);
    }
    Arrays.sort(window, 0, n);
    double sd = Medians.MAD_TO_SD * Medians.ofSorted(window, 0, n);
    return Math.abs(values[i] - median) > Math.max(floor, sigmas * sd);
  }
}
