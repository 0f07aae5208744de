package ovenproof.publish.site;

import java.util.List;
import ovenproof.campaign.Campaign;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.edition.ForAndAgainst;
import ovenproof.publish.edition.ForAndAgainst.Point;
import ovenproof.publish.figure.Scores;
import ovenproof.verdict.Verdict.ProductVerdict;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * The page's facts in the vocabulary of schema.org, with the values that the page shows. One
 * laboratory is one review: no aggregate rating is claimed.
 */
final class StructuredData {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();
  private static final String INVENTED = "Invented for demonstration: this product does not exist.";

  private final Edition edition;

  StructuredData(Edition edition) {
    this.edition = edition;
  }

  /** A product and its review. */
  String product(ProductVerdict verdict) {
    ObjectNode product = JsonNodeFactory.instance.objectNode();
    product.put("@context", "https://schema.org");
    product.put("@type", "Product");
    product.put("name", verdict.name());
    edition.campaign().product(verdict.id()).ifPresent(p -> describe(product, p));
    if (edition.isInvented()) {
      product.put("disambiguatingDescription", INVENTED);
    }
    review(product.putObject("review"), verdict);
    return safe(product);
  }

  private static void describe(ObjectNode product, Campaign.Product described) {
    product.put("productID", described.id());
    if (described.kind() != null) {
      product.put("category", described.kind());
    }
    if (described.maker() != null) {
      product.putObject("brand").put("@type", "Brand").put("name", described.maker());
    }
  }

  private void review(ObjectNode review, ProductVerdict verdict) {
    review.put("@type", "Review");
    review.put("datePublished", edition.published().toString());
    review.put("version", edition.verdict().version());
    review
        .putObject("author")
        .put("@type", "Organization")
        .put("name", edition.campaign().info().kitchen());
    review.putObject("itemReviewed").put("@type", "Product").put("name", verdict.name());
    if (verdict.score().value() != null) {
      ObjectNode rating = review.putObject("reviewRating");
      rating.put("@type", "Rating");
      rating.put("ratingValue", verdict.score().value().toPlainString());
      rating.put("bestRating", "10");
      rating.put("worstRating", "0");
      rating.put("ratingExplanation", Scores.sentence(verdict.score()));
    }
    ForAndAgainst points = ForAndAgainst.of(edition, verdict);
    notes(review, "positiveNotes", points.forIt());
    notes(review, "negativeNotes", points.against());
  }

  private static void notes(ObjectNode review, String property, List<Point> points) {
    if (points.isEmpty()) {
      return;
    }
    ObjectNode list = review.putObject(property).put("@type", "ItemList");
    ArrayNode items = list.putArray("itemListElement");
    for (int i = 0; i < points.size(); i++) {
      items
          .addObject()
          .put("@type", "ListItem")
          .put("position", i + 1)
          .put("name", points.get(i).sentence());
    }
  }

  /** The products of the review with their pages; the order is that of the page, no rank. */
  String list(SiteAddresses addresses) {
    ObjectNode list = JsonNodeFactory.instance.objectNode();
    list.put("@context", "https://schema.org");
    list.put("@type", "ItemList");
    list.put("name", edition.campaign().info().title());
    list.put("itemListOrder", "https://schema.org/ItemListUnordered");
    list.put("numberOfItems", edition.verdict().products().size());
    ArrayNode items = list.putArray("itemListElement");
    for (ProductVerdict product : edition.verdict().products()) {
      items
          .addObject()
          .put("@type", "ListItem")
          .put("name", product.name())
          .put("url", addresses.product(product.id()));
    }
    return safe(list);
  }

  /** JSON inside a script element: nothing in it may end the element. */
  private static String safe(ObjectNode node) {
    return MAPPER
        .writeValueAsString(node)
        .replace("<", "\\u003c")
        .replace(">", "\\u003e")
        .replace("&", "\\u0026")
        .replace("\u2028", "\\u2028")
        .replace("\u2029", "\\u2029");
  }
}
