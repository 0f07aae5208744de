package ovenproof.core.panel;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import ovenproof.core.panel.MixedDesign.Cell;

/**
 * The mixed-model equations at one set of variance components. What the likelihood needs is
 * computed at once; the inverse and what its curvature needs follow when asked for, because a trial
 * step that is turned down never needs them.
 */
final class MixedEquations {

  /** Variances of residual, cell (person × product) and batch; the marks have variance 1. */
  final double e;

  final double c;
  final double b;

  /** G = U'M₀U. */
  final double[][] g;

  /** Estimates of the fixed columns and predictions of the batches. */
  final double[] solved;

  /** U'M₀y. */
  final double[] right;

  /** Weighted sums per person: of columns, of cells, of marks. */
  final double[][] personRow;

  final double[] personWeight;
  final double[] personSum;
  final double logLikelihood;
  final double penalty;

  private final MixedDesign design;
  private final int columns;
  private final int fixed;
  private final double[][] factor;
  private double @Nullable [][] inverse;
  private @Nullable CellSpread spread;

  /** S = R'R and T = R'DR with R = Zc'M₀U, D = Zc'M₀Zc, and the traces of D and D². */
  record CellSpread(double[][] s, double[][] t, double traceD, double traceDSquared) {}

  MixedEquations(MixedDesign design, double e, double c, double b) {
    this.design = design;
    this.columns = design.columns;
    this.fixed = design.fixed;
    this.e = e;
    this.c = c;
    this.b = b;
    g = new double[columns][columns];
    right = new double[columns];
    personRow = new double[design.persons][columns];
    personWeight = new double[design.persons];
    personSum = new double[design.persons];
    startWithoutPersons();
    double cellsLogDeterminant = addCells();
    double yMy = design.sumOfSquaresY / e - fitOfCells() - sweepPersons();
    factor = DenseMatrix.cholesky(equations());
    solved = Arrays.copyOf(DenseMatrix.solve(factor, right), columns);
    penalty = yMy - DenseMatrix.dot(right, solved);
    double logDeterminant = cellsLogDeterminant + DenseMatrix.logDeterminant(factor);
    if (b > 0) {
      logDeterminant += (columns - fixed) * Math.log(b);
    }
    logLikelihood = -0.5 * (logDeterminant + penalty);
  }

  private void startWithoutPersons() {
    for (int i = 0; i < columns; i++) {
      right[i] = design.crossProductsY[i] / e;
      for (int j = 0; j < columns; j++) {
        g[i][j] = design.crossProducts[i][j] / e;
      }
    }
  }

  /** Takes the cells' common parts out; the logarithm of the determinant so far. */
  private double addCells() {
    double logDeterminant = design.n * Math.log(e);
    for (Cell cell : design.cells) {
      int person = cell.person();
      double w = 1 / (e + cell.count() * c);
      double shrink = c * w / e;
      logDeterminant += Math.log1p(cell.count() * c / e);
      personWeight[person] += cell.count() * w;
      personSum[person] += w * cell.sum();
      double[] row = personRow[person];
      for (int a = 0; a < cell.columns().length; a++) {
        int i = cell.columns()[a];
        double ui = cell.counts()[a];
        right[i] -= shrink * ui * cell.sum();
        row[i] += w * ui;
        for (int d = 0; d < cell.columns().length && shrink > 0; d++) {
          g[i][cell.columns()[d]] -= shrink * ui * cell.counts()[d];
        }
      }
    }
    for (double weight : personWeight) {
      logDeterminant += Math.log(weight);
    }
    return logDeterminant;
  }

  private double fitOfCells() {
    double sum = 0;
    for (Cell cell : design.cells) {
      sum += c / e / (e + cell.count() * c) * cell.sum() * cell.sum();
    }
    return sum;
  }

  /** Takes the persons' means out of G and the right side; what they explain of the marks. */
  private double sweepPersons() {
    double explained = 0;
    for (int p = 0; p < personWeight.length; p++) {
      double level = personSum[p] / personWeight[p];
      explained += personSum[p] * level;
      DenseMatrix.addScaled(right, personRow[p], -level, columns);
    }
    DenseMatrix.subtractOuters(g, personRow, personWeight);
    return explained;
  }

  /** G with 1/b on the diagonal of the batches; without batches where they have no variance. */
  private double[][] equations() {
    int active = b > 0 ? columns : fixed;
    double[][] used = new double[active][];
    for (int i = 0; i < active; i++) {
      used[i] = Arrays.copyOf(g[i], active);
      if (i >= fixed) {
        used[i][i] += 1 / b;
      }
    }
    return used;
  }

  /** H: inverse of the mixed-model equations. */
  double[][] h() {
    double[][] h = inverse;
    if (h == null) {
      double[][] active = DenseMatrix.inverse(factor);
      h = new double[columns][columns];
      for (int i = 0; i < active.length; i++) {
        System.arraycopy(active[i], 0, h[i], 0, active.length);
      }
      inverse = h;
    }
    return h;
  }

  CellSpread spread() {
    CellSpread known = spread;
    if (known == null) {
      known = new Spreading().spread();
      spread = known;
    }
    return known;
  }

  /** Sums over the cells that go into {@link CellSpread}, the persons' means taken out. */
  private final class Spreading {
    private final double[][] s = new double[columns][columns];
    private final double[][] t = new double[columns][columns];
    private final double[][] first = new double[personWeight.length][columns];
    private final double[][] second = new double[personWeight.length][columns];
    private final double[] h2 = new double[personWeight.length];
    private final double[] h3 = new double[personWeight.length];

    CellSpread spread() {
      design.cells.forEach(this::add);
      double traceD = 0;
      double traceDSquared = 0;
      for (int p = 0; p < personWeight.length; p++) {
        double h1 = personWeight[p];
        traceD += h1 - h2[p] / h1;
        traceDSquared += h2[p] - 2 * h3[p] / h1 + h2[p] * h2[p] / h1 / h1;
      }
      sweep();
      return new CellSpread(s, t, traceD, traceDSquared);
    }

    private void add(Cell cell) {
      int p = cell.person();
      double w = 1 / (e + cell.count() * c);
      double nw = cell.count() * w;
      h2[p] += nw * nw;
      h3[p] += nw * nw * nw;
      for (int a = 0; a < cell.columns().length; a++) {
        int i = cell.columns()[a];
        double ui = cell.counts()[a];
        first[p][i] += nw * w * ui;
        second[p][i] += nw * nw * w * ui;
        for (int d = 0; d < cell.columns().length; d++) {
          double uu = w * w * ui * cell.counts()[d];
          s[i][cell.columns()[d]] += uu;
          t[i][cell.columns()[d]] += nw * uu;
        }
      }
    }

    /**
     * With r the person's row, f = first − h₂/2h₁·r, z = second − h₃/2h₁·r and v = first − h₂/h₁·r:
     * S loses (fr' + rf')/h₁, T loses (zr' + rz' + vv')/h₁.
     */
    private void sweep() {
      double[][] v = new double[first.length][];
      for (int p = 0; p < first.length; p++) {
        double h1 = personWeight[p];
        v[p] = first[p].clone();
        DenseMatrix.addScaled(v[p], personRow[p], -h2[p] / h1, columns);
        DenseMatrix.addScaled(first[p], personRow[p], -h2[p] / h1 / 2, columns);
        DenseMatrix.addScaled(second[p], personRow[p], -h3[p] / h1 / 2, columns);
      }
      DenseMatrix.subtractMixedOuters(s, first, personRow, personWeight);
      DenseMatrix.subtractMixedOuters(t, second, personRow, personWeight);
      DenseMatrix.subtractOuters(t, v, personWeight);
    }
  }

  /** Whether what the batches leave can be read off the inverse without losing digits. */
  private boolean batchesVary() {
    return b > 1e-7 * e;
  }

  /** I − HG, the part of U that the fixed and random columns leave. */
  double[][] remainder() {
    double[][] h = h();
    if (batchesVary()) {
      // H(G + diag(0, 1/b)) = I.
      double[][] left = new double[columns][columns];
      for (int i = 0; i < columns; i++) {
        for (int j = fixed; j < columns; j++) {
          left[i][j] = h[i][j] / b;
        }
      }
      return left;
    }
    double[][] left = DenseMatrix.multiply(h, g);
    for (int i = 0; i < columns; i++) {
      for (int j = 0; j < columns; j++) {
        left[i][j] = (i == j ? 1 : 0) - left[i][j];
      }
    }
    return left;
  }

  /** Zb'PZb. */
  double[][] batchProjection() {
    double[][] all = batchesVary() ? null : DenseMatrix.multiply(g, remainder());
    double[][] block = new double[columns - fixed][columns - fixed];
    for (int i = fixed; i < columns; i++) {
      for (int j = fixed; j < columns; j++) {
        block[i - fixed][j - fixed] =
            all == null ? ((i == j ? 1 : 0) - h()[i][j] / b) / b : all[i][j];
      }
    }
    return block;
  }

  /** Σ (Zc'Py)² over the cells. */
  double cellScore() {
    double[] levels = new double[personWeight.length];
    for (int p = 0; p < levels.length; p++) {
      double fit = DenseMatrix.dot(personRow[p], solved);
      levels[p] = (personSum[p] - fit) / personWeight[p];
    }
    double sum = 0;
    for (Cell cell : design.cells) {
      double value = cell.sum() - cell.count() * levels[cell.person()];
      for (int a = 0; a < cell.columns().length; a++) {
        value -= cell.counts()[a] * solved[cell.columns()[a]];
      }
      value /= e + cell.count() * c;
      sum += value * value;
    }
    return sum;
  }

  /** Σ (Zb'Py)² over the batches. */
  double batchScore() {
    double sum = 0;
    for (int i = fixed; i < columns; i++) {
      double value = right[i] - DenseMatrix.dot(g[i], solved);
      sum += value * value;
    }
    return sum;
  }
}
