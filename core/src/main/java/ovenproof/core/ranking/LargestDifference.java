package ovenproof.core.ranking;

/**
 * The largest |error difference|/SEd of one draw. Only products whose distance from the far end of
 * the field, over the smallest SEd they have with anyone, exceeds what the two ends reach can be
 * part of a larger one: few, usually. Confined to one thread.
 */
final class LargestDifference {
  private final double[][] standardErrors;
  private final double[] smallest;
  private final int products;
  private final int[] highColumn;
  private final int[] low;
  private final int[] high;

  /**
   * @param standardErrors SEd of every pair of columns; 0 where two never differ
   * @param highColumn of each product, the column of its upper bound
   */
  LargestDifference(double[][] standardErrors, int products, int[] highColumn) {
    this.standardErrors = standardErrors;
    this.products = products;
    this.highColumn = highColumn;
    int columns = standardErrors.length;
    low = new int[columns];
    high = new int[columns];
    smallest = new double[columns];
    for (int i = 0; i < columns; i++) {
      smallest[i] = Double.POSITIVE_INFINITY;
      for (double value : standardErrors[i]) {
        smallest[i] = value > 0 ? Math.min(smallest[i], value) : smallest[i];
      }
    }
  }

  /**
   * @param error of each column in one draw
   */
  double largest(double[] error) {
    int least = 0;
    int most = 0;
    for (int i = 1; i < error.length; i++) {
      least = error[i] < error[least] ? i : least;
      most = error[i] > error[most] ? i : most;
    }
    double found = ratio(error, least, most);
    int lows = 0;
    int highs = 0;
    for (int i = 0; i < error.length; i++) {
      double reach = found * smallest[i];
      if (error[most] - error[i] > reach) {
        low[lows++] = i;
      }
      if (error[i] - error[least] > reach) {
        high[highs++] = i;
      }
    }
    for (int i = 0; i < lows; i++) {
      for (int j = 0; j < highs; j++) {
        if (error[high[j]] - error[low[i]] > found * smallest[low[i]]) {
          found = Math.max(found, ratio(error, low[i], high[j]));
        }
      }
    }
    return found;
  }

  /** 0 for two bounds of one product and for a pair that never differs. */
  private double ratio(double[] error, int below, int above) {
    double deviation = standardErrors[below][above];
    return deviation > 0 && !sameProduct(below, above)
        ? (error[above] - error[below]) / deviation
        : 0;
  }

  private boolean sameProduct(int a, int b) {
    return (a < products && highColumn[a] == b) || (b < products && highColumn[b] == a);
  }
}
