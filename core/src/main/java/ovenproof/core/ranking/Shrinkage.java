package ovenproof.core.ranking;

import java.util.Arrays;

/**
 * How far scores of a field are pulled towards their mean: yᵢ ~ N(θᵢ, vᵢ), θᵢ ~ N(μ, τ²), flat
 * prior on μ, uniform prior on the shrinkage B = v₀/(v₀ + τ²) with v₀ the harmonic mean of the vᵢ
 * (Daniels, Canadian Journal of Statistics 27, 1999; Christiansen and Morris, 1997). The posterior
 * of B is tabulated; draws pick from the table.
 */
final class Shrinkage {
  private static final int GRID = 200;

  private final double[][] weights;
  private final double[][] roots;
  private final double[] centre;
  private final double[] centreDeviation;
  private final double[] cumulative;
  private final double mean;

  /**
   * @param estimates yᵢ
   * @param variances vᵢ of the part of the error that products do not share
   */
  Shrinkage(double[] estimates, double[] variances) {
    double inverse = Arrays.stream(variances).map(v -> 1 / v).sum();
    double harmonic = variances.length / inverse;
    weights = new double[GRID][variances.length];
    roots = new double[GRID][variances.length];
    centre = new double[GRID];
    centreDeviation = new double[GRID];
    cumulative = new double[GRID];
    double[] logPosterior = new double[GRID];
    for (int g = 0; g < GRID; g++) {
      double b = (g + 0.5) / GRID;
      logPosterior[g] = tabulate(g, harmonic * (1 - b) / b, estimates, variances);
    }
    mean = normalise(logPosterior);
  }

  private double tabulate(int g, double between, double[] estimates, double[] variances) {
    double precision = 0;
    double weighted = 0;
    double logDeterminant = 0;
    for (int i = 0; i < variances.length; i++) {
      double total = variances[i] + between;
      precision += 1 / total;
      weighted += estimates[i] / total;
      logDeterminant += StrictMath.log(total);
      weights[g][i] = between / total;
      roots[g][i] = Math.sqrt(weights[g][i]);
    }
    centre[g] = weighted / precision;
    centreDeviation[g] = Math.sqrt(1 / precision);
    double squares = 0;
    for (int i = 0; i < variances.length; i++) {
      double off = estimates[i] - centre[g];
      squares += off * off / (variances[i] + between);
    }
    return -0.5 * (logDeterminant + StrictMath.log(precision) + squares);
  }

  private double normalise(double[] logPosterior) {
    double highest = Arrays.stream(logPosterior).max().orElse(0);
    double sum = 0;
    double weightedB = 0;
    for (int g = 0; g < GRID; g++) {
      double density = StrictMath.exp(logPosterior[g] - highest);
      sum += density;
      weightedB += density * (g + 0.5) / GRID;
      cumulative[g] = sum;
    }
    for (int g = 0; g < GRID; g++) {
      cumulative[g] /= sum;
    }
    return weightedB / sum;
  }

  /** Posterior mean of B. */
  double mean() {
    return mean;
  }

  /** Row of the table for a uniform number. */
  int row(double uniform) {
    int found = Arrays.binarySearch(cumulative, uniform);
    return Math.min(GRID - 1, found >= 0 ? found : -found - 1);
  }

  double centre(int row, double normal) {
    return centre[row] + centreDeviation[row] * normal;
  }

  double weight(int row, int product) {
    return weights[row][product];
  }

  double root(int row, int product) {
    return roots[row][product];
  }
}
