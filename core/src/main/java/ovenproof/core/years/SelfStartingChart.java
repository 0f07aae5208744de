package ovenproof.core.years;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.statistics.distribution.TDistribution;
import ovenproof.core.statistics.Descriptive;
import ovenproof.core.statistics.Distributions;

/**
 * Self-starting chart of a reference appliance: each session's mean is compared with the earlier
 * ones by the t prediction that their number allows, T = (x − x̄)/(s√(1 + 1/n)) with n − 1 degrees
 * of freedom, mapped to a standard normal z (Quesenberry, Journal of Quality Technology 23, 1991;
 * Hawkins, Technometrics 29, 1987). Shewhart limits ± 3 and an EWMA with λ = 0.2, L = 2.7 on the z,
 * its limit ± L√(λ/(2 − λ)) = 0.9 from the first judged session on: the one for which L is
 * tabulated (Lucas and Saccucci, Technometrics 32, 1990). Without any change, 7.86 % of years of
 * twenty sessions signal.
 */
public final class SelfStartingChart {

  /** The first session that is judged. */
  public static final int FIRST_JUDGED = 6;

  static final double SHEWHART = 3;
  static final double LAMBDA = 0.2;
  static final double EWMA = 2.7;

  /** Limit of an EWMA of standard normal values once its start is forgotten. */
  static final double EWMA_LIMIT = EWMA * Math.sqrt(LAMBDA / (2 - LAMBDA));

  private SelfStartingChart() {}

  /** What a chart says of a session. */
  public enum Signal {
    /** Too few earlier sessions. */
    STARTING,
    NONE,
    /** One session far out. */
    SHEWHART,
    /** A small shift that stays. */
    EWMA
  }

  /**
   * One session.
   *
   * @param session from 1
   * @param value mean of the reference appliance in the session
   * @param z standard normal if nothing changed; NaN for the first two sessions
   * @param ewma smoothed z from the first judged session on; NaN before
   * @param ewmaLimit limit of |ewma|
   */
  public record Point(
      int session, double value, double z, double ewma, double ewmaLimit, Signal signal) {}

  /**
   * Charts the sessions in order of time. Earlier sessions that gave a signal still count as
   * earlier: whoever takes one out says so.
   *
   * @param sessionMeans finite
   */
  public static List<Point> of(double... sessionMeans) {
    List<Point> points = new ArrayList<>();
    double smoothed = 0;
    for (int i = 0; i < sessionMeans.length; i++) {
      double z = z(sessionMeans, i);
      boolean judge = i + 1 >= FIRST_JUDGED;
      double limit = Double.NaN;
      if (judge) {
        smoothed = LAMBDA * z + (1 - LAMBDA) * smoothed;
        limit = EWMA_LIMIT;
      }
      points.add(
          new Point(
              i + 1,
              sessionMeans[i],
              z,
              judge ? smoothed : Double.NaN,
              limit,
              judge ? signal(z, smoothed, limit) : Signal.STARTING));
    }
    return points;
  }

  private static Signal signal(double z, double ewma, double limit) {
    if (Math.abs(z) > SHEWHART) {
      return Signal.SHEWHART;
    }
    return Math.abs(ewma) > limit ? Signal.EWMA : Signal.NONE;
  }

  private static double z(double[] values, int index) {
    if (index < 2) {
      return Double.NaN;
    }
    Descriptive earlier = Descriptive.of(java.util.Arrays.copyOf(values, index));
    double off = values[index] - earlier.mean();
    if (earlier.standardDeviation() == 0) {
      return off == 0 ? 0 : Math.copySign(8, off);
    }
    double t = off / (earlier.standardDeviation() * Math.sqrt(1 + 1.0 / index));
    // The smaller tail keeps its digits; beyond eight deviations the number has no meaning.
    double tail = TDistribution.of(index - 1).survivalProbability(Math.abs(t));
    return Math.copySign(Math.min(8, -Distributions.normalQuantile(Math.max(tail, 1e-15))), t);
  }
}
