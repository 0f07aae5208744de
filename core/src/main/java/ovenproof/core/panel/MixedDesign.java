package ovenproof.core.panel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/**
 * What the mixed model needs of an incomplete table, whatever the variance components: its columns,
 * its cells and the sums over its marks. Marks are brought to mean 0 and deviation 1.
 */
final class MixedDesign {

  /**
   * Marks of one person about one product.
   *
   * @param columns design columns that the marks fall on
   * @param counts how many of the marks fall on each
   */
  record Cell(int person, double count, double sum, int[] columns, double[] counts) {}

  final int products;

  /** Fixed columns: products but one, and blocks. */
  final int fixed;

  /** Fixed columns and batches. */
  final int columns;

  final int persons;
  final int n;
  final List<Cell> cells;

  /** First cell of each person; one more entry than persons. */
  final int[] personStart;

  /** U'U and U'y. */
  final double[][] crossProducts;

  final double[] crossProductsY;
  final double sumOfSquaresY;
  final double centre;
  final double scale;
  final boolean hasBatches;

  /** Column of each level of product (first) and blocks, −1 where it has none. */
  final int[][] columnOfLevel;

  /** Every block level counting alike. */
  final double[] averageBlock;

  /** Factors that could not be told apart from products and persons. */
  final List<String> lost;

  /**
   * @throws IllegalArgumentException if there are fewer marks than parameters + 1
   */
  MixedDesign(Observations data) {
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
    this.columns = fixed + batchSize(data);
    int[][] rows = layout.rows(data, fixed);
    this.cells = cells(data, rows, standard);
    this.personStart = personStart();
    this.crossProducts = new double[columns][columns];
    this.crossProductsY = new double[columns];
    this.sumOfSquaresY = DenseMatrix.dot(standard, standard);
    addUp(rows, standard);
    if (residualDegrees() < 1) {
      throw new IllegalArgumentException("marks must exceed parameters, found " + n);
    }
  }

  private static int batchSize(Observations data) {
    Factor batch = data.batch();
    return batch == null ? 0 : batch.size();
  }

  private void addUp(int[][] rows, double[] standard) {
    for (int i = 0; i < n; i++) {
      for (int a : rows[i]) {
        crossProductsY[a] += standard[i];
        for (int b : rows[i]) {
          crossProducts[a][b]++;
        }
      }
    }
  }

  boolean hasRepeatedCells() {
    return cells.stream().anyMatch(c -> c.count > 1);
  }

  /** Residual degrees of freedom of the fixed part. */
  int residualDegrees() {
    return n - persons - fixed;
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
      DenseMatrix.subtractOuters(cross, sums, counts);
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

  /** The columns of products and blocks. */
  double[][] fixedColumns(double[][] matrix) {
    double[][] result = new double[matrix.length][];
    for (int i = 0; i < matrix.length; i++) {
      result[i] = Arrays.copyOf(matrix[i], fixed);
    }
    return result;
  }

  /** The columns of batches. */
  double[][] batchColumns(double[][] matrix) {
    double[][] result = new double[matrix.length][];
    for (int i = 0; i < matrix.length; i++) {
      result[i] = Arrays.copyOfRange(matrix[i], fixed, columns);
    }
    return result;
  }

  /** The rows of batches. */
  double[][] batchRows(double[][] matrix) {
    return Arrays.copyOfRange(matrix, fixed, columns);
  }
}
