package ovenproof.contract;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.Censoring;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.core.quantity.Unit;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * A measurement in the JSON contract, and back. Reading what was written gives an equal
 * measurement.
 */
public final class MeasurementJson {
  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

  private MeasurementJson() {}

  public static ObjectNode write(Measurement m) {
    ObjectNode node = NODES.objectNode();
    node.put("id", m.id());
    node.put("label", m.label());
    node.put("subject", m.subject().toString());
    node.put("value", m.value());
    node.put("unit", m.unit().symbol());
    node.put("uncertainty", m.uncertainty());
    ArrayNode components = node.putArray("components");
    for (Component component : m.components()) {
      components.addObject().put("source", component.source()).put("u", component.u());
    }
    node.put("n", m.n());
    node.put("censored", m.censored() == Censoring.NONE ? null : m.censored().word());
    node.put("low", m.low());
    node.put("high", m.high());
    node.put("definition", m.definition());
    node.put("revision", m.revision());
    node.put("note", m.note());
    ArrayNode evidence = node.putArray("evidence");
    m.evidence().forEach(evidence::add);
    return node;
  }

  public static ArrayNode write(List<Measurement> measurements) {
    ArrayNode nodes = NODES.arrayNode();
    measurements.forEach(m -> nodes.add(write(m)));
    return nodes;
  }

  /**
   * Reads what {@link #write(Measurement)} wrote.
   *
   * @throws IllegalArgumentException if it is no such node
   */
  public static Measurement read(JsonNode node) {
    List<Component> components = new ArrayList<>();
    for (JsonNode component : node.path("components")) {
      components.add(
          new Component(component.path("source").asString(), component.path("u").asDouble()));
    }
    List<String> evidence = new ArrayList<>();
    node.path("evidence").forEach(e -> evidence.add(e.asString()));
    return new Measurement(
        node.path("id").asString(),
        node.path("label").asString(),
        subject(node.path("subject").asString()),
        number(node.path("value")),
        unit(node.path("unit").asString()),
        number(node.path("uncertainty")),
        components,
        node.path("n").asInt(),
        censoring(node.path("censored")),
        number(node.path("low")),
        number(node.path("high")),
        node.path("definition").asString(),
        node.path("revision").asInt(),
        node.path("note").isNull() ? null : node.path("note").asString(),
        evidence);
  }

  private static Unit unit(String symbol) {
    return Unit.named(symbol)
        .orElseThrow(() -> new IllegalArgumentException("unit must be known, found " + symbol));
  }

  private static @Nullable Double number(JsonNode node) {
    return node.isNumber() ? node.asDouble() : null;
  }

  private static Censoring censoring(JsonNode node) {
    return node.isString()
        ? Censoring.valueOf(node.asString().toUpperCase(Locale.ROOT))
        : Censoring.NONE;
  }

  private static Subject subject(String text) {
    Subject subject = Subject.NONE;
    for (String part :
        text.isEmpty()
            ? new String[0]
            : text.split("/(?=(?:product|run|batch|piece|face|channel):)")) {
      String key = part.substring(0, part.indexOf(':'));
      String value = part.substring(part.indexOf(':') + 1);
      subject =
          switch (key) {
            case "product" ->
                new Subject(
                    value,
                    subject.run(),
                    subject.batch(),
                    subject.piece(),
                    subject.face(),
                    subject.channel());
            case "run" -> subject.withRun(value);
            case "batch" -> subject.withBatch(Integer.valueOf(value));
            case "piece" -> subject.withPiece(value);
            case "face" -> subject.withFace(value);
            case "channel" -> subject.withChannel(value);
            default -> throw new IllegalArgumentException("subject must be known, found " + part);
          };
    }
    return subject;
  }
}
