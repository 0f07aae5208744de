package ovenproof.core.scoring;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import ovenproof.core.random.ErrorSource;
import ovenproof.core.random.RandomStreams;
import ovenproof.core.scoring.Leaf.Bound;
import ovenproof.core.scoring.ValueNode.Criterion;
import ovenproof.core.scoring.ValueNode.Group;
import ovenproof.core.statistics.Interval;

/**
 * Draws of one product: its errors block by block, through curves, gates and tree. Only the totals
 * outlive it; the draws of its other nodes are turned into intervals and dropped.
 */
final class ProductDraws {
  private static final int BLOCK = RandomStreams.BLOCK;

  private final Prepared product;
  private final ScoringCase scoringCase;
  private final int blocks;
  private final Map<String, FieldErrors.Drawn> sources = new LinkedHashMap<>();
  private final DrawBuffers buffers;
  private final Map<String, double[]> groupLow = new LinkedHashMap<>();
  private final Map<String, double[]> groupHigh = new LinkedHashMap<>();
  private final ErrorSource unit;
  private final double[] unitError = new double[BLOCK];
  private final double[] total = new double[BLOCK];
  private final Scope scope;

  /** How many bounds there are to draw. */
  private enum Scope {
    ONE,
    BOTH
  }

  ProductDraws(
      Prepared product,
      ScoringCase scoringCase,
      FieldErrors field,
      RandomStreams streams,
      int blocks,
      DrawBuffers buffers) {
    this.product = product;
    this.scoringCase = scoringCase;
    this.blocks = blocks;
    this.buffers = buffers;
    product
        .errors()
        .forEach(
            (variable, error) ->
                sources.put(variable, field.drawn(product.product().id(), variable, error)));
    unit = streams.source("unit:" + product.product().id());
    boolean both =
        product.leaves().values().stream().anyMatch(l -> l.low() < l.high())
            || product.gates().stream().anyMatch(g -> g.probability() != g.probabilityHigh());
    scope = both ? Scope.BOTH : Scope.ONE;
  }

  /**
   * Draws several products that use the same buffers, block by block: what the field shares is read
   * once for all of them while it is near.
   */
  static void run(List<ProductDraws> together) {
    List<Plan> plans = together.stream().map(p -> p.plan(p.scoringCase.root())).toList();
    for (int block = 0; block < together.get(0).blocks; block++) {
      for (int i = 0; i < plans.size(); i++) {
        together.get(i).draw(block, plans.get(i));
      }
    }
  }

  private void draw(int block, Plan plan) {
    for (Map.Entry<String, FieldErrors.Drawn> source : sources.entrySet()) {
      source.getValue().fill(block, errorsOf(source.getKey()));
    }
    if (scoringCase.rules().unitToUnit() > 0) {
      unit.normal(block, unitError);
    }
    plan.draw(block, Bound.LOW, total);
    if (scope == Scope.BOTH) {
      plan.draw(block, Bound.HIGH, total);
    }
  }

  private ErrorBlock errorsOf(String variable) {
    if (!sources.containsKey(variable)) {
      throw new IllegalStateException("no errors of " + variable);
    }
    return buffers.errors(variable);
  }

  double[] totals(Bound bound) {
    return draws(scoringCase.root().id(), bound);
  }

  private double[] draws(String node, Bound bound) {
    double[] low = groupLow.getOrDefault(node, new double[0]);
    return bound == Bound.LOW || scope == Scope.ONE ? low : groupHigh.getOrDefault(node, low);
  }

  /** Adds to each group its 90 % interval from draws, widened to hold the displayed score. */
  NodeScore withIntervals(NodeScore score) {
    List<NodeScore> children = score.children().stream().map(this::withIntervals).toList();
    if (children.isEmpty()) {
      return score;
    }
    NodeScore done = score.with(null, Double.NaN, children);
    if (!score.scored() || !known(done)) {
      return done;
    }
    return score.with(interval(score), standardError(score), children);
  }

  private double standardError(NodeScore score) {
    double[] draws = draws(score.id(), Bound.LOW);
    double squares = 0;
    for (int block = 0; block < blocks; block++) {
      squares += squares(draws, block * BLOCK, score.low());
    }
    return Math.sqrt(squares / draws.length);
  }

  /** Sum of squares about a point, by four sums that need not wait for each other. */
  private static double squares(double[] draws, int from, double about) {
    double a = 0;
    double b = 0;
    double c = 0;
    double e = 0;
    for (int d = from; d < from + BLOCK; d += 4) {
      a += (draws[d] - about) * (draws[d] - about);
      b += (draws[d + 1] - about) * (draws[d + 1] - about);
      c += (draws[d + 2] - about) * (draws[d + 2] - about);
      e += (draws[d + 3] - about) * (draws[d + 3] - about);
    }
    return (a + b) + (c + e);
  }

  private boolean known(NodeScore node) {
    if (node.children().isEmpty()) {
      return node.interval() != null || node.state() == NodeScore.State.NOT_ASKED;
    }
    return node.children().stream().filter(c -> c.share() > 0).allMatch(this::known);
  }

  private Interval interval(NodeScore score) {
    double[] low = draws(score.id(), Bound.LOW);
    double[] high = draws(score.id(), Bound.HIGH);
    int fifth = (int) (0.05 * low.length);
    int last = (int) Math.ceil(0.95 * high.length) - 1;
    double[] ends =
        low == high
            ? OrderStatistic.of(low, fifth, last)
            : new double[] {OrderStatistic.of(low, fifth)[0], OrderStatistic.of(high, last)[0]};
    double least = ends[0];
    double most = ends[1];
    double shownLow = score.displayedLow() == null ? least : score.displayedLow().doubleValue();
    double shownHigh = score.displayedHigh() == null ? most : score.displayedHigh().doubleValue();
    return new Interval(
        Math.min(least, Math.min(shownLow, score.low())),
        Math.max(most, Math.max(shownHigh, score.high())));
  }

  /** A node of the tree as it is drawn. */
  private interface Plan {
    /** Draws a block of the node's scores into {@code target}. */
    void draw(int block, Bound bound, double[] target);
  }

  private Plan plan(ValueNode node) {
    boolean root = node.id().equals(scoringCase.root().id());
    Plan free = node instanceof Criterion criterion ? leaf(criterion) : group((Group) node);
    List<GateDraw> gates =
        product.gatesOf(node.id()).stream().map(this::gate).filter(g -> g != null).toList();
    boolean kept = root || node instanceof Group;
    if (!kept && gates.isEmpty()) {
      return free;
    }
    if (kept) {
      groupLow.put(node.id(), root ? new double[blocks * BLOCK] : buffers.draws());
      if (scope == Scope.BOTH) {
        groupHigh.put(node.id(), root ? new double[blocks * BLOCK] : buffers.draws());
      }
    }
    double unitToUnit = root ? scoringCase.rules().unitToUnit() : 0;
    return (block, bound, target) -> {
      free.draw(block, bound, target);
      if (unitToUnit > 0) {
        addUnitError(target, unitToUnit);
      }
      gates.forEach(g -> g.apply(bound, target));
      if (kept) {
        System.arraycopy(target, 0, draws(node.id(), bound), block * BLOCK, BLOCK);
      }
    };
  }

  private void addUnitError(double[] target, double deviation) {
    for (int d = 0; d < BLOCK; d++) {
      double shifted = target[d] + deviation * unitError[d];
      target[d] = Math.max(0, Math.min(ValueCurve.BEST, shifted));
    }
  }

  private Plan leaf(Criterion criterion) {
    Leaf leaf = product.leaf(criterion.id());
    ShiftedCurve low = leaf.lowCurve();
    ShiftedCurve high = leaf.highCurve();
    if (low == null || high == null) {
      return (block, bound, target) ->
          Arrays.fill(target, bound == Bound.LOW ? leaf.low() : leaf.high());
    }
    ErrorBlock error = errorsOf(criterion.variable());
    return (block, bound, target) ->
        (bound == Bound.LOW ? low : high).score(error.values, error.reach, target);
  }

  private Plan group(Group group) {
    List<Plan> plans = new ArrayList<>();
    List<Double> weights = new ArrayList<>();
    for (ValueNode child : group.children()) {
      Plan plan = plan(child);
      if (child.parts() > 0 && asked(child)) {
        plans.add(plan);
        weights.add((double) child.parts());
      }
    }
    double sum = weights.stream().mapToDouble(Double::doubleValue).sum();
    double[] shares = weights.stream().mapToDouble(w -> w / sum).toArray();
    double[] buffer = new double[BLOCK];
    return (block, bound, target) -> {
      Combiner.start(group.combination(), target);
      for (int i = 0; i < shares.length; i++) {
        plans.get(i).draw(block, bound, buffer);
        Combiner.add(group.combination(), target, buffer, shares[i]);
      }
      Combiner.finish(group.combination(), target);
    };
  }

  private boolean asked(ValueNode node) {
    if (node instanceof Criterion criterion) {
      return product.leaf(criterion.id()).asked();
    }
    return ((Group) node).children().stream().anyMatch(c -> c.parts() > 0 && asked(c));
  }

  /** Null for a gate that never changes a score. */
  private @Nullable GateDraw gate(GateFinding finding) {
    if (finding.gate().kind() == Gate.Kind.FLAG) {
      return null;
    }
    String variable = finding.gate().variable();
    return new GateDraw(
        finding,
        product.product().answer(variable),
        sources.containsKey(variable) ? errorsOf(variable).values : new double[0]);
  }
}
