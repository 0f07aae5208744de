package ovenproof.core.scoring;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.List;
import ovenproof.core.quantity.Rounding;

/**
 * The digits that readers see and add up. A criterion's score is rounded half up on decimals; every
 * node above it is computed exactly from the displayed scores below it and rounded half up again,
 * so that nobody with the table can arrive at another total.
 */
final class DisplayedScores {

  private DisplayedScores() {}

  /** A displayed part and its weight in whole parts. */
  record Part(BigDecimal score, int parts) {}

  /**
   * A criterion's displayed score. Sums in binary leave dust in the last digits; it is wiped off at
   * the eleventh decimal first, so that 6.6499999999999995 from three runs is the tie 6.65.
   */
  static BigDecimal leaf(double score, int decimals) {
    return Rounding.HALF_UP.apply(score, 11).setScale(decimals, RoundingMode.HALF_UP);
  }

  /**
   * A node's displayed score.
   *
   * @param parts at least one with weight above 0; those without are passed over
   */
  static BigDecimal combine(Combination combination, List<Part> parts, int decimals) {
    List<Part> weighing = parts.stream().filter(p -> p.parts() > 0).toList();
    if (weighing.isEmpty()) {
      throw new IllegalArgumentException("parts must hold a weight above 0, found none");
    }
    return switch (combination) {
      case ARITHMETIC -> arithmetic(weighing, decimals);
      case GEOMETRIC -> geometric(weighing, decimals);
      case FLOOR -> weighing.stream().map(Part::score).min(BigDecimal::compareTo).orElseThrow();
    };
  }

  private static BigDecimal arithmetic(List<Part> parts, int decimals) {
    BigDecimal sum = BigDecimal.ZERO;
    long weights = 0;
    for (Part part : parts) {
      sum = sum.add(part.score().multiply(BigDecimal.valueOf(part.parts())));
      weights += part.parts();
    }
    return sum.divide(BigDecimal.valueOf(weights), decimals, RoundingMode.HALF_UP);
  }

  /**
   * Half up exactly: the candidate from logarithms is checked by whether Π vᵢ^wᵢ reaches the
   * boundary to the power Σ wᵢ, in exact decimals.
   */
  private static BigDecimal geometric(List<Part> parts, int decimals) {
    int divisor = parts.stream().mapToInt(Part::parts).reduce(0, DisplayedScores::gcd);
    BigDecimal product = BigDecimal.ONE;
    double logarithm = 0;
    int weights = 0;
    for (Part part : parts) {
      if (part.score().signum() == 0) {
        return BigDecimal.ZERO.setScale(decimals);
      }
      int weight = part.parts() / divisor;
      product = product.multiply(part.score().pow(weight));
      logarithm += weight * StrictMath.log(part.score().doubleValue());
      weights += weight;
    }
    BigDecimal candidate =
        BigDecimal.valueOf(StrictMath.exp(logarithm / weights))
            .setScale(decimals, RoundingMode.HALF_UP);
    BigDecimal half = new BigDecimal(BigInteger.valueOf(5), decimals + 1);
    BigDecimal step = BigDecimal.ONE.movePointLeft(decimals);
    if (candidate.add(half).pow(weights).compareTo(product) <= 0) {
      return candidate.add(step);
    }
    BigDecimal lower = candidate.subtract(half);
    if (lower.signum() > 0 && lower.pow(weights).compareTo(product) > 0) {
      return candidate.subtract(step);
    }
    return candidate;
  }

  private static int gcd(int a, int b) {
    return b == 0 ? a : gcd(b, a % b);
  }
}
