package ovenproof.core.scoring;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import ovenproof.core.scoring.ValueNode.Criterion;
import ovenproof.core.scoring.ValueNode.Group;

/** Small cases for tests. */
final class Cases {
  /** Points as measured: 0 to 10. */
  static final ValueCurve IDENTITY = ValueCurve.lines(new double[] {0, 10}, new double[] {0, 10});

  private final List<ValueNode> children = new ArrayList<>();
  private final List<Variable> variables = new ArrayList<>();
  private final List<Gate> gates = new ArrayList<>();
  private final Map<String, Map<String, Answer>> answers = new LinkedHashMap<>();
  private ScoringRules rules = ScoringRules.of("test").withDraws(4000);
  private Combination combination = Combination.ARITHMETIC;

  static Cases field() {
    return new Cases();
  }

  Cases criterion(String id, int parts) {
    return criterion(id, parts, IDENTITY, RunAggregation.AVERAGE_THEN_SCORE);
  }

  Cases criterion(String id, int parts, ValueCurve curve, RunAggregation runs) {
    return criterion(Criterion.of(id, parts, id, curve, runs), Variable.pooled(id));
  }

  Cases criterion(Criterion criterion, Variable variable) {
    children.add(criterion);
    variables.add(variable);
    return this;
  }

  Cases node(ValueNode node) {
    children.add(node);
    return this;
  }

  Cases variable(Variable variable) {
    variables.add(variable);
    return this;
  }

  Cases gate(Gate gate) {
    gates.add(gate);
    return this;
  }

  Cases answer(String product, String variable, Answer answer) {
    answers.computeIfAbsent(product, p -> new LinkedHashMap<>()).put(variable, answer);
    return this;
  }

  Cases runs(String product, String variable, double... values) {
    List<Observation> observations = new ArrayList<>();
    for (int i = 0; i < values.length; i++) {
      observations.add(Observation.of(product + "-" + variable + "-" + (i + 1), values[i]));
    }
    return answer(product, variable, new Answer.Measured(observations));
  }

  Cases rules(ScoringRules newRules) {
    rules = newRules;
    return this;
  }

  Cases combination(Combination newCombination) {
    combination = newCombination;
    return this;
  }

  ScoringCase build() {
    Group root = new Group("total", "Total", 1, combination, children);
    List<Candidate> products = new ArrayList<>();
    answers.forEach((id, own) -> products.add(Candidate.of(id, own)));
    return new ScoringCase(root, variables, gates, products, rules);
  }

  ScoringResult score() {
    return Scoring.score(build(), 1);
  }

  static ProductScore product(ScoringResult result, String id) {
    return result.product(id).orElseThrow();
  }
}
