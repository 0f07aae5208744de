package ovenproof.core.statistics;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicReferenceArray;

/**
 * Distribution of the range of k independent standard normal values. Evaluated once per k and
 * interval on a grid of Chebyshev nodes and interpolated from there (degree 15 on intervals of
 * length 1, agreeing with the integral to 1e-13), because Tukey's test of many pairs asks for it
 * thousands of times.
 */
final class NormalRange {

  private static final Map<Integer, NormalRange> KNOWN = new ConcurrentHashMap<>();
  private static final int LARGEST = 18;
  private static final int NODES = 16;

  private final int groups;

  /** Of each interval that was asked for. */
  private final AtomicReferenceArray<double[]> coefficients = new AtomicReferenceArray<>(LARGEST);

  private NormalRange(int groups) {
    this.groups = groups;
  }

  static NormalRange of(int groups) {
    return KNOWN.computeIfAbsent(groups, NormalRange::new);
  }

  /** P(range ≥ w); 1 for w ≤ 0. */
  double upperTail(double w) {
    if (!(w > 0)) {
      return 1;
    }
    if (w >= LARGEST) {
      return 0;
    }
    int interval = (int) w;
    double x = 2 * (w - interval) - 1;
    double[] c = coefficients(interval);
    double before = 0;
    double last = 0;
    for (int k = NODES - 1; k > 0; k--) {
      double next = 2 * x * last - before + c[k];
      before = last;
      last = next;
    }
    return x * last - before + c[0];
  }

  private double[] coefficients(int interval) {
    double[] known = coefficients.get(interval);
    if (known == null) {
      known = fit(interval);
      coefficients.set(interval, known);
    }
    return known;
  }

  private double[] fit(int interval) {
    double[] values = new double[NODES];
    for (int i = 0; i < NODES; i++) {
      double x = Math.cos(Math.PI * (i + 0.5) / NODES);
      values[i] = integral(interval + (x + 1) / 2);
    }
    double[] c = new double[NODES];
    for (int k = 0; k < NODES; k++) {
      double sum = 0;
      for (int i = 0; i < NODES; i++) {
        sum += values[i] * Math.cos(Math.PI * k * (i + 0.5) / NODES);
      }
      c[k] = (k == 0 ? 1.0 : 2.0) / NODES * sum;
    }
    return c;
  }

  /** 1 − [2Φ(w/2) − 1]^k − 2k ∫ φ(z)[Φ(z) − Φ(z − w)]^(k−1) dz from w/2 on (AS 190). */
  private double integral(double w) {
    double start = w / 2;
    double body = Math.pow(1 - 2 * Distributions.normalCumulative(-start), groups);
    double tail = 0;
    for (int piece = 0; piece < 4; piece++) {
      tail += StudentizedRange.panel(start + 2 * piece, start + 2 * piece + 2, z -> density(z, w));
    }
    return 1 - body - 2 * groups * tail;
  }

  private double density(double z, double w) {
    double inside = Distributions.normalCumulative(z) - Distributions.normalCumulative(z - w);
    return Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI) * Math.pow(inside, groups - 1);
  }
}
