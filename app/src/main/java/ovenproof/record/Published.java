package ovenproof.record;

import ovenproof.contract.MeasurementJson;
import ovenproof.measure.Measured;
import ovenproof.verdict.Verdict;
import ovenproof.verdict.VerdictJson;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** What a bag keeps of the computation, to be compared with a later one. */
final class Published {

  private Published() {}

  /** The verdict's JSON, and the Java that computed it. */
  static ObjectNode verdict(Verdict verdict) {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("format", 1);
    ObjectNode computed = root.putObject("computedWith");
    computed.put("java", System.getProperty("java.version", "unknown"));
    computed.put("vendor", System.getProperty("java.vendor", "unknown"));
    root.set("verdict", VerdictJson.of(verdict));
    return root;
  }

  /** All measurements with the run they belong to. */
  static ObjectNode measurements(Measured measured) {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("format", 1);
    ArrayNode values = root.putArray("values");
    for (Measured.Value value : measured.values()) {
      ObjectNode node = values.addObject();
      node.put("test", value.test());
      node.put("use", value.use());
      node.put("product", value.product());
      node.put("run", value.run());
      node.set("measurement", MeasurementJson.write(value.value()));
    }
    return root;
  }
}
