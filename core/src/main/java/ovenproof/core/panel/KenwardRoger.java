package ovenproof.core.panel;

import static ovenproof.core.panel.RestrictedLikelihood.BATCH;
import static ovenproof.core.panel.RestrictedLikelihood.CELL;
import static ovenproof.core.panel.RestrictedLikelihood.RESIDUAL;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Covariance, F test and degrees of freedom of the fixed effects where the variance components are
 * estimates themselves: Kenward and Roger, Biometrics 53, 1997, 983–997.
 *
 * <p>Below, L are the weights of the estimates, Vᵢ the derivative of V by component i, W the
 * covariance of the components, Φ the plain covariance of the estimates.
 */
final class KenwardRoger {
  private static final String WORDS = "restricted likelihood, Kenward–Roger";

  private final MixedDesign design;
  private final RestrictedLikelihood fit;
  private final MixedEquations solution;
  private double @Nullable [][] covariance;
  private double @Nullable [][][] sensitivities;

  KenwardRoger(MixedDesign design, RestrictedLikelihood fit) {
    this.design = design;
    this.fit = fit;
    this.solution = fit.solution();
  }

  /** The adjusted covariance of the fixed effects. */
  double[][] covariance() {
    double[][] known = covariance;
    if (known == null) {
      known = adjustedCovariance(solution);
      covariance = known;
    }
    return known;
  }

  /**
   * Degrees of freedom of one contrast k: 2(k'Φk)² / (g'Wg) with gᵢ = k'L'VᵢLk.
   *
   * @param contrast one number for each column of products and blocks
   */
  double degrees(double[] contrast) {
    if (fit.isPlain()) {
      return design.residualDegrees();
    }
    double[] gradient = new double[3];
    double[][][] sensitivities = sensitivities();
    for (int component = 0; component < 3; component++) {
      gradient[component] = DenseMatrix.quadratic(contrast, sensitivities[component]);
    }
    double variance =
        DenseMatrix.quadratic(
            contrast, Arrays.copyOf(design.fixedColumns(solution.h()), design.fixed));
    return 2 * variance * variance / DenseMatrix.quadratic(gradient, fit.informationInverse());
  }

  private double[][][] sensitivities() {
    if (sensitivities == null) {
      sensitivities = sensitivitiesAt(solution);
    }
    return sensitivities;
  }

  /**
   * Whether the levels of one factor differ.
   *
   * @param levels columns of its levels; negative for the level that the others are held against
   *     and for those that cannot be told apart
   * @return impossible where no level can be told apart
   */
  FTest test(int[] levels) {
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
    if (fit.isPlain()) {
      return FTest.of(wald, size, design.residualDegrees(), "residual");
    }
    return kenwardRoger(wald, size, shrinkages(chosen, plain));
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
  private FTest kenwardRoger(double wald, int size, double[][][] parts) {
    double a1 = 0;
    double a2 = 0;
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        double w = fit.informationInverse()[i][j];
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
        ? FTest.of(lambda * wald, l, degrees, WORDS)
        : FTest.of(wald, l, Math.max(1, 2 * l / a2), WORDS);
  }

  /** L'VᵢL for each component, L the weights of the estimates: how their variance follows it. */
  private double[][][] sensitivitiesAt(MixedEquations at) {
    double[][] weights = design.fixedColumns(at.h());
    double[][] plain = Arrays.copyOf(weights, design.fixed);
    double[][] cell = new double[design.fixed][design.fixed];
    double[][] batch = new double[design.fixed][design.fixed];
    if (fit.hasCells()) {
      cell = DenseMatrix.sandwich(weights, at.spread().s());
    }
    if (fit.hasBatches()) {
      double[][] onBatches = design.batchRows(DenseMatrix.multiply(at.g, weights));
      batch = DenseMatrix.multiply(DenseMatrix.transpose(onBatches), onBatches);
    }
    double[][] residual = DenseMatrix.sum(1 / at.e, plain, -at.c / at.e, cell, -at.b / at.e, batch);
    return new double[][][] {residual, cell, batch};
  }

  /** L'VᵢPVⱼL for each pair of components: what Kenward and Roger add to the covariance. */
  private double[][][][] curvatures(MixedEquations at) {
    double[][] weights = design.fixedColumns(at.h());
    double[][][][] terms = new double[3][3][design.fixed][design.fixed];
    double[][] onBatches = design.batchRows(DenseMatrix.multiply(at.g, weights));
    if (fit.hasCells()) {
      double[][] spread = DenseMatrix.multiply(at.spread().s(), weights);
      double[][] fitted = DenseMatrix.sandwich(spread, at.h());
      double[][] whole = DenseMatrix.sandwich(weights, at.spread().t());
      terms[CELL][CELL] = DenseMatrix.sum(1, whole, -1, fitted, 0, fitted);
    }
    if (fit.hasBatches()) {
      terms[BATCH][BATCH] = DenseMatrix.sandwich(onBatches, at.batchProjection());
    }
    if (fit.hasCells() && fit.hasBatches()) {
      double[][] left = DenseMatrix.multiply(design.batchColumns(at.remainder()), onBatches);
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
    double[][] adjusted = Arrays.copyOf(design.fixedColumns(at.h()), design.fixed);
    if (fit.isPlain()) {
      return adjusted;
    }
    double[][][][] terms = curvatures(at);
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        double[][] none = adjusted;
        adjusted =
            DenseMatrix.sum(1, adjusted, 2 * fit.informationInverse()[i][j], terms[i][j], 0, none);
      }
    }
    return adjusted;
  }
}
