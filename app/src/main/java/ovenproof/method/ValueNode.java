package ovenproof.method;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** A node of the value tree below a test. */
public sealed interface ValueNode permits Criterion, ValueNode.Group {
  String id();

  String name();

  /** Weight among its siblings, in whole parts. */
  int parts();

  @Nullable String why();

  /** Criteria that make one score together. */
  record Group(
      String id,
      String name,
      int parts,
      @Nullable String why,
      Combine combine,
      List<ValueNode> children)
      implements ValueNode {
    public Group {
      children = List.copyOf(children);
    }
  }
}
