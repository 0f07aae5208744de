package ovenproof.core.panel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import ovenproof.core.statistics.CompactLetters;
import ovenproof.core.statistics.Distributions;
import ovenproof.core.statistics.HolmAdjustment;
import ovenproof.core.statistics.StudentizedRange;

/**
 * A rating table's statistics, attribute by attribute.
 *
 * @param attributes in order of appearance
 * @param halo one check per person; empty when there are fewer than three attributes
 * @param warnings that hold for the whole table
 */
public record PanelAnalysis(
    List<AttributeAnalysis> attributes, List<HaloCheck> halo, List<String> warnings) {

  /** Products whose p value is at most this are called different. */
  public static final double SIGNIFICANCE = 0.05;

  private static final int MOST_PAIRS = 2000;

  public PanelAnalysis {
    attributes = List.copyOf(attributes);
    halo = List.copyOf(halo);
    warnings = List.copyOf(warnings);
  }

  /** With Tukey's pairs and everybody counting alike. */
  public static PanelAnalysis of(List<Rating> ratings) {
    return of(ratings, PairAdjustment.TUKEY, AssessorWeighting.EQUAL);
  }

  public static PanelAnalysis of(
      List<Rating> ratings, PairAdjustment adjustment, AssessorWeighting weighting) {
    Map<String, List<Rating>> byAttribute = new LinkedHashMap<>();
    for (Rating rating : ratings) {
      byAttribute.computeIfAbsent(rating.attribute(), any -> new ArrayList<>()).add(rating);
    }
    List<Step> steps =
        byAttribute.entrySet().parallelStream()
            .map(e -> Step.of(e.getKey(), e.getValue(), adjustment, weighting))
            .toList();
    Map<String, CellMeans> cells = new LinkedHashMap<>();
    Set<String> shared = new LinkedHashSet<>();
    for (Step step : steps) {
      if (step.checks != null) {
        cells.put(step.analysis.attribute(), step.checks.cells());
      }
      addSharedWarnings(shared, step.data, step.checks);
    }
    List<HaloCheck> halo = cells.size() < 3 ? List.of() : HaloCheck.of(cells);
    return new PanelAnalysis(
        steps.stream().map(Step::analysis).toList(), halo, List.copyOf(shared));
  }

  /** One attribute's result with what the others need of it. */
  private record Step(
      Observations data, @Nullable AssessorChecks checks, AttributeAnalysis analysis) {

    static Step of(
        String attribute,
        List<Rating> ratings,
        PairAdjustment adjustment,
        AssessorWeighting weighting) {
      Observations data = Observations.of(ratings);
      Factor assessor = data.assessor();
      AssessorChecks checks =
          assessor == null ? null : AssessorChecks.of(data, assessor, weighting);
      return new Step(
          data, checks, new OneAttribute(attribute, data, checks, adjustment).analyse());
    }
  }

  private static void addSharedWarnings(
      Set<String> shared, Observations data, @Nullable AssessorChecks checks) {
    if (data.batch() == null && data.product().size() > 1) {
      shared.add(PanelMeans.NO_BATCHES);
    }
    if (checks != null && checks.repetitions() == Repeatability.Kind.NONE) {
      shared.add(
          "Nobody rated the same sample twice: whether people repeat themselves cannot be told."
              + " Serve one sample twice, blind, in every session.");
    }
    if (data.assessors() > 1 && data.assessors() < 8) {
      shared.add(
          data.assessors()
              + " people are expert notes rather than a panel (8 to 12 trained people are usual).");
    }
  }

  /** The steps for one attribute. */
  private static final class OneAttribute {
    private final String attribute;
    private final Observations data;
    private final @Nullable AssessorChecks checks;
    private final PairAdjustment adjustment;
    private final FittedPanel fitted;
    private final List<String> warnings;

    OneAttribute(
        String attribute,
        Observations data,
        @Nullable AssessorChecks checks,
        PairAdjustment adjustment) {
      this.attribute = attribute;
      this.data = data;
      this.checks = checks;
      this.adjustment = adjustment;
      this.fitted = FittedPanel.fit(data);
      this.warnings = new ArrayList<>(fitted.warnings());
    }

    AttributeAnalysis analyse() {
      double[] means = fitted.means();
      int[] order =
          IntStream.range(0, means.length)
              .boxed()
              .sorted(Comparator.comparingDouble((Integer i) -> -means[i]))
              .mapToInt(Integer::intValue)
              .toArray();
      List<PairDifference> pairs = pairs(means, order);
      List<PanelTest> tests = tests();
      return new AttributeAnalysis(
          attribute,
          fitted.method(),
          products(means, order, letters(pairs, order)),
          pairs,
          tests,
          fitted.components(),
          sensitivity(),
          checks == null ? List.of() : checks.all(attribute),
          warnings);
    }

    private List<PairDifference> pairs(double[] means, int[] order) {
      ProductModel model = fitted.model();
      int count = order.length * (order.length - 1) / 2;
      if (model == null || count > MOST_PAIRS) {
        if (count > MOST_PAIRS) {
          warnings.add("Too many products for all pairs: " + order.length + "; no letters.");
        }
        return List.of();
      }
      List<String> names = fitted.data().product().levels();
      List<PairDifference> pairs = new ArrayList<>();
      for (int a = 0; a < order.length; a++) {
        for (int b = a + 1; b < order.length; b++) {
          double difference = means[order[a]] - means[order[b]];
          double error = model.standardErrorOfDifference(order[a], order[b]);
          double df = model.degreesOfDifference(order[a], order[b]);
          double p = pValue(difference, error, df, order.length);
          pairs.add(
              new PairDifference(
                  names.get(order[a]), names.get(order[b]), difference, error, df, p));
        }
      }
      return adjustment == PairAdjustment.HOLM ? holm(pairs) : pairs;
    }

    private double pValue(double difference, double error, double df, int products) {
      if (!(error > 0) || !(df > 0)) {
        return Double.NaN;
      }
      double t = Math.abs(difference) / error;
      return adjustment == PairAdjustment.HOLM
          ? Distributions.studentTwoSided(t, df)
          : StudentizedRange.of(products, df).upperTail(t * Math.sqrt(2));
    }

    private static List<PairDifference> holm(List<PairDifference> pairs) {
      double[] p = HolmAdjustment.adjust(pairs.stream().mapToDouble(PairDifference::p).toArray());
      List<PairDifference> adjusted = new ArrayList<>();
      for (int i = 0; i < p.length; i++) {
        PairDifference d = pairs.get(i);
        adjusted.add(
            new PairDifference(
                d.first(), d.second(), d.difference(), d.standardError(), d.df(), p[i]));
      }
      return adjusted;
    }

    private static List<String> letters(List<PairDifference> pairs, int[] order) {
      if (pairs.isEmpty()) {
        return IntStream.range(0, order.length).mapToObj(i -> "").toList();
      }
      boolean[][] differs = new boolean[order.length][order.length];
      int pair = 0;
      for (int a = 0; a < order.length; a++) {
        for (int b = a + 1; b < order.length; b++) {
          differs[a][b] = pairs.get(pair++).p() <= SIGNIFICANCE;
        }
      }
      return CompactLetters.of(differs);
    }

    private List<ProductMean> products(double[] means, int[] order, List<String> letters) {
      double[] errors = fitted.standardErrors();
      double[] weighted = checks == null ? new double[0] : checks.weightedMeans();
      Factor product = data.product();
      int[] marks = product.counts();
      double level = fitted.components().assessor();
      double shared = level > 0 ? level / Math.max(1, data.assessors()) : 0;
      List<ProductMean> result = new ArrayList<>();
      for (int rank = 0; rank < order.length; rank++) {
        int i = order[rank];
        result.add(
            new ProductMean(
                product.levels().get(i),
                attribute,
                means[i],
                Math.sqrt(errors[i] * errors[i] + shared),
                errors[i],
                marks[i],
                batches(i),
                weighted.length == 0 ? Double.NaN : weighted[i],
                letters.get(rank)));
      }
      return result;
    }

    private int batches(int product) {
      Factor batch = data.batch();
      if (batch == null) {
        return 0;
      }
      return (int) Arrays.stream(data.product().counts(batch)[product]).filter(c -> c > 0).count();
    }

    private List<PanelTest> tests() {
      List<PanelTest> tests = new ArrayList<>();
      ProductModel model = fitted.model();
      if (model == null) {
        return tests;
      }
      tests.add(PanelTest.of("product", attribute, model.productTest()));
      if (model instanceof BalancedModel balanced) {
        addBalanced(tests, balanced);
      }
      addPermutation(tests);
      if (checks != null) {
        addRanks(tests, checks.cells().complete());
      }
      OrderEffects order = OrderEffects.of(data, attribute);
      tests.addAll(order.tests());
      if (!order.reason().isEmpty()) {
        warnings.add(order.reason());
      }
      warnAboutOrder(order);
      return tests;
    }

    private void addBalanced(List<PanelTest> tests, BalancedModel model) {
      FTest batch = model.batchTest();
      if (!Double.isNaN(batch.f())) {
        tests.add(PanelTest.of("batch", attribute, batch));
      }
      FTest interaction = model.interactionTest();
      if (!Double.isNaN(interaction.f())) {
        tests.add(PanelTest.of("product × assessor", attribute, interaction));
      }
      tests.add(PanelTest.of("assessor", attribute, model.assessorTest()));
    }

    private void addPermutation(List<PanelTest> tests) {
      PermutationCheck check = permutation();
      if (check == null) {
        return;
      }
      String method =
          String.format(
              Locale.ROOT,
              "%d random relabellings; the smallest p this table allows is %.2g",
              check.relabellings(),
              check.smallestPossible());
      tests.add(new PanelTest("permutation", attribute, Double.NaN, List.of(), check.p(), method));
    }

    private @Nullable PermutationCheck permutation() {
      Factor batch = data.batch();
      if (batch != null) {
        int[] productOf = new int[batch.size()];
        for (int i = 0; i < data.n(); i++) {
          productOf[batch.of()[i]] = data.product().of()[i];
        }
        double[] means = PanelMeans.adjustedRunMeans(data, batch);
        return PermutationCheck.ofBatches(means, productOf, data.product().size());
      }
      return checks == null || data.assessors() < 2 || data.n() > 20_000
          ? null
          : PermutationCheck.ofPersons(checks.cells().mean());
    }

    private void addRanks(List<PanelTest> tests, double[][] complete) {
      if (complete.length < 2 || complete[0].length < 2) {
        return;
      }
      FriedmanTest friedman = FriedmanTest.of(complete);
      double k = friedman.products() - 1;
      double persons = friedman.persons() - 1;
      tests.add(
          new PanelTest(
              "friedman",
              attribute,
              friedman.chiSquared(),
              List.of(k),
              friedman.p(),
              "χ², corrected for ties, people who rated every product: " + friedman.persons()));
      tests.add(
          new PanelTest(
              "kendall-w", attribute, friedman.kendallW(), List.of(k), friedman.p(), "0 … 1"));
      tests.add(
          new PanelTest(
              "iman-davenport",
              attribute,
              friedman.f(),
              List.of(k, k * persons),
              friedman.fP(),
              "F from the ranks"));
      for (IntraclassCorrelation icc : IntraclassCorrelation.of(DenseMatrix.transpose(complete))) {
        tests.add(
            new PanelTest(
                icc.form().symbol(),
                attribute,
                icc.coefficient(),
                List.of(icc.numerator(), icc.denominator()),
                icc.p(),
                String.format(
                    Locale.ROOT,
                    "95 %% from %.3f to %.3f",
                    Math.max(-1, icc.interval().low()),
                    icc.interval().high())));
      }
    }

    private void warnAboutOrder(OrderEffects order) {
      for (PanelTest test : order.tests()) {
        if (test.p() <= SIGNIFICANCE) {
          warnings.add(
              String.format(
                  Locale.ROOT,
                  "The %s mattered (p %.3f): compare products only if everybody had another order.",
                  test.name(),
                  test.p()));
        }
      }
    }

    private @Nullable Sensitivity sensitivity() {
      VarianceComponents variances = fitted.components();
      if (fitted.model() == null || !(variances.residual() > 0)) {
        return null;
      }
      Factor batch = data.batch();
      int products = data.product().size();
      int perProduct = batch == null ? 1 : Math.max(1, batch.size() / products);
      int persons =
          data.assessors() == 0 ? Math.max(2, data.n() / products) : Math.max(2, data.assessors());
      double marks = data.n() / (double) products / persons / perProduct;
      VarianceComponents perSample =
          new VarianceComponents(
              variances.batch(),
              variances.interaction(),
              variances.residual() / Math.max(1, marks),
              variances.assessor());
      return Sensitivity.of(
          new Sensitivity.Plan(products, persons, perProduct, perSample), batch != null);
    }
  }
}
