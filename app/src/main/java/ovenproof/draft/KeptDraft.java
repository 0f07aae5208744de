package ovenproof.draft;

import java.util.Map;
import java.util.TreeMap;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * A draft as the desk keeps it.
 *
 * @param text Markdown, figures by name
 * @param figures by name as written, what each printed when a person last looked
 * @param sentences by sentence as written, what its claims rested on when a person last looked
 * @param confirmed by {@link DraftReading#claimKey}, what a confirmed claim rests on
 */
public record KeptDraft(
    String text,
    Map<String, String> figures,
    Map<String, String> sentences,
    Map<String, Confirmation> confirmed) {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();

  public KeptDraft {
    figures = new TreeMap<>(figures);
    sentences = new TreeMap<>(sentences);
    confirmed = new TreeMap<>(confirmed);
  }

  /**
   * A claim that a person tied to a figure.
   *
   * @param figure name of the figure
   * @param shown what it printed then
   */
  public record Confirmation(String figure, String shown, String who) {}

  public static KeptDraft empty() {
    return new KeptDraft("", Map.of(), Map.of(), Map.of());
  }

  /** As a document's body. */
  public String body() {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("format", 1);
    root.put("text", text);
    ObjectNode bound = root.putObject("figures");
    figures.forEach(bound::put);
    ObjectNode rested = root.putObject("sentences");
    sentences.forEach(rested::put);
    ObjectNode links = root.putObject("confirmed");
    confirmed.forEach(
        (claim, c) ->
            links
                .putObject(claim)
                .put("figure", c.figure())
                .put("shown", c.shown())
                .put("who", c.who()));
    return MAPPER.writeValueAsString(root);
  }

  /** From a document's body; a body that is no JSON is taken as plain text. */
  public static KeptDraft of(String body) {
    JsonNode root;
    try {
      root = MAPPER.readTree(body);
    } catch (JacksonException plain) {
      return new KeptDraft(body, Map.of(), Map.of(), Map.of());
    }
    Map<String, Confirmation> confirmed = new TreeMap<>();
    for (Map.Entry<String, JsonNode> link : root.path("confirmed").properties()) {
      confirmed.put(
          link.getKey(),
          new Confirmation(
              link.getValue().path("figure").asString(""),
              link.getValue().path("shown").asString(""),
              link.getValue().path("who").asString("")));
    }
    return new KeptDraft(
        root.path("text").asString(""),
        strings(root.path("figures")),
        strings(root.path("sentences")),
        confirmed);
  }

  private static Map<String, String> strings(JsonNode node) {
    Map<String, String> all = new TreeMap<>();
    node.properties().forEach(p -> all.put(p.getKey(), p.getValue().asString("")));
    return all;
  }
}
