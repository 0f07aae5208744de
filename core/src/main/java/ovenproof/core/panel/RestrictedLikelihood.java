package ovenproof.core.panel;

import org.jspecify.annotations.Nullable;

/**
 * Variance components of highest restricted likelihood, found by Fisher scoring (Patterson and
 * Thompson, Biometrika 58, 1971, 545–554). A component that wants to be negative is held at 0.
 *
 * <p>The equations of the model give score and information at any components; of these, those of
 * the residual follow from the others, because P·V·P = P.
 */
final class RestrictedLikelihood {

  /** Order of the variance components in all arrays. */
  static final int RESIDUAL = 0;

  static final int CELL = 1;
  static final int BATCH = 2;

  private final MixedDesign design;
  private final boolean hasCells;
  private final boolean hasBatches;
  private final double[] theta = new double[3];
  private final MixedEquations solution;
  private double @Nullable [][] informationInverse;

  /**
   * @param hasCells whether persons' disagreement about products is told apart from the residual
   */
  RestrictedLikelihood(MixedDesign design, boolean hasCells) {
    this.design = design;
    this.hasCells = hasCells;
    this.hasBatches = design.hasBatches;
    this.solution = maximise();
  }

  /** The equations at the components found. */
  MixedEquations solution() {
    return solution;
  }

  /** Whether anything is random beside the residual. */
  boolean isPlain() {
    return !hasCells && !hasBatches;
  }

  boolean hasCells() {
    return hasCells;
  }

  boolean hasBatches() {
    return hasBatches;
  }

  /** Covariance of the components: the inverse of their expected information. */
  double[][] informationInverse() {
    double[][] known = informationInverse;
    if (known == null) {
      boolean[] identified = {true, hasCells, hasBatches};
      known = inverseOf(curvature(solution).information, identified);
      informationInverse = known;
    }
    return known;
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
      double[][] left = design.batchColumns(at.remainder());
      double[][] spread = DenseMatrix.multiply(at.spread().s(), left);
      double sum = 0;
      for (int i = 0; i < design.columns; i++) {
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
    if (isPlain()) {
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
}
