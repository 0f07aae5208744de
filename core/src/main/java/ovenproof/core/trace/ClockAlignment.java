package ovenproof.core.trace;

import java.util.List;
import java.util.Optional;

/**
 * How far the logger's clock and the clock of the person who noted events lie apart, from what a
 * door or a load of cold food does to the air.
 *
 * <p>Every noted opening is followed by a fall. The offset is the shift of the notes, the same for
 * all, that catches the deepest falls. It is said, never applied in silence: the person who kept
 * the clock decides.
 *
 * @param offsetSeconds the log shows falls this much later than they were noted
 * @param u standard uncertainty in s: the step of the search, what the probe lags, and the spread
 *     of each single fall about the common shift over √n
 * @param falls how many noted openings show a fall
 */
public record ClockAlignment(double offsetSeconds, double u, int falls) {
  private static final double REACH_SECONDS = 180;
  private static final double STEP_SECONDS = 1;
  private static final double FALL_SECONDS = 10;
  private static final double LAG_SECONDS = 2;
  private static final double LEAST_FALL_KELVIN = 3;

  /**
   * Aligns the openings with the air.
   *
   * @param air °C, cleaned, at least one reading each 10 s
   * @param openings times noted, in s of the same scale
   * @return empty when no opening shows a fall of 3 K in 10 s
   */
  public static Optional<ClockAlignment> of(Trace air, List<Double> openings) {
    Trace present = air.present();
    if (present.size() < 10 || present.medianStepSeconds() > 10) {
      return Optional.empty();
    }
    double best = 0;
    double deepest = 0;
    for (double shift = -REACH_SECONDS; shift <= REACH_SECONDS; shift += STEP_SECONDS) {
      double sum = 0;
      for (double noted : openings) {
        sum += fall(present, noted + shift);
      }
      boolean deeper = sum > deepest + 1e-9;
      boolean asDeepAndNearer = sum > deepest - 1e-9 && Math.abs(shift) < Math.abs(best);
      if (deeper || asDeepAndNearer) {
        deepest = Math.max(deepest, sum);
        best = shift;
      }
    }
    return summed(present, openings, best);
  }

  private static Optional<ClockAlignment> summed(Trace air, List<Double> openings, double common) {
    double squares = 0;
    int n = 0;
    for (double noted : openings) {
      if (fall(air, noted + common) >= LEAST_FALL_KELVIN) {
        double off = nearest(air, noted + common);
        squares += off * off;
        n++;
      }
    }
    if (n == 0) {
      return Optional.empty();
    }
    double step = Math.hypot(STEP_SECONDS, air.medianStepSeconds()) / Math.sqrt(12);
    double search = Math.hypot(step, LAG_SECONDS);
    double scatter = n > 1 ? Math.sqrt(squares / (n - 1) / n) : 2;
    return Optional.of(new ClockAlignment(common, Math.hypot(search, scatter), n));
  }

  /** Of the deepest fall within 15 s, how far it lies from the common shift. */
  private static double nearest(Trace air, double at) {
    double best = 0;
    double deepest = fall(air, at);
    for (double shift = -15; shift <= 15; shift += STEP_SECONDS) {
      double here = fall(air, at + shift);
      if (here > deepest + 1e-9) {
        deepest = here;
        best = shift;
      }
    }
    return best;
  }

  /**
   * How much more the air falls in the 10 s after a moment than in the 10 s before it, K: largest
   * where the fall begins. 0 outside the record.
   */
  private static double fall(Trace air, double at) {
    double last = air.lastSecond();
    if (at - FALL_SECONDS < air.seconds()[0] || at + FALL_SECONDS > last) {
      return 0;
    }
    double here = TimeMean.at(air, at);
    double after = here - TimeMean.at(air, at + FALL_SECONDS);
    double before = TimeMean.at(air, at - FALL_SECONDS) - here;
    return Math.max(0, after - before);
  }
}
