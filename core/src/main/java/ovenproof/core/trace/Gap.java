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

  /** The trace with a missing value inside each gap, so that a drawn line breaks there. */
  public static Trace broken(Trace trace) {
    List<Gap> gaps = in(trace.seconds(), trace.medianStepSeconds());
    if (gaps.isEmpty()) {
      return trace;
    }
    double[] t = new double[trace.size() + gaps.size()];
    double[] v = new double[t.length];
    int n = 0;
    int next = 0;
    for (int i = 0; i < trace.size(); i++) {
      if (next < gaps.size() && trace.seconds()[i] >= gaps.get(next).endSecond()) {
        Gap gap = gaps.get(next++);
        t[n] = (gap.startSecond() + gap.endSecond()) / 2;
        v[n++] = Double.NaN;
      }
      t[n] = trace.seconds()[i];
      v[n++] = trace.values()[i];
    }
    return new Trace(trace.channel(), t, v, trace.unit());
  }
}
