package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.List;

/**
 * A stretch in which nothing was recorded.
 *
 * @param startSecond last sample before
 * @param endSecond first sample after
 */
public record Gap(double startSecond, double endSecond) {

  /** Longer than this nobody knows what happened; common practice, 30 s. */
  public static final double LIMIT_SECONDS = 30;

  public double lengthSeconds() {
    return endSecond - startSecond;
  }

  boolean touches(double fromSecond, double toSecond) {
    return startSecond < toSecond && endSecond > fromSecond;
  }

  /**
   * Gaps longer than 30 s and than three and a half steps (a logger that writes once a minute has
   * none for that).
   */
  public static List<Gap> in(double[] seconds, double medianStepSeconds) {
    double limit = Math.max(LIMIT_SECONDS, 3.5 * medianStepSeconds);
    List<Gap> gaps = new ArrayList<>();
    for (int i = 1; i < seconds.length; i++) {
      if (seconds[i] - seconds[i - 1] > limit) {
        gaps.add(new Gap(seconds[i - 1], seconds[i]));
      }
    }
    return gaps;
  }
}
