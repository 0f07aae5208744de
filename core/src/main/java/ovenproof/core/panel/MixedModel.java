package ovenproof.core.panel;

import java.util.Arrays;
import java.util.List;
import ovenproof.core.statistics.Descriptive;

/**
 * Mixed model of an incomplete panel: products, persons, sessions and conditions fixed; batches,
 * product × assessor and residual random. Fitted by restricted maximum likelihood (Patterson and
 * Thompson, Biometrika 58, 1971, 545–554); covariance, F test and degrees of freedom of Kenward and
 * Roger, Biometrics 53, 1997, 983–997.
 *
 * <p><b>How it stays small.</b> With V₀ = e·I + c·ΣJ over the cells (one person, one product) every
 * cell needs only its count, its sum and how it falls on the columns. Persons are swept out one by
 * one, so what is factored has the size of products + blocks + batches, whatever the number of
 * persons. Below, U = [X, Z] are the columns of products and blocks (fixed) and of batches
 * (random), M₀ is V₀⁻¹ with the persons swept out, and P the projection of the likelihood. {@link
 * RestrictedLikelihood} finds the components, {@link KenwardRoger} says what they are worth.
 *
 * <p>Persons are fixed because the answer compares products for these people; their spread is added
 * afterwards where it does not cancel.
 */
final class MixedModel implements ProductModel {

  private final MixedDesign design;
  private final int products;
  private final int fixed;
  private final int columns;
  private final int persons;
  private final RestrictedLikelihood fit;
  private final MixedEquations solution;
  private final KenwardRoger inference;

  /**
   * @throws IllegalArgumentException if fewer than two products or fewer marks than parameters + 1
   */
  static MixedModel fit(Observations data) {
    return new MixedModel(data, Interaction.RANDOM);
  }

  /** Products and persons add up: one residual, no product × assessor. */
  static MixedModel additive(Observations data) {
    return new MixedModel(data, Interaction.IN_RESIDUAL);
  }

  /** Where persons' disagreement about the products goes. */
  private enum Interaction {
    RANDOM,
    IN_RESIDUAL
  }

  private MixedModel(Observations data, Interaction interaction) {
    this.design = new MixedDesign(data);
    this.products = design.products;
    this.fixed = design.fixed;
    this.columns = design.columns;
    this.persons = design.persons;
    boolean hasCells =
        interaction == Interaction.RANDOM && data.assessor() != null && design.hasRepeatedCells();
    this.fit = new RestrictedLikelihood(design, hasCells);
    this.solution = fit.solution();
    this.inference = new KenwardRoger(design, fit);
  }

  /** Factors whose levels could not all be told apart from products and persons. */
  List<String> inseparable() {
    return design.lost;
  }

  /** Whether every product is linked with every other through the people who rated both. */
  boolean isConnected() {
    return !design.lost.contains("product");
  }

  @Override
  public double[] means() {
    double persona = 0;
    double[] average = averagePersonRow();
    for (int p = 0; p < persons; p++) {
      persona += solution.personSum[p] / solution.personWeight[p] / persons;
    }
    double base = persona - DenseMatrix.dot(average, solution.solved);
    double[] means = new double[products];
    for (int i = 0; i < products; i++) {
      double[] at = meanColumns(i);
      double value = base;
      for (int k = 0; k < fixed; k++) {
        value += at[k] * solution.solved[k];
      }
      means[i] = design.centre + design.scale * value;
    }
    return means;
  }

  private double[] averagePersonRow() {
    double[] average = new double[columns];
    for (int p = 0; p < persons; p++) {
      for (int k = 0; k < columns; k++) {
        average[k] += solution.personRow[p][k] / solution.personWeight[p] / persons;
      }
    }
    return average;
  }

  /** Columns of a product's mean, every block level counting alike. */
  private double[] meanColumns(int product) {
    double[] at = design.averageBlock.clone();
    int column = design.columnOfLevel[0][product];
    if (column >= 0) {
      at[column] = 1;
    }
    return at;
  }

  @Override
  public double[] standardErrors() {
    double[] average = averagePersonRow();
    double common = 0;
    for (double weight : solution.personWeight) {
      common += 1 / weight / persons / persons;
    }
    double[] errors = new double[products];
    for (int i = 0; i < products; i++) {
      double[] vector = Arrays.copyOf(meanColumns(i), columns);
      for (int k = 0; k < columns; k++) {
        vector[k] -= average[k];
      }
      double variance = common + DenseMatrix.quadratic(vector, solution.h());
      errors[i] = design.scale * Math.sqrt(variance * inflation(i));
    }
    return errors;
  }

  /** By how much Kenward and Roger enlarge the variance of this product against the others. */
  private double inflation(int product) {
    double plain = 0;
    double adjusted = 0;
    double[][] h = Arrays.copyOf(design.fixedColumns(solution.h()), fixed);
    for (int other = 0; other < products; other++) {
      double[] contrast = contrast(product, other);
      plain += DenseMatrix.quadratic(contrast, h);
      adjusted += DenseMatrix.quadratic(contrast, inference.covariance());
    }
    return plain > 0 ? Math.max(1, adjusted / plain) : 1;
  }

  private double[] contrast(int i, int j) {
    double[] contrast = new double[fixed];
    if (design.columnOfLevel[0][i] >= 0) {
      contrast[design.columnOfLevel[0][i]] += 1;
    }
    if (design.columnOfLevel[0][j] >= 0) {
      contrast[design.columnOfLevel[0][j]] -= 1;
    }
    return contrast;
  }

  @Override
  public double standardErrorOfDifference(int i, int j) {
    return design.scale
        * Math.sqrt(Math.max(0, DenseMatrix.quadratic(contrast(i, j), inference.covariance())));
  }

  @Override
  public double degreesOfDifference(int i, int j) {
    return inference.degrees(contrast(i, j));
  }

  @Override
  public FTest productTest() {
    return inference.test(design.columnOfLevel[0]);
  }

  /** Test of a block factor, in the order in which the observations hold their blocks. */
  FTest blockTest(int block) {
    return inference.test(design.columnOfLevel[block + 1]);
  }

  /** Residual degrees of freedom of the fixed part. */
  int residualDegrees() {
    return design.residualDegrees();
  }

  @Override
  public VarianceComponents components() {
    double squared = design.scale * design.scale;
    return new VarianceComponents(
        fit.hasBatches() ? solution.b * squared : Double.NaN,
        fit.hasCells() ? solution.c * squared : Double.NaN,
        solution.e * squared,
        assessorVariance() * squared);
  }

  /** Spread of the persons' levels beyond what their own scatter explains; 0 for one person. */
  private double assessorVariance() {
    if (persons < 2) {
      return 0;
    }
    double[] levels = new double[persons];
    double error = 0;
    for (int p = 0; p < persons; p++) {
      double fit = DenseMatrix.dot(solution.personRow[p], solution.solved);
      levels[p] = (solution.personSum[p] - fit) / solution.personWeight[p];
      error += 1 / solution.personWeight[p] / persons;
    }
    double deviation = Descriptive.of(levels).standardDeviation();
    return Math.max(0, deviation * deviation - error);
  }
}
