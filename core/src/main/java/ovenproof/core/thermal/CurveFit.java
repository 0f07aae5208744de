package ovenproof.core.thermal;

import java.util.Optional;
import org.apache.commons.statistics.distribution.TDistribution;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer.Optimum;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.util.Pair;

/**
 * A curve fitted by least squares (Levenberg–Marquardt), with residuals that may remember the one
 * before: AR(1), its coefficient by restricted maximum likelihood.
 *
 * @param parameters estimates
 * @param covariance of the estimates
 * @param residualSd standard deviation of the (whitened) residuals
 * @param residualSumOfSquares of the (whitened) residuals
 * @param rho correlation of neighbouring residuals; 0 for independent ones
 * @param degreesOfFreedom n − p for independent residuals, n(1−ρ)/(1+ρ) − 2 otherwise, at least 1
 */
public record CurveFit(
    double[] parameters,
    double[][] covariance,
    double residualSd,
    double residualSumOfSquares,
    double rho,
    double degreesOfFreedom) {

  private static final double HIGHEST_RHO = 0.98;

  /**
   * Ordinary least squares; empty when it does not converge or the parameters are not determined.
   */
  public static Optional<CurveFit> independent(
      CurveModel model, double[] x, double[] y, double[] start) {
    return fit(model, x, y, start, 0);
  }

  /** Least squares with AR(1) residuals; equidistant {@code x}. Empty as above. */
  public static Optional<CurveFit> autoregressive(
      CurveModel model, double[] x, double[] y, double[] start) {
    Optional<CurveFit> fit = independent(model, x, y, start);
    for (int round = 0; round < 2 && fit.isPresent(); round++) {
      double[] p = fit.get().parameters;
      fit = fit(model, x, y, p, restrictedRho(model, x, y, p));
    }
    return fit;
  }

  private static Optional<CurveFit> fit(
      CurveModel model, double[] x, double[] y, double[] start, double rho) {
    int n = x.length;
    int p = start.length;
    if (n <= p + 2) {
      return Optional.empty();
    }
    try {
      Optimum optimum = optimum(model, x, y, start, rho);
      double[] estimates = optimum.getPoint().toArray();
      double rss = optimum.getResiduals().dotProduct(optimum.getResiduals());
      double variance = rss / (n - p);
      double[][] covariance = optimum.getCovariances(1e-30).scalarMultiply(variance).getData();
      double df = rho == 0 ? n - p : Math.max(1, n * (1 - rho) / (1 + rho) - 2);
      boolean finite = allFinite(estimates) && Double.isFinite(covariance[0][0]);
      return finite
          ? Optional.of(new CurveFit(estimates, covariance, Math.sqrt(variance), rss, rho, df))
          : Optional.empty();
    } catch (MathRuntimeException e) {
      return Optional.empty(); // no convergence, or a singular problem: no estimate
    }
  }

  private static boolean allFinite(double[] values) {
    for (double v : values) {
      if (!Double.isFinite(v)) {
        return false;
      }
    }
    return true;
  }

  private static Optimum optimum(
      CurveModel model, double[] x, double[] y, double[] start, double rho) {
    return new LevenbergMarquardtOptimizer()
        .withCostRelativeTolerance(1e-14)
        .withParameterRelativeTolerance(1e-12)
        .optimize(
            new LeastSquaresBuilder()
                .start(start)
                .target(whiten(y, rho))
                .model(p -> evaluate(model, x, p.toArray(), rho))
                .maxEvaluations(2000)
                .maxIterations(1000)
                .lazyEvaluation(false)
                .build());
  }

  private static Pair<RealVector, RealMatrix> evaluate(
      CurveModel model, double[] x, double[] p, double rho) {
    double[] values = new double[x.length];
    double[][] rows = new double[x.length][];
    for (int i = 0; i < x.length; i++) {
      values[i] = model.value(x[i], p);
      rows[i] = model.gradient(x[i], p);
    }
    return new Pair<>(
        new ArrayRealVector(whiten(values, rho), false),
        new Array2DRowRealMatrix(whitenRows(rows, rho), false));
  }

  /** Takes from each value what the one before already told (Prais–Winsten). */
  private static double[] whiten(double[] y, double rho) {
    if (rho == 0) {
      return y;
    }
    double[] white = new double[y.length];
    white[0] = Math.sqrt(1 - rho * rho) * y[0];
    for (int i = 1; i < y.length; i++) {
      white[i] = y[i] - rho * y[i - 1];
    }
    return white;
  }

  private static double[][] whitenRows(double[][] rows, double rho) {
    if (rho == 0) {
      return rows;
    }
    double[][] white = new double[rows.length][rows[0].length];
    for (int k = 0; k < rows[0].length; k++) {
      white[0][k] = Math.sqrt(1 - rho * rho) * rows[0][k];
      for (int i = 1; i < rows.length; i++) {
        white[i][k] = rows[i][k] - rho * rows[i - 1][k];
      }
    }
    return white;
  }

  /** Largest restricted likelihood of the model linearised at {@code p}, by golden section. */
  private static double restrictedRho(CurveModel model, double[] x, double[] y, double[] p) {
    double[] residuals = new double[x.length];
    double[][] rows = new double[x.length][];
    for (int i = 0; i < x.length; i++) {
      residuals[i] = y[i] - model.value(x[i], p);
      rows[i] = model.gradient(x[i], p);
    }
    double best = 0;
    double bestValue = Double.POSITIVE_INFINITY;
    for (int i = 0; i <= 49; i++) {
      double rho = i / 50.0;
      double value = minusTwoLogLikelihood(residuals, rows, rho);
      if (value < bestValue) {
        bestValue = value;
        best = rho;
      }
    }
    return Math.min(HIGHEST_RHO, refined(residuals, rows, Math.max(0, best - 0.02), best + 0.02));
  }

  private static double refined(double[] residuals, double[][] rows, double low, double high) {
    double ratio = (Math.sqrt(5) - 1) / 2;
    double a = low;
    double b = Math.min(high, HIGHEST_RHO + 0.01);
    while (b - a > 1e-4) {
      double c = b - ratio * (b - a);
      double d = a + ratio * (b - a);
      if (minusTwoLogLikelihood(residuals, rows, c) < minusTwoLogLikelihood(residuals, rows, d)) {
        b = d;
      } else {
        a = c;
      }
    }
    return (a + b) / 2;
  }

  /**
   * Restricted: the determinant of the normal equations takes account of the parameters spent. A
   * singular problem has no likelihood.
   */
  private static double minusTwoLogLikelihood(double[] residuals, double[][] rows, double rho) {
    double[][] j = whitenRows(rows, rho);
    double[] r = whiten(residuals, rho);
    int p = rows[0].length;
    double[][] normal = new double[p][p];
    double[] right = new double[p];
    double rss = 0;
    for (int i = 0; i < r.length; i++) {
      rss += r[i] * r[i];
      for (int k = 0; k < p; k++) {
        right[k] += j[i][k] * r[i];
        for (int m = 0; m <= k; m++) {
          normal[k][m] += j[i][k] * j[i][m];
        }
      }
    }
    double logDeterminant = 0;
    for (int k = 0; k < p; k++) {
      for (int m = 0; m <= k; m++) {
        double sum = normal[k][m];
        for (int l = 0; l < m; l++) {
          sum -= normal[k][l] * normal[m][l];
        }
        if (k == m && sum <= 0) {
          return Double.POSITIVE_INFINITY;
        }
        normal[k][m] = k == m ? Math.sqrt(sum) : sum / normal[m][m];
      }
      for (int l = 0; l < k; l++) {
        right[k] -= normal[k][l] * right[l];
      }
      right[k] /= normal[k][k];
      rss -= right[k] * right[k];
      logDeterminant += 2 * Math.log(normal[k][k]);
    }
    int freedom = residuals.length - p;
    double variance = Math.max(rss, 1e-300) / freedom;
    return freedom * Math.log(variance) - Math.log(1 - rho * rho) + logDeterminant;
  }

  public double standardError(int parameter) {
    return Math.sqrt(Math.max(0, covariance[parameter][parameter]));
  }

  /** Standard error of a quantity with this gradient by the parameters. */
  public double standardError(double[] gradient) {
    double variance = 0;
    for (int i = 0; i < gradient.length; i++) {
      for (int k = 0; k < gradient.length; k++) {
        variance += gradient[i] * covariance[i][k] * gradient[k];
      }
    }
    return Math.sqrt(Math.max(0, variance));
  }

  /** Half-width of the two-sided interval in standard errors. */
  public double quantile(double level) {
    return TDistribution.of(degreesOfFreedom).inverseCumulativeProbability((1 + level) / 2);
  }
}
