package ovenproof.core.panel;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
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
 * (random), M₀ is V₀⁻¹ with the persons swept out, and P the projection of the likelihood.
 *
 * <p>Persons are fixed because the answer compares products for these people; their spread is added
 * afterwards where it does not cancel.
 */
final class MixedModel implements ProductModel {

  /** Order of the variance components in all arrays. */
  private static final int RESIDUAL = 0;

  private static final int CELL = 1;
  private static final int BATCH = 2;

  private final MixedDesign design;
  private final int products;
  private final int fixed;
  private final int columns;
  private final int persons;
  private final boolean hasCells;
  private final boolean hasBatches;
  private final double[] theta = new double[3];
  private final MixedEquations solution;
  private double @Nullable [][] covariance;
  private double @Nullable [][] informationInverse;
  private double @Nullable [][][] sensitivities;

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
    this.hasBatches = design.hasBatches;
    this.hasCells =
        interaction == Interaction.RANDOM && data.assessor() != null && design.hasRepeatedCells();
    this.solution = maximise();
  }

  /** Scores and expected information of the components. */
  private record Curvature(double[] score, double[][] information) {}

  private Curvature curvature(MixedEquations at) {
    double[] trace = new double[3];
    double[][] pairs = new double[3][3];
    double[] quadratic = new double[3];
    if (hasCells) {
      MixedEquations.CellSpread spread = at.spread();
      double[][] hs = DenseMatrix.multiply(at.h(), spread.s());
      trace[CELL] = spread.traceD() - DenseMatrix.trace(hs);
      pairs[CELL][CELL] =
          spread.traceDSquared()
              - 2 * DenseMatrix.traceOfProduct(at.h(), spread.t())
              + DenseMatrix.traceOfProduct(hs, hs);
      quadratic[CELL] = at.cellScore();
    }
    if (hasBatches) {
      double[][] block = at.batchProjection();
      trace[BATCH] = DenseMatrix.trace(block);
      pairs[BATCH][BATCH] = DenseMatrix.sumOfSquares(block);
      quadratic[BATCH] = at.batchScore();
    }
    if (hasBatches && hasCells) {
      double[][] left = batchColumns(at.remainder());
      double[][] spread = DenseMatrix.multiply(at.spread().s(), left);
      double sum = 0;
      for (int i = 0; i < columns; i++) {
        sum += DenseMatrix.dot(left[i], spread[i]);
      }
      pairs[CELL][BATCH] = sum;
      pairs[BATCH][CELL] = sum;
    }
    // P·V·P = P gives everything about the residual from the other two.
    double degrees = design.residualDegrees();
    trace[RESIDUAL] = (degrees - at.c * trace[CELL] - at.b * trace[BATCH]) / at.e;
    for (int i : new int[] {CELL, BATCH}) {
      double value = (trace[i] - at.c * pairs[i][CELL] - at.b * pairs[i][BATCH]) / at.e;
      pairs[i][RESIDUAL] = value;
      pairs[RESIDUAL][i] = value;
    }
    pairs[RESIDUAL][RESIDUAL] =
        (trace[RESIDUAL] - at.c * pairs[RESIDUAL][CELL] - at.b * pairs[RESIDUAL][BATCH]) / at.e;
    quadratic[RESIDUAL] = (at.penalty - at.c * quadratic[CELL] - at.b * quadratic[BATCH]) / at.e;
    double[] score = new double[3];
    double[][] information = new double[3][3];
    for (int i = 0; i < 3; i++) {
      score[i] = 0.5 * (quadratic[i] - trace[i]);
      for (int j = 0; j < 3; j++) {
        information[i][j] = 0.5 * pairs[i][j];
      }
    }
    return new Curvature(score, information);
  }

  /** Fisher scoring; a component that wants to be negative is held at 0. */
  private MixedEquations maximise() {
    theta[RESIDUAL] = 0.6;
    theta[CELL] = hasCells ? 0.2 : 0;
    theta[BATCH] = hasBatches ? 0.2 : 0;
    MixedEquations current = equations(theta);
    if (!hasCells && !hasBatches) {
      double residual = current.penalty * theta[RESIDUAL] / design.residualDegrees();
      theta[RESIDUAL] = Math.max(1e-12, residual);
      return equations(theta);
    }
    for (int iteration = 0; iteration < 60; iteration++) {
      Curvature curvature = curvature(current);
      double[] step = step(curvature);
      MixedEquations next = halved(current, step, promise(curvature, step));
      double moved = distance(current, next);
      current = next;
      theta[RESIDUAL] = next.e;
      theta[CELL] = next.c;
      theta[BATCH] = next.b;
      if (moved < 1e-9) {
        break;
      }
    }
    return current;
  }

  private MixedEquations equations(double[] at) {
    return new MixedEquations(design, at[RESIDUAL], at[CELL], at[BATCH]);
  }

  private static double distance(MixedEquations from, MixedEquations to) {
    return Math.abs(to.e - from.e) + Math.abs(to.c - from.c) + Math.abs(to.b - from.b);
  }

  private double[] step(Curvature curvature) {
    boolean[] free = new boolean[3];
    for (int i = 0; i < 3; i++) {
      free[i] = isIdentified(i) && (theta[i] > 0 || curvature.score[i] > 0);
    }
    double[][] inverse = inverseOf(curvature.information, free);
    return DenseMatrix.multiply(inverse, curvature.score);
  }

  /** By how much a step would raise the likelihood if that were quadratic. */
  private static double promise(Curvature curvature, double[] step) {
    return DenseMatrix.dot(curvature.score, step) / 2;
  }

  private boolean isIdentified(int component) {
    return component == RESIDUAL
        || component == CELL && hasCells
        || component == BATCH && hasBatches;
  }

  /** Inverse over the chosen rows and columns, zero elsewhere. */
  private static double[][] inverseOf(double[][] matrix, boolean[] chosen) {
    int[] index = new int[3];
    int used = 0;
    for (int i = 0; i < 3; i++) {
      if (chosen[i]) {
        index[used++] = i;
      }
    }
    double[][] small = new double[used][used];
    for (int i = 0; i < used; i++) {
      for (int j = 0; j < used; j++) {
        small[i][j] = matrix[index[i]][index[j]];
      }
    }
    double[][] inverse = DenseMatrix.inverseOf(small);
    double[][] full = new double[3][3];
    for (int i = 0; i < used; i++) {
      for (int j = 0; j < used; j++) {
        full[index[i]][index[j]] = inverse[i][j];
      }
    }
    return full;
  }

  private MixedEquations halved(MixedEquations current, double[] step, double promise) {
    if (promise < 1e-12) {
      return current;
    }
    // So near the top, the likelihood differs by less than rounding lets it be known.
    double unknown = promise < 1e-6 ? 1e-6 : 0;
    double factor = 1;
    for (int attempt = 0; attempt < 30; attempt++, factor /= 2) {
      MixedEquations next =
          equations(
              new double[] {
                Math.max(1e-10, Math.max(current.e / 20, current.e + factor * step[RESIDUAL])),
                Math.max(0, current.c + factor * step[CELL]),
                Math.max(0, current.b + factor * step[BATCH])
              });
      if (next.logLikelihood >= current.logLikelihood - unknown) {
        return next;
      }
    }
    return current;
  }

  private double[][] informationInverse() {
    double[][] known = informationInverse;
    if (known == null) {
      boolean[] identified = {true, hasCells, hasBatches};
      known = inverseOf(curvature(solution).information, identified);
      informationInverse = known;
    }
    return known;
  }

  private double[][] covariance() {
    double[][] known = covariance;
    if (known == null) {
      known = adjustedCovariance(solution);
      covariance = known;
    }
    return known;
  }

  /** L'VᵢL for each component, L the weights of the estimates: how their variance follows it. */
  private double[][][] sensitivities(MixedEquations at) {
    double[][] weights = fixedColumns(at.h());
    double[][] plain = Arrays.copyOf(weights, fixed);
    double[][] cell = new double[fixed][fixed];
    double[][] batch = new double[fixed][fixed];
    if (hasCells) {
      cell = DenseMatrix.sandwich(weights, at.spread().s());
    }
    if (hasBatches) {
      double[][] onBatches = batchRows(DenseMatrix.multiply(at.g, weights));
      batch = DenseMatrix.multiply(DenseMatrix.transpose(onBatches), onBatches);
    }
    double[][] residual = DenseMatrix.sum(1 / at.e, plain, -at.c / at.e, cell, -at.b / at.e, batch);
    return new double[][][] {residual, cell, batch};
  }

  /** L'VᵢPVⱼL for each pair of components: what Kenward and Roger add to the covariance. */
  private double[][][][] curvatures(MixedEquations at) {
    double[][] weights = fixedColumns(at.h());
    double[][][][] terms = new double[3][3][fixed][fixed];
    double[][] onBatches = batchRows(DenseMatrix.multiply(at.g, weights));
    if (hasCells) {
      double[][] spread = DenseMatrix.multiply(at.spread().s(), weights);
      double[][] fitted = DenseMatrix.sandwich(spread, at.h());
      double[][] whole = DenseMatrix.sandwich(weights, at.spread().t());
      terms[CELL][CELL] = DenseMatrix.sum(1, whole, -1, fitted, 0, fitted);
    }
    if (hasBatches) {
      terms[BATCH][BATCH] = DenseMatrix.sandwich(onBatches, at.batchProjection());
    }
    if (hasCells && hasBatches) {
      double[][] left = DenseMatrix.multiply(batchColumns(at.remainder()), onBatches);
      double[][] spread = DenseMatrix.multiply(at.spread().s(), weights);
      terms[CELL][BATCH] = DenseMatrix.multiply(DenseMatrix.transpose(spread), left);
      terms[BATCH][CELL] = DenseMatrix.transpose(terms[CELL][BATCH]);
    }
    // P·V·L = 0 gives the residual's terms from the others.
    for (int i : new int[] {CELL, BATCH, RESIDUAL}) {
      double[][] term =
          DenseMatrix.sum(
              -at.c / at.e, terms[i][CELL], -at.b / at.e, terms[i][BATCH], 0, terms[i][BATCH]);
      terms[i][RESIDUAL] = term;
      terms[RESIDUAL][i] = DenseMatrix.transpose(term);
    }
    return terms;
  }

  private double[][] adjustedCovariance(MixedEquations at) {
    double[][] adjusted = Arrays.copyOf(fixedColumns(at.h()), fixed);
    if (!hasCells && !hasBatches) {
      return adjusted;
    }
    double[][][][] terms = curvatures(at);
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        double[][] none = adjusted;
        adjusted =
            DenseMatrix.sum(1, adjusted, 2 * informationInverse()[i][j], terms[i][j], 0, none);
      }
    }
    return adjusted;
  }

  private double[][] fixedColumns(double[][] matrix) {
    double[][] result = new double[matrix.length][];
    for (int i = 0; i < matrix.length; i++) {
      result[i] = Arrays.copyOf(matrix[i], fixed);
    }
    return result;
  }

  private double[][] batchColumns(double[][] matrix) {
    double[][] result = new double[matrix.length][];
    for (int i = 0; i < matrix.length; i++) {
      result[i] = Arrays.copyOfRange(matrix[i], fixed, columns);
    }
    return result;
  }

  private double[][] batchRows(double[][] matrix) {
    return Arrays.copyOfRange(matrix, fixed, columns);
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
    double[][] h = Arrays.copyOf(fixedColumns(solution.h()), fixed);
    for (int other = 0; other < products; other++) {
      double[] contrast = contrast(product, other);
      plain += DenseMatrix.quadratic(contrast, h);
      adjusted += DenseMatrix.quadratic(contrast, covariance());
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
        * Math.sqrt(Math.max(0, DenseMatrix.quadratic(contrast(i, j), covariance())));
  }

  /** 2(k'Φk)² / (g'Wg) with gᵢ = k'L'VᵢLk: Kenward and Roger's value for a single contrast. */
  @Override
  public double degreesOfDifference(int i, int j) {
    if (!hasCells && !hasBatches) {
      return design.residualDegrees();
    }
    double[] k = contrast(i, j);
    double[] gradient = new double[3];
    double[][][] sensitivities = sensitivities();
    for (int component = 0; component < 3; component++) {
      gradient[component] = DenseMatrix.quadratic(k, sensitivities[component]);
    }
    double variance = DenseMatrix.quadratic(k, Arrays.copyOf(fixedColumns(solution.h()), fixed));
    return 2 * variance * variance / DenseMatrix.quadratic(gradient, informationInverse());
  }

  private double[][][] sensitivities() {
    if (sensitivities == null) {
      sensitivities = sensitivities(solution);
    }
    return sensitivities;
  }

  @Override
  public FTest productTest() {
    return test(design.columnOfLevel[0], "restricted likelihood, Kenward–Roger");
  }

  /** Test of a block factor, in the order in which the observations hold their blocks. */
  FTest blockTest(int block) {
    return test(design.columnOfLevel[block + 1], "restricted likelihood, Kenward–Roger");
  }

  /** Residual degrees of freedom of the fixed part. */
  int residualDegrees() {
    return design.residualDegrees();
  }

  private FTest test(int[] levels, String words) {
    int[] chosen = Arrays.stream(levels).filter(c -> c >= 0).toArray();
    if (chosen.length == 0) {
      return FTest.impossible("cannot be separated");
    }
    int size = chosen.length;
    double[][] plain = new double[size][size];
    double[][] adjusted = new double[size][size];
    double[] estimates = new double[size];
    for (int i = 0; i < size; i++) {
      estimates[i] = solution.solved[chosen[i]];
      for (int j = 0; j < size; j++) {
        plain[i][j] = solution.h()[chosen[i]][chosen[j]];
        adjusted[i][j] = covariance()[chosen[i]][chosen[j]];
      }
    }
    double wald = DenseMatrix.quadratic(estimates, DenseMatrix.inverseOf(adjusted)) / size;
    if (!hasCells && !hasBatches) {
      return FTest.of(wald, size, design.residualDegrees(), "residual");
    }
    return kenwardRoger(wald, size, shrinkages(chosen, plain), words);
  }

  /** (L'ΦL)⁻¹ · L'(L'VᵢL)L for each component. */
  private double[][][] shrinkages(int[] chosen, double[][] plain) {
    double[][] inverse = DenseMatrix.inverseOf(plain);
    double[][][] result = new double[3][][];
    for (int component = 0; component < 3; component++) {
      double[][] part = new double[chosen.length][chosen.length];
      for (int i = 0; i < chosen.length; i++) {
        for (int j = 0; j < chosen.length; j++) {
          part[i][j] = sensitivities()[component][chosen[i]][chosen[j]];
        }
      }
      result[component] = DenseMatrix.multiply(inverse, part);
    }
    return result;
  }

  /** Scale and denominator that match the first two moments (Kenward and Roger 1997, section 3). */
  private FTest kenwardRoger(double wald, int size, double[][][] parts, String words) {
    double a1 = 0;
    double a2 = 0;
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        double w = informationInverse()[i][j];
        a1 += w * DenseMatrix.trace(parts[i]) * DenseMatrix.trace(parts[j]);
        a2 += w * DenseMatrix.traceOfProduct(parts[i], parts[j]);
      }
    }
    double l = size;
    double b = (a1 + 6 * a2) / (2 * l);
    double g = ((l + 1) * a1 - (l + 4) * a2) / ((l + 2) * a2);
    double divisor = 3 * l + 2 * (1 - g);
    double c1 = g / divisor;
    double c2 = (l - g) / divisor;
    double c3 = (l + 2 - g) / divisor;
    double expectation = 1 / (1 - a2 / l);
    double root = 1 - c2 * b;
    double variance = 2 / l * (1 + c1 * b) / (root * root * (1 - c3 * b));
    double rho = variance / (2 * expectation * expectation);
    double degrees = 4 + (l + 2) / (l * rho - 1);
    double lambda = degrees / (expectation * (degrees - 2));
    boolean usable = degrees > 2 && lambda > 0 && expectation > 0;
    return usable
        ? FTest.of(lambda * wald, l, degrees, words)
        : FTest.of(wald, l, Math.max(1, 2 * l / a2), words);
  }

  @Override
  public VarianceComponents components() {
    double squared = design.scale * design.scale;
    return new VarianceComponents(
        hasBatches ? solution.b * squared : Double.NaN,
        hasCells ? solution.c * squared : Double.NaN,
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
