package ovenproof.verdict;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.QuantityFormatException;
import ovenproof.core.quantity.QuantityParser;
import ovenproof.core.quantity.Unit;
import ovenproof.core.scoring.Answer;
import ovenproof.core.scoring.Candidate;
import ovenproof.core.scoring.Combination;
import ovenproof.core.scoring.Gate;
import ovenproof.core.scoring.RunAggregation;
import ovenproof.core.scoring.ScoringCase;
import ovenproof.core.scoring.ScoringRules;
import ovenproof.core.scoring.ValueCurve;
import ovenproof.core.scoring.ValueNode;
import ovenproof.core.scoring.Variable;
import ovenproof.input.Place;
import ovenproof.input.Problems;
import ovenproof.measure.Measured;
import ovenproof.method.Combine;
import ovenproof.method.Criterion;
import ovenproof.method.MeasureUse;
import ovenproof.method.Method;
import ovenproof.method.TestPlan;

/** From a campaign and what was measured of it to the case that is scored. */
final class CaseBuilder {
  private final Campaign campaign;
  private final Measured measured;
  private final Answers answers;
  private final Problems problems = new Problems();
  private final List<String> warnings = new ArrayList<>();
  private final Map<String, Variable> variables = new LinkedHashMap<>();
  private final Map<String, String> unscorable = new LinkedHashMap<>();
  private final Map<String, InEveryRun> everyRun = new LinkedHashMap<>();
  private final List<Gate> gates = new ArrayList<>();

  CaseBuilder(Campaign campaign, Measured measured) {
    this.campaign = campaign;
    this.measured = measured;
    answers = new Answers(campaign, measured);
  }

  /** A case, and what a reader should know of how it was made. */
  record Built(ScoringCase scoringCase, List<String> warnings) {}

  /**
   * @throws ovenproof.input.InputException with every problem of the scoring part of the method
   */
  Built build() {
    Method method = campaign.method();
    List<ValueNode> tests = new ArrayList<>();
    for (TestPlan test : method.tests()) {
      if (!test.criteria().isEmpty()) {
        tests.add(
            group(test.id(), test.name(), test.parts(), test.combine(), test, test.criteria()));
      }
      test.gates().forEach(gate -> gates.add(gate(test, gate)));
    }
    ValueNode root =
        new ValueNode.Group(
            CaseKeys.TOTAL, "Total", 1, combination(method.scoring().combine()), tests);
    List<Candidate> products = campaign.products().stream().map(this::candidate).toList();
    ScoringCase scoringCase =
        new ScoringCase(root, List.copyOf(variables.values()), gates, products, rules(method));
    scoringCase
        .problems()
        .forEach(p -> problems.error(place(p.place()), p.found(), p.expected(), p.remedy()));
    problems.throwIfErrors();
    return new Built(scoringCase, List.copyOf(warnings));
  }

  private static Place place(String what) {
    return Place.of("method.yaml (" + what.replace(CaseKeys.TOTAL, "total") + ")");
  }

  private static ScoringRules rules(Method method) {
    Method.Scoring scoring = method.scoring();
    Double unitToUnit = scoring.unitToUnit();
    return new ScoringRules(
        String.valueOf(scoring.seed()),
        scoring.draws(),
        scoring.decimals(),
        unitToUnit == null ? 0 : unitToUnit,
        scoring.runSpread() == Method.RunSpread.SHRUNKEN
            ? ScoringRules.Spread.SHRUNKEN
            : ScoringRules.Spread.POOLED);
  }

  private ValueNode group(
      String id,
      String name,
      int parts,
      Combine combine,
      TestPlan test,
      List<ovenproof.method.ValueNode> children) {
    List<ValueNode> nodes = new ArrayList<>();
    for (ovenproof.method.ValueNode child : children) {
      String key = CaseKeys.node(test.id(), child.id());
      if (child instanceof ovenproof.method.ValueNode.Group inner) {
        nodes.add(group(key, inner.name(), inner.parts(), inner.combine(), test, inner.children()));
      } else {
        criterion(key, test, (Criterion) child).ifPresent(nodes::add);
      }
    }
    return new ValueNode.Group(id, name, parts, combination(combine), nodes);
  }

  private static Combination combination(Combine combine) {
    return switch (combine) {
      case ARITHMETIC -> Combination.ARITHMETIC;
      case GEOMETRIC -> Combination.GEOMETRIC;
      case FLOOR -> Combination.FLOOR;
    };
  }

  /** Empty when the curve is wrong; the problem is noted. */
  private Optional<ValueNode> criterion(String key, TestPlan test, Criterion criterion) {
    String variable = variable(test, criterion.measure(), criterion);
    ValueCurve curve;
    try {
      curve = Curves.of(criterion.curve());
    } catch (IllegalArgumentException e) {
      if (!(criterion.curve() instanceof ovenproof.method.CurveSpec.Percentile)) {
        problems.error(
            place(key), String.valueOf(e.getMessage()), "a value curve", "mend its anchors");
        return Optional.empty();
      }
      // A pool of one has no percentiles; what has absolute anchors is still scored.
      String reason = "its percentile pool is too small: " + e.getMessage();
      warnings.add(criterion.name() + ": " + reason);
      variable = key + "@pool";
      unscorable.put(variable, reason);
      variables.put(variable, Variable.exact(variable));
      curve = ValueCurve.points(1);
    }
    return Optional.of(
        new ValueNode.Criterion(
            key,
            criterion.name(),
            criterion.parts(),
            variable,
            curve,
            criterion.runs() == Criterion.Runs.SCORE_THEN_AVERAGE
                ? RunAggregation.SCORE_THEN_AVERAGE
                : RunAggregation.AVERAGE_THEN_SCORE,
            criterion.cannotDo().doubleValue(),
            criterion.notAsked() == Criterion.NotAsked.REWEIGHT
                ? ValueNode.Criterion.NotAsked.REWEIGHT
                : ValueNode.Criterion.NotAsked.BOUNDS));
  }

  private String variable(TestPlan test, String use, @Nullable Criterion criterion) {
    String key = CaseKeys.variable(test.id(), use);
    Optional<MeasureUse> found = test.measure(use);
    if (found.isEmpty()) {
      return key;
    }
    Variable known = variables.get(key);
    boolean declares = criterion != null && criterion.repeatability() != null;
    if (known == null || (declares && known.repeatability() == Variable.Repeatability.POOLED)) {
      variables.put(key, variable(key, test, found.get(), criterion));
    }
    return key;
  }

  /** A safety veto asks every run; its own variable, so that no score sees what it sees. */
  private String inEveryRun(TestPlan test, String use) {
    String key = CaseKeys.variable(test.id(), use);
    if (test.measure(use).isEmpty()) {
      return key;
    }
    String every = key + "@every";
    variables.put(every, Variable.exact(every));
    everyRun.put(every, new InEveryRun(test, use));
    return every;
  }

  private record InEveryRun(TestPlan test, String use) {}

  private Variable variable(
      String key, TestPlan test, MeasureUse use, @Nullable Criterion criterion) {
    String name = use.name() == null ? use.id() : use.name();
    String label = test.name() + ", " + name;
    List<Measured.Value> values = measured.of(test.id(), use.id());
    boolean ofProduct = !values.isEmpty() && values.stream().allMatch(v -> v.run() == null);
    if (ofProduct || test.replicates() == 0) {
      return new Variable(key, label, Variable.Repeatability.EXACT, 0, 0);
    }
    String declared = criterion == null ? null : criterion.repeatability();
    if (declared == null) {
      return new Variable(key, label, Variable.Repeatability.POOLED, 0, 0);
    }
    double deviation = deviation(key, declared, test, use);
    return new Variable(key, label, Variable.Repeatability.DECLARED, deviation, 0);
  }

  private double deviation(String key, String written, TestPlan test, MeasureUse use) {
    Unit unit =
        measured.of(test.id(), use.id()).stream()
            .findFirst()
            .map(v -> v.value().unit())
            .orElse(use.unit() == null ? Unit.ONE : use.unit());
    Dimension dimension =
        unit.dimension() == Dimension.TEMPERATURE
            ? Dimension.TEMPERATURE_DIFFERENCE
            : unit.dimension();
    try {
      Quantity deviation = QuantityParser.parse(written, dimension);
      if (deviation.contract() >= 0) {
        return deviation.contract();
      }
    } catch (QuantityFormatException e) {
      // Said below, with the place.
    }
    problems.error(
        place(key),
        "repeatability " + written,
        dimension.words() + " of 0 or more, such as " + dimension.example(),
        "write the standard deviation between runs");
    return 0;
  }

  private Gate gate(TestPlan test, ovenproof.method.Gate gate) {
    Quantity atLeast = gate.atLeast();
    Quantity atMost = gate.atMost();
    Double ceiling = gate.ceiling();
    boolean safety = gate.reason() == ovenproof.method.Gate.Reason.SAFETY;
    return new Gate(
        CaseKeys.node(test.id(), gate.id()),
        gate.name(),
        switch (gate.kind()) {
          case VETO -> Gate.Kind.VETO;
          case CEILING -> Gate.Kind.CEILING;
          case FLAG -> Gate.Kind.FLAG;
        },
        safety ? Gate.Reason.SAFETY : Gate.Reason.QUALITY,
        safety ? Gate.Runs.EVERY : Gate.Runs.MEAN,
        safety && gate.kind() == ovenproof.method.Gate.Kind.VETO
            ? inEveryRun(test, gate.measure())
            : variable(test, gate.measure(), null),
        atLeast == null ? Double.NEGATIVE_INFINITY : atLeast.contract(),
        atMost == null ? Double.POSITIVE_INFINITY : atMost.contract(),
        ceiling == null ? ValueCurve.BEST : ceiling,
        unit(test, gate),
        gate.scope() == ovenproof.method.Gate.Scope.TEST && !test.criteria().isEmpty()
            ? test.id()
            : CaseKeys.TOTAL);
  }

  private String unit(TestPlan test, ovenproof.method.Gate gate) {
    Quantity limit = gate.atLeast() == null ? gate.atMost() : gate.atLeast();
    return measured.of(test.id(), gate.measure()).stream()
        .findFirst()
        .map(v -> v.value().unit().symbol())
        .orElse(limit == null ? "" : limit.unit().contractUnit().symbol());
  }

  private Candidate candidate(Campaign.Product product) {
    Map<String, Answer> own = new LinkedHashMap<>();
    for (TestPlan test : campaign.method().tests()) {
      for (MeasureUse use : test.measures()) {
        String key = CaseKeys.variable(test.id(), use.id());
        if (variables.containsKey(key)) {
          own.put(key, answers.of(product.id(), test, use.id()));
        }
      }
    }
    everyRun.forEach(
        (key, asked) -> own.put(key, answers.ofEvery(product.id(), asked.test, asked.use)));
    unscorable.forEach((key, reason) -> own.put(key, new Answer.Missing(reason)));
    return new Candidate(product.id(), product.name(), own, 0);
  }
}
