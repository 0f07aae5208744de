package ovenproof.publish.edition;

import java.util.Optional;
import ovenproof.core.quantity.Rounding;
import ovenproof.method.Gate;
import ovenproof.publish.figure.Figures;
import ovenproof.verdict.Verdict.GateOutcome;

/**
 * A limit and what it said of a product, in a sentence; floors and ceilings keep their safe side.
 */
public final class GateWords {

  private GateWords() {}

  /** {@code at least 165 °F (74 °C)}. */
  public static String limit(Gate gate) {
    if (gate.atLeast() != null && gate.atMost() != null) {
      return "from "
          + Figures.dual(gate.atLeast(), Rounding.FLOOR_UP)
          + " to "
          + Figures.dual(gate.atMost(), Rounding.LIMIT_DOWN);
    }
    if (gate.atLeast() != null) {
      return "at least " + Figures.dual(gate.atLeast(), Rounding.FLOOR_UP);
    }
    return gate.atMost() == null
        ? "as the method says"
        : "at most " + Figures.dual(gate.atMost(), Rounding.LIMIT_DOWN);
  }

  /** {@code Turkey breast, Core, at least 165 °F (74 °C): not kept (…)}. */
  static String sentence(Edition edition, GateOutcome outcome) {
    var test = edition.campaign().method().test(outcome.test());
    Optional<Gate> gate =
        test.stream()
            .flatMap(t -> t.gates().stream())
            .filter(g -> g.id().equals(outcome.id()))
            .findFirst();
    String name = test.map(t -> t.name() + ", ").orElse("") + outcome.name();
    String limit = gate.map(g -> ", " + limit(g)).orElse("");
    return name + limit + ": " + state(outcome) + " (" + outcome.words() + ")";
  }

  private static String state(GateOutcome outcome) {
    return switch (outcome.state()) {
      case PASSED -> "kept";
      case FIRED -> "not kept";
      case NOT_SHOWN -> "not shown to be kept";
      case HANGS_ON_THE_LIMIT -> "hangs on the limit";
      case NOT_MEASURED -> "not measured";
    };
  }
}
