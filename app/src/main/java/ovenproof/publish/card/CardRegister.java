package ovenproof.publish.card;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import ovenproof.publish.edition.Edition;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Which cards were ever handed out, under which verdict, and what each showed. A film may still use
 * a card of three verdicts ago, so nothing is forgotten.
 *
 * @param handed what earlier registers listed, oldest first
 * @param damaged whether there was a register that cannot be read
 */
record CardRegister(List<Handed> handed, boolean damaged) {
  private static final JsonMapper MAPPER =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

  /** A card as it was handed out first. */
  record Handed(String id, String version, String on, String shows, String sentence) {}

  CardRegister {
    handed = List.copyOf(handed);
  }

  /** The register of a folder; empty when there is none. */
  static CardRegister read(Path register) {
    String text = CardFolder.text(register);
    if (text.isEmpty()) {
      return new CardRegister(List.of(), false);
    }
    try {
      JsonNode root = MAPPER.readTree(text);
      Map<String, Handed> all = new LinkedHashMap<>();
      collect(root.path("handed"), root, all);
      collect(root.path("cards"), root, all);
      return new CardRegister(List.copyOf(all.values()), false);
    } catch (JacksonException e) {
      return new CardRegister(List.of(), true);
    }
  }

  static List<String> changedSince(Path register) {
    String text = CardFolder.text(register);
    List<String> changed = new ArrayList<>();
    try {
      if (!text.isEmpty()) {
        MAPPER.readTree(text).path("changedSince").forEach(c -> changed.add(c.asString("")));
      }
    } catch (JacksonException e) {
      changed.add("the register of the cards cannot be read");
    }
    return changed;
  }

  private static void collect(JsonNode cards, JsonNode root, Map<String, Handed> all) {
    for (JsonNode card : cards) {
      Handed handed =
          new Handed(
              card.path("id").asString(""),
              card.path("verdict").asString(root.path("verdict").asString("")),
              card.path("on").asString(root.path("published").asString("")),
              card.path("shows").asString(""),
              card.path("sentence").asString(""));
      all.putIfAbsent(handed.id() + "\n" + handed.shows(), handed);
    }
  }

  /** Cards handed out before that show something else now, in sentences. */
  List<String> changed(List<Card> cards, String version) {
    Map<String, Card> now = new TreeMap<>();
    cards.forEach(c -> now.put(c.id(), c));
    List<String> changed = new ArrayList<>();
    if (damaged) {
      changed.add("the register could not be read: what was handed out before is not known");
    }
    for (Handed then : handed) {
      Card card = now.get(then.id());
      if (card == null) {
        changed.add(then(then) + " is no longer made; it said \"" + then.sentence() + '"');
      } else if (!card.shows().equals(then.shows())) {
        changed.add(then(then) + difference(then, card, version));
      }
    }
    return changed;
  }

  private static String then(Handed then) {
    String on = then.on().isEmpty() ? "" : ", " + then.on();
    return then.id() + " of verdict " + then.version() + on;
  }

  private static String difference(Handed then, Card now, String version) {
    return then.sentence().equals(now.sentence())
        ? " says the same but is drawn otherwise since verdict " + version
        : " said \""
            + then.sentence()
            + "\", verdict "
            + version
            + " says \""
            + now.sentence()
            + '"';
  }

  String json(List<Card> cards, Edition edition, List<String> changed) {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("format", 1);
    root.put("verdict", edition.verdict().version());
    root.put("published", edition.published().toString());
    ArrayNode list = root.putArray("cards");
    for (Card card : cards) {
      list.addObject()
          .put("id", card.id())
          .put("kind", card.kind().word())
          .put("sentence", card.sentence())
          .put("staySeconds", card.staySeconds())
          .put("verdict", edition.verdict().version())
          .put("shows", card.shows());
    }
    ArrayNode moved = root.putArray("changedSince");
    changed.forEach(moved::add);
    ArrayNode before = root.putArray("handed");
    for (Handed then : handed) {
      before
          .addObject()
          .put("id", then.id())
          .put("verdict", then.version())
          .put("on", then.on())
          .put("shows", then.shows())
          .put("sentence", then.sentence());
    }
    return MAPPER.writeValueAsString(root) + "\n";
  }
}
