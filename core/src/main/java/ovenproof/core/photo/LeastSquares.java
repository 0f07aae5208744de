package ovenproof.core.photo;

import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.jspecify.annotations.Nullable;

/** Linear least squares with a little ridge, for the small systems of charts and planes. */
final class LeastSquares {

  private LeastSquares() {}

  /**
   * Coefficients that minimise the squared residuals plus {@code ridge} times the squared, column-
   * scaled coefficients.
   *
   * @param ridge relative to the mean square of each column; 0 for none
   * @return null when the columns are dependent
   */
  static double @Nullable [] solve(double[][] design, double[] right, double ridge) {
    int k = design[0].length;
    double[][] normal = new double[k][k];
    double[] moment = new double[k];
    for (int i = 0; i < design.length; i++) {
      for (int r = 0; r < k; r++) {
        moment[r] += design[i][r] * right[i];
        for (int c = 0; c <= r; c++) {
          normal[r][c] += design[i][r] * design[i][c];
        }
      }
    }
    for (int r = 0; r < k; r++) {
      normal[r][r] *= 1 + ridge;
      for (int c = 0; c < r; c++) {
        normal[c][r] = normal[r][c];
      }
    }
    try {
      return new CholeskyDecomposition(new Array2DRowRealMatrix(normal, false), 1e-9, 1e-14)
          .getSolver()
          .solve(new ArrayRealVector(moment, false))
          .toArray();
    } catch (MathRuntimeException dependent) {
      return null;
    }
  }
}
