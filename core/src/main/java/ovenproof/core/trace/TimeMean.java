package ovenproof.core.trace;

/** Integrals over time by the trapezoid rule, with the ends interpolated. */
public final class TimeMean {

  private TimeMean() {}

  /**
   * Time-mean of a trace without missing values between two times; NaN when the trace does not
   * reach over the whole of it.
   */
  public static double of(Trace trace, double fromSecond, double toSecond) {
    return integral(trace, fromSecond, toSecond) / (toSecond - fromSecond);
  }

  /** Integral in unit × s, NaN when the trace does not reach over the whole of it. */
  public static double integral(Trace trace, double fromSecond, double toSecond) {
    double[] t = trace.seconds();
    double[] v = trace.values();
    if (t.length == 0 || fromSecond < t[0] - 1e-9 || toSecond > t[t.length - 1] + 1e-9) {
      return Double.NaN;
    }
    int i = trace.firstAtOrAfter(fromSecond);
    double lastTime = fromSecond;
    double lastValue = at(trace, fromSecond);
    double sum = 0;
    while (i < t.length && t[i] <= toSecond) {
      sum += (t[i] - lastTime) * (v[i] + lastValue) / 2;
      lastTime = t[i];
      lastValue = v[i++];
    }
    return sum + (toSecond - lastTime) * (at(trace, toSecond) + lastValue) / 2;
  }

  /** Value at a time, interpolated linearly; the first or last value outside; NaN when empty. */
  public static double at(Trace trace, double second) {
    double[] t = trace.seconds();
    double[] v = trace.values();
    if (t.length == 0) {
      return Double.NaN;
    }
    int i = trace.firstAtOrAfter(second);
    if (i >= t.length) {
      return v[t.length - 1];
    }
    if (i == 0 || t[i] == second) {
      return v[i];
    }
    double share = (second - t[i - 1]) / (t[i] - t[i - 1]);
    return v[i - 1] + share * (v[i] - v[i - 1]);
  }
}
