package ovenproof.core.panel;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * A grouping of observations as small numbers: level names in order of appearance and the level of
 * each observation.
 */
record Factor(List<String> levels, int[] of) {

  static Factor of(List<Rating> ratings, Function<Rating, @Nullable String> key) {
    Map<String, Integer> index = new LinkedHashMap<>();
    int[] of = new int[ratings.size()];
    for (int i = 0; i < of.length; i++) {
      String level = key.apply(ratings.get(i));
      of[i] = index.computeIfAbsent(level == null ? "" : level, any -> index.size());
    }
    return new Factor(new ArrayList<>(index.keySet()), of);
  }

  int size() {
    return levels.size();
  }

  int[] counts() {
    int[] counts = new int[size()];
    for (int level : of) {
      counts[level]++;
    }
    return counts;
  }

  /** Observations of each pair of levels. */
  int[][] counts(Factor other) {
    int[][] counts = new int[size()][other.size()];
    for (int i = 0; i < of.length; i++) {
      counts[of[i]][other.of[i]]++;
    }
    return counts;
  }

  /** Whether each level of this factor occurs in one level of the other only. */
  boolean isNestedIn(Factor other) {
    int[] seen = new int[size()];
    for (int i = 0; i < of.length; i++) {
      if (seen[of[i]] != 0 && seen[of[i]] != other.of[i] + 1) {
        return false;
      }
      seen[of[i]] = other.of[i] + 1;
    }
    return true;
  }

  /** Whether every level of this factor meets every level of the other equally often. */
  boolean isBalancedWith(Factor other) {
    int[][] counts = counts(other);
    for (int[] row : counts) {
      for (int count : row) {
        if (count != counts[0][0]) {
          return false;
        }
      }
    }
    return true;
  }

  /** Sum of squares of the level means around the grand mean, weighted by their counts. */
  double sumOfSquares(double[] y) {
    double grand = 0;
    double[] sums = new double[size()];
    for (int i = 0; i < of.length; i++) {
      sums[of[i]] += y[i];
      grand += y[i];
    }
    grand /= of.length;
    int[] counts = counts();
    double total = 0;
    for (int level = 0; level < sums.length; level++) {
      double distance = sums[level] / counts[level] - grand;
      total += counts[level] * distance * distance;
    }
    return total;
  }

  double[] means(double[] y) {
    double[] sums = new double[size()];
    for (int i = 0; i < of.length; i++) {
      sums[of[i]] += y[i];
    }
    int[] counts = counts();
    for (int level = 0; level < sums.length; level++) {
      sums[level] /= counts[level];
    }
    return sums;
  }

  /** One level per pair that occurs. */
  Factor crossedWith(Factor other) {
    Map<Long, Integer> index = new LinkedHashMap<>();
    List<String> names = new ArrayList<>();
    int[] pairs = new int[of.length];
    for (int i = 0; i < of.length; i++) {
      long key = (long) of[i] * other.size() + other.of[i];
      Integer known = index.get(key);
      if (known == null) {
        known = index.size();
        index.put(key, known);
        names.add(levels.get(of[i]) + " / " + other.levels.get(other.of[i]));
      }
      pairs[i] = known;
    }
    return new Factor(names, pairs);
  }
}
