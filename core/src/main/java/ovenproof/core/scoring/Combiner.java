package ovenproof.core.scoring;

import java.util.Arrays;

/** Combines blocks of drawn scores. */
final class Combiner {

  private Combiner() {}

  static void start(Combination combination, double[] target) {
    Arrays.fill(target, combination == Combination.FLOOR ? ValueCurve.BEST : 0);
  }

  static void add(Combination combination, double[] target, double[] part, double share) {
    switch (combination) {
      case ARITHMETIC -> addWeighted(target, part, share);
      case GEOMETRIC -> addLogarithms(target, part, share);
      case FLOOR -> lower(target, part);
    }
  }

  static void finish(Combination combination, double[] target) {
    if (combination == Combination.GEOMETRIC) {
      for (int d = 0; d < target.length; d++) {
        target[d] = StrictMath.exp(target[d]);
      }
    }
  }

  private static void addWeighted(double[] target, double[] part, double share) {
    for (int d = 0; d < target.length; d++) {
      target[d] += share * part[d];
    }
  }

  private static void addLogarithms(double[] target, double[] part, double share) {
    for (int d = 0; d < target.length; d++) {
      target[d] += share * StrictMath.log(Math.max(0, part[d]));
    }
  }

  private static void lower(double[] target, double[] part) {
    for (int d = 0; d < target.length; d++) {
      target[d] = Math.min(target[d], part[d]);
    }
  }
}
