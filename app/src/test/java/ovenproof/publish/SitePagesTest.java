package ovenproof.publish;

import static org.assertj.core.api.Assertions.assertThat;

import com.drew.imaging.ImageMetadataReader;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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
