package ovenproof.core.scoring;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import ovenproof.core.scoring.ValueNode.Criterion;
import ovenproof.core.scoring.ValueNode.Group;

/**
 * Everything that a verdict is computed from. Immutable; the same case gives the same result.
 *
 * @param root the value tree; its score is the total
 * @param variables what is measured; criteria and gates name them
 * @param products at least one
 */
public record ScoringCase(
    ValueNode root,
    List<Variable> variables,
    List<Gate> gates,
    List<Candidate> products,
    ScoringRules rules) {

  public ScoringCase {
    variables = List.copyOf(variables);
    gates = List.copyOf(gates);
    products = List.copyOf(products);
  }

  /** Everything that keeps the case from being scored; empty when nothing does. */
  public List<CaseProblem> problems() {
    List<CaseProblem> problems = new ArrayList<>();
    if (products.isEmpty()) {
      problems.add(
          new CaseProblem("field", "no product", "at least one", "add a product to the campaign"));
    }
    duplicates(products.stream().map(Candidate::id).toList(), "product", problems);
    duplicates(variables.stream().map(Variable::id).toList(), "variable", problems);
    duplicates(root.all().map(ValueNode::id).toList(), "node", problems);
    Set<String> known = variables.stream().map(Variable::id).collect(Collectors.toSet());
    root.all().forEach(node -> check(node, known, problems));
    Set<String> nodes = root.all().map(ValueNode::id).collect(Collectors.toSet());
    for (Gate gate : gates) {
      if (!known.contains(gate.variable())) {
        problems.add(unmeasured("gate " + gate.id(), gate.variable()));
      }
      if (!nodes.contains(gate.node())) {
        problems.add(
            new CaseProblem(
                "gate " + gate.id(),
                "node \"" + gate.node() + "\"",
                "a node of the value tree",
                "name a test or the total"));
      }
    }
    return problems;
  }

  private static void check(ValueNode node, Set<String> known, List<CaseProblem> problems) {
    if (node.parts() < 0) {
      problems.add(
          new CaseProblem(
              node.id(), node.parts() + " parts", "0 or more", "weights cannot be negative"));
    }
    if (node instanceof Criterion criterion && !known.contains(criterion.variable())) {
      problems.add(unmeasured(node.id(), criterion.variable()));
    }
    if (node instanceof Group group && group.children().stream().noneMatch(c -> c.parts() > 0)) {
      problems.add(
          new CaseProblem(
              node.id(),
              "weights that sum to nothing",
              "at least one part with a weight above 0",
              "give its parts whole numbers, or its own weight 0 with its parts above 0"));
    }
  }

  private static CaseProblem unmeasured(String place, String variable) {
    return new CaseProblem(
        place,
        "\"" + variable + "\", which nothing measures",
        "a measured variable",
        "add the measure to the test, or take the criterion away");
  }

  private static void duplicates(List<String> ids, String kind, List<CaseProblem> problems) {
    Set<String> seen = new HashSet<>();
    for (String id : ids) {
      if (!seen.add(id)) {
        problems.add(new CaseProblem(kind + " " + id, "twice", "once", "give each its own key"));
      }
    }
  }

  public Optional<ValueNode> node(String id) {
    return root.all().filter(n -> n.id().equals(id)).findFirst();
  }

  public Optional<Candidate> product(String id) {
    return products.stream().filter(p -> p.id().equals(id)).findFirst();
  }

  public ScoringCase withRoot(ValueNode newRoot) {
    Set<String> nodes = newRoot.all().map(ValueNode::id).collect(Collectors.toSet());
    List<Gate> kept = gates.stream().filter(g -> nodes.contains(g.node())).toList();
    return new ScoringCase(newRoot, variables, kept, products, rules);
  }

  public ScoringCase withProducts(List<Candidate> newProducts) {
    return new ScoringCase(root, variables, gates, newProducts, rules);
  }

  public ScoringCase withRules(ScoringRules newRules) {
    return new ScoringCase(root, variables, gates, products, newRules);
  }

  /** The case seen from one node: that node's score is the total, gates outside it do not act. */
  public ScoringCase at(String nodeId) {
    return withRoot(
        node(nodeId).orElseThrow(() -> new IllegalArgumentException("no node \"" + nodeId + "\"")));
  }

  /** The same tree with other parts for the nodes named; unknown names are refused. */
  public ScoringCase withParts(Map<String, Integer> parts) {
    Set<String> nodes = root.all().map(ValueNode::id).collect(Collectors.toSet());
    for (String id : parts.keySet()) {
      if (!nodes.contains(id)) {
        throw new IllegalArgumentException("no node \"" + id + "\"");
      }
    }
    return new ScoringCase(
        change(root, n -> n.withParts(parts.getOrDefault(n.id(), n.parts()))),
        variables,
        gates,
        products,
        rules);
  }

  /** The case without a node; its siblings share its weight. */
  public ScoringCase without(String nodeId) {
    return withRoot(prune(root, nodeId));
  }

  private static ValueNode prune(ValueNode node, String nodeId) {
    if (!(node instanceof Group group)) {
      return node;
    }
    return group.withChildren(
        group.children().stream()
            .filter(c -> !c.id().equals(nodeId))
            .map(c -> prune(c, nodeId))
            .toList());
  }

  /** The case without a run: an answer that loses its last run becomes missing. */
  public ScoringCase withoutRun(String run) {
    return withProducts(products.stream().map(p -> withoutRun(p, run)).toList());
  }

  private static Candidate withoutRun(Candidate product, String run) {
    Map<String, Answer> kept = new LinkedHashMap<>(product.answers());
    kept.replaceAll((variable, answer) -> withoutRun(answer, run));
    return product.withAnswers(kept);
  }

  private static Answer withoutRun(Answer answer, String run) {
    if (!(answer instanceof Answer.Measured measured)) {
      return answer;
    }
    List<Observation> left =
        measured.observations().stream().filter(o -> !o.run().equals(run)).toList();
    return left.isEmpty()
        ? new Answer.Missing("its only run, " + run + ", is left out")
        : new Answer.Measured(left);
  }

  private static ValueNode change(ValueNode node, UnaryOperator<ValueNode> change) {
    ValueNode changed = change.apply(node);
    if (changed instanceof Group group) {
      return group.withChildren(
          group.children().stream().map(child -> change(child, change)).toList());
    }
    return changed;
  }
}
