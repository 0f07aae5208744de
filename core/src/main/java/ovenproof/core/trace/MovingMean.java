package ovenproof.core.trace;

/** A mean over a moving window, stamped with the middle of the window. */
final class MovingMean {

  /** A stamp gone astray must not ask for a mean of every second of a century. */
  private static final int MOST_MEANS = 200_000;

  private final double[] seconds;
  private final double[] values;

  private MovingMean(double[] seconds, double[] values) {
    this.seconds = seconds;
    this.values = values;
  }

  /**
   * Means of a trace without missing values over {@code width} seconds, one per sample or per
   * hundredth of the width, whichever is coarser, up to {@code end}.
   */
  static MovingMean of(Trace trace, double width, double end) {
    double start = trace.seconds()[0];
    double least = (end - start) / MOST_MEANS;
    double step = Math.max(Math.max(trace.medianStepSeconds(), width / 100), least);
    int n = (int) Math.max(0, Math.floor((end - start - width) / step + 1e-9) + 1);
    double[] cumulative = cumulative(trace);
    double[] t = new double[n];
    double[] v = new double[n];
    for (int i = 0; i < n; i++) {
      double from = start + i * step;
      t[i] = from + width / 2;
      v[i] = (upTo(trace, cumulative, from + width) - upTo(trace, cumulative, from)) / width;
    }
    return new MovingMean(t, v);
  }

  private static double[] cumulative(Trace trace) {
    double[] sums = new double[trace.size()];
    for (int i = 1; i < sums.length; i++) {
      double dt = trace.seconds()[i] - trace.seconds()[i - 1];
      sums[i] = sums[i - 1] + dt * (trace.values()[i] + trace.values()[i - 1]) / 2;
    }
    return sums;
  }

  private static double upTo(Trace trace, double[] cumulative, double second) {
    int i = trace.firstAtOrAfter(second);
    if (i >= trace.size()) {
      return cumulative[trace.size() - 1];
    }
    if (i == 0) {
      return 0;
    }
    double dt = second - trace.seconds()[i - 1];
    double value = TimeMean.at(trace, second);
    return cumulative[i - 1] + dt * (value + trace.values()[i - 1]) / 2;
  }

  int size() {
    return seconds.length;
  }

  double second(int i) {
    return seconds[i];
  }

  double value(int i) {
    return values[i];
  }
}
