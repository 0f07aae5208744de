package ovenproof.core.scoring;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import ovenproof.core.repeatability.OutlierTests;
import ovenproof.core.repeatability.PooledDeviation;
import ovenproof.core.repeatability.ShrunkenDeviation;
import ovenproof.core.statistics.Interval;

/** Deviations between runs of every variable of a case. */
final class FieldSpread {
  private static final double SIGNIFICANCE = 0.01;

  private final Map<String, PooledDeviation> pooled = new HashMap<>();
  private final Map<String, List<PooledDeviation>> own = new HashMap<>();
  private final Map<PooledDeviation, Interval> intervals = new ConcurrentHashMap<>();
  private final List<String> warnings = new ArrayList<>();
  private final ScoringRules.Spread rule;

  FieldSpread(ScoringCase scoringCase) {
    rule = scoringCase.rules().spread();
    for (Variable variable : scoringCase.variables()) {
      List<double[]> runs =
          scoringCase.products().stream().map(p -> values(p.answer(variable.id()))).toList();
      pooled.put(variable.id(), pooled(variable, runs));
      if (variable.repeatability() != Variable.Repeatability.EXACT) {
        own.put(variable.id(), ShrunkenDeviation.of(runs).products());
        compareSpreads(variable, scoringCase, runs);
      }
    }
  }

  private static double[] values(Answer answer) {
    return answer instanceof Answer.Measured measured ? measured.values() : new double[0];
  }

  private static PooledDeviation pooled(Variable variable, List<double[]> runs) {
    if (variable.repeatability() == Variable.Repeatability.EXACT) {
      return PooledDeviation.declared(0);
    }
    PooledDeviation seen = PooledDeviation.of(runs);
    return !seen.known() && variable.repeatability() == Variable.Repeatability.DECLARED
        ? PooledDeviation.declared(variable.deviation())
        : seen;
  }

  private void compareSpreads(Variable variable, ScoringCase scoringCase, List<double[]> runs) {
    List<double[]> tested = new ArrayList<>();
    List<String> labels = new ArrayList<>();
    for (int p = 0; p < runs.size(); p++) {
      if (runs.get(p).length > 1) {
        tested.add(runs.get(p));
        labels.add(scoringCase.products().get(p).label());
      }
    }
    if (tested.size() < 2) {
      return;
    }
    OutlierTests.Outlier cochran = OutlierTests.cochran(tested, SIGNIFICANCE);
    if (cochran.standsOut()) {
      warnings.add(
          String.format(
              java.util.Locale.ROOT,
              "%s: the runs of %s spread more than those of the field (Cochran's C %.2f, above %.2f"
                  + " at 1 %%); the pooled deviation is too small for it and too large for others",
              variable.label(),
              labels.get(cochran.index()),
              cochran.statistic(),
              cochran.critical()));
    }
  }

  PooledDeviation field(String variable) {
    return pooled.getOrDefault(variable, new PooledDeviation(Double.NaN, 0, 0));
  }

  /** The deviation used for one product. */
  PooledDeviation of(String variable, int product) {
    List<PooledDeviation> each = own.get(variable);
    boolean shrunk = rule == ScoringRules.Spread.SHRUNKEN && each != null;
    PooledDeviation mine = shrunk && each != null ? each.get(product) : field(variable);
    return mine.known() ? mine : field(variable);
  }

  /** 90 % interval of a deviation, computed once for all products that share it. */
  Interval interval(PooledDeviation deviation) {
    return deviation.known()
        ? intervals.computeIfAbsent(deviation, d -> d.interval(0.90))
        : new Interval(0, 0);
  }

  boolean shrunken() {
    return rule == ScoringRules.Spread.SHRUNKEN;
  }

  List<String> warnings() {
    return List.copyOf(warnings);
  }

  Map<String, PooledDeviation> all() {
    return Map.copyOf(pooled);
  }
}
