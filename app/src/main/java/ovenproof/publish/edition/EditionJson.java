package ovenproof.publish.edition;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.publish.edition.FrozenEdition.KeptFile;
import ovenproof.publish.edition.FrozenEdition.Standing;
import ovenproof.publish.edition.FrozenEdition.TestStanding;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Editions and what they changed as JSON, format 1; later versions only add. */
public final class EditionJson {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();

  private EditionJson() {}

  /** All editions, oldest first, each with what it changed. */
  public static ObjectNode of(EditionHistory history) {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("format", 1);
    ArrayNode editions = root.putArray("editions");
    history.editions().forEach(edition -> editions.add(of(edition)));
    ArrayNode changes = root.putArray("changes");
    history.changes().forEach(change -> changes.add(of(change)));
    return root;
  }

  /** One edition. */
  public static ObjectNode of(FrozenEdition edition) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("number", edition.number());
    node.put("published", edition.published().toString());
    node.put("verdict", edition.verdict());
    node.put("method", edition.method());
    node.put("headline", edition.headline());
    node.put("why", edition.why());
    node.put("countedRuns", edition.countedRuns());
    ArrayNode products = node.putArray("products");
    edition.products().forEach(p -> products.add(of(p)));
    ArrayNode files = node.putArray("files");
    edition.files().forEach(f -> files.addObject().put("path", f.path()).put("sha256", f.sha256()));
    return node;
  }

  private static ObjectNode of(Standing standing) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("id", standing.id()).put("name", standing.name()).put("score", standing.score());
    node.put("interval", standing.interval()).put("rank", standing.rank());
    node.put("tier", standing.tier()).put("price", standing.price());
    ArrayNode tests = node.putArray("tests");
    standing
        .tests()
        .forEach(
            t -> tests.addObject().put("id", t.id()).put("name", t.name()).put("score", t.score()));
    return node;
  }

  private static ObjectNode of(EditionChange change) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("from", change.before().number()).put("to", change.after().number());
    node.put("on", change.after().published().toString());
    node.put("why", change.after().why());
    node.put("effectOnRanks", change.effectOnRanks());
    ArrayNode moves = node.putArray("moves");
    for (EditionChange.Move move : change.moves()) {
      ObjectNode one = moves.addObject();
      one.put("product", move.product()).put("name", move.name());
      one.put("kind", move.kind().word().replace(' ', '-')).put("what", move.what());
      one.put("was", move.was()).put("is", move.is());
    }
    return node;
  }

  /**
   * Reads the editions back, also those of older sites that noted less.
   *
   * @param name of the file, for messages
   * @throws InputException if it is damaged: what was published cannot be guessed
   */
  public static EditionHistory read(String name, String text) {
    try {
      JsonNode list = MAPPER.readTree(text).path("editions");
      if (!list.isArray()) {
        throw damaged(name, "no list of editions", null);
      }
      List<FrozenEdition> editions = new ArrayList<>();
      for (JsonNode node : list) {
        editions.add(read(node, editions.size() + 1));
      }
      return new EditionHistory(editions);
    } catch (JacksonException | DateTimeException | IllegalArgumentException e) {
      throw damaged(name, "a list that cannot be read", e);
    }
  }

  /** One edition, as {@link #of(FrozenEdition)} wrote it. */
  public static FrozenEdition readOne(String text) {
    return read(MAPPER.readTree(text), 1);
  }

  private static InputException damaged(String name, String found, @Nullable Exception cause) {
    InputException refusal =
        new InputException(
            Problem.error(
                Place.of(name),
                found,
                "the editions that were published before",
                "restore the site from a backup, or publish to a new place; nothing was written"));
    if (cause != null) {
      refusal.addSuppressed(cause);
    }
    return refusal;
  }

  private static FrozenEdition read(JsonNode node, int place) {
    List<Standing> products = new ArrayList<>();
    node.path("products").forEach(p -> products.add(standing(p)));
    List<KeptFile> files = new ArrayList<>();
    for (JsonNode file : node.path("files")) {
      files.add(new KeptFile(file.path("path").asString(""), file.path("sha256").asString("")));
    }
    return new FrozenEdition(
        node.path("number").asInt(place),
        LocalDate.parse(node.path("published").asString("")),
        node.path("verdict").asString(""),
        node.path("method").asString(""),
        node.path("headline").asString(""),
        words(node.path("why")),
        node.path("countedRuns").asInt(0),
        products,
        files);
  }

  private static Standing standing(JsonNode node) {
    List<TestStanding> tests = new ArrayList<>();
    for (JsonNode test : node.path("tests")) {
      tests.add(
          new TestStanding(
              test.path("id").asString(""),
              test.path("name").asString(""),
              test.path("score").asString("")));
    }
    return new Standing(
        node.path("id").asString(""),
        node.path("name").asString(""),
        node.path("score").asString(""),
        node.path("interval").asString(""),
        node.path("rank").asString(""),
        node.path("tier").isNumber() ? node.path("tier").asInt() : null,
        words(node.path("price")),
        tests);
  }

  private static @Nullable String words(JsonNode node) {
    return node.isString() ? node.asString("") : null;
  }
}
