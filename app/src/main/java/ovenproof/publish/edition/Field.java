package ovenproof.publish.edition;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.Measurement;
import ovenproof.publish.figure.Figures;
import ovenproof.verdict.Verdict.Node;

/** Where a product stands among the others, criterion by criterion. */
public final class Field {
  private static final int MOST_REASONS = 2;

  private Field() {}

  /** What a criterion of a product was measured to be, and what the middle of the field is. */
  public record Reason(String measure, String measured, @Nullable String middle) {
    /** {@code Time 7 min 18 s, middle of the field 8 min 2 s}. */
    public String words() {
      return measure + " " + measured + (middle == null ? "" : ", middle of the field " + middle);
    }
  }

  /** Which way a point of for and against goes. */
  public enum Side {
    FOR,
    AGAINST
  }

  private record Candidate(Node node, double weight) {}

  /** The criteria that set a product's test apart most, heaviest first; at most two. */
  public static List<Reason> reasons(Edition edition, Node test, Side side) {
    List<Candidate> candidates = new ArrayList<>();
    for (Node leaf : leaves(test)) {
      BigDecimal middle = middleScore(edition, test.id(), leaf.id());
      if (leaf.score().value() != null && leaf.measurement() != null && middle != null) {
        double apart = leaf.score().value().subtract(middle).doubleValue() * leaf.parts();
        candidates.add(new Candidate(leaf, side == Side.FOR ? apart : -apart));
      }
    }
    return candidates.stream()
        .filter(c -> c.weight() > 0)
        .sorted(Comparator.comparingDouble(Candidate::weight).reversed())
        .limit(MOST_REASONS)
        .map(c -> reason(edition, test, c.node()))
        .toList();
  }

  private static Reason reason(Edition edition, Node test, Node leaf) {
    Measurement own = Objects.requireNonNull(leaf.measurement());
    double[] field =
        leavesOf(edition, test.id(), leaf.id()).stream()
            .map(Node::measurement)
            .filter(Objects::nonNull)
            .mapToDouble(Field::ordered)
            .filter(v -> !Double.isNaN(v))
            .sorted()
            .toArray();
    double centre =
        field.length < 3
            ? Double.NaN
            : (field[(field.length - 1) / 2] + field[field.length / 2]) / 2;
    String middle = Double.isFinite(centre) ? Figures.text(centre, own.unit()) : null;
    return new Reason(own.label(), Figures.of(own).first(), middle);
  }

  /** A run beyond its cap counts as the longest of all: left out, it would move the middle. */
  private static double ordered(Measurement measurement) {
    Double value = measurement.value();
    if (value != null) {
      return value;
    }
    return switch (measurement.censored()) {
      case ABOVE -> Double.POSITIVE_INFINITY;
      case BELOW -> Double.NEGATIVE_INFINITY;
      case BETWEEN, NONE -> Double.NaN;
    };
  }

  private static @Nullable BigDecimal middleScore(Edition edition, String test, String criterion) {
    List<BigDecimal> scores =
        leavesOf(edition, test, criterion).stream()
            .map(n -> n.score().value())
            .filter(Objects::nonNull)
            .sorted()
            .toList();
    return scores.size() < 3
        ? null
        : scores
            .get((scores.size() - 1) / 2)
            .add(scores.get(scores.size() / 2))
            .divide(BigDecimal.valueOf(2));
  }

  private static List<Node> leavesOf(Edition edition, String test, String criterion) {
    return edition.verdict().products().stream()
        .map(p -> p.test(test))
        .flatMap(Optional::stream)
        .flatMap(n -> leaves(n).stream())
        .filter(n -> n.id().equals(criterion))
        .toList();
  }

  /** The criteria below a node, in the method's order. */
  public static List<Node> leaves(Node node) {
    List<Node> leaves = new ArrayList<>();
    for (Node child : node.children()) {
      if (child.children().isEmpty()) {
        leaves.add(child);
      } else {
        leaves.addAll(leaves(child));
      }
    }
    return leaves;
  }
}
