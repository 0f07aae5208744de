package ovenproof.core.panel;

import ovenproof.core.statistics.Power;

/**
 * What this panel can see, and what a larger one could.
 *
 * @param detectable true difference of two products that this panel finds with 80 % chance at 5 %,
 *     in scale points, all pairs compared (Tukey)
 * @param detectableWithTwiceTheTasters the same with twice the people and as many batches
 * @param detectableWithTwiceTheBatches the same with twice the batches and as many people; NaN when
 *     batches are not told apart
 * @param floor what no number of tasters goes below with these batches, in the same sense; NaN when
 *     batches are not told apart
 */
public record Sensitivity(
    double detectable,
    double detectableWithTwiceTheTasters,
    double detectableWithTwiceTheBatches,
    double floor) {

  private static final int MOST = 1000;

  /** Sizes of a panel and the scatter it works with. */
  record Plan(int products, int persons, int batches, VarianceComponents variances) {

    double batchVariance() {
      return variances.batch() > 0 ? variances.batch() : 0;
    }

    double interactionVariance() {
      return variances.interaction() > 0 ? variances.interaction() : 0;
    }

    /** Variance of one product mean against the others. */
    double variance() {
      return batchVariance() / batches
          + interactionVariance() / persons
          + variances.residual() / persons / batches;
    }

    /** Satterthwaite over the mean squares that make up the variance. */
    double degrees() {
      double residual = variances.residual();
      double batch = batchVariance() / batches + residual / persons / batches;
      double taste = interactionVariance() / persons + residual / persons / batches;
      double rest = residual / persons / batches;
      double batchDegrees = products * (batches - 1.0);
      double tasteDegrees = (products - 1.0) * Math.max(1, persons - 1.0);
      if (batchDegrees < 1) {
        return tasteDegrees;
      }
      double sum = variance();
      double denominator =
          batch * batch / batchDegrees
              + taste * taste / tasteDegrees
              + rest * rest / (batchDegrees * Math.max(1, persons - 1.0));
      return Math.max(1, sum * sum / denominator);
    }

    double detectable() {
      return Power.detectableDifference(
          Math.sqrt(2 * variance()), degrees(), Math.max(2, products));
    }

    Plan withPersons(int newPersons) {
      return new Plan(products, newPersons, batches, variances);
    }

    Plan withBatches(int newBatches) {
      return new Plan(products, persons, newBatches, variances);
    }
  }

  static Sensitivity of(Plan plan, boolean batchesKnown) {
    return new Sensitivity(
        plan.detectable(),
        plan.withPersons(2 * plan.persons).detectable(),
        batchesKnown ? plan.withBatches(2 * plan.batches).detectable() : Double.NaN,
        batchesKnown ? plan.withPersons(100_000).detectable() : Double.NaN);
  }

  /** Fewest people that see {@code difference} with these batches; 0 when a thousand do not. */
  static int personsFor(Plan plan, double difference) {
    for (int persons = 2; persons <= MOST; persons += persons < 60 ? 1 : 20) {
      if (plan.withPersons(persons).detectable() <= difference) {
        return persons;
      }
    }
    return 0;
  }

  /** Fewest batches that see {@code difference} with these people; 0 when fifty do not. */
  static int batchesFor(Plan plan, double difference) {
    for (int batches = 2; batches <= 50; batches++) {
      if (plan.withBatches(batches).detectable() <= difference) {
        return batches;
      }
    }
    return 0;
  }
}
