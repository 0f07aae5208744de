package ovenproof.core.ranking;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.core.random.Blocks;
import ovenproof.core.random.RandomStreams;

/**
 * Compares a field from estimates and draws.
 *
 * <p>Separation uses one margin: the 90 % quantile over draws of max over pairs |error
 * difference|/SEd, where an error is a draw less the estimate and SEd the root mean square of the
 * error difference. Errors that products share cancel in both. Probabilities come from draws that
 * are partially pooled over the field: θ = w·y + (1 − w)·μ + √w·(e − ē) with w = τ²/(v + τ²); v is
 * the product's share of the squared standard errors of difference (Firth and de Menezes,
 * Biometrika 91, 2004: quasi-variances), so that what is common to all neither shrinks nor
 * separates.
 *
 * <p>Results depend on the draws, the seed and the published order only, not on threads.
 */
public final class FieldComparison {
  private static final int BLOCK = RandomStreams.BLOCK;

  private final List<Contender> contenders;
  private final int products;
  private final int blocks;
  private final int threads;
  private final RandomStreams streams;
  private final double[][] draws;
  private final double[] estimates;
  private final int[] lowColumn;
  private final int[] highColumn;
  private final int columns;

  private FieldComparison(List<Contender> contenders, RandomStreams streams, int threads) {
    this.contenders = List.copyOf(contenders);
    this.streams = streams;
    this.threads = threads;
    products = contenders.size();
    int length = contenders.get(0).lowDraws().length;
    if (length == 0 || length % BLOCK != 0) {
      throw new IllegalArgumentException(
          "draws must come in blocks of " + BLOCK + ", found " + length);
    }
    blocks = length / BLOCK;
    lowColumn = new int[products];
    highColumn = new int[products];
    List<double[]> drawColumns = new ArrayList<>();
    List<Double> estimateColumns = new ArrayList<>();
    for (int p = 0; p < products; p++) {
      Contender contender = contenders.get(p);
      lowColumn[p] = p;
      highColumn[p] = p;
      drawColumns.add(contender.lowDraws());
      estimateColumns.add(contender.low());
    }
    for (int p = 0; p < products; p++) {
      Contender contender = contenders.get(p);
      if (contender.bounded()) {
        highColumn[p] = drawColumns.size();
        drawColumns.add(contender.highDraws());
        estimateColumns.add(contender.high());
      }
    }
    columns = drawColumns.size();
    draws = drawColumns.toArray(new double[0][]);
    estimates = estimateColumns.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /**
   * Compares.
   *
   * @param contenders in published order, best first; at least one; all with the same number of
   *     draws, a multiple of {@link RandomStreams#BLOCK}
   * @param streams seed of the shrinkage
   * @param threads at least 1
   */
  public static Comparison compare(
      List<Contender> contenders, RandomStreams streams, FieldPooling pooling, int threads) {
    if (contenders.isEmpty()) {
      throw new IllegalArgumentException("contenders must hold at least one, found none");
    }
    return new FieldComparison(contenders, streams, threads).compare(pooling);
  }

  private Comparison compare(FieldPooling pooling) {
    double[][] columnErrors = standardErrors();
    Margin margin = margin(columnErrors);
    double[][] gap = new double[products][products];
    double[][] error = new double[products][products];
    for (int a = 0; a < products; a++) {
      for (int b = 0; b < products; b++) {
        gap[a][b] = a == b ? 0 : estimates[lowColumn[a]] - estimates[highColumn[b]];
        error[a][b] = columnErrors[lowColumn[a]][highColumn[b]];
      }
    }
    @Nullable Shrinkage shrinkage = pooling == FieldPooling.NONE ? null : shrinkage(columnErrors);
    Probabilities probabilities = probabilities(shrinkage);
    Pairs pairs = new Pairs(probabilities.pairLow(), probabilities.pairHigh(), gap, error, margin);
    return new Comparison(
        contenders.stream().map(Contender::id).toList(),
        margin,
        tiers(pairs),
        ranks(pairs),
        probabilities.bestLow(),
        probabilities.bestHigh(),
        pairs,
        shrinkage == null ? 0 : shrinkage.mean());
  }

  /** A tier is its best product and all that are not separated from it; repeat with the rest. */
  private List<Integer> tiers(Pairs pairs) {
    Integer[] tier = new Integer[products];
    int number = 0;
    for (int best = 0; best < products; best++) {
      if (tier[best] == null) {
        number++;
        for (int other = best; other < products; other++) {
          if (tier[other] == null && !pairs.separation(best, other).separated()) {
            tier[other] = number;
          }
        }
      }
    }
    return Arrays.asList(tier);
  }

  private List<RankSet> ranks(Pairs pairs) {
    List<RankSet> ranks = new ArrayList<>();
    for (int p = 0; p < products; p++) {
      int above = 0;
      int below = 0;
      for (int q = 0; q < products; q++) {
        above += p != q && pairs.separation(q, p).separated() ? 1 : 0;
        below += p != q && pairs.separation(p, q).separated() ? 1 : 0;
      }
      ranks.add(new RankSet(1 + above, products - below));
    }
    return ranks;
  }

  /** Root mean square error difference of every pair of columns. */
  private double[][] standardErrors() {
    double[][] partial = new double[blocks][];
    Blocks.forEach(blocks, threads, block -> partial[block] = secondMoments(block));
    double[] sum = new double[columns * columns];
    for (double[] part : partial) {
      for (int i = 0; i < sum.length; i++) {
        sum[i] += part[i];
      }
    }
    double n = (double) blocks * BLOCK;
    double[][] errors = new double[columns][columns];
    for (int i = 0; i < columns; i++) {
      for (int j = i + 1; j < columns; j++) {
        double square = sum[i * columns + i] + sum[j * columns + j] - 2 * sum[i * columns + j];
        double floor = 1e-18 * (sum[i * columns + i] + sum[j * columns + j]);
        double error = square <= floor ? 0 : Math.sqrt(square / n);
        errors[i][j] = error;
        errors[j][i] = error;
      }
    }
    return errors;
  }

  /**
   * Sums of products of errors, upper triangle. Differences matter, not levels: taking off each
   * draw's mean keeps shared errors from eating the digits of the differences. Four draws are added
   * at a time, because passing over the triangle costs more than the sums.
   */
  private double[] secondMoments(int block) {
    double[] moments = new double[columns * columns];
    double[][] error = new double[4][columns];
    for (int d = block * BLOCK; d < (block + 1) * BLOCK; d += 4) {
      errors(d, error);
      for (double[] one : error) {
        centre(one);
      }
      for (int i = 0; i < columns; i++) {
        addProducts(moments, i, error[0], error[1], error[2], error[3]);
      }
    }
    return moments;
  }

  /** Errors of consecutive draws: one row each, columns beside each other. */
  private void errors(int firstDraw, double[][] rows) {
    for (int i = 0; i < columns; i++) {
      double[] column = draws[i];
      double estimate = estimates[i];
      for (int k = 0; k < rows.length; k++) {
        rows[k][i] = column[firstDraw + k] - estimate;
      }
    }
  }

  private static void centre(double[] error) {
    double mean = mean(error);
    for (int i = 0; i < error.length; i++) {
      error[i] -= mean;
    }
  }

  private static void addProducts(
      double[] moments, int i, double[] a, double[] b, double[] c, double[] d) {
    int offset = i * a.length;
    double ai = a[i];
    double bi = b[i];
    double ci = c[i];
    double di = d[i];
    for (int j = i; j < a.length; j++) {
      moments[offset + j] += (ai * a[j] + bi * b[j]) + (ci * c[j] + di * d[j]);
    }
  }

  private static double mean(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    return sum / values.length;
  }

  private Margin margin(double[][] errors) {
    if (products < 2) {
      return new Margin(Double.NaN, Double.NaN, Double.NaN);
    }
    double[] largest = new double[blocks * BLOCK];
    Blocks.forEach(blocks, threads, block -> largestDifferences(block, errors, largest));
    Arrays.sort(largest);
    int n = largest.length;
    double three = 3 * Math.sqrt(n * Margin.CONFIDENCE * (1 - Margin.CONFIDENCE));
    return new Margin(
        quantile(largest, Margin.CONFIDENCE * n),
        quantile(largest, Margin.CONFIDENCE * n - three),
        quantile(largest, Margin.CONFIDENCE * n + three));
  }

  private static double quantile(double[] sorted, double rank) {
    int index = (int) Math.ceil(rank) - 1;
    return sorted[Math.max(0, Math.min(sorted.length - 1, index))];
  }

  private void largestDifferences(int block, double[][] errors, double[] largest) {
    LargestDifference difference = new LargestDifference(errors, products, highColumn);
    double[][] error = new double[4][columns];
    for (int d = block * BLOCK; d < (block + 1) * BLOCK; d += error.length) {
      errors(d, error);
      for (int k = 0; k < error.length; k++) {
        largest[d + k] = difference.largest(error[k]);
      }
    }
  }

  /** Null when there is nothing to pool: one product, or no error at all. */
  private @Nullable Shrinkage shrinkage(double[][] errors) {
    double[] variances = quasiVariances(errors);
    double largest = Arrays.stream(variances).max().orElse(0);
    if (products < 2 || !(largest > 0)) {
      return null;
    }
    double[] middle = new double[products];
    for (int p = 0; p < products; p++) {
      variances[p] = Math.max(variances[p], 1e-6 * largest);
      middle[p] = (estimates[lowColumn[p]] + estimates[highColumn[p]]) / 2;
    }
    return new Shrinkage(middle, variances);
  }

  private double[] quasiVariances(double[][] errors) {
    double[] variances = new double[products];
    double total = 0;
    for (int p = 0; p < products; p++) {
      for (int q = 0; q < products; q++) {
        double square = errors[p][q] * errors[p][q];
        variances[p] += square;
        total += square / 2;
      }
    }
    for (int p = 0; p < products; p++) {
      variances[p] =
          products < 3 ? total / 2 : (variances[p] - total / (products - 1)) / (products - 2);
    }
    return variances;
  }

  private record Probabilities(
      double[][] pairLow, double[][] pairHigh, List<Double> bestLow, List<Double> bestHigh) {}

  private Probabilities probabilities(@Nullable Shrinkage shrinkage) {
    BlockCounts[] counts = new BlockCounts[blocks];
    double centre = mean(estimates);
    double reach = reach(centre);
    Blocks.forEach(
        blocks, threads, block -> counts[block] = count(block, shrinkage, centre, reach));
    double n = (double) blocks * BLOCK;
    double[][] low = new double[products][products];
    double[][] high = new double[products][products];
    double[] bestLow = new double[products];
    double[] bestHigh = new double[products];
    long[] balance = new long[columns * columns];
    for (BlockCounts count : counts) {
      for (int i = 0; i < columns; i++) {
        for (int j = i + 1; j < columns; j++) {
          balance[i * columns + j] += count.balance(i, j);
        }
      }
      for (int p = 0; p < products; p++) {
        bestLow[p] += count.bestLow[p];
        bestHigh[p] += count.bestHigh[p];
      }
    }
    for (int a = 0; a < products; a++) {
      for (int b = 0; b < products; b++) {
        low[a][b] = 0.5 + balance(balance, lowColumn[a], highColumn[b]) / (2 * n);
        high[a][b] = 0.5 + balance(balance, highColumn[a], lowColumn[b]) / (2 * n);
      }
    }
    return new Probabilities(low, high, shares(bestLow, n), shares(bestHigh, n));
  }

  /** Only the upper triangle is counted; the lower is its negative. */
  private double balance(long[] counted, int a, int b) {
    return a <= b ? counted[a * columns + b] : -counted[b * columns + a];
  }

  private static List<Double> shares(double[] counts, double n) {
    return Arrays.stream(counts).map(c -> c / n).boxed().toList();
  }

  /** Largest distance of an estimate or a draw from the centre. */
  private double reach(double centre) {
    double[] furthest = new double[columns];
    Blocks.forEach(
        columns,
        threads,
        i -> {
          double least = estimates[i];
          double most = estimates[i];
          for (double draw : draws[i]) {
            if (draw < least) {
              least = draw;
            }
            if (draw > most) {
              most = draw;
            }
          }
          furthest[i] = Math.max(centre - least, most - centre);
        });
    return Arrays.stream(furthest).max().orElse(0);
  }

  private BlockCounts count(int block, @Nullable Shrinkage shrinkage, double centre, double reach) {
    BlockCounts counts = new BlockCounts(columns, products, centre, reach);
    double[] uniform = new double[BLOCK];
    double[] normal = new double[BLOCK];
    streams.source("field:shrinkage").uniform(block, uniform);
    streams.source("field:centre").normal(block, normal);
    double[] score = new double[columns];
    for (int d = 0; d < BLOCK; d++) {
      for (int i = 0; i < columns; i++) {
        score[i] = draws[i][block * BLOCK + d];
      }
      if (shrinkage != null) {
        pool(score, shrinkage, shrinkage.row(uniform[d]), normal[d]);
      }
      counts.add(score, lowColumn, highColumn);
    }
    return counts;
  }

  /** Pulls one draw towards the field. Errors are taken about their mean over the products. */
  private void pool(double[] score, Shrinkage shrinkage, int row, double normal) {
    double common = 0;
    for (int p = 0; p < products; p++) {
      common += score[p] - estimates[p];
    }
    common /= products;
    double centre = shrinkage.centre(row, normal);
    for (int p = 0; p < products; p++) {
      double weight = shrinkage.weight(row, p);
      double root = shrinkage.root(row, p);
      int high = highColumn[p];
      if (high != p) {
        score[high] = pooled(score[high], estimates[high], weight, root, centre, common);
      }
      score[p] = pooled(score[p], estimates[p], weight, root, centre, common);
    }
  }

  private static double pooled(
      double draw, double estimate, double weight, double root, double centre, double common) {
    return weight * estimate + (1 - weight) * centre + root * (draw - estimate - common);
  }
}
