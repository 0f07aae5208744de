package ovenproof.core.scoring;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import ovenproof.core.repeatability.PooledDeviation;
import ovenproof.core.scoring.ValueNode.Criterion;

/**
 * One product, its measurements turned into leaves, errors and gate findings; nothing drawn yet.
 *
 * @param leaves by id of the criterion
 * @param errors by variable, for what was measured
 * @param gates in the order of the case
 */
record Prepared(
    Candidate product,
    Map<String, Leaf> leaves,
    Map<String, MeanError> errors,
    List<GateFinding> gates) {

  static Prepared of(ScoringCase scoringCase, FieldSpread spread, int index) {
    Candidate product = scoringCase.products().get(index);
    Map<String, MeanError> errors = new HashMap<>();
    for (Variable variable : scoringCase.variables()) {
      if (product.answer(variable.id()) instanceof Answer.Measured measured) {
        errors.put(
            variable.id(),
            MeanError.of(
                measured,
                spread.of(variable.id(), index),
                variable.unitToUnit(),
                product.plannedRuns()));
      }
    }
    Map<String, Leaf> leaves = new HashMap<>();
    scoringCase
        .root()
        .all()
        .forEach(
            node -> {
              if (node instanceof Criterion criterion) {
                PooledDeviation own = spread.of(criterion.variable(), index);
                MeanError error = errors.getOrDefault(criterion.variable(), MeanError.NONE);
                Answer answer = product.answer(criterion.variable());
                leaves.put(node.id(), Leaf.of(criterion, answer, error, spread.interval(own)));
              }
            });
    List<GateFinding> gates =
        scoringCase.gates().stream()
            .map(
                g ->
                    GateCheck.check(
                        g,
                        product.answer(g.variable()),
                        errors.getOrDefault(g.variable(), MeanError.NONE)))
            .toList();
    return new Prepared(product, leaves, errors, gates);
  }

  Leaf leaf(String criterion) {
    Leaf leaf = leaves.get(criterion);
    if (leaf == null) {
      throw new IllegalArgumentException("no criterion \"" + criterion + "\"");
    }
    return leaf;
  }

  List<GateFinding> gatesOf(String node) {
    return gates.stream().filter(g -> g.gate().node().equals(node)).toList();
  }
}
