package ovenproof.core.trace;

/** Slope of a curve around one moment. */
final class LocalSlope {

  /** A curve flatter than this is not rising; keeps an uncertainty finite. */
  private static final double FLATTEST = 1e-4;

  private LocalSlope() {}

  /**
   * Least-squares slope in unit per second over 30 s to either side, or three samples to either
   * side where the logger is slow; never below 0.1 mK/s.
   */
  static double at(Trace trace, double second) {
    double half = Math.max(30, 3 * trace.medianStepSeconds());
    int from = trace.firstAtOrAfter(second - half);
    int to = trace.firstAtOrAfter(second + half);
    double[] t = trace.seconds();
    double[] v = trace.values();
    double n = to - from;
    double meanT = 0;
    double meanV = 0;
    for (int i = from; i < to; i++) {
      meanT += t[i] / n;
      meanV += v[i] / n;
    }
    double xx = 0;
    double xy = 0;
    for (int i = from; i < to; i++) {
      xx += (t[i] - meanT) * (t[i] - meanT);
      xy += (t[i] - meanT) * (v[i] - meanV);
    }
    return xx > 0 ? Math.max(FLATTEST, xy / xx) : FLATTEST;
  }
}
