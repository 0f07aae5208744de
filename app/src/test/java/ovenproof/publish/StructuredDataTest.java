package ovenproof.publish;

import static org.assertj.core.api.Assertions.assertThat;

import com.apicatalog.jsonld.JsonLd;
import com.apicatalog.jsonld.JsonLdError;
import com.apicatalog.jsonld.document.JsonDocument;
import com.apicatalog.jsonld.loader.DocumentLoader;
import jakarta.json.JsonArray;
import jakarta.json.JsonObject;
import jakarta.json.JsonString;
import jakarta.json.JsonValue;
import java.io.InputStream;
import java.io.StringReader;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.publish.edition.Edition;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * The site's JSON-LD, read by an independent processor of JSON-LD 1.1.
 *
 * <p>{@code schema-org-context.jsonld} holds the terms that are used as the published context of
 * release 27.01 of schema.org maps them ({@code data/releases/27.01/schemaorgcontext.jsonld} of
 * github.com/schemaorg/schemaorg, read for all of them but {@code author}, {@code bestRating},
 * {@code url} and the classes, which are from memory), without its default vocabulary: a misspelt
 * term is lost in the expansion instead of becoming one of schema.org.
 */
class StructuredDataTest {
  private static final String SCHEMA = "http://schema.org/";
  private static final String BASE = "https://review.example/";
  private static final JsonMapper JSON = JsonMapper.builder().build();

  /**
   * What each class may have, by {@code domainIncludes} of the published vocabulary: its own
   * properties and those of Thing; from memory but for positiveNotes and negativeNotes, which its
   * pages name for Product and Review.
   */
  private static final Map<String, Set<String>> ALLOWED =
      Map.of(
          "Product",
          Set.of("name", "productID", "category", "brand", "disambiguatingDescription", "review"),
          "Review",
          Set.of(
              "datePublished",
              "version",
              "author",
              "itemReviewed",
              "reviewRating",
              "positiveNotes",
              "negativeNotes"),
          "Rating",
          Set.of("ratingValue", "bestRating", "worstRating", "ratingExplanation"),
          "Organization",
          Set.of("name"),
          "Brand",
          Set.of("name"),
          "ItemList",
          Set.of("name", "itemListOrder", "numberOfItems", "itemListElement"),
          "ListItem",
          Set.of("name", "position", "url"));

  @TempDir static Path folder;
  private static Path root;
  private static SiteFiles site;

  @BeforeAll
  static void publish() {
    Edition edition = SmallCampaign.edition(SmallCampaign.write(folder.resolve("campaign")));
    root = new Publisher().publish(edition, folder.resolve("site")).site();
    site = new SiteFiles(root);
  }

  private static JsonObject context() {
    try (InputStream in =
        StructuredDataTest.class.getResourceAsStream("/schema-org-context.jsonld")) {
      return JsonDocument.of(Objects.requireNonNull(in))
          .getJsonContent()
          .orElseThrow()
          .asJsonObject();
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }

  /** Nothing is fetched: the one context that a page names lies here. */
  private static final DocumentLoader LOCAL =
      (url, options) -> {
        assertThat(url).isEqualTo(URI.create("https://schema.org"));
        return JsonDocument.of(context());
      };

  private static List<String> written() throws Exception {
    List<String> all = new ArrayList<>();
    for (Path page : site.pages()) {
      String html = Files.readString(page);
      String start = "<script type=\"application/ld+json\">";
      for (int at = html.indexOf(start); at >= 0; at = html.indexOf(start, at + 1)) {
        all.add(html.substring(at + start.length(), html.indexOf("</script>", at)));
      }
    }
    return all;
  }

  private static JsonArray expanded(String text) throws JsonLdError {
    return JsonLd.expand(JsonDocument.of(new StringReader(text)))
        .loader(LOCAL)
        .base(BASE + "index.html")
        .get();
  }

  @Test
  void nothingIsLostWhenAnotherProcessorExpandsAndCompactsIt() throws Exception {
    List<String> all = written();
    assertThat(all).hasSize(5);
    for (String text : all) {
      JsonObject again =
          JsonLd.compact(JsonDocument.of(expanded(text)), JsonDocument.of(context()))
              .loader(LOCAL)
              .base(BASE + "index.html")
              .get();
      Set<String> before = new TreeSet<>();
      leaves("", JSON.readTree(text), before);
      Set<String> after = new TreeSet<>();
      leaves("", JSON.readTree(again.toString()), after);
      assertThat(after).isEqualTo(before);
    }
  }

  /** Path and value of every leaf; the two ways to write a type are one, contexts none. */
  private static void leaves(String path, JsonNode node, Set<String> all) {
    if (node.isObject()) {
      for (var field : node.properties()) {
        if (!field.getKey().equals("@context")) {
          String key = field.getKey().equals("@type") ? "type" : field.getKey();
          leaves(path + "/" + key, field.getValue(), all);
        }
      }
    } else if (node.isArray() && node.size() != 1) {
      for (int i = 0; i < node.size(); i++) {
        leaves(path + "/" + i, node.get(i), all);
      }
    } else if (node.isArray()) {
      leaves(path, node.get(0), all);
    } else {
      all.add(path + " = " + node.asString());
    }
  }

  @Test
  void everyClassHasOnlyWhatThePublishedVocabularyAllows() throws Exception {
    List<String> wrong = new ArrayList<>();
    for (String text : written()) {
      expanded(text).forEach(node -> check(node, wrong));
    }
    assertThat(wrong).isEmpty();
  }

  private static void check(JsonValue value, List<String> wrong) {
    if (value.getValueType() == JsonValue.ValueType.ARRAY) {
      value.asJsonArray().forEach(v -> check(v, wrong));
    } else if (value.getValueType() == JsonValue.ValueType.OBJECT) {
      JsonObject node = value.asJsonObject();
      if (node.containsKey("@type") && !node.containsKey("@value")) {
        String type = ((JsonString) node.getJsonArray("@type").get(0)).getString();
        Set<String> allowed = ALLOWED.getOrDefault(type.replace(SCHEMA, ""), Set.of());
        node.keySet().stream()
            .filter(k -> !k.startsWith("@"))
            .filter(k -> !allowed.contains(k.replace(SCHEMA, "")))
            .forEach(k -> wrong.add(type + " has " + k));
      }
      node.values().forEach(v -> check(v, wrong));
    }
  }

  @Test
  void aReviewHasWhatReadersOfItNeed() throws Exception {
    int reviews = 0;
    for (String text : written()) {
      JsonNode product = JSON.readTree(text);
      if (product.path("@type").asString("").equals("Product")) {
        reviews++;
        JsonNode review = product.path("review");
        assertThat(product.path("name").asString("")).isNotBlank();
        assertThat(review.path("author").path("name").asString("")).isNotBlank();
        assertThat(review.path("datePublished").asString("")).matches("\\d{4}-\\d\\d-\\d\\d");
        assertThat(review.path("itemReviewed").path("name")).isEqualTo(product.path("name"));
        JsonNode rating = review.path("reviewRating");
        assertThat(Double.parseDouble(rating.path("ratingValue").asString()))
            .isBetween(
                Double.parseDouble(rating.path("worstRating").asString()),
                Double.parseDouble(rating.path("bestRating").asString()));
      }
    }
    assertThat(reviews).isEqualTo(4);
  }

  @Test
  void pagesOfAListAreAddressesOnThisSite() throws Exception {
    int links = 0;
    for (String text : written()) {
      for (JsonValue list : expanded(text)) {
        JsonArray items = list.asJsonObject().getJsonArray(SCHEMA + "itemListElement");
        for (JsonValue item : items == null ? JsonValue.EMPTY_JSON_ARRAY : items) {
          JsonArray urls = item.asJsonObject().getJsonArray(SCHEMA + "url");
          String url = urls.getJsonObject(0).getString("@id");
          assertThat(url).startsWith(BASE);
          assertThat(root.resolve(url.substring(BASE.length()))).exists();
          links++;
        }
      }
    }
    assertThat(links).isEqualTo(4);
  }
}
