package ovenproof.core.panel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import ovenproof.core.statistics.Descriptive;
import ovenproof.core.statistics.Distributions;
import ovenproof.core.statistics.OneWayAnova;
import ovenproof.core.statistics.Quantiles;

/** Checks every person of a panel on one attribute. */
final class AssessorChecks {

  private final Observations data;
  private final Factor assessor;
  private final CellMeans cells;
  private final Repeatability repeatability;
  private final double[] levels;
  private final double[] weights;
  private final List<List<Integer>> marksOf;

  /** Per product, sum of the people's means and how many people rated it. */
  private final double[] sumOf;

  private final int[] ratedBy;
  private final double[] productMeans;

  private AssessorChecks(Observations data, Factor assessor, AssessorWeighting weighting) {
    this.data = data;
    this.assessor = assessor;
    this.cells = CellMeans.of(data, assessor);
    this.repeatability = Repeatability.of(data, assessor);
    this.levels = cells.levels();
    this.weights = new double[assessor.size()];
    this.marksOf = new ArrayList<>();
    this.sumOf = new double[cells.products().size()];
    this.ratedBy = new int[sumOf.length];
    this.productMeans = data.product().means(data.y());
    addUp(cells.mean(), sumOf, ratedBy);
    for (int a = 0; a < assessor.size(); a++) {
      weights[a] = weighting.weight(repeatability.variance()[a], repeatability.pooled());
      marksOf.add(new ArrayList<>());
    }
    for (int i = 0; i < data.n(); i++) {
      marksOf.get(assessor.of()[i]).add(i);
    }
  }

  static AssessorChecks of(Observations data, Factor assessor, AssessorWeighting weighting) {
    return new AssessorChecks(data, assessor, weighting);
  }

  CellMeans cells() {
    return cells;
  }

  double[] weightedMeans() {
    return cells.weightedMeans(weights);
  }

  Repeatability.Kind repetitions() {
    return repeatability.kind();
  }

  List<AssessorCheck> all(String attribute) {
    double[][] centred = centred();
    double[] sums = new double[cells.products().size()];
    int[] counts = new int[sums.length];
    addUp(centred, sums, counts);
    double panelSpread = panelSpread(centred);
    double typical = typicalRepeatability();
    List<AssessorCheck> checks = new ArrayList<>();
    for (int a = 0; a < assessor.size(); a++) {
      checks.add(check(a, attribute, centred[a], sums, counts, panelSpread, typical));
    }
    return checks;
  }

  private static void addUp(double[][] rows, double[] sums, int[] counts) {
    for (double[] row : rows) {
      for (int p = 0; p < row.length; p++) {
        if (!Double.isNaN(row[p])) {
          sums[p] += row[p];
          counts[p]++;
        }
      }
    }
  }

  private double[][] centred() {
    double[][] centred = new double[cells.mean().length][];
    for (int a = 0; a < centred.length; a++) {
      double level = levels[a];
      centred[a] = Arrays.stream(cells.mean()[a]).map(v -> v - level).toArray();
    }
    return centred;
  }

  /** Median over the people of how far their product means spread; NaN when most give one mark. */
  private static double panelSpread(double[][] centred) {
    double[] spreads =
        Arrays.stream(centred)
            .map(row -> Arrays.stream(row).filter(v -> !Double.isNaN(v)).toArray())
            .filter(known -> known.length > 1)
            .mapToDouble(known -> Descriptive.of(known).standardDeviation())
            .toArray();
    double median = spreads.length == 0 ? 0 : Quantiles.median(spreads);
    return median > 0 ? median : Double.NaN;
  }

  private double typicalRepeatability() {
    double[] known =
        Arrays.stream(repeatability.variance()).filter(v -> !Double.isNaN(v)).toArray();
    return known.length == 0 ? Double.NaN : Math.sqrt(Quantiles.median(known));
  }

  private AssessorCheck check(
      int a,
      String attribute,
      double[] own,
      double[] sums,
      int[] counts,
      double panelSpread,
      double typical) {
    double[] marks = marksOf.get(a).stream().mapToDouble(i -> data.y()[i]).toArray();
    double[] rated = Arrays.stream(own).filter(v -> !Double.isNaN(v)).toArray();
    double spread =
        rated.length < 2 ? Double.NaN : Descriptive.of(rated).standardDeviation() / panelSpread;
    OneWayAnova anova = discrimination(a);
    double agreement = agreement(own, sums, counts);
    double[] drift = drift(a);
    double deviation = Math.sqrt(repeatability.variance()[a]);
    AssessorCheck check =
        new AssessorCheck(
            assessor.levels().get(a),
            attribute,
            marks.length,
            Arrays.stream(marks).average().orElse(Double.NaN),
            level(a),
            spread,
            deviation,
            anova == null ? Double.NaN : anova.f(),
            anova == null ? Double.NaN : anova.p(),
            agreement,
            drift[0],
            drift[1],
            weights[a],
            List.of());
    return withRemarks(check, typical);
  }

  /** Own level minus the level of the others on the products that this person rated. */
  private double level(int a) {
    double difference = 0;
    int used = 0;
    for (int p = 0; p < cells.products().size(); p++) {
      double own = cells.mean()[a][p];
      if (!Double.isNaN(own) && ratedBy[p] > 1) {
        difference += own - (sumOf[p] - own) / (ratedBy[p] - 1);
        used++;
      }
    }
    return used == 0 ? Double.NaN : difference / used;
  }

  private @Nullable OneWayAnova discrimination(int a) {
    List<List<Double>> groups = new ArrayList<>();
    cells.products().forEach(any -> groups.add(new ArrayList<>()));
    for (int i : marksOf.get(a)) {
      groups.get(data.product().of()[i]).add(data.y()[i]);
    }
    List<double[]> filled =
        groups.stream()
            .filter(g -> !g.isEmpty())
            .map(g -> g.stream().mapToDouble(Double::doubleValue).toArray())
            .toList();
    boolean repeated = filled.stream().anyMatch(g -> g.length > 1);
    return filled.size() < 2 || !repeated ? null : OneWayAnova.of(filled);
  }

  private static double agreement(double[] own, double[] sums, int[] counts) {
    List<double[]> pairs = new ArrayList<>();
    for (int p = 0; p < own.length; p++) {
      if (!Double.isNaN(own[p]) && counts[p] > 1) {
        pairs.add(new double[] {own[p], (sums[p] - own[p]) / (counts[p] - 1)});
      }
    }
    return pairs.size() < 3 ? Double.NaN : correlation(pairs);
  }

  /** Pearson's r of pairs; NaN when one side is constant. */
  static double correlation(List<double[]> pairs) {
    double mx = pairs.stream().mapToDouble(p -> p[0]).average().orElse(0);
    double my = pairs.stream().mapToDouble(p -> p[1]).average().orElse(0);
    double xx = 0;
    double yy = 0;
    double xy = 0;
    for (double[] pair : pairs) {
      xx += (pair[0] - mx) * (pair[0] - mx);
      yy += (pair[1] - my) * (pair[1] - my);
      xy += (pair[0] - mx) * (pair[1] - my);
    }
    return xx > 1e-20 && yy > 1e-20 ? xy / Math.sqrt(xx * yy) : Double.NaN;
  }

  /** Slope of what the products do not explain over the position, and its p value. */
  private double[] drift(int a) {
    List<double[]> points = new ArrayList<>();
    for (int i : marksOf.get(a)) {
      Integer position = data.ratings().get(i).position();
      if (position != null) {
        points.add(new double[] {position, data.y()[i] - productMeans[data.product().of()[i]]});
      }
    }
    if (points.size() < 5) {
      return new double[] {Double.NaN, Double.NaN};
    }
    double r = correlation(points);
    double sx = deviation(points, 0);
    double sy = deviation(points, 1);
    if (Double.isNaN(r)) {
      return new double[] {Double.NaN, Double.NaN};
    }
    double df = points.size() - 2;
    double t = r * Math.sqrt(df / Math.max(1e-12, 1 - r * r));
    return new double[] {r * sy / sx, Distributions.studentTwoSided(t, df)};
  }

  private static double deviation(List<double[]> points, int column) {
    return Descriptive.of(points.stream().mapToDouble(p -> p[column]).toArray())
        .standardDeviation();
  }

  private static AssessorCheck withRemarks(AssessorCheck c, double typical) {
    List<String> remarks = new ArrayList<>();
    if (c.repeatability() > 2 * typical) {
      remarks.add(
          text(
              "repeats itself half as closely as the panel (SD %.2f, panel %.2f)",
              c.repeatability(), typical));
    }
    if (c.discriminationP() > 0.3) {
      remarks.add(
          text(
              "does not tell the products apart beyond own scatter (p %.2f)", c.discriminationP()));
    }
    if (c.agreement() < 0) {
      remarks.add(text("orders the products unlike the others (r %.2f)", c.agreement()));
    }
    if (c.spread() < 0.5 || c.spread() > 2) {
      remarks.add(text("uses %.1f times the panel's part of the scale", c.spread()));
    }
    if (c.driftP() < 0.01) {
      remarks.add(text("marks move by %.2f per place in the serving order", c.drift()));
    }
    return new AssessorCheck(
        c.assessor(),
        c.attribute(),
        c.marks(),
        c.mean(),
        c.level(),
        c.spread(),
        c.repeatability(),
        c.discrimination(),
        c.discriminationP(),
        c.agreement(),
        c.drift(),
        c.driftP(),
        c.weight(),
        remarks);
  }

  private static String text(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
