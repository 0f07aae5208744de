package ovenproof.core.years;

import java.util.List;
import ovenproof.core.statistics.Descriptive;

/**
 * How much of a session's drift to take off every product of it: b·(reference of the session − mean
 * of the reference over sessions), with b = max(0, 1 − (s_w²/m)/s²_session means).
 *
 * @param share b, 0–1; 0 before five sessions
 * @param referenceMean mean of the reference appliance over sessions
 * @param uncertainty standard uncertainty of a correction: b·s_w/√m, shared by all products of a
 *     session; 0 when nothing is corrected
 */
public record SessionCorrection(double share, double referenceMean, double uncertainty) {
  private static final int FEWEST_SESSIONS = 5;

  /**
   * @param sessions runs of the reference appliance by session, each at least one run
   */
  public static SessionCorrection of(List<double[]> sessions) {
    double[] means = sessions.stream().mapToDouble(s -> Descriptive.of(s).mean()).toArray();
    Descriptive over = Descriptive.of(means);
    double squares = 0;
    double degrees = 0;
    double inverse = 0;
    for (double[] session : sessions) {
      inverse += 1.0 / session.length / sessions.size();
      if (session.length > 1) {
        double s = Descriptive.of(session).standardDeviation();
        squares += (session.length - 1) * s * s;
        degrees += session.length - 1;
      }
    }
    double between = over.standardDeviation() * over.standardDeviation();
    if (sessions.size() < FEWEST_SESSIONS || degrees == 0 || !(between > 0)) {
      return new SessionCorrection(0, over.mean(), 0);
    }
    double noise = squares / degrees * inverse;
    double share = Math.max(0, 1 - noise / between);
    return new SessionCorrection(share, over.mean(), share * Math.sqrt(noise));
  }

  /** A product's value, corrected for what the reference appliance showed in its session. */
  public double corrected(double value, double referenceOfSession) {
    return value - share * (referenceOfSession - referenceMean);
  }
}
