package ovenproof.method;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.core.photo.PhotoMeasureCatalogue;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Unit;
import ovenproof.input.Problems;
import ovenproof.input.Written;
import ovenproof.input.YamlMap;

/** Reads the criteria and gates of one test. */
final class ValueTreeReader {
  static final List<String> CRITERION_KEYS =
      List.of(
          "id",
          "name",
          "parts",
          "why",
          "measure",
          "curve",
          "runs",
          "cannot_do",
          "not_asked",
          "repeatability");
  static final List<String> GROUP_KEYS =
      List.of("id", "name", "parts", "why", "combine", "criteria");
  static final List<String> GATE_KEYS =
      List.of(
          "id",
          "name",
          "kind",
          "reason",
          "measure",
          "at_least",
          "at_most",
          "ceiling",
          "scope",
          "why");

  private final TestScope scope;
  private final List<MeasureUse> measures;
  private final YamlMap test;
  private final Problems problems;

  ValueTreeReader(TestScope scope, List<MeasureUse> measures, YamlMap test) {
    this.scope = scope;
    this.measures = measures;
    this.test = test;
    this.problems = test.problems();
  }

  List<ValueNode> criteria() {
    List<YamlMap> all = new ArrayList<>();
    List<ValueNode> nodes = nodes(test, all);
    Keys.unique(all);
    return nodes;
  }

  private List<ValueNode> nodes(YamlMap parent, List<YamlMap> all) {
    List<YamlMap> maps = parent.maps("criteria");
    all.addAll(maps);
    List<ValueNode> nodes = new ArrayList<>();
    for (YamlMap map : maps) {
      nodes.add(map.has("criteria") ? group(map, all) : criterion(map));
    }
    if (nodes.isEmpty()) {
      problems.error(parent.place(), "no criteria", "at least one criterion", "add one");
    } else if (nodes.stream().allMatch(n -> n.parts() == 0)) {
      problems.error(
          parent.place("criteria"),
          "weights that sum to nothing",
          "parts above 0 in at least one criterion",
          "");
    }
    return nodes;
  }

  private ValueNode.Group group(YamlMap map, List<YamlMap> all) {
    map.only(GROUP_KEYS);
    return new ValueNode.Group(
        Keys.key(map, "id"),
        map.text("name"),
        MethodReader.parts(map),
        map.textOrNull("why"),
        map.find("combine").flatMap(w -> w.word(Combine.class)).orElse(Combine.ARITHMETIC),
        nodes(map, all));
  }

  private Criterion criterion(YamlMap map) {
    map.only(CRITERION_KEYS);
    Optional<MeasureUse> measure = measure(map);
    measure
        .filter(m -> m.take().equals(PhotoMeasureCatalogue.BROWNING_INDEX.id()))
        .ifPresent(m -> refuseBrowningIndex(map));
    Optional<Dimension> dimension = measure.flatMap(scope.method()::dimension);
    CurveSpec curve = new CurveReader(scope, measure, dimension, map).read();
    Criterion.Runs usual =
        curve instanceof CurveSpec.Window
            ? Criterion.Runs.SCORE_THEN_AVERAGE
            : Criterion.Runs.AVERAGE_THEN_SCORE;
    return new Criterion(
        Keys.key(map, "id"),
        map.text("name"),
        MethodReader.parts(map),
        map.textOrNull("why"),
        map.has("measure") ? map.text("measure") : "",
        curve,
        map.find("runs").flatMap(w -> w.word(Criterion.Runs.class)).orElse(usual),
        map.find("cannot_do").flatMap(MethodReader::points).orElse(BigDecimal.ZERO),
        map.find("not_asked")
            .flatMap(w -> w.word(Criterion.NotAsked.class))
            .orElse(Criterion.NotAsked.BOUNDS),
        repeatability(map, dimension));
  }

  /** Golden, brown, dark, burnt give 79, 108, 94, 47: burnt would score as paler than golden. */
  private static void refuseBrowningIndex(YamlMap map) {
    map.problems()
        .error(
            map.place("measure"),
            "a criterion on the browning index",
            "lightness-difference, shade-difference or a share",
            "the index falls again from brown to burnt, so it is shown and never scored alone");
  }

  private static @Nullable String repeatability(YamlMap map, Optional<Dimension> dimension) {
    Optional<Written> written = map.find("repeatability");
    if (written.isPresent() && dimension.isPresent()) {
      Dimension difference =
          dimension.get() == Dimension.TEMPERATURE
              ? Dimension.TEMPERATURE_DIFFERENCE
              : dimension.get();
      written
          .get()
          .quantity(difference)
          .filter(q -> q.value() < 0)
          .ifPresent(q -> written.get().error("a standard deviation of at least 0", ""));
    }
    return written.map(Written::text).orElse(null);
  }

  private Optional<MeasureUse> measure(YamlMap map) {
    List<String> ids = measures.stream().map(MeasureUse::id).toList();
    return map.need("measure")
        .flatMap(w -> w.oneOf(ids, "a measure of this test"))
        .flatMap(id -> measures.stream().filter(m -> m.id().equals(id)).findFirst());
  }

  List<Gate> gates() {
    List<Gate> gates = new ArrayList<>();
    for (YamlMap map : test.maps("gates")) {
      gates.add(gate(map));
    }
    Keys.unique(test.maps("gates"));
    checkOneCoreCriterion(gates);
    return gates;
  }

  /** A floor with its rest or an equivalent time: both at once would let the easier one speak. */
  private void checkOneCoreCriterion(List<Gate> gates) {
    List<String> taken =
        gates.stream()
            .filter(g -> g.reason() == Gate.Reason.SAFETY)
            .flatMap(g -> measures.stream().filter(m -> m.id().equals(g.measure())))
            .map(MeasureUse::take)
            .toList();
    boolean floor = taken.contains("core-held") || taken.contains("core-highest");
    if (floor && taken.contains("lethality")) {
      problems.error(
          test.place(),
          "a floor and a lethality for the same core",
          "one criterion of safety, the floor with its rest or the equivalent time",
          "delete one of the two gates");
    }
  }

  private Gate gate(YamlMap map) {
    map.only(GATE_KEYS);
    Gate.Kind kind = map.need("kind").flatMap(w -> w.word(Gate.Kind.class)).orElse(Gate.Kind.FLAG);
    Optional<Dimension> dimension = measure(map).flatMap(scope.method()::dimension);
    Quantity atLeast = limit(map, "at_least", dimension);
    Quantity atMost = limit(map, "at_most", dimension);
    checkLimits(map, atLeast, atMost);
    return new Gate(
        Keys.key(map, "id"),
        map.text("name"),
        kind,
        map.need("reason").flatMap(w -> w.word(Gate.Reason.class)).orElse(Gate.Reason.QUALITY),
        map.has("measure") ? map.text("measure") : "",
        atLeast,
        atMost,
        ceiling(map, kind),
        map.find("scope").flatMap(w -> w.word(Gate.Scope.class)).orElse(Gate.Scope.TEST),
        map.textOrNull("why"));
  }

  private static @Nullable Quantity limit(YamlMap map, String key, Optional<Dimension> dimension) {
    return map.find(key).flatMap(w -> dimension.flatMap(w::quantity)).orElse(null);
  }

  private void checkLimits(YamlMap map, @Nullable Quantity atLeast, @Nullable Quantity atMost) {
    if (!map.has("at_least") && !map.has("at_most")) {
      problems.error(
          map.place(), "a gate without limit", "\"at_least\" or \"at_most\"", "add the limit");
    }
    if (atLeast != null
        && atMost != null
        && atLeast.unit().dimension() == atMost.unit().dimension()
        && atLeast.contract() > atMost.contract()) {
      problems.error(
          map.place("at_most"),
          "at most " + atMost + " and at least " + atLeast,
          "a lower limit below the upper one",
          "nothing can pass this gate");
    }
  }

  private @Nullable Double ceiling(YamlMap map, Gate.Kind kind) {
    if (kind == Gate.Kind.CEILING) {
      return map.need("ceiling").flatMap(w -> w.number(0, 10)).orElse(null);
    }
    map.find("ceiling")
        .ifPresent(
            w ->
                w.error(
                    "no ceiling in a " + kind.name().toLowerCase(java.util.Locale.ROOT),
                    "write kind: ceiling, or delete it"));
    return null;
  }

  /** Stands in for a curve that could not be read, which is reported. */
  static final CurveSpec NO_CURVE =
      new CurveSpec.Points(List.of(new CurveSpec.Points.Anchor(Quantity.of(0, Unit.ONE), 0)));
}
