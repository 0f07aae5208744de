package ovenproof.core.panel;

import ovenproof.core.statistics.Distributions;
import ovenproof.core.statistics.Interval;
import ovenproof.core.statistics.WilsonInterval;

/**
 * Two samples, one choice: "which do you prefer", "which is crisper". Exact binomial test against a
 * half.
 *
 * @param first choices of the first sample
 * @param answers answers that chose; "no difference" is not an answer
 * @param p as asked for by the hypothesis
 * @param interval 95 % for the share that chooses the first (Wilson)
 */
public record PairedTest(int first, int answers, double p, Interval interval) {

  /** What counts as a finding. */
  public enum Hypothesis {
    /** Either may win: preference. */
    EITHER,
    /** Only the first may win, said so before: the sample known to contain more. */
    FIRST
  }

  /**
   * @param first 0 … answers
   * @param answers at least 1
   */
  public static PairedTest of(int first, int answers, Hypothesis hypothesis) {
    Interval interval = WilsonInterval.of(first, answers, 0.95);
    int count = hypothesis == Hypothesis.EITHER ? Math.max(first, answers - first) : first;
    double tail = Distributions.binomialUpperTail(count, answers, 0.5);
    double p = hypothesis == Hypothesis.EITHER ? Math.min(1, 2 * tail) : tail;
    return new PairedTest(first, answers, p, interval);
  }
}
