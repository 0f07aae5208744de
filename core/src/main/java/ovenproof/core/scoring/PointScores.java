package ovenproof.core.scoring;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.core.scoring.NodeScore.State;
import ovenproof.core.scoring.ValueNode.Criterion;
import ovenproof.core.scoring.ValueNode.Group;

/** Scores without draws: the tree of one product, from its leaves up. */
final class PointScores {
  private final Prepared product;
  private final int decimals;
  private final String root;

  private PointScores(Prepared product, ScoringCase scoringCase) {
    this.product = product;
    decimals = scoringCase.rules().decimals();
    root = scoringCase.root().id();
  }

  static NodeScore of(Prepared product, ScoringCase scoringCase) {
    return new PointScores(product, scoringCase).node(scoringCase.root(), 1);
  }

  private NodeScore node(ValueNode node, double share) {
    NodeScore free =
        node instanceof Criterion criterion ? leaf(criterion, share) : group((Group) node, share);
    NodeScore gated = free;
    for (GateFinding gate : product.gatesOf(node.id())) {
      gated = gated.scored() ? apply(gate, gated) : gated;
    }
    return gated;
  }

  private NodeScore leaf(Criterion criterion, double share) {
    Leaf leaf = product.leaf(criterion.id());
    boolean asked = leaf.asked();
    return new NodeScore(
        criterion.id(),
        criterion.label(),
        criterion.parts(),
        share,
        leaf.state(),
        asked ? DisplayedScores.leaf(leaf.low(), decimals) : null,
        asked ? DisplayedScores.leaf(leaf.high(), decimals) : null,
        leaf.low(),
        leaf.high(),
        leaf.interval(),
        leaf.standardError(),
        leaf.note(),
        List.of());
  }

  private NodeScore group(Group group, double share) {
    double weight = 0;
    for (ValueNode child : group.children()) {
      weight += asked(child) ? child.parts() : 0;
    }
    List<NodeScore> children = new ArrayList<>();
    List<NodeScore> weighing = new ArrayList<>();
    for (ValueNode child : group.children()) {
      boolean counts = asked(child) && child.parts() > 0;
      NodeScore score = node(child, counts ? child.parts() / weight : 0);
      children.add(score);
      if (counts) {
        weighing.add(score);
      }
    }
    return weighing.isEmpty()
        ? notAsked(group, share, children)
        : combined(group, share, children, weighing);
  }

  private boolean asked(ValueNode node) {
    if (node instanceof Criterion criterion) {
      return product.leaf(criterion.id()).asked();
    }
    return ((Group) node).children().stream().anyMatch(c -> c.parts() > 0 && asked(c));
  }

  private static NodeScore notAsked(Group group, double share, List<NodeScore> children) {
    String why =
        children.stream()
            .map(NodeScore::note)
            .filter(n -> n != null)
            .findFirst()
            .orElse("not asked");
    return new NodeScore(
        group.id(),
        group.label(),
        group.parts(),
        share,
        State.NOT_ASKED,
        null,
        null,
        Double.NaN,
        Double.NaN,
        null,
        Double.NaN,
        why,
        children);
  }

  private NodeScore combined(
      Group group, double share, List<NodeScore> children, List<NodeScore> weighing) {
    List<DisplayedScores.Part> low = new ArrayList<>();
    List<DisplayedScores.Part> high = new ArrayList<>();
    for (NodeScore child : weighing) {
      BigDecimal childLow = child.displayedLow();
      BigDecimal childHigh = child.displayedHigh();
      if (childLow == null || childHigh == null) {
        throw new IllegalStateException(child.id() + " weighs without a score");
      }
      low.add(new DisplayedScores.Part(childLow, child.parts()));
      high.add(new DisplayedScores.Part(childHigh, child.parts()));
    }
    return new NodeScore(
        group.id(),
        group.label(),
        group.parts(),
        share,
        state(weighing),
        DisplayedScores.combine(group.combination(), low, decimals),
        DisplayedScores.combine(group.combination(), high, decimals),
        unrounded(group.combination(), weighing, Leaf.Bound.LOW),
        unrounded(group.combination(), weighing, Leaf.Bound.HIGH),
        null,
        Double.NaN,
        null,
        children);
  }

  private static State state(List<NodeScore> weighing) {
    if (weighing.stream().allMatch(c -> c.state() == State.MISSING)) {
      return State.MISSING;
    }
    if (weighing.stream().allMatch(c -> c.state() == State.CANNOT_DO)) {
      return State.CANNOT_DO;
    }
    return weighing.stream().anyMatch(c -> c.low() < c.high()) ? State.BOUNDED : State.SCORED;
  }

  private static double unrounded(
      Combination combination, List<NodeScore> parts, Leaf.Bound bound) {
    double sum = 0;
    double least = Double.POSITIVE_INFINITY;
    for (NodeScore part : parts) {
      double score = bound == Leaf.Bound.LOW ? part.low() : part.high();
      least = Math.min(least, score);
      sum += part.share() * (combination == Combination.GEOMETRIC ? StrictMath.log(score) : score);
    }
    return switch (combination) {
      case ARITHMETIC -> sum;
      case GEOMETRIC -> StrictMath.exp(sum);
      case FLOOR -> least;
    };
  }

  private NodeScore apply(GateFinding finding, NodeScore score) {
    if (finding.gate().kind() == Gate.Kind.FLAG) {
      return score;
    }
    boolean acts = finding.acts();
    boolean perhaps = finding.state() == GateFinding.State.UNKNOWN;
    if (!acts && !perhaps) {
      return score;
    }
    if (finding.gate().kind() == Gate.Kind.CEILING) {
      return capped(score, finding, acts);
    }
    if (acts && score.id().equals(root)) {
      return vetoed(score, null, Double.NaN, finding);
    }
    BigDecimal zero = BigDecimal.ZERO.setScale(decimals);
    return acts
        ? vetoed(score, zero, 0, finding)
        : copy(score, State.BOUNDED, zero, score.displayedHigh(), 0, score.high(), said(finding));
  }

  private NodeScore capped(NodeScore score, GateFinding finding, boolean acts) {
    double ceiling = finding.gate().ceiling();
    BigDecimal shown = BigDecimal.valueOf(ceiling).setScale(decimals, RoundingMode.HALF_UP);
    BigDecimal low = least(score.displayedLow(), shown);
    BigDecimal high = acts ? least(score.displayedHigh(), shown) : score.displayedHigh();
    double lowScore = Math.min(score.low(), ceiling);
    double highScore = acts ? Math.min(score.high(), ceiling) : score.high();
    State state = lowScore < highScore ? State.BOUNDED : score.state();
    return copy(score, state, low, high, lowScore, highScore, said(finding));
  }

  private static @Nullable BigDecimal least(@Nullable BigDecimal score, BigDecimal ceiling) {
    return score == null ? null : score.min(ceiling);
  }

  private static String said(GateFinding finding) {
    return finding.gate().label() + ": " + finding.why();
  }

  private static NodeScore vetoed(
      NodeScore score, @Nullable BigDecimal shown, double value, GateFinding finding) {
    return copy(score, State.VETOED, shown, shown, value, value, said(finding));
  }

  private static NodeScore copy(
      NodeScore score,
      State state,
      @Nullable BigDecimal displayedLow,
      @Nullable BigDecimal displayedHigh,
      double low,
      double high,
      String note) {
    return new NodeScore(
        score.id(),
        score.label(),
        score.parts(),
        score.share(),
        state,
        displayedLow,
        displayedHigh,
        low,
        high,
        score.interval(),
        score.standardError(),
        note,
        score.children());
  }
}
