package ovenproof.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import nu.validator.client.EmbeddedValidator;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.desk.DatabaseKind;
import ovenproof.desk.Desk;
import ovenproof.desk.FolderImport;
import ovenproof.files.CampaignFolder;
import ovenproof.publish.SmallCampaign;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Every page of a campaign that can be reached by links. */
class CampaignPagesTest {
  private static final JsonMapper JSON = JsonMapper.builder().build();
  private static final HttpClient CLIENT = HttpClient.newHttpClient();

  @TempDir static Path folder;

  private static Desk desk;
  private static WebServer server;
  private static String cid;
  private static Map<String, String> pages;

  @BeforeAll
  static void reachEveryPage() throws Exception {
    desk = DatabaseKind.SQLITE.open(folder.resolve("desk"));
    Path written = SmallCampaign.write(folder.resolve("campaign"));
    cid = new FolderImport(desk, CampaignFolder.withAllMeasures()).take(written, "lead");
    server = WebServer.start(desk, 0);
    while (get("/c/" + cid + "/verdict").body().contains("id=\"working\"")) {
      Thread.sleep(200);
    }
    pages = crawl();
  }

  @AfterAll
  static void stop() {
    server.close();
    desk.close();
  }

  private static HttpResponse<String> get(String path) throws Exception {
    return CLIENT.send(
        HttpRequest.newBuilder(URI.create("http://localhost:" + server.port() + path)).build(),
        HttpResponse.BodyHandlers.ofString(StandardCharsets.UTF_8));
  }

  private static Map<String, String> crawl() throws Exception {
    Map<String, String> found = new LinkedHashMap<>();
    Map<String, Integer> perShape = new LinkedHashMap<>();
    Deque<String> waiting = new ArrayDeque<>(List.of("/", "/start", "/c/" + cid));
    List<String> seen = new ArrayList<>(waiting);
    Pattern link = Pattern.compile("(?:href|src)=\"(/[^\"#]*)");
    while (!waiting.isEmpty()) {
      String path = waiting.poll();
      var answer = get(path);
      assertThat(answer.statusCode()).as(path).isEqualTo(200);
      if (answer.headers().firstValue("Content-Type").orElse("").startsWith("text/html")) {
        found.put(path, answer.body());
        Matcher matcher = link.matcher(answer.body());
        while (matcher.find()) {
          String next = matcher.group(1).replace("&amp;", "&");
          // A few pages of one kind say what the others would.
          String shape =
              next.replaceAll(
                  "(runs|tests)/[^/?]+(/[a-z.]+)?.*|(products|settings|entries|verdict|frozen|curve)/.*"
                      + "|(files|log[.a-z]*|photo|picture|bench|plan|record|sort)\\?.*",
                  "*$1$2$3$4");
          if (!seen.contains(next) && perShape.merge(shape, 1, Integer::sum) <= 3) {
            seen.add(next);
            waiting.add(next);
          }
        }
      }
    }
    return found;
  }

  @Test
  void allStagesAreReachedAndAllLinksAlive() {
    assertThat(pages.keySet())
        .contains(
            "/c/" + cid + "/products",
            "/c/" + cid + "/method",
            "/c/" + cid + "/bench",
            "/c/" + cid + "/verdict",
            "/c/" + cid + "/record");
    assertThat(pages).hasSizeGreaterThan(20);
  }

  /** Validated by the Nu HTML checker (nu.validator 20.7.2). */
  @Test
  void theHtmlIsValid() throws Exception {
    EmbeddedValidator validator = new EmbeddedValidator();
    validator.setOutputFormat(EmbeddedValidator.OutputFormat.JSON);
    List<String> errors = new ArrayList<>();
    for (var page : pages.entrySet()) {
      String answer =
          validator.validate(
              new ByteArrayInputStream(page.getValue().getBytes(StandardCharsets.UTF_8)));
      for (JsonNode message : JSON.readTree(answer).path("messages")) {
        if (message.path("type").asString("").equals("error")) {
          errors.add(
              page.getKey()
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
  void pagesAreSmallBeforePictures() {
    pages.forEach(
        (path, html) ->
            assertThat(html.getBytes(StandardCharsets.UTF_8).length).as(path).isLessThan(200_000));
  }

  @Test
  void aScoreLeadsToItsRunsAndARunToItsFiles() throws Exception {
    String verdict = pages.get("/c/" + cid + "/verdict");
    Matcher score =
        Pattern.compile("href=\"(/c/[^\"]*/verdict/[^\"]*\\?test=[^\"]*)\"").matcher(verdict);
    assertThat(score.find()).isTrue();
    String down = get(score.group(1)).body();
    assertThat(down).contains("Value curve of").contains("/runs/");
    Matcher run = Pattern.compile("href=\"(/c/[^\"]*/runs/[^\"]*)\"").matcher(down);
    assertThat(run.find()).isTrue();
    String runPage = get(run.group(1)).body();
    assertThat(runPage).contains("Measured");
    Matcher file = Pattern.compile("href=\"(/c/[^\"]*/files\\?path=[^\"]*)\"").matcher(runPage);
    assertThat(file.find()).isTrue();
    var bytes = get(file.group(1).replace("&amp;", "&"));
    assertThat(bytes.statusCode()).isEqualTo(200);
    assertThat(bytes.headers().firstValue("X-Content-Type-Options")).contains("nosniff");
  }

  @Test
  void otherPartsGiveOtherScoresAndTheVerdictStays() throws Exception {
    String verdict = pages.get("/c/" + cid + "/verdict");
    Matcher slider = Pattern.compile("name=\"(w\\.[^\"]*)\"").matcher(verdict);
    assertThat(slider.find()).isTrue();
    String weighed = get("/c/" + cid + "/verdict/weights?" + slider.group(1) + "=10").body();
    assertThat(weighed).contains("Score under your parts");
    assertThat(weighed.replaceAll("(?s).*<tbody>|</tbody>.*", ""))
        .isNotEqualTo(
            get("/c/" + cid + "/verdict/weights")
                .body()
                .replaceAll("(?s).*<tbody>|</tbody>.*", ""));
  }
}
