package ovenproof.core.ranking;

import java.util.Arrays;

/** Errors of one draw in rising order, each with its column. Confined to one thread. */
final class SortedErrors {
  private final double[] byColumn;
  private final long[] keys;
  private final double[] value;
  private final int[] column;
  private final long mask;

  SortedErrors(int columns) {
    byColumn = new double[columns];
    keys = new long[columns];
    value = new double[columns];
    column = new int[columns];
    int bits = Math.max(1, 32 - Integer.numberOfLeadingZeros(columns - 1));
    mask = (1L << bits) - 1;
  }

  /** The last bits of the error give way to the column, for the order only. */
  void set(int index, double error) {
    byColumn[index] = error;
    long bits = Double.doubleToLongBits(error + 0.0);
    keys[index] = ((bits ^ ((bits >> 63) & Long.MAX_VALUE)) & ~mask) | index;
  }

  double largest(double[][] standardErrors, double smallest, int products, int[] highColumn) {
    Arrays.sort(keys);
    int n = keys.length;
    for (int k = 0; k < n; k++) {
      column[k] = (int) (keys[k] & mask);
      value[k] = byColumn[column[k]];
    }
    double most = 0;
    for (int i = 0; i < n && value[n - 1] - value[i] > most * smallest; i++) {
      for (int j = n - 1; j > i && value[j] - value[i] > most * smallest; j--) {
        double error = standardErrors[column[i]][column[j]];
        if (error > 0 && !sameProduct(column[i], column[j], products, highColumn)) {
          most = Math.max(most, (value[j] - value[i]) / error);
        }
      }
    }
    return most;
  }

  private static boolean sameProduct(int a, int b, int products, int[] highColumn) {
    return (a < products && highColumn[a] == b) || (b < products && highColumn[b] == a);
  }
}
