package ovenproof.core.scoring;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hipparchus.exception.MathIllegalStateException;
import org.hipparchus.optim.MaxIter;
import org.hipparchus.optim.linear.LinearConstraint;
import org.hipparchus.optim.linear.LinearConstraintSet;
import org.hipparchus.optim.linear.LinearObjectiveFunction;
import org.hipparchus.optim.linear.NonNegativeConstraint;
import org.hipparchus.optim.linear.Relationship;
import org.hipparchus.optim.linear.SimplexSolver;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import ovenproof.core.scoring.ValueNode.Criterion;
import ovenproof.core.scoring.ValueNode.Group;

/**
 * The smallest change of weights under which a rival has as many points as the winner.
 *
 * <p>Exact, by linear programming in the weights of the criteria, where every node is a weighted
 * arithmetic mean (or every node a geometric one: then in logarithms), both products answer the
 * same criteria and no gate acts on either. Elsewhere a search over moves of weight from one
 * sibling to another, which may miss a smaller change.
 */
public final class Unseating {
  private static final double TOLERANCE = 1e-9;

  private final ScoringCase scoringCase;
  private final Reweighting reweighting;
  private final List<Criterion> criteria;
  private final Map<String, Double> shares = new LinkedHashMap<>();

  private Unseating(ScoringCase scoringCase) {
    this.scoringCase = scoringCase;
    reweighting = Reweighting.of(scoringCase);
    criteria =
        scoringCase
            .root()
            .all()
            .filter(Criterion.class::isInstance)
            .map(Criterion.class::cast)
            .toList();
    share(scoringCase.root(), 1);
  }

  /** How the change was found. */
  public enum How {
    /** The smallest there is. */
    LINEAR_PROGRAM,
    /** The smallest of those tried. */
    SEARCH,
    /** No weights put the rival level. */
    IMPOSSIBLE
  }

  /**
   * What puts a rival level with the winner.
   *
   * @param moved share of all weight that changes place, 0–1; NaN when impossible
   * @param before share of the total by criterion (for a search: by the two nodes that change)
   * @param after the same after the change
   */
  public record Change(
      String winner,
      String rival,
      How how,
      double moved,
      Map<String, Double> before,
      Map<String, Double> after) {}

  /**
   * The smallest change for one rival.
   *
   * @throws IllegalArgumentException if either product is unknown or has no total
   */
  public static Change change(ScoringCase scoringCase, String winner, String rival) {
    return new Unseating(scoringCase).change(winner, rival);
  }

  /** The rival that needs the least; empty for a field of one. */
  public static Optional<Change> smallest(ScoringCase scoringCase, String winner) {
    Unseating unseating = new Unseating(scoringCase);
    double[] totals = unseating.reweighting.totals();
    Change smallest = null;
    for (int i = 0; i < totals.length; i++) {
      String rival = scoringCase.products().get(i).id();
      if (!rival.equals(winner) && !Double.isNaN(totals[i])) {
        Change change = unseating.change(winner, rival);
        boolean smaller =
            smallest == null || Double.isNaN(smallest.moved()) || change.moved() < smallest.moved();
        smallest = smaller ? change : smallest;
      }
    }
    return Optional.ofNullable(smallest);
  }

  private void share(ValueNode node, double share) {
    if (node instanceof Group group) {
      double sum = group.children().stream().mapToInt(ValueNode::parts).sum();
      group.children().forEach(c -> share(c, sum == 0 ? 0 : share * c.parts() / sum));
    } else {
      shares.put(node.id(), share);
    }
  }

  private Change change(String winner, String rival) {
    int a = index(winner);
    int b = index(rival);
    double[] totals = reweighting.totals();
    if (Double.isNaN(totals[a]) || Double.isNaN(totals[b])) {
      throw new IllegalArgumentException("both products need a total: " + winner + ", " + rival);
    }
    if (totals[b] >= totals[a] - TOLERANCE) {
      return new Change(winner, rival, How.LINEAR_PROGRAM, 0, shares, shares);
    }
    Optional<double[]> advantages = advantages(a, b);
    return advantages
        .map(d -> linear(winner, rival, d))
        .orElseGet(() -> search(winner, rival, a, b));
  }

  private int index(String product) {
    for (int i = 0; i < scoringCase.products().size(); i++) {
      if (scoringCase.products().get(i).id().equals(product)) {
        return i;
      }
    }
    throw new IllegalArgumentException("no product \"" + product + "\"");
  }

  /** Rival less winner by criterion, where the total is linear in the shares; else empty. */
  private Optional<double[]> advantages(int winner, int rival) {
    List<Combination> combinations =
        scoringCase
            .root()
            .all()
            .filter(Group.class::isInstance)
            .map(n -> ((Group) n).combination())
            .distinct()
            .toList();
    boolean uniform = combinations.size() <= 1 && !combinations.contains(Combination.FLOOR);
    if (!uniform || reweighting.gated(winner) || reweighting.gated(rival)) {
      return Optional.empty();
    }
    boolean logarithms = combinations.contains(Combination.GEOMETRIC);
    double[] advantages = new double[criteria.size()];
    for (int k = 0; k < advantages.length; k++) {
      double ours = reweighting.leaf(winner, criteria.get(k).id());
      double theirs = reweighting.leaf(rival, criteria.get(k).id());
      advantages[k] = logarithms ? StrictMath.log(theirs) - StrictMath.log(ours) : theirs - ours;
      if (!Double.isFinite(advantages[k])) {
        return Optional.empty();
      }
    }
    return Optional.of(advantages);
  }

  /** Variables: what each share gains, then what each loses. */
  private Change linear(String winner, String rival, double[] advantage) {
    int n = advantage.length;
    double[] weight =
        criteria.stream().mapToDouble(c -> shares.getOrDefault(c.id(), 0.0)).toArray();
    double[] objective = new double[2 * n];
    double[] balance = new double[2 * n];
    double[] level = new double[2 * n];
    double now = 0;
    List<LinearConstraint> constraints = new ArrayList<>();
    for (int k = 0; k < n; k++) {
      objective[k] = 1;
      balance[k] = 1;
      balance[n + k] = -1;
      level[k] = advantage[k];
      level[n + k] = -advantage[k];
      now += weight[k] * advantage[k];
      double[] loses = new double[2 * n];
      loses[n + k] = 1;
      constraints.add(new LinearConstraint(loses, Relationship.LEQ, weight[k]));
    }
    constraints.add(new LinearConstraint(balance, Relationship.EQ, 0));
    constraints.add(new LinearConstraint(level, Relationship.GEQ, -now));
    try {
      double[] moves =
          new SimplexSolver()
              .optimize(
                  new MaxIter(10_000),
                  new LinearObjectiveFunction(objective, 0),
                  new LinearConstraintSet(constraints),
                  GoalType.MINIMIZE,
                  new NonNegativeConstraint(true))
              .getPoint();
      return solved(winner, rival, moves, weight);
    } catch (MathIllegalStateException infeasible) {
      return impossible(winner, rival);
    }
  }

  private Change solved(String winner, String rival, double[] moves, double[] weight) {
    Map<String, Double> after = new LinkedHashMap<>();
    double moved = 0;
    for (int k = 0; k < weight.length; k++) {
      moved += moves[k];
      after.put(criteria.get(k).id(), weight[k] + moves[k] - moves[weight.length + k]);
    }
    return new Change(winner, rival, How.LINEAR_PROGRAM, moved, shares, after);
  }

  private Change impossible(String winner, String rival) {
    return new Change(winner, rival, How.IMPOSSIBLE, Double.NaN, shares, shares);
  }

  /** Moves weight between two siblings, for every pair of siblings, and halves the way 40 times. */
  private Change search(String winner, String rival, int a, int b) {
    Change best = impossible(winner, rival);
    List<Group> groups =
        scoringCase.root().all().filter(Group.class::isInstance).map(Group.class::cast).toList();
    for (Group group : groups) {
      double sum = group.children().stream().mapToInt(ValueNode::parts).sum();
      for (ValueNode from : group.children()) {
        for (ValueNode to : group.children()) {
          if (!from.equals(to) && from.parts() > 0) {
            Change change = move(winner, rival, a, b, from, to, sum);
            boolean better = Double.isNaN(best.moved()) || change.moved() < best.moved();
            best = !Double.isNaN(change.moved()) && better ? change : best;
          }
        }
      }
    }
    return best;
  }

  private Change move(
      String winner, String rival, int a, int b, ValueNode from, ValueNode to, double sum) {
    if (!level(a, b, from, to, from.parts())) {
      return impossible(winner, rival);
    }
    double low = 0;
    double high = from.parts();
    for (int i = 0; i < 40; i++) {
      double middle = (low + high) / 2;
      if (level(a, b, from, to, middle)) {
        high = middle;
      } else {
        low = middle;
      }
    }
    Map<String, Double> before = Map.of(from.id(), from.parts() / sum, to.id(), to.parts() / sum);
    Map<String, Double> after =
        Map.of(from.id(), (from.parts() - high) / sum, to.id(), (to.parts() + high) / sum);
    return new Change(winner, rival, How.SEARCH, high / sum, before, after);
  }

  private boolean level(int a, int b, ValueNode from, ValueNode to, double moved) {
    double[] totals =
        reweighting.totals(Map.of(from.id(), from.parts() - moved, to.id(), to.parts() + moved));
    return totals[b] >= totals[a] - TOLERANCE;
  }
}
