package ovenproof.core.panel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
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

  private final int products;
  private final int fixed;
  private final int columns;
  private final int persons;
  private final int n;
  private final List<Cell> cells;
  private final int[] personStart;
  private final double[][] crossProducts;
  private final double[] crossProductsY;
  private final double sumOfSquaresY;
  private final double centre;
  private final double scale;
  private final boolean hasCells;
  private final boolean hasBatches;
  private final int[][] columnOfLevel;
  private final double[] averageBlock;
  private final List<String> lost;

  private final double[] theta = new double[3];
  private final Solution solution;
  private final double[][] covariance;
  private final double[][] informationInverse;
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

  private record Cell(int person, double count, double sum, int[] columns, double[] counts) {}

  private MixedModel(Observations data, Interaction interaction) {
    this.products = data.product().size();
    this.n = data.n();
    this.persons = Math.max(1, data.assessors());
    double[] y = data.y();
    this.centre = Arrays.stream(y).average().orElse(0);
    double squares = Arrays.stream(y).map(v -> (v - centre) * (v - centre)).sum();
    this.scale = squares > 0 ? Math.sqrt(squares / n) : 1;
    double[] standard = Arrays.stream(y).map(v -> (v - centre) / scale).toArray();
    Columns layout = Columns.of(data);
    this.columnOfLevel = layout.columnOfLevel;
    this.fixed = layout.fixed;
    this.lost = layout.lost;
    this.averageBlock = layout.averageBlock;
    this.hasBatches = data.batch() != null;
    int batches = hasBatches ? batchSize(data) : 0;
    this.columns = fixed + batches;
    int[][] rows = layout.rows(data, fixed);
    this.cells = cells(data, rows, standard);
    this.personStart = personStart();
    this.hasCells =
        interaction == Interaction.RANDOM && data.assessor() != null && repeatedCells() > 0;
    this.crossProducts = new double[columns][columns];
    this.crossProductsY = new double[columns];
    double sum = 0;
    for (int i = 0; i < n; i++) {
      for (int a : rows[i]) {
        crossProductsY[a] += standard[i];
        for (int b : rows[i]) {
          crossProducts[a][b]++;
        }
      }
      sum += standard[i] * standard[i];
    }
    this.sumOfSquaresY = sum;
    if (n - persons - fixed < 1) {
      throw new IllegalArgumentException("marks must exceed parameters, found " + n);
    }
    this.solution = maximise();
    this.informationInverse = informationInverse(solution);
    this.covariance = adjustedCovariance(solution);
  }

  private static int batchSize(Observations data) {
    Factor batch = data.batch();
    return batch == null ? 0 : batch.size();
  }

  private long repeatedCells() {
    return cells.stream().filter(c -> c.count > 1).count();
  }

  /** Design columns of products (all but the last) and blocks that can be told apart. */
  private record Columns(
      int fixed, int[][] columnOfLevel, double[] averageBlock, List<String> lost) {

    static Columns of(Observations data) {
      List<Factor> factors = new ArrayList<>();
      List<String> names = new ArrayList<>();
      factors.add(data.product());
      names.add("product");
      for (Map.Entry<String, Factor> block : data.blocks().entrySet()) {
        factors.add(block.getValue());
        names.add(block.getKey());
      }
      int all = factors.stream().mapToInt(f -> f.size() - 1).sum();
      boolean[] kept = DenseMatrix.independent(sweptCrossProduct(data, factors, all), 1e-9);
      int[][] columnOfLevel = new int[factors.size()][];
      List<String> lost = new ArrayList<>();
      int candidate = 0;
      int column = 0;
      for (int f = 0; f < factors.size(); f++) {
        columnOfLevel[f] = new int[factors.get(f).size()];
        Arrays.fill(columnOfLevel[f], -1);
        for (int level = 0; level < factors.get(f).size() - 1; level++) {
          if (kept[candidate++]) {
            columnOfLevel[f][level] = column++;
          } else if (!lost.contains(names.get(f))) {
            lost.add(names.get(f));
          }
        }
      }
      double[] average = new double[column];
      for (int f = 1; f < factors.size(); f++) {
        for (int c : columnOfLevel[f]) {
          if (c >= 0) {
            average[c] = 1.0 / factors.get(f).size();
          }
        }
      }
      return new Columns(column, columnOfLevel, average, lost);
    }

    private static double[][] sweptCrossProduct(Observations data, List<Factor> factors, int all) {
      int persons = Math.max(1, data.assessors());
      Factor assessor = data.assessor();
      double[][] cross = new double[all][all];
      double[][] sums = new double[persons][all];
      double[] counts = new double[persons];
      int[] row = new int[factors.size()];
      for (int i = 0; i < data.n(); i++) {
        int used = 0;
        int offset = 0;
        for (Factor factor : factors) {
          int level = factor.of()[i];
          if (level < factor.size() - 1) {
            row[used++] = offset + level;
          }
          offset += factor.size() - 1;
        }
        int person = assessor == null ? 0 : assessor.of()[i];
        counts[person]++;
        for (int a = 0; a < used; a++) {
          sums[person][row[a]]++;
          for (int b = 0; b < used; b++) {
            cross[row[a]][row[b]]++;
          }
        }
      }
      for (int p = 0; p < persons; p++) {
        subtractOuter(cross, sums[p], 1 / counts[p]);
      }
      return cross;
    }

    int[][] rows(Observations data, int fixedColumns) {
      List<Factor> factors = new ArrayList<>();
      factors.add(data.product());
      factors.addAll(data.blocks().values());
      Factor batch = data.batch();
      int[][] rows = new int[data.n()][];
      int[] buffer = new int[factors.size() + 1];
      for (int i = 0; i < rows.length; i++) {
        int used = 0;
        for (int f = 0; f < factors.size(); f++) {
          int column = columnOfLevel[f][factors.get(f).of()[i]];
          if (column >= 0) {
            buffer[used++] = column;
          }
        }
        if (batch != null) {
          buffer[used++] = fixedColumns + batch.of()[i];
        }
        rows[i] = Arrays.copyOf(buffer, used);
      }
      return rows;
    }
  }

  private static void subtractOuter(double[][] target, double[] vector, double factor) {
    for (int i = 0; i < vector.length; i++) {
      if (vector[i] != 0) {
        double f = factor * vector[i];
        for (int j = 0; j < vector.length; j++) {
          target[i][j] -= f * vector[j];
        }
      }
    }
  }

  private List<Cell> cells(Observations data, int[][] rows, double[] standard) {
    Factor assessor = data.assessor();
    int[] personOf = assessor == null ? new int[n] : assessor.of();
    int keys = persons * products;
    int[] size = new int[keys];
    for (int i = 0; i < n; i++) {
      size[personOf[i] * products + data.product().of()[i]]++;
    }
    int[][] members = new int[keys][];
    int[] filled = new int[keys];
    for (int i = 0; i < n; i++) {
      int key = personOf[i] * products + data.product().of()[i];
      if (members[key] == null) {
        members[key] = new int[size[key]];
      }
      members[key][filled[key]++] = i;
    }
    List<Cell> result = new ArrayList<>();
    double[] counts = new double[columns];
    for (int key = 0; key < keys; key++) {
      if (size[key] > 0) {
        result.add(cell(key / products, members[key], rows, standard, counts));
      }
    }
    return result;
  }

  private static Cell cell(
      int person, int[] members, int[][] rows, double[] standard, double[] counts) {
    int[] seen = new int[members.length * 4];
    int used = 0;
    double sum = 0;
    for (int i : members) {
      sum += standard[i];
      for (int column : rows[i]) {
        if (counts[column]++ == 0) {
          if (used == seen.length) {
            seen = Arrays.copyOf(seen, 2 * used);
          }
          seen[used++] = column;
        }
      }
    }
    int[] columns = Arrays.copyOf(seen, used);
    double[] values = new double[used];
    for (int k = 0; k < used; k++) {
      values[k] = counts[columns[k]];
      counts[columns[k]] = 0;
    }
    return new Cell(person, members.length, sum, columns, values);
  }

  private int[] personStart() {
    int[] start = new int[persons + 1];
    int cell = 0;
    for (int p = 0; p < persons; p++) {
      start[p] = cell;
      while (cell < cells.size() && cells.get(cell).person == p) {
        cell++;
      }
    }
    start[persons] = cells.size();
    return start;
  }

  /** Everything that one set of variance components implies. */
  private final class Solution {
    final double e;
    final double c;
    final double b;

    /** G = U'M₀U. */
    final double[][] g;

    /** H: inverse of the mixed-model equations. */
    final double[][] h;

    /** S = R'R and T = R'DR with R = Zc'M₀U, D = Zc'M₀Zc. */
    final double[][] s;

    final double[][] t;
    final double[] solved;
    final double[] right;
    final double[][] personRow;
    final double[] personWeight;
    final double[] personSum;
    final double logLikelihood;
    final double penalty;
    final double traceD;
    final double traceDSquared;

    Solution(double[] at) {
      e = at[RESIDUAL];
      c = at[CELL];
      b = at[BATCH];
      g = new double[columns][columns];
      s = new double[columns][columns];
      t = new double[columns][columns];
      right = new double[columns];
      personRow = new double[persons][columns];
      personWeight = new double[persons];
      personSum = new double[persons];
      double yMy = sumOfSquaresY / e;
      for (int i = 0; i < columns; i++) {
        right[i] = crossProductsY[i] / e;
        for (int j = 0; j < columns; j++) {
          g[i][j] = crossProducts[i][j] / e;
        }
      }
      double logDeterminant = n * Math.log(e);
      double sumD = 0;
      double sumDSquared = 0;
      double[] first = new double[columns];
      double[] second = new double[columns];
      for (int p = 0; p < persons; p++) {
        double[] row = personRow[p];
        Arrays.fill(first, 0);
        Arrays.fill(second, 0);
        double h1 = 0;
        double h2 = 0;
        double h3 = 0;
        double q = 0;
        for (int k = personStart[p]; k < personStart[p + 1]; k++) {
          Cell cell = cells.get(k);
          double w = 1 / (e + cell.count * c);
          double nw = cell.count * w;
          double shrink = c * w / e;
          logDeterminant += Math.log1p(cell.count * c / e);
          yMy -= shrink * cell.sum * cell.sum;
          h1 += nw;
          h2 += nw * nw;
          h3 += nw * nw * nw;
          q += w * cell.sum;
          for (int a = 0; a < cell.columns.length; a++) {
            int i = cell.columns[a];
            double ui = cell.counts[a];
            right[i] -= shrink * ui * cell.sum;
            row[i] += w * ui;
            first[i] += nw * w * ui;
            second[i] += nw * nw * w * ui;
            for (int d = 0; d < cell.columns.length; d++) {
              int j = cell.columns[d];
              double uu = ui * cell.counts[d];
              g[i][j] -= shrink * uu;
              s[i][j] += w * w * uu;
              t[i][j] += nw * w * w * uu;
            }
          }
        }
        personWeight[p] = h1;
        personSum[p] = q;
        yMy -= q * q / h1;
        logDeterminant += Math.log(h1);
        sumD += h1 - h2 / h1;
        sumDSquared += h2 - 2 * h3 / h1 + h2 * h2 / h1 / h1;
        sweep(row, first, second, h1, h2, h3, q);
      }
      traceD = sumD;
      traceDSquared = sumDSquared;
      double[][] equations = new double[columns][];
      for (int i = 0; i < columns; i++) {
        equations[i] = g[i].clone();
      }
      h = new double[columns][columns];
      int active = b > 0 ? columns : fixed;
      double[][] used = new double[active][];
      for (int i = 0; i < active; i++) {
        used[i] = Arrays.copyOf(equations[i], active);
        if (i >= fixed) {
          used[i][i] += 1 / b;
        }
      }
      double[][] factor = DenseMatrix.cholesky(used);
      double[][] inverse = DenseMatrix.inverse(factor);
      for (int i = 0; i < active; i++) {
        System.arraycopy(inverse[i], 0, h[i], 0, active);
      }
      logDeterminant += DenseMatrix.logDeterminant(factor);
      if (b > 0) {
        logDeterminant += (columns - fixed) * Math.log(b);
      }
      solved = DenseMatrix.multiply(h, right);
      penalty = yMy - DenseMatrix.dot(right, solved);
      logLikelihood = -0.5 * (logDeterminant + penalty);
    }

    /** Takes one person's mean out of G, R'R and R'DR. */
    private void sweep(
        double[] row, double[] first, double[] second, double h1, double h2, double h3, double q) {
      for (int i = 0; i < columns; i++) {
        right[i] -= row[i] * q / h1;
        if (row[i] == 0) {
          continue;
        }
        double vi = first[i] - h2 / h1 * row[i];
        for (int j = 0; j < columns; j++) {
          if (row[j] == 0) {
            continue;
          }
          double bb = row[i] * row[j];
          g[i][j] -= bb / h1;
          s[i][j] += -(first[i] * row[j] + row[i] * first[j]) / h1 + h2 / h1 / h1 * bb;
          double vj = first[j] - h2 / h1 * row[j];
          t[i][j] +=
              -(second[i] * row[j] + row[i] * second[j]) / h1 + h3 / h1 / h1 * bb - vi * vj / h1;
        }
      }
    }

    /** I − HG, the part of U that the fixed and random columns leave. */
    double[][] remainder() {
      double[][] hg = DenseMatrix.multiply(h, g);
      for (int i = 0; i < columns; i++) {
        for (int j = 0; j < columns; j++) {
          hg[i][j] = (i == j ? 1 : 0) - hg[i][j];
        }
      }
      return hg;
    }

    /** Zb'PZb. */
    double[][] batchProjection(double[][] remainder) {
      double[][] all = DenseMatrix.multiply(g, remainder);
      double[][] block = new double[columns - fixed][];
      for (int i = fixed; i < columns; i++) {
        block[i - fixed] = Arrays.copyOfRange(all[i], fixed, columns);
      }
      return block;
    }

    /** Σ (Zc'Py)² over the cells. */
    double cellScore() {
      double sum = 0;
      for (int p = 0; p < persons; p++) {
        double personFit = DenseMatrix.dot(personRow[p], solved);
        double level = (personSum[p] - personFit) / personWeight[p];
        for (int k = personStart[p]; k < personStart[p + 1]; k++) {
          Cell cell = cells.get(k);
          double value = cell.sum - cell.count * level;
          for (int a = 0; a < cell.columns.length; a++) {
            value -= cell.counts[a] * solved[cell.columns[a]];
          }
          value /= e + cell.count * c;
          sum += value * value;
        }
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

  /** Scores and expected information of the components. */
  private record Curvature(double[] score, double[][] information) {}

  private Curvature curvature(Solution at) {
    double[][] remainder = at.remainder();
    double[] trace = new double[3];
    double[][] pairs = new double[3][3];
    double[] quadratic = new double[3];
    if (hasCells) {
      double[][] hs = DenseMatrix.multiply(at.h, at.s);
      trace[CELL] = at.traceD;
      for (int i = 0; i < columns; i++) {
        trace[CELL] -= hs[i][i];
      }
      pairs[CELL][CELL] =
          at.traceDSquared
              - 2 * DenseMatrix.traceOfProduct(at.h, at.t)
              + DenseMatrix.traceOfProduct(hs, hs);
      quadratic[CELL] = at.cellScore();
    }
    if (hasBatches) {
      double[][] block = at.batchProjection(remainder);
      for (int i = 0; i < block.length; i++) {
        trace[BATCH] += block[i][i];
      }
      pairs[BATCH][BATCH] = DenseMatrix.sumOfSquares(block);
      quadratic[BATCH] = at.batchScore();
    }
    if (hasBatches && hasCells) {
      double[][] sr = DenseMatrix.multiply(at.s, remainder);
      double sum = 0;
      for (int j = fixed; j < columns; j++) {
        for (int i = 0; i < columns; i++) {
          sum += remainder[i][j] * sr[i][j];
        }
      }
      pairs[CELL][BATCH] = sum;
      pairs[BATCH][CELL] = sum;
    }
    // P·V·P = P gives everything about the residual from the other two.
    double degrees = n - persons - fixed;
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
  private Solution maximise() {
    theta[RESIDUAL] = 0.6;
    theta[CELL] = hasCells ? 0.2 : 0;
    theta[BATCH] = hasBatches ? 0.2 : 0;
    Solution current = new Solution(theta);
    if (!hasCells && !hasBatches) {
      theta[RESIDUAL] = Math.max(1e-12, current.penalty * theta[RESIDUAL] / (n - persons - fixed));
      return new Solution(theta);
    }
    for (int iteration = 0; iteration < 60; iteration++) {
      Curvature curvature = curvature(current);
      double[] step = step(curvature);
      Solution next = halved(current, step);
      double gain = next.logLikelihood - current.logLikelihood;
      double moved =
          Math.abs(next.e - current.e)
              + Math.abs(next.c - current.c)
              + Math.abs(next.b - current.b);
      current = next;
      theta[RESIDUAL] = next.e;
      theta[CELL] = next.c;
      theta[BATCH] = next.b;
      if (gain < 1e-11 && moved < 1e-8) {
        break;
      }
    }
    return current;
  }

  private double[] step(Curvature curvature) {
    boolean[] free = new boolean[3];
    for (int i = 0; i < 3; i++) {
      free[i] = isIdentified(i) && (theta[i] > 0 || curvature.score[i] > 0);
    }
    double[][] inverse = inverseOf(curvature.information, free);
    return DenseMatrix.multiply(inverse, curvature.score);
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

  private Solution halved(Solution current, double[] step) {
    double factor = 1;
    for (int attempt = 0; attempt < 30; attempt++, factor /= 2) {
      double[] at = {
        Math.max(1e-10, Math.max(current.e / 20, current.e + factor * step[RESIDUAL])),
        Math.max(0, current.c + factor * step[CELL]),
        Math.max(0, current.b + factor * step[BATCH])
      };
      Solution next = new Solution(at);
      if (next.logLikelihood >= current.logLikelihood) {
        return next;
      }
    }
    return current;
  }

  private double[][] informationInverse(Solution at) {
    boolean[] identified = {true, hasCells, hasBatches};
    return inverseOf(curvature(at).information, identified);
  }

  /** L'VᵢL for each component, L the weights of the estimates: how their variance follows it. */
  private double[][][] sensitivities(Solution at) {
    double[][] weights = fixedColumns(at.h);
    double[][] plain = Arrays.copyOf(weights, fixed);
    double[][] cell = new double[fixed][fixed];
    double[][] batch = new double[fixed][fixed];
    if (hasCells) {
      cell = DenseMatrix.sandwich(weights, at.s);
    }
    if (hasBatches) {
      double[][] onBatches = batchRows(DenseMatrix.multiply(at.g, weights));
      batch = DenseMatrix.multiply(DenseMatrix.transpose(onBatches), onBatches);
    }
    double[][] residual = DenseMatrix.sum(1 / at.e, plain, -at.c / at.e, cell, -at.b / at.e, batch);
    return new double[][][] {residual, cell, batch};
  }

  /** L'VᵢPVⱼL for each pair of components: what Kenward and Roger add to the covariance. */
  private double[][][][] curvatures(Solution at) {
    double[][] weights = fixedColumns(at.h);
    double[][][][] terms = new double[3][3][fixed][fixed];
    double[][] remainder = at.remainder();
    double[][] onBatches = batchRows(DenseMatrix.multiply(at.g, weights));
    if (hasCells) {
      double[][] shs = DenseMatrix.multiply(at.s, DenseMatrix.multiply(at.h, at.s));
      terms[CELL][CELL] = DenseMatrix.sandwich(weights, DenseMatrix.sum(1, at.t, -1, shs, 0, shs));
    }
    if (hasBatches) {
      terms[BATCH][BATCH] = DenseMatrix.sandwich(onBatches, at.batchProjection(remainder));
    }
    if (hasCells && hasBatches) {
      double[][] sr = batchColumns(DenseMatrix.multiply(at.s, remainder));
      double[][] right = DenseMatrix.multiply(sr, onBatches);
      terms[CELL][BATCH] = DenseMatrix.multiply(DenseMatrix.transpose(weights), right);
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

  private double[][] adjustedCovariance(Solution at) {
    double[][] adjusted = Arrays.copyOf(fixedColumns(at.h), fixed);
    if (!hasCells && !hasBatches) {
      return adjusted;
    }
    double[][][][] terms = curvatures(at);
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        double[][] none = adjusted;
        adjusted = DenseMatrix.sum(1, adjusted, 2 * informationInverse[i][j], terms[i][j], 0, none);
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
    return lost;
  }

  /** Whether every product is linked with every other through the people who rated both. */
  boolean isConnected() {
    return !lost.contains("product");
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
      means[i] = centre + scale * value;
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
    double[] at = averageBlock.clone();
    int column = columnOfLevel[0][product];
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
      double variance = common + DenseMatrix.quadratic(vector, solution.h);
      errors[i] = scale * Math.sqrt(variance * inflation(i));
    }
    return errors;
  }

  /** By how much Kenward and Roger enlarge the variance of this product against the others. */
  private double inflation(int product) {
    double plain = 0;
    double adjusted = 0;
    double[][] h = Arrays.copyOf(fixedColumns(solution.h), fixed);
    for (int other = 0; other < products; other++) {
      double[] contrast = contrast(product, other);
      plain += DenseMatrix.quadratic(contrast, h);
      adjusted += DenseMatrix.quadratic(contrast, covariance);
    }
    return plain > 0 ? Math.max(1, adjusted / plain) : 1;
  }

  private double[] contrast(int i, int j) {
    double[] contrast = new double[fixed];
    if (columnOfLevel[0][i] >= 0) {
      contrast[columnOfLevel[0][i]] += 1;
    }
    if (columnOfLevel[0][j] >= 0) {
      contrast[columnOfLevel[0][j]] -= 1;
    }
    return contrast;
  }

  @Override
  public double standardErrorOfDifference(int i, int j) {
    return scale * Math.sqrt(Math.max(0, DenseMatrix.quadratic(contrast(i, j), covariance)));
  }

  /** 2(k'Φk)² / (g'Wg) with gᵢ = k'L'VᵢLk: Kenward and Roger's value for a single contrast. */
  @Override
  public double degreesOfDifference(int i, int j) {
    if (!hasCells && !hasBatches) {
      return n - persons - fixed;
    }
    double[] k = contrast(i, j);
    double[] gradient = new double[3];
    double[][][] sensitivities = sensitivities();
    for (int component = 0; component < 3; component++) {
      gradient[component] = DenseMatrix.quadratic(k, sensitivities[component]);
    }
    double variance = DenseMatrix.quadratic(k, Arrays.copyOf(fixedColumns(solution.h), fixed));
    return 2 * variance * variance / DenseMatrix.quadratic(gradient, informationInverse);
  }

  private double[][][] sensitivities() {
    if (sensitivities == null) {
      sensitivities = sensitivities(solution);
    }
    return sensitivities;
  }

  @Override
  public FTest productTest() {
    return test(columnOfLevel[0], "restricted likelihood, Kenward–Roger");
  }

  /** Test of a block factor, in the order in which the observations hold their blocks. */
  FTest blockTest(int block) {
    return test(columnOfLevel[block + 1], "restricted likelihood, Kenward–Roger");
  }

  /** Residual degrees of freedom of the fixed part. */
  int residualDegrees() {
    return n - persons - fixed;
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
        plain[i][j] = solution.h[chosen[i]][chosen[j]];
        adjusted[i][j] = covariance[chosen[i]][chosen[j]];
      }
    }
    double wald = DenseMatrix.quadratic(estimates, DenseMatrix.inverseOf(adjusted)) / size;
    if (!hasCells && !hasBatches) {
      return FTest.of(wald, size, n - persons - fixed, "residual");
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
        double w = informationInverse[i][j];
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
    double squared = scale * scale;
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
