package ovenproof.core.panel;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * One impression on all attributes: a person whose product means of every pair of attributes
 * correlate above 0.9 probably marks how much the product is liked, whatever is asked.
 *
 * @param assessor who
 * @param smallestCorrelation over all pairs of attributes; NaN when it cannot be told (fewer than
 *     three attributes or four products)
 * @param finding whether it looks like a halo
 */
public record HaloCheck(String assessor, double smallestCorrelation, Finding finding) {

  private static final double LIMIT = 0.9;

  /** What the correlations say. */
  public enum Finding {
    HALO,
    NONE,
    CANNOT_TELL
  }

  /** One check per person; product means by attribute, all with the same persons and products. */
  static List<HaloCheck> of(Map<String, CellMeans> byAttribute) {
    List<HaloCheck> checks = new ArrayList<>();
    if (byAttribute.isEmpty()) {
      return checks;
    }
    List<CellMeans> tables = List.copyOf(byAttribute.values());
    for (String person : tables.get(0).persons()) {
      checks.add(check(person, tables));
    }
    return checks;
  }

  private static HaloCheck check(String person, List<CellMeans> tables) {
    double smallest = Double.POSITIVE_INFINITY;
    int pairs = 0;
    for (int i = 0; i < tables.size(); i++) {
      for (int j = i + 1; j < tables.size(); j++) {
        double r = correlation(person, tables.get(i), tables.get(j));
        if (!Double.isNaN(r)) {
          smallest = Math.min(smallest, r);
          pairs++;
        }
      }
    }
    if (pairs < 3) {
      return new HaloCheck(person, Double.NaN, Finding.CANNOT_TELL);
    }
    return new HaloCheck(person, smallest, smallest > LIMIT ? Finding.HALO : Finding.NONE);
  }

  private static double correlation(String person, CellMeans first, CellMeans second) {
    int a = first.placeOf(person);
    int b = second.placeOf(person);
    List<double[]> pairs = new ArrayList<>();
    for (int p = 0; a >= 0 && b >= 0 && p < first.products().size(); p++) {
      int q = second.products().indexOf(first.products().get(p));
      if (q >= 0 && !Double.isNaN(first.mean()[a][p]) && !Double.isNaN(second.mean()[b][q])) {
        pairs.add(new double[] {first.mean()[a][p], second.mean()[b][q]});
      }
    }
    return pairs.size() < 4 ? Double.NaN : AssessorChecks.correlation(pairs);
  }
}
