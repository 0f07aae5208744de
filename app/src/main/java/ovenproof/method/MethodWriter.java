package ovenproof.method;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.yaml.snakeyaml.DumperOptions;
import org.yaml.snakeyaml.Yaml;
import ovenproof.core.photo.PieceClasses.ShadeClass;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.ToleratedQuantity;
import ovenproof.core.quantity.Unit;
import ovenproof.input.Words;

/**
 * Writes {@code method.yaml}. What is read again equals what was written, comments apart; values
 * that the reader assumes anyway are left out.
 */
public final class MethodWriter {

  private MethodWriter() {}

  public static String write(Method method) {
    Map<String, Object> top = new LinkedHashMap<>();
    top.put("format", 1);
    top.put("method", method.id());
    top.put("title", method.title());
    top.put("version", method.version());
    top.put("population", method.population());
    put(top, "why", method.why());
    putAll(top, "facts", method.facts().stream().map(MethodWriter::fact).toList());
    putAll(top, "rated", method.ratedFacts().stream().map(MethodWriter::rated).toList());
    putAll(top, "features", method.features().stream().map(MethodWriter::feature).toList());
    top.put("scoring", scoring(method.scoring()));
    putAll(top, "tests", method.tests().stream().map(MethodWriter::test).toList());
    putAll(top, "profiles", method.profiles().stream().map(MethodWriter::profile).toList());
    return yaml().dump(top);
  }

  private static Yaml yaml() {
    DumperOptions options = new DumperOptions();
    options.setDefaultFlowStyle(DumperOptions.FlowStyle.AUTO);
    options.setAllowUnicode(true);
    options.setWidth(100);
    options.setSplitLines(false);
    options.setIndent(2);
    options.setProcessComments(false);
    return new Yaml(options);
  }

  private static void put(Map<String, Object> map, String key, @Nullable Object value) {
    if (value != null) {
      map.put(key, value);
    }
  }

  private static void putAll(Map<String, Object> map, String key, List<?> values) {
    if (!values.isEmpty()) {
      map.put(key, values);
    }
  }

  private static void putWord(Map<String, Object> map, String key, Enum<?> value, Enum<?> assumed) {
    if (value != assumed) {
      map.put(key, Words.of(value));
    }
  }

  private static Map<String, Object> fact(Method.Fact fact) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("id", fact.id());
    map.put("name", fact.name());
    map.put("unit", fact.unit().symbol());
    put(map, "how", fact.how());
    put(map, "why", fact.why());
    return map;
  }

  private static Map<String, Object> rated(Method.RatedFact rated) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("id", rated.id());
    map.put("name", rated.name());
    map.put("raters", rated.raters());
    map.put("steps", rated.steps());
    put(map, "why", rated.why());
    return map;
  }

  private static Map<String, Object> feature(Method.Feature feature) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("id", feature.id());
    map.put("name", feature.name());
    put(map, "group", feature.group());
    put(map, "parts", feature.parts() == 1 ? null : feature.parts());
    put(map, "why", feature.why());
    return map;
  }

  private static Map<String, Object> scoring(Method.Scoring scoring) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("combine", Words.of(scoring.combine()));
    map.put("seed", scoring.seed());
    map.put("draws", scoring.draws());
    map.put("decimals", scoring.decimals());
    put(map, "unit_to_unit", scoring.unitToUnit() == null ? null : number(scoring.unitToUnit()));
    if (scoring.runSpread() != Method.RunSpread.POOLED) {
      map.put("run_spread", Words.of(scoring.runSpread()));
    }
    return map;
  }

  private static Map<String, Object> profile(Method.Profile profile) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("id", profile.id());
    map.put("name", profile.name());
    map.put("parts", new LinkedHashMap<>(new java.util.TreeMap<>(profile.parts())));
    return map;
  }

  private static Map<String, Object> test(TestPlan test) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("id", test.id());
    map.put("name", test.name());
    put(map, "why", test.why());
    map.put("parts", test.parts());
    map.put("variants", test.variants().stream().map(MethodWriter::variant).toList());
    put(map, "sample", test.sample() == null ? null : sample(test.sample()));
    put(map, "setting", test.setting() == null ? null : setting(test.setting()));
    putWord(map, "start", test.start(), TestPlan.StartState.COLD);
    put(map, "preheat", test.preheat());
    put(map, "rack", test.rack());
    put(map, "batches", test.batches() == 1 ? null : test.batches());
    map.put("replicates", test.replicates());
    putAll(map, "actions", test.actions().stream().map(MethodWriter::action).toList());
    putAll(map, "stops", test.stops().stream().map(MethodWriter::stop).toList());
    put(map, "photos", test.photos() == null ? null : photos(test.photos()));
    putAll(map, "marks", test.marks().stream().map(MethodWriter::mark).toList());
    putAll(map, "measures", test.measures().stream().map(MethodWriter::measure).toList());
    putWord(map, "combine", test.combine(), Combine.ARITHMETIC);
    putAll(map, "criteria", test.criteria().stream().map(MethodWriter::node).toList());
    putAll(map, "gates", test.gates().stream().map(MethodWriter::gate).toList());
    putAll(map, "cautions", test.cautions());
    return map;
  }

  private static Map<String, Object> variant(TestPlan.Variant variant) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("id", variant.id());
    map.put("name", variant.name());
    map.put("role", Words.of(variant.role()));
    put(map, "note", variant.note());
    return map;
  }

  private static Map<String, Object> sample(TestPlan.Sample sample) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("food", sample.food());
    map.put("pieces", sample.pieces());
    put(map, "mass", tolerated(sample.mass()));
    put(map, "thickness", tolerated(sample.thickness()));
    put(map, "start", tolerated(sample.startTemperature()));
    put(map, "prepare", sample.prepare());
    return map;
  }

  private static Map<String, Object> setting(Method.Setting setting) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("rule", Words.of(setting.rule()));
    put(map, "mode", setting.mode());
    put(map, "dial", setting.dial() == null ? null : withUnit(setting.dial()));
    put(map, "note", setting.note());
    return map;
  }

  private static Map<String, Object> action(TestPlan.TimedAction action) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("do", action.action());
    map.put("at", quantity(action.at()));
    map.put("within", quantity(action.within()));
    return map;
  }

  private static Map<String, Object> stop(TestPlan.StopRule stop) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("when", Words.of(stop.when()));
    put(map, "at", stop.at() == null ? null : quantity(stop.at()));
    put(map, "note", stop.note());
    return map;
  }

  private static Map<String, Object> photos(TestPlan.PhotoPlan photos) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("faces", photos.faces());
    map.put("pieces", photos.pieces());
    TestPlan.Shade target = photos.target();
    if (target != null) {
      Map<String, Object> shade = new LinkedHashMap<>();
      shade.put("L", number(target.lightness()));
      shade.put("a", number(target.a()));
      shade.put("b", number(target.b()));
      map.put("target", shade);
    } else if (photos.targetFrom() == TestPlan.PhotoPlan.TargetFrom.SHADE_CARD) {
      map.put("target", Map.of("from", Words.of(photos.targetFrom())));
    }
    put(map, "chart_pitch", photos.chartPitch() == null ? null : quantity(photos.chartPitch()));
    put(map, "turned", photos.turned() == null ? null : Words.of(photos.turned()));
    put(map, "area", tolerated(photos.area()));
    if (!photos.classes().isEmpty()) {
      map.put("classes", photos.classes().stream().map(MethodWriter::shadeClass).toList());
      map.put("judged", Words.of(photos.judged()));
    }
    put(map, "note", photos.note());
    return map;
  }

  private static Map<String, Object> shadeClass(ShadeClass shadeClass) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("id", shadeClass.name());
    map.put("from", number(shadeClass.fromLightness()));
    return map;
  }

  private static Map<String, Object> mark(TestPlan.PanelMark mark) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("id", mark.id());
    map.put("name", mark.name());
    map.put("scale", number(mark.lowest()) + " to " + number(mark.highest()));
    map.put("kind", Words.of(mark.kind()));
    Map<Object, Object> anchors = new LinkedHashMap<>();
    mark.anchors().forEach(a -> anchors.put(number(a.point()), a.means()));
    if (!anchors.isEmpty()) {
      map.put("anchors", anchors);
    }
    put(map, "why", mark.why());
    return map;
  }

  private static Map<String, Object> measure(MeasureUse use) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("id", use.id());
    put(map, "name", use.name());
    map.put("take", use.take());
    put(map, "unit", use.unit() == null ? null : use.unit().symbol());
    put(map, "place", use.place());
    put(map, "face", use.face());
    put(map, "batch", use.batch());
    put(map, "of", use.of());
    putWord(map, "summary", use.summary(), MeasureUse.Summary.MEAN);
    new java.util.TreeMap<>(use.parameters()).forEach(map::put);
    return map;
  }

  private static Map<String, Object> node(ValueNode node) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("id", node.id());
    map.put("name", node.name());
    map.put("parts", node.parts());
    put(map, "why", node.why());
    if (node instanceof Criterion criterion) {
      criterion(map, criterion);
    } else if (node instanceof ValueNode.Group group) {
      putWord(map, "combine", group.combine(), Combine.ARITHMETIC);
      map.put("criteria", group.children().stream().map(MethodWriter::node).toList());
    }
    return map;
  }

  private static void criterion(Map<String, Object> map, Criterion criterion) {
    map.put("measure", criterion.measure());
    map.put("runs", Words.of(criterion.runs()));
    map.put("curve", curve(criterion.curve()));
    if (criterion.cannotDo().signum() != 0) {
      map.put("cannot_do", number(criterion.cannotDo().doubleValue()));
    }
    putWord(map, "not_asked", criterion.notAsked(), Criterion.NotAsked.BOUNDS);
    put(map, "repeatability", criterion.repeatability());
  }

  private static Map<String, Object> curve(CurveSpec curve) {
    Map<String, Object> map = new LinkedHashMap<>();
    if (curve instanceof CurveSpec.Points points) {
      map.put("points", anchors(points.anchors()));
    } else if (curve instanceof CurveSpec.Window window) {
      map.put("window", window(window));
    } else if (curve instanceof CurveSpec.Steps steps) {
      Map<String, Object> inner = new LinkedHashMap<>();
      inner.put("below", number(steps.below()));
      inner.put("from", anchors(steps.from()));
      map.put("steps", inner);
    } else if (curve instanceof CurveSpec.Rated rated) {
      map.put("rated", rated.highestStep());
    } else if (curve instanceof CurveSpec.Checklist checklist) {
      Map<String, Object> inner = new LinkedHashMap<>();
      inner.put("absent", number(checklist.absent()));
      inner.put("present", number(checklist.present()));
      map.put("checklist", inner);
    } else if (curve instanceof CurveSpec.Percentile percentile) {
      map.put("percentile", percentile(percentile));
    }
    return map;
  }

  private static Map<String, Object> window(CurveSpec.Window window) {
    Map<String, Object> map = new LinkedHashMap<>();
    put(map, "zero_below", window.zeroBelow() == null ? null : quantity(window.zeroBelow()));
    map.put("from", quantity(window.from()));
    map.put("to", quantity(window.to()));
    put(map, "zero_above", window.zeroAbove() == null ? null : quantity(window.zeroAbove()));
    return map;
  }

  private static Map<String, Object> percentile(CurveSpec.Percentile percentile) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("pool", percentile.pool());
    map.put("better", Words.of(percentile.better()));
    map.put("values", percentile.values().stream().map(MethodWriter::quantity).toList());
    return map;
  }

  private static List<List<Object>> anchors(List<CurveSpec.Points.Anchor> anchors) {
    List<List<Object>> pairs = new ArrayList<>();
    anchors.forEach(a -> pairs.add(List.of(quantity(a.at()), number(a.points()))));
    return pairs;
  }

  private static Map<String, Object> gate(Gate gate) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("id", gate.id());
    map.put("name", gate.name());
    map.put("kind", Words.of(gate.kind()));
    map.put("reason", Words.of(gate.reason()));
    map.put("measure", gate.measure());
    put(map, "at_least", gate.atLeast() == null ? null : quantity(gate.atLeast()));
    put(map, "at_most", gate.atMost() == null ? null : quantity(gate.atMost()));
    put(map, "ceiling", gate.ceiling() == null ? null : number(gate.ceiling()));
    putWord(map, "scope", gate.scope(), Gate.Scope.TEST);
    put(map, "why", gate.why());
    return map;
  }

  private static @Nullable Object tolerated(@Nullable ToleratedQuantity wanted) {
    if (wanted == null) {
      return null;
    }
    Quantity tolerance = wanted.tolerance();
    if (tolerance.value() == 0) {
      return quantity(wanted.nominal());
    }
    boolean fahrenheit = tolerance.unit() == Unit.FAHRENHEIT_DIFFERENCE;
    String written = fahrenheit ? number(tolerance.value()) + " °F" : withUnit(tolerance);
    return withUnit(wanted.nominal()) + " ± " + written;
  }

  /** As people write it: points, pieces and colour values are plain numbers. */
  private static Object quantity(Quantity quantity) {
    Dimension dimension = quantity.unit().dimension();
    boolean plain =
        quantity.unit() == Unit.POINTS
            || quantity.unit() == Unit.PIECES
            || quantity.unit() == Unit.ONE
            || (dimension == Dimension.COLOUR && quantity.unit() == Unit.LIGHTNESS);
    return plain ? number(quantity.value()) : withUnit(quantity);
  }

  private static String withUnit(Quantity quantity) {
    return quantity.toString();
  }

  /** The shortest decimal; as text where a number would be written with an exponent. */
  private static Object number(double value) {
    BigDecimal decimal = BigDecimal.valueOf(value).stripTrailingZeros();
    if (decimal.scale() <= 0) {
      return decimal.toBigIntegerExact();
    }
    return decimal.toString().contains("E") ? decimal.toPlainString() : decimal;
  }
}
