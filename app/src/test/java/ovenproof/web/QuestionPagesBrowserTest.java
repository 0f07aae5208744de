package ovenproof.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import nu.validator.client.EmbeddedValidator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.desk.DatabaseKind;
import ovenproof.desk.Desk;
import ovenproof.desk.FolderImport;
import ovenproof.files.CampaignFolder;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The verdict's questions, the years and the tastings in a real browser. */
class QuestionPagesBrowserTest {
  private static final EmbeddedValidator VALIDATOR = validator();

  @TempDir Path folder;

  private static EmbeddedValidator validator() {
    EmbeddedValidator validator = new EmbeddedValidator();
    validator.setOutputFormat(EmbeddedValidator.OutputFormat.JSON);
    return validator;
  }

  @Test
  void everyQuestionHasASoundPage() throws Exception {
    Path written =
        Path.of(
            QuestionPagesBrowserTest.class
                .getResource("/ovenproof/verdict/three-tasted-ovens")
                .toURI());
    try (Desk desk = DatabaseKind.SQLITE.open(folder.resolve("desk"));
        WebServer server = WebServer.start(desk, 0);
        Playwright playwright = Chromium.driver();
        Browser browser = playwright.chromium().launch(Chromium.options());
        BrowserContext context =
            browser.newContext(
                new Browser.NewContextOptions()
                    .setViewportSize(820, 900)
                    .setBaseURL("http://localhost:" + server.port()))) {
      String cid = new FolderImport(desk, CampaignFolder.withAllMeasures()).take(written, "lead");
      Page page = context.newPage();
      page.setDefaultTimeout(60_000);
      List<String> refused = new ArrayList<>();
      page.onConsoleMessage(
          m -> {
            if (m.text().contains("Content Security Policy")) {
              refused.add(m.text());
            }
          });
      String home = "/c/" + cid;
      page.navigate(home + "/verdict");
      page.waitForSelector(".ranks");
      for (String question :
          List.of("unseat", "acceptability", "own-scatter", "drop-assessor", "worth")) {
        page.navigate(home + "/verdict/questions/" + question);
        page.waitForSelector("#h-answer");
        assertThat(page.locator("main").textContent()).as(question).isNotBlank();
      }
      sound(page, "question");
      page.navigate(home + "/verdict/questions");
      sound(page, "questions");
      page.locator("#m-a").focus();
      page.locator("main button", new Page.LocatorOptions().setHasText("Count")).click();
      page.waitForSelector("#h-answer");
      assertThat(page.locator("h1").textContent()).contains("How many more runs would split");
      page.navigate(home + "/verdict/compare");
      sound(page, "compare");
      assertThat(page.locator("#h-why").count()).isEqualTo(1);
      assertThat(page.locator("main").textContent()).contains("What was measured");
      page.navigate(home + "/verdict/years");
      page.locator("main button", new Page.LocatorOptions().setHasText("Chart")).click();
      page.waitForSelector("#h-reference");
      sound(page, "years");
      page.locator("main button", new Page.LocatorOptions().setHasText("Score again")).click();
      page.waitForSelector("#h-answer");
      assertThat(page.locator("main").textContent()).contains("stays as it was");
      page.navigate(home + "/panel");
      sound(page, "panel");
      String taster = desk.load(cid).ratings().get(0).assessor();
      assertThat(page.content()).doesNotContain(taster);
      page.navigate(home + "/panel/tasters");
      sound(page, "tasters");
      assertThat(page.locator("main").textContent()).contains(taster);
      page.locator("#who").selectOption("TASTER");
      page.locator(".who button").click();
      page.navigate(home + "/panel/tasters");
      assertThat(page.locator("main").textContent())
          .contains("for the lead")
          .doesNotContain(taster);
      assertThat(refused).isEmpty();
    }
  }

  /** Nothing for axe to say, no sideways scrolling, valid HTML as the server sent it. */
  private static void sound(Page page, String what) throws Exception {
    String shots = System.getProperty("screenshots");
    if (shots != null) {
      Files.createDirectories(Path.of(shots));
      page.screenshot(
          new Page.ScreenshotOptions()
              .setPath(Path.of(shots, "ask-" + what + ".png"))
              .setFullPage(true));
    }
    var violations =
        new AxeBuilder(page)
            .analyze().getViolations().stream()
                .map(
                    v ->
                        v.getId()
                            + ": "
                            + v.getNodes().stream().map(n -> n.getHtml()).limit(3).toList())
                .toList();
    assertThat(violations).as("axe on " + what).isEmpty();
    Object sideways =
        page.evaluate(
            "document.documentElement.scrollWidth - document.documentElement.clientWidth");
    assertThat(((Number) sideways).intValue()).as(what + " scrolls sideways").isNotPositive();
    String html = page.request().get(page.url()).text();
    String answer =
        VALIDATOR.validate(new ByteArrayInputStream(html.getBytes(StandardCharsets.UTF_8)));
    List<String> errors = new ArrayList<>();
    for (JsonNode message : new JsonMapper().readTree(answer).path("messages")) {
      if (message.path("type").asString("").equals("error")) {
        errors.add(message.path("message").asString("") + message.path("extract").asString(""));
      }
    }
    assertThat(errors).as("HTML of " + what).isEmpty();
  }
}
