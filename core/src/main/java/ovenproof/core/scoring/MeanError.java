package ovenproof.core.scoring;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import ovenproof.core.measure.Component;
import ovenproof.core.repeatability.CombinedUncertainty;
import ovenproof.core.repeatability.PooledDeviation;

/**
 * Error of a product's mean of one variable: the run-to-run part s√m/n (m of n runs uncensored),
 * the parts from shared sources, the part from specimen to specimen.
 *
 * <p>Components of the run itself are left out: the deviation between runs contains them.
 *
 * @param run standard uncertainty from run to run; NaN when no deviation is known
 * @param degreesOfFreedom of {@code run}
 * @param shared signed sensitivity of the mean to one standard deviation of each shared source
 * @param unitToUnit standard deviation between specimens
 */
record MeanError(
    double run, double degreesOfFreedom, Map<String, Double> shared, double unitToUnit) {

  static final MeanError NONE = new MeanError(0, Double.POSITIVE_INFINITY, Map.of(), 0);

  static MeanError of(
      Answer.Measured measured, PooledDeviation spread, double unitToUnit, int plannedRuns) {
    int n = measured.observations().size();
    long seen = measured.observations().stream().filter(o -> !o.censored()).count();
    Map<String, Double> shared = new TreeMap<>();
    for (Observation observation : measured.observations()) {
      for (Component component : observation.components()) {
        if (component.isShared()) {
          shared.merge(component.source(), component.u() / n, Double::sum);
        }
      }
    }
    double all = n + (double) plannedRuns;
    double uncensored = seen + (seen == 0 ? 0 : (double) plannedRuns);
    double run = seen == 0 ? 0 : spread.deviation() * Math.sqrt(uncensored) / all;
    double degrees = seen == 0 ? Double.POSITIVE_INFINITY : spread.degreesOfFreedom();
    return new MeanError(
        seen > 0 && !spread.known() ? Double.NaN : run,
        degrees,
        new LinkedHashMap<>(shared),
        unitToUnit);
  }

  boolean known() {
    return !Double.isNaN(run);
  }

  CombinedUncertainty combined() {
    List<Double> parts = new ArrayList<>(shared.values());
    parts.add(unitToUnit);
    parts.add(run);
    double[] u = parts.stream().mapToDouble(Double::doubleValue).toArray();
    double[] degrees = new double[u.length];
    java.util.Arrays.fill(degrees, Double.POSITIVE_INFINITY);
    degrees[u.length - 1] = run == 0 ? Double.POSITIVE_INFINITY : degreesOfFreedom;
    return CombinedUncertainty.of(u, degrees);
  }
}
