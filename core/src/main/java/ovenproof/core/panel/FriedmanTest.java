package ovenproof.core.panel;

import java.util.Arrays;
import java.util.List;
import ovenproof.core.statistics.Distributions;

/**
 * Do persons put products into the same order? Friedman's test and Kendall's coefficient of
 * concordance, both corrected for ties (Hollander and Wolfe, Nonparametric Statistical Methods,
 * 1973, chapter 7), with the F approximation of Iman and Davenport (Communications in Statistics
 * A9, 1980, 571–595), which keeps its level better for few persons.
 *
 * @param persons number of persons (blocks)
 * @param products number of products
 * @param rankSums sum of ranks of each product; rank 1 is the lowest mark, ties share the mean rank
 * @param chiSquared corrected for ties; NaN when every person tied everything
 * @param p of χ² with products − 1 degrees of freedom
 * @param kendallW 0 no agreement … 1 the same order from all, corrected for ties
 * @param f of Iman and Davenport; infinite when all agree completely
 * @param fP its p value
 */
public record FriedmanTest(
    int persons,
    int products,
    List<Double> rankSums,
    double chiSquared,
    double p,
    double kendallW,
    double f,
    double fP) {

  public FriedmanTest {
    rankSums = List.copyOf(rankSums);
  }

  /**
   * @param marks one row per person, one column per product, no missing value; at least two of each
   */
  public static FriedmanTest of(double[][] marks) {
    int n = marks.length;
    int k = n == 0 ? 0 : marks[0].length;
    if (n < 2 || k < 2) {
      throw new IllegalArgumentException(
          "marks must have at least two rows and columns, found " + n + " × " + k);
    }
    double[] sums = new double[k];
    double ties = 0;
    for (double[] row : marks) {
      double[] ranks = ranks(row);
      for (int j = 0; j < k; j++) {
        sums[j] += ranks[j];
      }
      ties += tieSum(row);
    }
    return of(n, k, sums, ties);
  }

  private static FriedmanTest of(int n, int k, double[] sums, double ties) {
    double squares = Arrays.stream(sums).map(r -> (r - n * (k + 1) / 2.0)).map(d -> d * d).sum();
    double largest = n * (double) n * (k * (double) k * k - k) - n * ties;
    double w = largest > 0 ? 12 * squares / largest : Double.NaN;
    double chiSquared = n * (k - 1) * w;
    double f = w >= 1 ? Double.POSITIVE_INFINITY : (n - 1) * w / (1 - w);
    boolean known = !Double.isNaN(w);
    double p = known ? Distributions.chiSquaredUpperTail(chiSquared, k - 1) : Double.NaN;
    double fP = known ? fTail(f, k - 1, (k - 1.0) * (n - 1)) : Double.NaN;
    return new FriedmanTest(n, k, Arrays.stream(sums).boxed().toList(), chiSquared, p, w, f, fP);
  }

  private static double fTail(double f, double numerator, double denominator) {
    return Double.isInfinite(f) ? 0 : Distributions.fUpperTail(f, numerator, denominator);
  }

  /** Ranks from 1, ties sharing their mean rank. */
  static double[] ranks(double[] values) {
    double[] ranks = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      int below = 0;
      int equal = 0;
      for (double other : values) {
        below += other < values[i] ? 1 : 0;
        equal += other == values[i] ? 1 : 0;
      }
      ranks[i] = below + (equal + 1) / 2.0;
    }
    return ranks;
  }

  /** Σ t³ − t over the groups of tied values. */
  private static double tieSum(double[] values) {
    double sum = 0;
    for (double value : values) {
      double equal = Arrays.stream(values).filter(v -> v == value).count();
      sum += equal * equal - 1; // each of the t members adds t² − 1
    }
    return sum;
  }
}
