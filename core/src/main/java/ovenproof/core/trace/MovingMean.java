package ovenproof.core.trace;

import org.jspecify.annotations.Nullable;

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

  /** What several measures ask of one curve. */
  /** Compared by plain code: what a record brings is put together at its first use, slowly. */
  private record Asked(double width, double end) implements SharedWork.Key<MovingMean> {
    @Override
    public boolean equals(@Nullable Object other) {
      return other instanceof Asked a
          && Double.compare(a.width, width) == 0
          && Double.compare(a.end, end) == 0;
    }

    @Override
    public int hashCode() {
      return 31 * Double.hashCode(width) + Double.hashCode(end);
    }
  }

  /** Means of the cleaned curve, computed once for all that ask for the same. */
  static MovingMean of(HeatCurve curve, double width, double end) {
    return curve.shared().once(new Asked(width, end), k -> of(curve.clean(), k.width, k.end));
  }

  /**
   * Means of a trace without missing values over {@code width} seconds, one per sample or per
   * hundredth of the width, whichever is coarser, up to {@code end}.
   */
  private static MovingMean of(Trace trace, double width, double end) {
    double start = trace.seconds()[0];
    double least = (end - start) / MOST_MEANS;
    double step = Math.max(Math.max(trace.medianStepSeconds(), width / 100), least);
    int n = (int) Math.max(0, Math.floor((end - start - width) / step + 1e-9) + 1);
    Integral until = new Integral(trace);
    Integral before = new Integral(trace);
    double[] t = new double[n];
    double[] v = new double[n];
    for (int i = 0; i < n; i++) {
      double from = start + i * step;
      t[i] = from + width / 2;
      v[i] = (until.upTo(from + width) - before.upTo(from)) / width;
    }
    return new MovingMean(t, v);
  }

  /** The integral of a trace from its start up to times that only grow, by the trapezoid rule. */
  private static final class Integral {
    private final double[] seconds;
    private final double[] values;
    private int next;
    private double sum;

    Integral(Trace trace) {
      seconds = trace.seconds();
      values = trace.values();
    }

    /** Beyond the last sample, the whole. */
    double upTo(double second) {
      while (next < seconds.length && seconds[next] < second) {
        sum += next == 0 ? 0 : piece(next - 1, seconds[next], values[next]);
        next++;
      }
      if (next >= seconds.length || next == 0) {
        return sum;
      }
      double dt = seconds[next] - seconds[next - 1];
      double share = (second - seconds[next - 1]) / dt;
      double value = values[next - 1] + share * (values[next] - values[next - 1]);
      return sum + piece(next - 1, second, value);
    }

    private double piece(int from, double second, double value) {
      return (second - seconds[from]) * (value + values[from]) / 2;
    }
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
