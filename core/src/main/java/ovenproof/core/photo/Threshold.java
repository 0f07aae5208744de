package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.List;

/** Levels that part a histogram (N. Otsu, 1979), for two and for three groups. */
final class Threshold {

  private static final int BINS = 128;

  private Threshold() {}

  /** The two-group level and both of the three-group levels; NaN values are ignored. */
  static List<Double> levels(double[] values) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (double v : values) {
      low = v < low ? v : low;
      high = v > high ? v : high;
    }
    if (!(high - low >= 1e-6)) {
      return List.of();
    }
    double[] count = new double[BINS + 1];
    double[] sum = new double[BINS + 1];
    double step = (high - low) / BINS;
    double[] histogram = new double[BINS];
    for (double v : values) {
      if (!Double.isNaN(v)) {
        histogram[Math.min(BINS - 1, (int) ((v - low) / step))]++;
      }
    }
    for (int i = 0; i < BINS; i++) {
      count[i + 1] = count[i] + histogram[i];
      sum[i + 1] = sum[i] + histogram[i] * i;
    }
    List<Double> out = new ArrayList<>();
    out.add(low + step * two(count, sum));
    int[] pair = three(count, sum);
    out.add(low + step * pair[0]);
    out.add(low + step * pair[1]);
    return out;
  }

  private static int two(double[] count, double[] sum) {
    int best = BINS / 2;
    double most = -1;
    for (int t = 1; t < BINS; t++) {
      double between = part(count, sum, 0, t) + part(count, sum, t, BINS);
      if (between > most) {
        most = between;
        best = t;
      }
    }
    return best;
  }

  private static int[] three(double[] count, double[] sum) {
    int[] best = {BINS / 3, 2 * BINS / 3};
    double most = -1;
    for (int s = 1; s < BINS - 1; s++) {
      for (int t = s + 1; t < BINS; t++) {
        double between =
            part(count, sum, 0, s) + part(count, sum, s, t) + part(count, sum, t, BINS);
        if (between > most) {
          most = between;
          best = new int[] {s, t};
        }
      }
    }
    return best;
  }

  private static double part(double[] count, double[] sum, int from, int to) {
    double n = count[to] - count[from];
    double s = sum[to] - sum[from];
    return n == 0 ? 0 : s * s / n;
  }
}
