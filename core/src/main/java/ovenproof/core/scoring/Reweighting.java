package ovenproof.core.scoring;

import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import ovenproof.core.scoring.ValueNode.Criterion;
import ovenproof.core.scoring.ValueNode.Group;

/**
 * The same measurements under other weights, thousands of times: unrounded totals from leaves that
 * are computed once. Gates act as they do on the estimate; a product that a veto stops has NaN.
 */
public final class Reweighting {
  private final ScoringCase scoringCase;
  private final List<Prepared> products;

  private Reweighting(ScoringCase scoringCase, List<Prepared> products) {
    this.scoringCase = scoringCase;
    this.products = products;
  }

  public static Reweighting of(ScoringCase scoringCase) {
    List<CaseProblem> problems = scoringCase.problems();
    if (!problems.isEmpty()) {
      throw new InvalidCaseException(problems);
    }
    FieldSpread spread = new FieldSpread(scoringCase);
    List<Prepared> products =
        IntStream.range(0, scoringCase.products().size())
            .mapToObj(i -> Prepared.of(scoringCase, spread, i))
            .toList();
    return new Reweighting(scoringCase, products);
  }

  /** Weights as declared. */
  public double[] totals() {
    return totals(ValueNode::parts);
  }

  /** Weights by id of the node; nodes not named keep their parts. */
  public double[] totals(Map<String, Double> weights) {
    return totals(n -> weights.getOrDefault(n.id(), (double) n.parts()));
  }

  /**
   * Totals in the order of the case's products.
   *
   * @param weight of each node among its siblings, 0 or more
   */
  public double[] totals(ToDoubleFunction<ValueNode> weight) {
    double[] totals = new double[products.size()];
    for (int i = 0; i < totals.length; i++) {
      totals[i] = score(scoringCase.root(), products.get(i), weight);
    }
    return totals;
  }

  /** Middle of the bounds of a criterion; NaN where it was not asked. */
  double leaf(int product, String criterion) {
    Leaf leaf = products.get(product).leaf(criterion);
    return (leaf.low() + leaf.high()) / 2;
  }

  /** Whether a gate acts on the product, or might. */
  boolean gated(int product) {
    return products.get(product).gates().stream()
        .anyMatch(
            g ->
                g.gate().kind() != Gate.Kind.FLAG
                    && (g.acts() || g.state() == GateFinding.State.UNKNOWN));
  }

  private double score(ValueNode node, Prepared product, ToDoubleFunction<ValueNode> weight) {
    double free;
    if (node instanceof Criterion criterion) {
      Leaf leaf = product.leaf(criterion.id());
      free = leaf.asked() ? (leaf.low() + leaf.high()) / 2 : Double.NaN;
    } else {
      free = combine((Group) node, product, weight);
    }
    double gated = free;
    for (GateFinding finding : product.gates()) {
      boolean acts =
          finding.acts()
              && finding.gate().kind() != Gate.Kind.FLAG
              && finding.gate().node().equals(node.id());
      if (acts) {
        gated = Math.min(gated, left(finding.gate(), node));
      }
    }
    return gated;
  }

  private double left(Gate gate, ValueNode node) {
    if (gate.kind() == Gate.Kind.CEILING) {
      return gate.ceiling();
    }
    return node.id().equals(scoringCase.root().id()) ? Double.NaN : 0;
  }

  private double combine(Group group, Prepared product, ToDoubleFunction<ValueNode> weight) {
    double sum = 0;
    double weights = 0;
    double least = Double.POSITIVE_INFINITY;
    for (ValueNode child : group.children()) {
      double w = weight.applyAsDouble(child);
      if (w > 0) {
        double score = score(child, product, weight);
        if (!Double.isNaN(score)) {
          boolean geometric = group.combination() == Combination.GEOMETRIC;
          sum += w * (geometric ? StrictMath.log(score) : score);
          weights += w;
          least = Math.min(least, score);
        }
      }
    }
    if (weights == 0) {
      return Double.NaN;
    }
    return switch (group.combination()) {
      case ARITHMETIC -> sum / weights;
      case GEOMETRIC -> StrictMath.exp(sum / weights);
      case FLOOR -> least;
    };
  }
}
