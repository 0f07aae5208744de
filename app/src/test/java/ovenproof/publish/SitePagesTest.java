package ovenproof.publish;

import static org.assertj.core.api.Assertions.assertThat;

import com.drew.imaging.ImageMetadataReader;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.StreamSupport;
import nu.validator.client.EmbeddedValidator;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.publish.edition.Edition;
import ovenproof.verdict.Verdict.ProductVerdict;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What every page of the published site keeps to. */
class SitePagesTest {
  private static final JsonMapper JSON = JsonMapper.builder().build();

  @TempDir static Path folder;

  static SiteFiles site;
  static Path root;
  static Edition edition;

  @BeforeAll
  static void publish() throws Exception {
    edition = SmallCampaign.edition(SmallCampaign.write(folder.resolve("campaign")));
    root = new Publisher().publish(edition, folder.resolve("site")).site();
    site = new SiteFiles(root);
    if (System.getProperty("ovenproof.keep") != null) {
      CopyFolder.copy(root, Path.of(System.getProperty("ovenproof.keep")));
    }
  }

  /** Validated by the Nu HTML checker (nu.validator 20.7.2). */
  @Test
  void theHtmlIsValid() throws Exception {
    EmbeddedValidator validator = new EmbeddedValidator();
    validator.setOutputFormat(EmbeddedValidator.OutputFormat.JSON);
    List<String> errors = new ArrayList<>();
    for (Path page : site.pages()) {
      String answer = validator.validate(new ByteArrayInputStream(Files.readAllBytes(page)));
      for (JsonNode message : JSON.readTree(answer).path("messages")) {
        if (message.path("type").asString("").equals("error")) {
          errors.add(
              root.relativize(page)
                  + ": "
                  + message.path("message").asString("")
                  + " at "
                  + message.path("extract").asString(""));
        }
      }
    }
    assertThat(errors).isEmpty();
  }

  @Test
  void theChecklistIsShownAsItWasLastCorrectedAndIsInTheData() throws Exception {
    String index = Files.readString(root.resolve("index.html"));
    String row = index.substring(index.indexOf(">Door light<"));
    List<String> words =
        List.of(row.substring(0, row.indexOf("</tr>")).replaceAll("<[^>]*>", " ").split(" {2,}"));
    assertThat(words.stream().map(String::strip).filter(w -> !w.isEmpty()))
        .containsExactly(">Door light", "yes", "no", "not applicable", "not looked at");
    assertThat(Files.readString(root.resolve("data/features.csv")))
        .contains("alder,Door light,yes,2026-03-15,")
        .doesNotContain("alder,Door light,no")
        .doesNotContain(SmallCampaign.TASTER);
  }

  @Test
  void everyLinkLeadsToAFileOfTheFolder() throws Exception {
    assertThat(site.deadLinks()).isEmpty();
  }

  @Test
  void noPageNeedsAScriptOrAServer() throws Exception {
    for (Path page : site.pages()) {
      String html = Files.readString(page);
      assertThat(html.replace("<script type=\"application/ld+json\">", ""))
          .doesNotContain("<script");
      assertThat(html).doesNotContain(" style=").doesNotContain("onclick");
    }
  }

  @Test
  void pagesAreSmallBeforePictures() throws Exception {
    for (Path page : site.pages()) {
      assertThat(Files.size(page)).as(page.toString()).isLessThan(200_000);
    }
  }

  @Test
  void noTasterIsNamedAnywhere() throws Exception {
    for (Path file : site.all()) {
      String text = Files.readString(file, StandardCharsets.ISO_8859_1);
      assertThat(text).as(file.toString()).doesNotContain(SmallCampaign.TASTER);
    }
  }

  @Test
  void picturesCarryNoMetadata() throws Exception {
    List<Path> pictures = site.all().stream().filter(p -> p.toString().endsWith(".jpg")).toList();
    assertThat(pictures).hasSize(12);
    for (Path picture : pictures) {
      List<String> directories =
          StreamSupport.stream(
                  ImageMetadataReader.readMetadata(picture.toFile()).getDirectories().spliterator(),
                  false)
              .map(d -> d.getName())
              .toList();
      assertThat(directories)
          .noneMatch(name -> name.contains("Exif") || name.contains("GPS") || name.contains("XMP"));
    }
  }

  @Test
  void everythingInventedSaysSo() throws Exception {
    for (Path page : site.pages()) {
      assertThat(Files.readString(page)).contains("Invented.").contains("noindex");
    }
  }

  /** Reads the printed table and adds it up with whole parts, as statistics text 9 has it. */
  @Test
  void theTotalsFollowFromThePrintedDigits() throws Exception {
    String html = site.text("index.html");
    int begin = html.indexOf("class=\"matrix\"");
    String matrix = html.substring(begin, html.indexOf("</table>", begin));
    Matcher rows = Pattern.compile("<tr><th scope=\"row\">.*?</tr>").matcher(matrix);
    int[] parts = {4, 4, 2};
    int checked = 0;
    while (rows.find()) {
      List<java.math.BigDecimal> digits = digits(rows.group());
      java.math.BigDecimal sum = java.math.BigDecimal.ZERO;
      for (int i = 0; i < parts.length; i++) {
        sum = sum.add(digits.get(i).multiply(java.math.BigDecimal.valueOf(parts[i])));
      }
      java.math.BigDecimal total =
          sum.divide(java.math.BigDecimal.TEN, 1, java.math.RoundingMode.HALF_UP);
      assertThat(digits.get(3)).isEqualByComparingTo(total);
      checked++;
    }
    assertThat(checked).isEqualTo(4);
  }

  private static List<java.math.BigDecimal> digits(String row) {
    List<java.math.BigDecimal> found = new ArrayList<>();
    Matcher cells = Pattern.compile("<td.*?</td>").matcher(row);
    while (cells.find()) {
      String words = cells.group().replaceAll("<svg.*?</svg>", "").replaceAll("<[^>]*>", " ");
      Matcher number = Pattern.compile("\\d+\\.\\d").matcher(words);
      assertThat(number.find()).as(words).isTrue();
      found.add(new java.math.BigDecimal(number.group()));
    }
    return found;
  }

  /**
   * Properties and types of schema.org for Product, Review, Rating (vocabulary read 2026, from
   * memory).
   */
  @Test
  void theStructuredDataSaysWhatThePageShows() throws Exception {
    for (ProductVerdict product : edition.verdict().products()) {
      String html = site.text("products/" + product.id() + ".html");
      JsonNode data = structured(html);
      JsonNode rating = data.path("review").path("reviewRating");
      assertThat(data.path("@type").asString("")).isEqualTo("Product");
      assertThat(data.has("aggregateRating")).isFalse();
      assertThat(rating.path("bestRating").asString("")).isEqualTo("10");
      assertThat(rating.path("worstRating").asString("")).isEqualTo("0");
      assertThat(html).contains(rating.path("ratingValue").asString("none") + " of 10");
      assertThat(data.path("review").path("author").path("name").asString(""))
          .isEqualTo("Quarry Street test kitchen");
      assertThat(data.path("review").path("datePublished").asString("")).isEqualTo("2026-03-20");
    }
  }

  /** Properties and what they may hold: T text, D date, N integer, else types, of schema.org. */
  private static final Map<String, Map<String, String>> VOCABULARY =
      Map.of(
          "Product",
          Map.of(
              "name", "T",
              "productID", "T",
              "category", "T",
              "brand", "Brand",
              "disambiguatingDescription", "T",
              "review", "Review"),
          "Brand",
          Map.of("name", "T"),
          "Organization",
          Map.of("name", "T"),
          "Review",
          Map.of(
              "datePublished", "D",
              "version", "T",
              "author", "Organization",
              "itemReviewed", "Product",
              "reviewRating", "Rating",
              "positiveNotes", "ItemList",
              "negativeNotes", "ItemList"),
          "Rating",
          Map.of(
              "ratingValue", "T",
              "bestRating", "T",
              "worstRating", "T",
              "ratingExplanation", "T"),
          "ItemList",
          Map.of(
              "name", "T",
              "itemListOrder", "T",
              "numberOfItems", "N",
              "itemListElement", "ListItem"),
          "ListItem",
          Map.of("name", "T", "position", "N", "url", "T"));

  /**
   * Domains and ranges as schema.org publishes them for these terms (vocabulary of 2025, from
   * memory): nothing else may be said of a type, and nothing else may stand there.
   */
  @Test
  void theStructuredDataKeepsToThePublishedVocabulary() throws Exception {
    List<String> wrong = new ArrayList<>();
    for (ProductVerdict product : edition.verdict().products()) {
      keepsTo(structured(site.text("products/" + product.id() + ".html")), "Product", wrong);
    }
    keepsTo(structured(site.text("index.html")), "ItemList", wrong);
    assertThat(wrong).isEmpty();
    keepsTo(JSON.readTree("{\"@type\":\"Rating\",\"stars\":\"5\"}"), "Rating", wrong);
    assertThat(wrong).containsExactly("Rating has no stars");
  }

  private static void keepsTo(JsonNode node, String type, List<String> wrong) {
    if (!node.path("@type").asString("").equals(type)) {
      wrong.add("expected " + type + ", found " + node);
      return;
    }
    Map<String, String> known = VOCABULARY.get(type);
    node.properties()
        .forEach(
            p -> {
              String range = known.get(p.getKey());
              if (range == null && !p.getKey().startsWith("@")) {
                wrong.add(type + " has no " + p.getKey());
              } else if (range != null && p.getValue().isArray()) {
                p.getValue().forEach(v -> holds(v, range, type + "." + p.getKey(), wrong));
              } else if (range != null) {
                holds(p.getValue(), range, type + "." + p.getKey(), wrong);
              }
            });
  }

  private static void holds(JsonNode value, String range, String where, List<String> wrong) {
    switch (range) {
      case "T" -> need(value.isString() && !value.asString("").isBlank(), where, wrong);
      case "N" -> need(value.isIntegralNumber(), where, wrong);
      case "D" -> need(value.asString("").matches("\\d{4}-\\d\\d-\\d\\d"), where, wrong);
      default -> keepsTo(value, range, wrong);
    }
  }

  private static void need(boolean holds, String where, List<String> wrong) {
    if (!holds) {
      wrong.add(where + " holds something else");
    }
  }

  private static JsonNode structured(String html) {
    String start = "<script type=\"application/ld+json\">";
    int from = html.indexOf(start) + start.length();
    return JSON.readTree(html.substring(from, html.indexOf("</script>", from)));
  }

  @Test
  void aFloorIsRoundedUpInBothSystems() throws Exception {
    // 165 °F is 73.89 °C: USDA FSIS safe minimum for poultry; a reader must not be told 73 °C.
    assertThat(site.text("method.html")).contains("165\u00a0°F (74\u00a0°C)");
  }

  @Test
  void aNameplateThatIsFarOffIsFlagged() throws Exception {
    // Siskin: plate 22 L, measured 18.2 L, 17 % below.
    assertThat(site.text("index.html")).contains("17\u00a0% below the plate");
  }

  @Test
  void runsStoppedAtTheCapAreBounds() throws Exception {
    assertThat(site.text("evidence/runs/dunnock-poultry-2.html"))
        .contains("over 1\u00a0h\u00a030\u00a0min");
  }
}
