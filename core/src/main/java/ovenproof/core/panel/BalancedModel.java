package ovenproof.core.panel;

import java.util.Arrays;
import java.util.Optional;
import ovenproof.core.statistics.Descriptive;

/**
 * Analysis of variance of a complete, balanced panel: every person rated every product (in every
 * batch) equally often.
 *
 * <p>Products are tested against the largest of three mean squares: batches within product, product
 * × assessor, and their sum less the residual, each with its own (the sum with Satterthwaite's)
 * degrees of freedom. The sum is the exact denominator when both kinds of scatter are there; the
 * other two keep the test honest when the difference comes out small by luck. Without batches it is
 * product × assessor alone, and the answer speaks of the batches served.
 *
 * <p>With a positive estimate of every component this equals the restricted-likelihood fit with
 * Kenward and Roger's degrees of freedom.
 */
final class BalancedModel implements ProductModel {

  private final double[] means;
  private final Strata strata;
  private final FTest test;
  private final double meanSquare;
  private final double degrees;
  private final double marksPerProduct;

  private BalancedModel(double[] means, Strata strata, double marksPerProduct) {
    this.means = means;
    this.strata = strata;
    this.marksPerProduct = marksPerProduct;
    Denominator denominator = strata.denominator();
    this.meanSquare = denominator.meanSquare;
    this.degrees = denominator.degrees;
    this.test =
        FTest.of(
            strata.product.meanSquare() / meanSquare,
            strata.product.degrees,
            degrees,
            denominator.words);
  }

  /** Empty when the table is not balanced or leaves no degrees of freedom. */
  static Optional<BalancedModel> fit(Observations data) {
    Factor assessor = data.assessor();
    if (assessor == null || assessor.size() < 2 || data.product().size() < 2) {
      return Optional.empty();
    }
    if (!isBalanced(data, assessor)) {
      return Optional.empty();
    }
    Strata strata = Strata.of(data, assessor);
    double meanSquare = strata.denominator().meanSquare;
    if (!(meanSquare > 1e-24 * strata.total)) {
      return Optional.empty();
    }
    return Optional.of(
        new BalancedModel(
            data.product().means(data.y()), strata, data.n() / (double) data.product().size()));
  }

  private static boolean isBalanced(Observations data, Factor assessor) {
    Factor batch = data.batch();
    boolean persons =
        assessor.isBalancedWith(data.product())
            && (batch == null || batch.isBalancedWith(assessor) && isEvenlySplit(data, batch));
    return persons
        && data.blocks().values().stream()
            .allMatch(
                block ->
                    block.isBalancedWith(data.product())
                        && block.isBalancedWith(assessor)
                        && data.blocks().values().stream()
                            .allMatch(other -> other == block || other.isBalancedWith(block)));
  }

  private static boolean isEvenlySplit(Observations data, Factor batch) {
    int[][] counts = data.product().counts(batch);
    long first = positive(counts[0]);
    for (int[] row : counts) {
      if (positive(row) != first) {
        return false;
      }
    }
    return true;
  }

  private static long positive(int[] counts) {
    return Arrays.stream(counts).filter(c -> c > 0).count();
  }

  @Override
  public double[] means() {
    return means.clone();
  }

  @Override
  public double[] standardErrors() {
    double[] errors = new double[means.length];
    Arrays.fill(errors, Math.sqrt(meanSquare / marksPerProduct));
    return errors;
  }

  @Override
  public double standardErrorOfDifference(int i, int j) {
    return Math.sqrt(2 * meanSquare / marksPerProduct);
  }

  @Override
  public double degreesOfDifference(int i, int j) {
    return degrees;
  }

  @Override
  public FTest productTest() {
    return test;
  }

  @Override
  public VarianceComponents components() {
    return strata.components();
  }

  /** The test whether persons disagree about the products; impossible without repetitions. */
  FTest interactionTest() {
    return strata.residual.degrees < 1
        ? FTest.impossible("no repetitions")
        : FTest.of(
            strata.interaction.meanSquare() / strata.residual.meanSquare(),
            strata.interaction.degrees,
            strata.residual.degrees,
            "residual");
  }

  /** The test whether batches of a product differ; impossible without batches. */
  FTest batchTest() {
    return strata.batch.degrees < 1 || strata.residual.degrees < 1
        ? FTest.impossible("no batches")
        : FTest.of(
            strata.batch.meanSquare() / strata.residual.meanSquare(),
            strata.batch.degrees,
            strata.residual.degrees,
            "residual");
  }

  /** The test whether persons use different levels of the scale. */
  FTest assessorTest() {
    return FTest.of(
        strata.assessor.meanSquare() / strata.interaction.meanSquare(),
        strata.assessor.degrees,
        strata.interaction.degrees,
        "product × assessor");
  }

  /** Sum of squares with its degrees of freedom. */
  record Stratum(double sumOfSquares, double degrees) {
    double meanSquare() {
      return degrees < 1 ? 0 : Math.max(0, sumOfSquares) / degrees;
    }
  }

  private record Denominator(double meanSquare, double degrees, String words) {}

  private record Strata(
      double total,
      Stratum product,
      Stratum assessor,
      Stratum batch,
      Stratum interaction,
      Stratum residual,
      double marksPerBatch,
      double marksPerCell,
      double marksPerAssessor,
      double marksPerBatchAndAssessor) {

    static Strata of(Observations data, Factor assessor) {
      double[] y = centred(data.y());
      double products = data.product().size();
      double persons = assessor.size();
      Factor batch = data.batch();
      Factor cell = data.product().crossedWith(assessor);
      double total = sumOfSquares(y);
      Stratum product = new Stratum(data.product().sumOfSquares(y), products - 1);
      Stratum people = new Stratum(assessor.sumOfSquares(y), persons - 1);
      Stratum interaction =
          new Stratum(
              cell.sumOfSquares(y) - product.sumOfSquares - people.sumOfSquares,
              (products - 1) * (persons - 1));
      double batchSquares = batch == null ? 0 : batch.sumOfSquares(y) - product.sumOfSquares;
      double batchDegrees = batch == null ? 0 : batch.size() - products;
      double restSquares =
          total
              - product.sumOfSquares
              - people.sumOfSquares
              - interaction.sumOfSquares
              - batchSquares;
      double restDegrees =
          data.n() - 1 - (products - 1) - (persons - 1) - interaction.degrees - batchDegrees;
      for (Factor block : data.blocks().values()) {
        if (batch != null && batch.isNestedIn(block)) {
          batchSquares -= block.sumOfSquares(y);
          batchDegrees -= block.size() - 1;
        } else {
          restSquares -= block.sumOfSquares(y);
          restDegrees -= block.size() - 1;
        }
      }
      double perBatchAndAssessor = batch == null ? 1 : data.n() / (double) batch.size() / persons;
      Stratum rest = new Stratum(restSquares, restDegrees);
      if (batch != null && perBatchAndAssessor > 1) {
        rest = batchByAssessor(data, assessor, batch, y, rest, interaction, people);
      }
      return new Strata(
          total,
          product,
          people,
          new Stratum(batchSquares, batchDegrees),
          interaction,
          rest,
          batch == null ? Double.NaN : data.n() / (double) batch.size(),
          data.n() / products / persons,
          data.n() / persons,
          perBatchAndAssessor);
    }

    /**
     * When a person rated a batch more than once, the scatter that matters is that of the person's
     * mean for the batch, not of the repetitions.
     */
    private static Stratum batchByAssessor(
        Observations data,
        Factor assessor,
        Factor batch,
        double[] y,
        Stratum rest,
        Stratum interaction,
        Stratum people) {
      double squares =
          batch.crossedWith(assessor).sumOfSquares(y)
              - batch.sumOfSquares(y)
              - people.sumOfSquares
              - interaction.sumOfSquares;
      double degrees = (batch.size() - data.product().size()) * (assessor.size() - 1.0);
      Stratum stratum = new Stratum(squares, degrees);
      return stratum.meanSquare() > rest.meanSquare() ? stratum : rest;
    }

    Denominator denominator() {
      Denominator largest =
          new Denominator(interaction.meanSquare(), interaction.degrees, "product × assessor");
      if (batch.degrees < 1) {
        return largest;
      }
      if (batch.meanSquare() > largest.meanSquare) {
        largest = new Denominator(batch.meanSquare(), batch.degrees, "batch");
      }
      double sum = batch.meanSquare() + interaction.meanSquare() - residual.meanSquare();
      return sum > largest.meanSquare
          ? new Denominator(sum, satterthwaite(sum), "batch + product × assessor − residual")
          : largest;
    }

    private double satterthwaite(double sum) {
      return sum
          * sum
          / (share(batch) + share(interaction) + (residual.degrees < 1 ? 0 : share(residual)));
    }

    private static double share(Stratum stratum) {
      return stratum.meanSquare() * stratum.meanSquare() / stratum.degrees;
    }

    VarianceComponents components() {
      boolean repeated = residual.degrees >= 1;
      double error = repeated ? residual.meanSquare() : interaction.meanSquare();
      double batchVariance =
          batch.degrees < 1
              ? Double.NaN
              : Math.max(0, (batch.meanSquare() - residual.meanSquare()) / marksPerBatch);
      double interactionVariance =
          repeated
              ? Math.max(0, (interaction.meanSquare() - residual.meanSquare()) / marksPerCell)
              : Double.NaN;
      double assessorVariance =
          Math.max(0, (assessor.meanSquare() - interaction.meanSquare()) / marksPerAssessor);
      return new VarianceComponents(batchVariance, interactionVariance, error, assessorVariance);
    }

    private static double[] centred(double[] y) {
      double mean = Descriptive.of(y).mean();
      return Arrays.stream(y).map(v -> v - mean).toArray();
    }

    private static double sumOfSquares(double[] y) {
      return Arrays.stream(y).map(v -> v * v).sum();
    }
  }
}
