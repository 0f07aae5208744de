package ovenproof.core.trace;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * Smoothing and differentiation by a moving polynomial fit (A. Savitzky and M. J. E. Golay,
 * Analytical Chemistry 36, 1964, 1627–1639). Equidistant samples are assumed.
 */
public final class SavitzkyGolay {

  /** Samples that stay in a processor's nearest cache. */
  private static final int BLOCK = 1024;

  private final double[] weights;
  private final int half;

  private SavitzkyGolay(double[] weights) {
    this.weights = weights;
    this.half = weights.length / 2;
  }

  /**
   * @param window odd number of samples, larger than the degree
   * @param degree of the polynomial, 1 to 5
   * @param derivative 0 smooths, 1 and 2 give derivatives per sample and per sample squared
   */
  public static SavitzkyGolay of(int window, int degree, int derivative) {
    if (window % 2 == 0 || window <= degree) {
      throw new IllegalArgumentException(
          "window must be odd and larger than the degree " + degree + ", found " + window);
    }
    int half = window / 2;
    RealMatrix powers = new Array2DRowRealMatrix(window, degree + 1);
    for (int i = 0; i < window; i++) {
      double power = 1;
      for (int d = 0; d <= degree; d++) {
        powers.setEntry(i, d, power);
        power *= i - half;
      }
    }
    RealMatrix inverse =
        new QRDecomposition(powers).getSolver().solve(MatrixUtils.createRealIdentityMatrix(window));
    double factorial = derivative == 2 ? 2 : 1;
    double[] weights = inverse.getRow(derivative);
    for (int i = 0; i < window; i++) {
      weights[i] *= factorial;
    }
    return new SavitzkyGolay(weights);
  }

  /** The weights, first sample of the window first. */
  public double[] weights() {
    return weights.clone();
  }

  /**
   * The filtered series. Within half a window of either end, and beside a missing value, the value
   * itself stands (smoothing) – there is no polynomial to lean on.
   */
  public double[] smooth(double[] values) {
    double[] result = values.clone();
    double[] sums = new double[BLOCK];
    for (int from = half; from < values.length - half; from += BLOCK) {
      int n = Math.min(BLOCK, values.length - half - from);
      addUp(values, from - half, sums, n);
      for (int i = 0; i < n; i++) {
        if (Double.isFinite(sums[i])) {
          result[from + i] = sums[i];
        }
      }
    }
    return result;
  }

  /** Weight by weight over a block, which the processor does several samples at a time. */
  private void addUp(double[] values, int first, double[] sums, int n) {
    java.util.Arrays.fill(sums, 0, n, 0);
    for (int j = 0; j < weights.length; j++) {
      double weight = weights[j];
      int shift = first + j;
      for (int i = 0; i < n; i++) {
        sums[i] += weight * values[shift + i];
      }
    }
  }

  /** Standard deviation of the result per standard deviation of white noise. */
  double noiseGain() {
    double sum = 0;
    for (double weight : weights) {
      sum += weight * weight;
    }
    return Math.sqrt(sum);
  }
}
