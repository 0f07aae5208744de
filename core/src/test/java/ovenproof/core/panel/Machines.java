package ovenproof.core.panel;

import java.util.List;
import ovenproof.core.statistics.ReferenceData;

/**
 * Productivity of 6 workers on 3 machines, 3 repetitions: Milliken and Johnson, Analysis of Messy
 * Data I, Chapman and Hall, 1992; data as shipped with R. Worker = assessor, machine = product.
 */
final class Machines {

  private Machines() {}

  static List<Rating> ratings() {
    return ReferenceData.read("panel/machines.csv").rows().stream()
        .map(row -> Rating.of(row.get(0), row.get(1), "score", Double.parseDouble(row.get(3))))
        .toList();
  }
}
