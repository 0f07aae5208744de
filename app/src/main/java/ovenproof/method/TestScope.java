package ovenproof.method;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Quantity;

/** What the measures, criteria and gates of one test may refer to. */
record TestScope(
    MethodScope method,
    int batches,
    int replicates,
    List<TestPlan.StopRule> stops,
    TestPlan.@Nullable PhotoPlan photos,
    List<TestPlan.PanelMark> marks) {

  Optional<Quantity> cap() {
    return stops.stream()
        .filter(s -> s.when() == TestPlan.StopRule.When.CAP)
        .findFirst()
        .map(TestPlan.StopRule::at);
  }

  List<String> faces() {
    return photos == null ? List.of() : photos.faces();
  }
}
