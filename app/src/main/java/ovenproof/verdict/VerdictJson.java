package ovenproof.verdict;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.contract.MeasurementJson;
import ovenproof.core.measure.Measurement;
import ovenproof.verdict.Verdict.GateOutcome;
import ovenproof.verdict.Verdict.Node;
import ovenproof.verdict.Verdict.ProductVerdict;
import ovenproof.verdict.Verdict.Score;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** The JSON contract of a verdict, format 1; later versions only add. */
public final class VerdictJson {
  private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

  private VerdictJson() {}

  public static ObjectNode of(Verdict verdict) {
    ObjectNode root = JSON.objectNode();
    root.put("format", 1);
    root.put("method", verdict.method());
    root.put("version", verdict.version());
    root.put("seed", verdict.seed());
    root.put("draws", verdict.draws());
    root.put("margin", rounded(verdict.margin(), 4));
    ArrayNode products = root.putArray("products");
    verdict.products().forEach(p -> products.add(product(p)));
    ArrayNode pairs = root.putArray("pairs");
    for (Verdict.Pair pair : verdict.pairs()) {
      pairs
          .addObject()
          .put("better", pair.better())
          .put("worse", pair.worse())
          .put("probability", rounded(pair.probability(), 4));
    }
    strings(root.putArray("warnings"), verdict.warnings());
    return root;
  }

  private static ObjectNode product(ProductVerdict product) {
    ObjectNode node = JSON.objectNode();
    node.put("id", product.id());
    node.put("name", product.name());
    score(node, product.score());
    Verdict.RankSet rank = product.rank();
    if (rank == null) {
      node.putNull("rank");
    } else {
      node.putObject("rank").put("low", rank.low()).put("high", rank.high());
    }
    node.put("probabilityBest", rounded(product.probabilityBest(), 4));
    node.put("probabilityBestAtMost", rounded(product.probabilityBestAtMost(), 4));
    node.put("tier", product.tier());
    ArrayNode tests = node.putArray("tests");
    product.tests().forEach(test -> tests.add(node(test)));
    ArrayNode criteria = node.putArray("criteria");
    product.tests().forEach(test -> criteria(criteria, test.id(), test));
    ArrayNode gates = node.putArray("gates");
    product.gates().forEach(gate -> gates.add(gate(gate)));
    strings(node.putArray("missing"), product.missing());
    return node;
  }

  private static void score(ObjectNode node, Score score) {
    node.put("score", score.value());
    node.put("low", score.low());
    node.put("high", score.high());
    node.put("known", word(score.known()));
    node.put("note", score.note());
  }

  private static ObjectNode node(Node test) {
    ObjectNode node = JSON.objectNode();
    node.put("id", test.id());
    node.put("name", test.name());
    node.put("parts", test.parts());
    score(node, test.score());
    node.put("place", test.place());
    node.put("runs", test.runs());
    return node;
  }

  private static void criteria(ArrayNode target, String test, Node parent) {
    for (Node child : parent.children()) {
      if (child.children().isEmpty()) {
        ObjectNode node = target.addObject();
        node.put("id", child.id());
        node.put("test", test);
        node.put("name", child.name());
        node.put("parts", child.parts());
        score(node, child.score());
        node.put("runs", child.runs());
        Measurement measurement = child.measurement();
        if (measurement == null) {
          node.putNull("measurement");
        } else {
          node.set("measurement", MeasurementJson.write(measurement));
        }
      }
      criteria(target, test, child);
    }
  }

  private static ObjectNode gate(GateOutcome gate) {
    ObjectNode node = JSON.objectNode();
    node.put("id", gate.id());
    node.put("name", gate.name());
    node.put("test", gate.test());
    node.put("kind", word(gate.kind()));
    node.put("state", word(gate.state()));
    node.put("probabilityMeets", rounded(gate.probabilityMeets(), 4));
    node.put("words", gate.words());
    return node;
  }

  private static void strings(ArrayNode target, List<String> values) {
    values.forEach(target::add);
  }

  /** Enum constants as JSON writes them: lower case with hyphens. */
  private static String word(Enum<?> constant) {
    return constant.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }

  private static @Nullable BigDecimal rounded(@Nullable Double value, int decimals) {
    return value == null
        ? null
        : BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
  }
}
