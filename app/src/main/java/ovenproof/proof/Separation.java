package ovenproof.proof;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;
import org.jspecify.annotations.Nullable;
import ovenproof.core.statistics.StudentizedRange;
import ovenproof.proof.Vocabulary.Direction;

/**
 * Which differences of one figure between products are real. The deviation between runs is pooled
 * over the field; an extreme must be separated from all others by the 90 % point of the studentized
 * range, the same level as the tiers.
 */
final class Separation {
  private static final double SIGNIFICANCE = 0.10;

  private final List<Figure> field;
  private final Direction wanted;
  private final double pooledVariance;
  private final double degreesOfFreedom;

  /**
   * @param field one figure per product, of one use
   */
  Separation(List<Figure> field, Direction wanted) {
    this.field = List.copyOf(field);
    this.wanted = wanted;
    double squares = 0;
    double df = 0;
    for (Figure figure : field) {
      double[] runs = figure.runs().stream().mapToDouble(Double::doubleValue).toArray();
      if (runs.length >= 2) {
        double sd = ovenproof.core.statistics.Descriptive.of(runs).standardDeviation();
        squares += sd * sd * (runs.length - 1);
        df += runs.length - 1;
      }
    }
    this.pooledVariance = df == 0 ? Double.NaN : squares / df;
    this.degreesOfFreedom = df;
  }

  /**
   * The better end of the field first; a bound counts as its bound. Figures without any are left
   * out.
   */
  List<Figure> ordered() {
    List<Figure> known = new ArrayList<>(field.stream().filter(f -> level(f) != null).toList());
    known.sort(Comparator.comparingDouble((Figure f) -> -signed(f)));
    return known;
  }

  /** The value, or the bound that lies towards the others. */
  static @Nullable Double level(Figure figure) {
    if (figure.value() != null) {
      return figure.value();
    }
    return figure.low() != null ? figure.low() : figure.high();
  }

  double signed(Figure figure) {
    double value = Objects.requireNonNull(level(figure));
    return wanted == Direction.HIGH ? value : -value;
  }

  /** P(a lies further towards the wanted end than b); NaN when the spread is not known. */
  double probability(Figure a, Figure b) {
    double gap = signed(a) - signed(b);
    double error = error(a, b);
    if (Double.isNaN(error)) {
      return Double.NaN;
    }
    if (error == 0) {
      return gap > 0 ? 1 : gap < 0 ? 0 : 0.5;
    }
    return scores()
        ? NormalDistribution.of(0, 1).cumulativeProbability(gap / error)
        : TDistribution.of(degreesOfFreedom).cumulativeProbability(gap / error);
  }

  /** Whether a is separated from b by the margin that holds for the whole field at once. */
  boolean separated(Figure a, Figure b) {
    double error = error(a, b);
    if (Double.isNaN(error)) {
      return false;
    }
    if (a.isSingle()) {
      return signed(a) > signed(b);
    }
    double df = scores() ? 1e6 : degreesOfFreedom;
    if (df <= 0) {
      return false;
    }
    double margin = margin(Math.max(2, field.size()), df);
    return signed(a) - signed(b) > margin * error;
  }

  /** How many products and degrees of freedom a margin is for. */
  private record MarginKey(int products, double degreesOfFreedom) {}

  private static final Map<MarginKey, Double> MARGINS = new ConcurrentHashMap<>();

  /** Root finding over a double integral: worth keeping, a campaign has few sizes of field. */
  private static double margin(int products, double degreesOfFreedom) {
    return MARGINS.computeIfAbsent(
        new MarginKey(products, degreesOfFreedom),
        key ->
            StudentizedRange.of(key.products(), key.degreesOfFreedom()).criticalValue(SIGNIFICANCE)
                / Math.sqrt(2));
  }

  private boolean scores() {
    return field.stream().anyMatch(Figure::isScore);
  }

  private double error(Figure a, Figure b) {
    if (a.isSingle()) {
      return 0;
    }
    if (scores()) {
      Double ua = a.standardError();
      Double ub = b.standardError();
      return ua == null || ub == null ? Double.NaN : Math.hypot(ua, ub);
    }
    if (a.value() == null && b.value() == null) {
      return Double.NaN;
    }
    return Math.sqrt(pooledVariance * (share(a) + share(b)));
  }

  /** A bound is a limit, not a mean: it adds no deviation of its own. */
  private static double share(Figure figure) {
    if (figure.value() == null) {
      return 0;
    }
    return figure.runs().isEmpty() ? Double.NaN : 1.0 / figure.runs().size();
  }
}
