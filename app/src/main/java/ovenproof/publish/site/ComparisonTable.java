package ovenproof.publish.site;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import ovenproof.method.Combine;
import ovenproof.method.Gate;
import ovenproof.method.TestPlan;
import ovenproof.method.ValueNode;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.figure.Scores;
import ovenproof.verdict.Verdict.GateOutcome;
import ovenproof.verdict.Verdict.Node;
import ovenproof.verdict.Verdict.ProductVerdict;
import ovenproof.verdict.Verdict.Score;

/**
 * Adds the table up again from the digits that are printed, as a reader would, and says where that
 * does not give the printed total.
 */
public final class ComparisonTable {
  private final Edition edition;

  private ComparisonTable(Edition edition) {
    this.edition = edition;
  }

  static ComparisonTable of(Edition edition) {
    return new ComparisonTable(edition);
  }

  int parts() {
    return edition.campaign().method().tests().stream().mapToInt(TestPlan::parts).sum();
  }

  String heading() {
    return switch (combine()) {
      case ARITHMETIC, GEOMETRIC -> "The total follows from the shown sub-scores";
      case FLOOR -> "The lowest sub-score is the total";
    };
  }

  /** The rule by which anyone can add it up. */
  String rule() {
    return switch (combine()) {
      case ARITHMETIC ->
          "Total = the shown sub-scores × parts ÷ "
              + parts()
              + ", rounded half up. Anyone can add it up again.";
      case GEOMETRIC ->
          "Total = the weighted geometric mean of the shown sub-scores, rounded half up: one 0 makes"
              + " 0.";
      case FLOOR -> "Total = the lowest of the shown sub-scores.";
    };
  }

  private Combine combine() {
    return edition.campaign().method().scoring().combine();
  }

  /**
   * Every place where the printed digits do not add up, as sentences; empty when all do. Checks
   * each level of the value tree and the published order.
   */
  public static List<String> disagreements(Edition edition) {
    ComparisonTable table = new ComparisonTable(edition);
    List<String> found = new ArrayList<>();
    for (ProductVerdict product : edition.verdict().products()) {
      table.product(product, found);
    }
    table.order(found);
    return found;
  }

  private void product(ProductVerdict product, List<String> found) {
    check(
        product.name() + ", total",
        product.score(),
        product.tests(),
        combine(),
        ceiling(product, null, Gate.Scope.TOTAL),
        found);
    for (Node node : product.tests()) {
      edition
          .campaign()
          .method()
          .test(node.id())
          .ifPresent(
              test -> {
                BigDecimal ceiling = ceiling(product, test.id(), Gate.Scope.TEST);
                String place = product.name() + ", " + node.name();
                check(place, node.score(), node.children(), test.combine(), ceiling, found);
                for (Node child : node.children()) {
                  group(place, child, test.criteria(), found);
                }
              });
    }
  }

  private void group(String place, Node node, List<ValueNode> plan, List<String> found) {
    for (ValueNode candidate : plan) {
      if (candidate instanceof ValueNode.Group group && group.id().equals(node.id())) {
        String here = place + ", " + node.name();
        check(here, node.score(), node.children(), group.combine(), null, found);
        node.children().forEach(child -> group(here, child, group.children(), found));
      }
    }
  }

  /** The lowest ceiling that fired, of the whole or of one test. */
  private @Nullable BigDecimal ceiling(
      ProductVerdict product, @Nullable String test, Gate.Scope scope) {
    BigDecimal lowest = null;
    for (GateOutcome outcome : product.gates()) {
      if (outcome.kind() == Gate.Kind.CEILING && outcome.state() == GateOutcome.State.FIRED) {
        BigDecimal ceiling = ceiling(outcome, test, scope);
        if (ceiling != null && (lowest == null || ceiling.compareTo(lowest) < 0)) {
          lowest = ceiling;
        }
      }
    }
    return lowest;
  }

  private @Nullable BigDecimal ceiling(
      GateOutcome outcome, @Nullable String test, Gate.Scope scope) {
    if (test != null && !test.equals(outcome.test())) {
      return null;
    }
    return edition.campaign().method().test(outcome.test()).stream()
        .flatMap(t -> t.gates().stream())
        .filter(g -> g.id().equals(outcome.id()) && g.scope() == scope && g.ceiling() != null)
        .map(g -> BigDecimal.valueOf(Objects.requireNonNull(g.ceiling())))
        .findFirst()
        .orElse(null);
  }

  private void check(
      String place,
      Score score,
      List<Node> parts,
      Combine combine,
      @Nullable BigDecimal ceiling,
      List<String> found) {
    if (score.value() == null || !isSum(score) || parts.isEmpty()) {
      return;
    }
    List<Node> counted = parts.stream().filter(ComparisonTable::counts).toList();
    if (counted.stream().anyMatch(n -> n.score().value() == null) || weight(counted) == 0) {
      return;
    }
    BigDecimal expected = combined(counted, combine);
    if (ceiling != null && expected.compareTo(ceiling) > 0) {
      expected = ceiling;
    }
    BigDecimal shown = new BigDecimal(Scores.digits(score));
    BigDecimal rounded = expected.setScale(shown.scale(), RoundingMode.HALF_UP);
    if (rounded.compareTo(shown) != 0) {
      found.add(
          place
              + ": the page shows "
              + shown
              + ", its printed parts give "
              + rounded.toPlainString());
    }
  }

  private static boolean isSum(Score score) {
    return switch (score.known()) {
      case INTERVAL, VALUE_ONLY, AT_MOST, AT_LEAST -> true;
      case BOUNDS, CANNOT_DO, NOT_ASKED, NONE -> false;
    };
  }

  /** What was not asked is shared out among its siblings. */
  private static boolean counts(Node node) {
    return node.score().known() != Score.Known.NOT_ASKED && node.parts() > 0;
  }

  private static int weight(List<Node> parts) {
    return parts.stream().mapToInt(Node::parts).sum();
  }

  private static BigDecimal combined(List<Node> parts, Combine combine) {
    BigDecimal weight = BigDecimal.valueOf(weight(parts));
    return switch (combine) {
      case ARITHMETIC ->
          parts.stream()
              .map(n -> printed(n).multiply(BigDecimal.valueOf(n.parts())))
              .reduce(BigDecimal.ZERO, BigDecimal::add)
              .divide(weight, 12, RoundingMode.HALF_UP);
      case GEOMETRIC -> geometric(parts, weight.doubleValue());
      case FLOOR ->
          parts.stream().map(ComparisonTable::printed).min(BigDecimal::compareTo).orElseThrow();
    };
  }

  private static BigDecimal geometric(List<Node> parts, double weight) {
    double logarithm = 0;
    for (Node part : parts) {
      double value = printed(part).doubleValue();
      if (value <= 0) {
        return BigDecimal.ZERO;
      }
      logarithm += part.parts() * StrictMath.log(value) / weight;
    }
    return BigDecimal.valueOf(StrictMath.exp(logarithm)).setScale(12, RoundingMode.HALF_UP);
  }

  private static BigDecimal printed(Node node) {
    return new BigDecimal(Scores.digits(node.score()));
  }

  private void order(List<String> found) {
    BigDecimal last = null;
    String before = "";
    for (ProductVerdict product : edition.ranked()) {
      BigDecimal value = product.score().value();
      if (value != null && last != null && value.compareTo(last) > 0) {
        found.add(product.name() + " with " + value + " stands below " + before + " with " + last);
      }
      if (value != null) {
        last = value;
        before = product.name();
      }
    }
  }
}
