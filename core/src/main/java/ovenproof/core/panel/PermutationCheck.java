package ovenproof.core.panel;

import java.util.Arrays;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;

/**
 * A cross-check that assumes no normal distribution: how often does chance alone, by giving the
 * labels out anew, separate the products as far? With batches whole batches change products;
 * without, each person's products change names among themselves.
 *
 * @param p share of relabellings, the observed one included, that separate at least as far; where
 *     few exist a draw may miss some, so it is never taken for less than the smallest possible
 * @param relabellings how many were drawn
 * @param smallestPossible a p below this cannot come out, because there are so few batches
 */
record PermutationCheck(double p, int relabellings, double smallestPossible) {

  private static final int DRAWS = 1999;

  /** Large tables get fewer draws; they have little to learn from this check. */
  private static final int MOST_MOVES = 4_000_000;

  private static final long SEED = 20260415L;

  /** Batches of products, e.g. adjusted means of runs. */
  static PermutationCheck ofBatches(double[] batchMeans, int[] productOfBatch, int products) {
    UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(SEED);
    double observed = between(batchMeans, productOfBatch, products);
    int[] labels = productOfBatch.clone();
    int asFar = 0;
    for (int draw = 0; draw < DRAWS; draw++) {
      shuffle(labels, labels.length, random);
      asFar += between(batchMeans, labels, products) >= observed * (1 - 1e-12) ? 1 : 0;
    }
    double smallest = smallest(productOfBatch, products);
    return new PermutationCheck(Math.max(smallest, (asFar + 1.0) / (DRAWS + 1)), DRAWS, smallest);
  }

  /** Marks by person (rows) and product (columns), NaN where missing. */
  static PermutationCheck ofPersons(double[][] marks) {
    UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(SEED);
    int size = marks.length == 0 ? 1 : marks.length * marks[0].length;
    int draws = Math.max(199, Math.min(DRAWS, MOST_MOVES / size));
    double[][] centred =
        Arrays.stream(marks).map(PermutationCheck::centred).toArray(double[][]::new);
    double observed = spread(centred);
    int asFar = 0;
    for (int draw = 0; draw < draws; draw++) {
      for (double[] row : centred) {
        shuffleKnown(row, random);
      }
      asFar += spread(centred) >= observed * (1 - 1e-12) ? 1 : 0;
    }
    double orders =
        Arrays.stream(marks).mapToDouble(row -> factorial(known(row))).reduce(1, (a, b) -> a * b);
    double own = marks.length == 0 ? 1 : factorial(marks[0].length);
    double smallest = Math.max(1.0 / (draws + 1), own / orders);
    return new PermutationCheck(Math.max(smallest, (asFar + 1.0) / (draws + 1)), draws, smallest);
  }

  private static int known(double[] row) {
    return (int) Arrays.stream(row).filter(v -> !Double.isNaN(v)).count();
  }

  private static double[] centred(double[] row) {
    double mean = Arrays.stream(row).filter(v -> !Double.isNaN(v)).average().orElse(0);
    return Arrays.stream(row).map(v -> v - mean).toArray();
  }

  private static double spread(double[][] rows) {
    int products = rows.length == 0 ? 0 : rows[0].length;
    double total = 0;
    for (int j = 0; j < products; j++) {
      double sum = 0;
      int count = 0;
      for (double[] row : rows) {
        if (!Double.isNaN(row[j])) {
          sum += row[j];
          count++;
        }
      }
      total += count == 0 ? 0 : sum * sum / count;
    }
    return total;
  }

  private static double between(double[] values, int[] labels, int products) {
    double[] sums = new double[products];
    int[] counts = new int[products];
    double mean = Arrays.stream(values).average().orElse(0);
    for (int i = 0; i < values.length; i++) {
      sums[labels[i]] += values[i] - mean;
      counts[labels[i]]++;
    }
    double total = 0;
    for (int j = 0; j < products; j++) {
      total += counts[j] == 0 ? 0 : sums[j] * sums[j] / counts[j];
    }
    return total;
  }

  private static void shuffle(int[] values, int length, UniformRandomProvider random) {
    for (int i = length - 1; i > 0; i--) {
      int j = random.nextInt(i + 1);
      int swap = values[i];
      values[i] = values[j];
      values[j] = swap;
    }
  }

  /** Shuffles the values of a row among the places that are not missing. */
  private static void shuffleKnown(double[] row, UniformRandomProvider random) {
    int[] places = new int[row.length];
    int used = 0;
    for (int i = 0; i < row.length; i++) {
      if (!Double.isNaN(row[i])) {
        places[used++] = i;
      }
    }
    for (int i = used - 1; i > 0; i--) {
      int j = random.nextInt(i + 1);
      double swap = row[places[i]];
      row[places[i]] = row[places[j]];
      row[places[j]] = swap;
    }
  }

  private static double factorial(int n) {
    double product = 1;
    for (int i = 2; i <= n; i++) {
      product *= i;
    }
    return product;
  }

  /** 1 over the number of ways to deal the batches out that differ. */
  private static double smallest(int[] labels, int products) {
    int[] counts = new int[products];
    Arrays.stream(labels).forEach(l -> counts[l]++);
    double ways = factorial(labels.length);
    for (int count : counts) {
      ways /= factorial(count);
    }
    boolean equal = Arrays.stream(counts).distinct().count() == 1;
    return Math.max(1.0 / (DRAWS + 1), (equal ? factorial(products) : 1) / ways);
  }
}
