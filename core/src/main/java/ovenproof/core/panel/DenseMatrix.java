package ovenproof.core.panel;

import java.util.Arrays;

/** Small dense matrices, as plain arrays; only what the mixed model needs. */
final class DenseMatrix {

  private DenseMatrix() {}

  static double[][] multiply(double[][] a, double[][] b) {
    int columns = b.length == 0 ? 0 : b[0].length;
    double[][] product = new double[a.length][columns];
    for (int i = 0; i < a.length; i++) {
      double[] row = product[i];
      for (int k = 0; k < b.length; k++) {
        double factor = a[i][k];
        if (factor != 0) {
          double[] other = b[k];
          for (int j = 0; j < columns; j++) {
            row[j] += factor * other[j];
          }
        }
      }
    }
    return product;
  }

  static double[] multiply(double[][] a, double[] x) {
    double[] product = new double[a.length];
    for (int i = 0; i < a.length; i++) {
      product[i] = dot(a[i], x);
    }
    return product;
  }

  static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }

  static double[][] transpose(double[][] a) {
    int columns = a.length == 0 ? 0 : a[0].length;
    double[][] result = new double[columns][a.length];
    for (int i = 0; i < a.length; i++) {
      for (int j = 0; j < columns; j++) {
        result[j][i] = a[i][j];
      }
    }
    return result;
  }

  /** Trace of a·b for matrices of one size. */
  static double traceOfProduct(double[][] a, double[][] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      for (int j = 0; j < b.length; j++) {
        sum += a[i][j] * b[j][i];
      }
    }
    return sum;
  }

  static double sumOfSquares(double[][] a) {
    double sum = 0;
    for (double[] row : a) {
      sum += dot(row, row);
    }
    return sum;
  }

  /** Adds a multiple of the first entries of one row to another. */
  static void addScaled(double[] target, double[] source, double factor, int length) {
    for (int j = 0; j < length; j++) {
      target[j] += factor * source[j];
    }
  }

  /** Takes Σ r·r'/w over the rows out of a symmetric matrix. */
  static void subtractOuters(double[][] target, double[][] rows, double[] weights) {
    for (int i = 0; i < target.length; i++) {
      for (int p = 0; p < rows.length; p++) {
        if (rows[p][i] != 0) {
          addScaled(target[i], rows[p], -rows[p][i] / weights[p], i + 1);
        }
      }
    }
    mirror(target);
  }

  /** Takes Σ (a·b' + b·a')/w over the rows out of a symmetric matrix. */
  static void subtractMixedOuters(double[][] target, double[][] a, double[][] b, double[] weights) {
    for (int i = 0; i < target.length; i++) {
      for (int p = 0; p < a.length; p++) {
        if (a[p][i] != 0 || b[p][i] != 0) {
          addScaled(target[i], b[p], -a[p][i] / weights[p], i + 1);
          addScaled(target[i], a[p], -b[p][i] / weights[p], i + 1);
        }
      }
    }
    mirror(target);
  }

  /** Copies what is below the diagonal to above it. */
  private static void mirror(double[][] a) {
    for (int i = 0; i < a.length; i++) {
      for (int j = 0; j < i; j++) {
        a[j][i] = a[i][j];
      }
    }
  }

  /** Lower Cholesky factor. */
  static double[][] cholesky(double[][] a) {
    int n = a.length;
    double[][] l = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        double sum = a[i][j];
        for (int k = 0; k < j; k++) {
          sum -= l[i][k] * l[j][k];
        }
        if (i == j) {
          l[i][i] = Math.sqrt(Math.max(sum, 1e-300));
        } else {
          l[i][j] = sum / l[j][j];
        }
      }
    }
    return l;
  }

  /** Solution of LL'x = b, for the first entries of b. */
  static double[] solve(double[][] cholesky, double[] b) {
    int n = cholesky.length;
    double[] x = Arrays.copyOf(b, n);
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < i; k++) {
        x[i] -= cholesky[i][k] * x[k];
      }
      x[i] /= cholesky[i][i];
    }
    for (int i = n - 1; i >= 0; i--) {
      x[i] /= cholesky[i][i];
      addScaled(x, cholesky[i], -x[i], i);
    }
    return x;
  }

  static double logDeterminant(double[][] cholesky) {
    double sum = 0;
    for (int i = 0; i < cholesky.length; i++) {
      sum += 2 * Math.log(cholesky[i][i]);
    }
    return sum;
  }

  /** Inverse from the lower Cholesky factor. */
  static double[][] inverse(double[][] cholesky) {
    int n = cholesky.length;
    double[][] inverseFactor = new double[n][n];
    for (int i = 0; i < n; i++) {
      double[] row = inverseFactor[i];
      for (int k = 0; k < i; k++) {
        addScaled(row, inverseFactor[k], -cholesky[i][k] / cholesky[i][i], k + 1);
      }
      row[i] = 1 / cholesky[i][i];
    }
    double[][] inverse = new double[n][n];
    for (double[] row : inverseFactor) {
      for (int i = 0; i < n; i++) {
        if (row[i] != 0) {
          addScaled(inverse[i], row, row[i], i + 1);
        }
      }
    }
    mirror(inverse);
    return inverse;
  }

  static double[][] inverseOf(double[][] a) {
    return inverse(cholesky(a));
  }

  /**
   * Which columns of X can be kept, in order, given X'X: a column that the kept ones explain is
   * dropped.
   */
  static boolean[] independent(double[][] crossProduct, double tolerance) {
    int n = crossProduct.length;
    double[][] a = new double[n][];
    for (int i = 0; i < n; i++) {
      a[i] = crossProduct[i].clone();
    }
    boolean[] kept = new boolean[n];
    for (int pivot = 0; pivot < n; pivot++) {
      kept[pivot] = a[pivot][pivot] > tolerance * Math.max(crossProduct[pivot][pivot], 1e-12);
      if (!kept[pivot]) {
        continue;
      }
      for (int i = pivot + 1; i < n; i++) {
        double factor = a[i][pivot] / a[pivot][pivot];
        if (factor != 0) {
          for (int j = pivot; j < n; j++) {
            a[i][j] -= factor * a[pivot][j];
          }
        }
      }
    }
    return kept;
  }

  static double trace(double[][] a) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i][i];
    }
    return sum;
  }

  /** x'Ax. */
  static double quadratic(double[] x, double[][] a) {
    return dot(x, multiply(a, x));
  }

  /** B'AB. */
  static double[][] sandwich(double[][] b, double[][] a) {
    return multiply(transpose(b), multiply(a, b));
  }

  /** fa·a + fb·b + fc·c for matrices of one size. */
  static double[][] sum(double fa, double[][] a, double fb, double[][] b, double fc, double[][] c) {
    double[][] result = new double[a.length][];
    for (int i = 0; i < a.length; i++) {
      result[i] = new double[a[i].length];
      for (int j = 0; j < a[i].length; j++) {
        result[i][j] = fa * a[i][j] + fb * b[i][j] + fc * c[i][j];
      }
    }
    return result;
  }
}
