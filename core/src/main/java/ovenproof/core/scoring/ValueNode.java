package ovenproof.core.scoring;

import java.util.List;
import java.util.stream.Stream;

/** A node of the value tree. */
public sealed interface ValueNode {
  /** Unique in the tree. */
  String id();

  String label();

  /** Weight among its siblings in whole parts, 0 or more. */
  int parts();

  /** The same node with other parts. */
  ValueNode withParts(int newParts);

  /** This node and everything below it, parents first. */
  Stream<ValueNode> all();

  /** Nodes that make one score together. */
  record Group(
      String id, String label, int parts, Combination combination, List<ValueNode> children)
      implements ValueNode {
    public Group {
      children = List.copyOf(children);
    }

    @Override
    public Group withParts(int newParts) {
      return new Group(id, label, newParts, combination, children);
    }

    public Group withChildren(List<ValueNode> newChildren) {
      return new Group(id, label, parts, combination, newChildren);
    }

    @Override
    public Stream<ValueNode> all() {
      return Stream.concat(Stream.of(this), children.stream().flatMap(ValueNode::all));
    }
  }

  /**
   * A leaf: a variable and the curve that turns it into points.
   *
   * @param variable id of the {@link Variable} that is scored
   * @param cannotDo points for a product that cannot do it, 0–10
   * @param notAsked what holds where it was not asked of a product
   */
  record Criterion(
      String id,
      String label,
      int parts,
      String variable,
      ValueCurve curve,
      RunAggregation runs,
      double cannotDo,
      NotAsked notAsked)
      implements ValueNode {

    /** What a criterion that was not asked does to its siblings. */
    public enum NotAsked {
      /** The siblings share its weight. */
      REWEIGHT,
      /** It stays open and gives bounds. */
      BOUNDS
    }

    /** A criterion with 0 for cannot do, reweighted where it was not asked. */
    public static Criterion of(
        String id, int parts, String variable, ValueCurve curve, RunAggregation runs) {
      return new Criterion(id, id, parts, variable, curve, runs, 0, NotAsked.REWEIGHT);
    }

    @Override
    public Criterion withParts(int newParts) {
      return new Criterion(id, label, newParts, variable, curve, runs, cannotDo, notAsked);
    }

    @Override
    public Stream<ValueNode> all() {
      return Stream.of(this);
    }
  }
}
