package ovenproof.core.panel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Mean mark of each person for each product.
 *
 * @param persons names
 * @param products names
 * @param mean by person and product; NaN where there is no mark
 * @param count marks behind each
 * @param places row of each person
 */
record CellMeans(
    List<String> persons,
    List<String> products,
    double[][] mean,
    int[][] count,
    Map<String, Integer> places) {

  /** For observations with named persons. */
  static CellMeans of(Observations data, Factor assessor) {
    double[][] sums = new double[assessor.size()][data.product().size()];
    int[][] counts = new int[assessor.size()][data.product().size()];
    for (int i = 0; i < data.n(); i++) {
      sums[assessor.of()[i]][data.product().of()[i]] += data.y()[i];
      counts[assessor.of()[i]][data.product().of()[i]]++;
    }
    for (int a = 0; a < sums.length; a++) {
      for (int p = 0; p < sums[a].length; p++) {
        sums[a][p] = counts[a][p] == 0 ? Double.NaN : sums[a][p] / counts[a][p];
      }
    }
    Map<String, Integer> places = new HashMap<>();
    for (int a = 0; a < assessor.size(); a++) {
      places.put(assessor.levels().get(a), a);
    }
    return new CellMeans(assessor.levels(), data.product().levels(), sums, counts, places);
  }

  /** Row of a person; −1 when there is none of that name. */
  int placeOf(String person) {
    return places.getOrDefault(person, -1);
  }

  /** Rows of the people who rated every product. */
  double[][] complete() {
    List<double[]> rows = new ArrayList<>();
    for (double[] row : mean) {
      if (Arrays.stream(row).noneMatch(Double::isNaN)) {
        rows.add(row);
      }
    }
    return rows.toArray(double[][]::new);
  }

  /** Mean of each person over the products that were rated. */
  double[] levels() {
    return Arrays.stream(mean)
        .mapToDouble(row -> Arrays.stream(row).filter(v -> !Double.isNaN(v)).average().orElse(0))
        .toArray();
  }

  /**
   * Product means with these weights of the people, people's levels taken out (weighted least
   * squares of product + person).
   */
  double[] weightedMeans(double[] weights) {
    int free = products.size() - 1;
    double[][] equations = new double[free][free];
    double[] right = new double[free];
    for (int a = 0; a < mean.length; a++) {
      addPerson(equations, right, mean[a], weights[a], free);
    }
    boolean[] kept = DenseMatrix.independent(equations, 1e-9);
    double[] effects = new double[products.size()];
    Arrays.fill(effects, Double.NaN);
    for (boolean k : kept) {
      if (!k) {
        return effects;
      }
    }
    double[] solved = DenseMatrix.multiply(DenseMatrix.inverseOf(equations), right);
    double base = base(solved, weights);
    for (int p = 0; p <= free; p++) {
      effects[p] = base + (p < free ? solved[p] : 0);
    }
    return effects;
  }

  private static void addPerson(
      double[][] equations, double[] right, double[] row, double weight, int free) {
    double rated = Arrays.stream(row).filter(v -> !Double.isNaN(v)).count();
    double level = Arrays.stream(row).filter(v -> !Double.isNaN(v)).average().orElse(0);
    for (int i = 0; i < free; i++) {
      if (Double.isNaN(row[i])) {
        continue;
      }
      right[i] += weight * (row[i] - level);
      equations[i][i] += weight;
      for (int j = 0; j < free; j++) {
        equations[i][j] -= Double.isNaN(row[j]) ? 0 : weight / rated;
      }
    }
  }

  private double base(double[] solved, double[] weights) {
    double sum = 0;
    double total = 0;
    for (int a = 0; a < mean.length; a++) {
      double level = 0;
      int rated = 0;
      for (int p = 0; p < mean[a].length; p++) {
        if (!Double.isNaN(mean[a][p])) {
          level += mean[a][p] - (p < solved.length ? solved[p] : 0);
          rated++;
        }
      }
      sum += weights[a] * level / rated;
      total += weights[a];
    }
    return sum / total;
  }
}
