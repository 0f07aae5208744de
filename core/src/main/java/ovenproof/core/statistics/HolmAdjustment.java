package ovenproof.core.statistics;

import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * p values adjusted for how many were looked at (Holm, Scandinavian Journal of Statistics 6, 1979,
 * 65–70): comparing an adjusted value with 5 % keeps the chance of any false alarm at 5 %, whatever
 * the tests have in common.
 */
public final class HolmAdjustment {

  private HolmAdjustment() {}

  /**
   * @param p p values in any order, each 0 … 1; not changed
   * @return adjusted values in the same order; empty for empty
   */
  public static double[] adjust(double... p) {
    int[] ascending =
        IntStream.range(0, p.length)
            .boxed()
            .sorted(Comparator.comparingDouble(i -> p[i]))
            .mapToInt(Integer::intValue)
            .toArray();
    double[] adjusted = new double[p.length];
    double largest = 0;
    for (int rank = 0; rank < ascending.length; rank++) {
      largest = Math.max(largest, Math.min(1, (p.length - rank) * p[ascending[rank]]));
      adjusted[ascending[rank]] = largest;
    }
    return adjusted;
  }
}
