package ovenproof.publish.site;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.figure.Scores;
import ovenproof.verdict.Verdict.ProductVerdict;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * The editions of a site, oldest first, kept in {@code data/editions.json} so that a new one can
 * say what it changed.
 */
final class Editions {
  private static final String FILE = "data/editions.json";
  private static final JsonMapper MAPPER = JsonMapper.builder().build();

  private final List<Past> all;

  /** What is remembered of an edition: the printed scores and places. */
  private record Past(LocalDate on, String version, Map<String, Standing> products) {}

  private record Standing(String name, String score, String rank) {}

  private Editions(List<Past> all) {
    this.all = all;
  }

  /** The editions of the site that stands at a place, and a new one after them if it differs. */
  static Editions after(Path earlier, Edition edition) {
    List<Past> all = new ArrayList<>(read(earlier.resolve(FILE)));
    Past now = past(edition);
    if (all.isEmpty() || !all.get(all.size() - 1).version().equals(now.version())) {
      all.add(now);
    }
    return new Editions(all);
  }

  private static Past past(Edition edition) {
    Map<String, Standing> products = new TreeMap<>();
    for (ProductVerdict product : edition.verdict().products()) {
      products.put(
          product.id(),
          new Standing(product.name(), Scores.words(product.score()), Scores.rank(product.rank())));
    }
    return new Past(edition.published(), edition.verdict().version(), products);
  }

  private static List<Past> read(Path file) {
    if (!Files.isRegularFile(file)) {
      return List.of();
    }
    try {
      List<Past> editions = new ArrayList<>();
      for (JsonNode node : MAPPER.readTree(Files.readString(file)).path("editions")) {
        editions.add(read(node));
      }
      return editions;
    } catch (IOException | JacksonException | DateTimeException e) {
      // A damaged list of editions is no reason not to publish; it begins anew.
      return List.of();
    }
  }

  private static Past read(JsonNode node) {
    Map<String, Standing> products = new TreeMap<>();
    for (JsonNode product : node.path("products")) {
      products.put(
          product.path("id").asString(""),
          new Standing(
              product.path("name").asString(""),
              product.path("score").asString(""),
              product.path("rank").asString("")));
    }
    return new Past(
        LocalDate.parse(node.path("published").asString("")),
        node.path("verdict").asString(""),
        products);
  }

  /** What each edition changed against the one before, newest first. */
  List<View.Change> changes() {
    List<View.Change> changes = new ArrayList<>();
    for (int i = all.size() - 1; i > 0; i--) {
      changes.add(new View.Change(all.get(i).on(), changed(all.get(i - 1), all.get(i))));
    }
    return changes;
  }

  private static String changed(Past before, Past after) {
    List<String> said = new ArrayList<>();
    after.products().forEach((id, now) -> changed(before.products().get(id), now, said));
    before
        .products()
        .forEach(
            (id, then) -> {
              if (!after.products().containsKey(id)) {
                said.add(then.name() + " is no longer listed");
              }
            });
    String versions = "Verdict " + before.version() + " became " + after.version() + ": ";
    return versions
        + (said.isEmpty() ? "no printed score or rank moved." : String.join("; ", said) + ".");
  }

  private static void changed(@Nullable Standing then, Standing now, List<String> said) {
    if (then == null) {
      said.add(now.name() + " is new");
      return;
    }
    List<String> moved = new ArrayList<>();
    if (!Objects.equals(then.score(), now.score())) {
      moved.add("score " + then.score() + " → " + now.score() + difference(then, now));
    }
    if (!Objects.equals(then.rank(), now.rank())) {
      moved.add("rank " + then.rank() + " → " + now.rank());
    }
    if (!moved.isEmpty()) {
      said.add(now.name() + ", " + String.join(", ", moved));
    }
  }

  private static String difference(Standing then, Standing now) {
    try {
      BigDecimal change = new BigDecimal(now.score()).subtract(new BigDecimal(then.score()));
      String sign = change.signum() < 0 ? "−" : "+";
      return " (" + sign + change.abs().toPlainString() + ")";
    } catch (NumberFormatException e) {
      return "";
    }
  }

  void write(SiteFolder folder) {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("format", 1);
    ArrayNode editions = root.putArray("editions");
    for (Past past : all) {
      ObjectNode edition = editions.addObject();
      edition.put("published", past.on().toString());
      edition.put("verdict", past.version());
      ArrayNode products = edition.putArray("products");
      past.products()
          .forEach(
              (id, standing) ->
                  products
                      .addObject()
                      .put("id", id)
                      .put("name", standing.name())
                      .put("score", standing.score())
                      .put("rank", standing.rank()));
    }
    ReviewSite.json(folder, FILE, root);
  }
}
