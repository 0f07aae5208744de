package ovenproof.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import ovenproof.desk.DatabaseKind;
import ovenproof.desk.Desk;
import ovenproof.desk.FolderImport;
import ovenproof.files.CampaignFolder;
import ovenproof.publish.SmallCampaign;

/** A draft is written beside its proof, and an inquiry is answered, in a real browser. */
class DraftBrowserTest {
  @TempDir static Path folder;

  private static Playwright playwright;
  private static Browser browser;
  private static Desk desk;
  private static WebServer server;
  private static String cid;

  @BeforeAll
  static void open() {
    desk = DatabaseKind.SQLITE.open(folder.resolve("desk"));
    Path written = SmallCampaign.write(folder.resolve("campaign"));
    cid = new FolderImport(desk, CampaignFolder.withAllMeasures()).take(written, "lead");
    server = WebServer.start(desk, 0);
    playwright = Chromium.driver();
    browser = playwright.chromium().launch(Chromium.options());
  }

  @AfterAll
  static void close() {
    browser.close();
    playwright.close();
    server.close();
    desk.close();
  }

  @ParameterizedTest
  @CsvSource({"390, DARK", "820, LIGHT", "1440, LIGHT"})
  void aDraftIsReadWhileItIsWrittenAndAnInquiryIsAnswered(int width, ColorScheme scheme)
      throws Exception {
    try (BrowserContext context =
        browser.newContext(
            new Browser.NewContextOptions()
                .setViewportSize(width, 900)
                .setColorScheme(scheme)
                .setBaseURL("http://localhost:" + server.port()))) {
      Page page = context.newPage();
      page.setDefaultTimeout(60_000);
      List<String> faults = new ArrayList<>();
      page.onPageError(faults::add);
      page.onConsoleMessage(
          m -> {
            if (m.type().equals("error") && !m.text().contains("422")) {
              faults.add(m.text());
            }
          });
      String where = width + "-" + scheme.name().toLowerCase(java.util.Locale.ROOT);
      page.navigate("/c/" + cid + "/draft");
      page.waitForSelector("#text");
      write(page);
      page.getByText("Save", new Page.GetByTextOptions().setExact(true)).click();
      page.waitForSelector("details >> text=Revisions");
      assertThat(page.locator("#text").inputValue()).contains("{alder/score}");
      sound(page, "draft-saved", where);
      page.navigate("/c/" + cid + "/inquiries");
      page.getByText("Open the inquiry").click();
      assertThat(page.locator(".error").first().textContent()).contains("Nothing here yet");
      sound(page, "inquiry-wrong", where);
      page.locator("#words").fill("Our oven is faster " + where + ".");
      page.locator("#product").selectOption("siskin");
      page.locator("#runs").fill("siskin-toast-1");
      page.locator("#deadline").fill("2026-04-15");
      page.getByText("Open the inquiry").click();
      assertThat(page.locator("main").textContent())
          .contains("Our oven is faster " + where)
          .contains("overdue since 2026-04-15");
      sound(page, "inquiry", where);
      page.navigate("/c/" + cid + "/record");
      assertThat(page.locator("main").textContent()).contains("inquiry siskin").contains("draft");
      sound(page, "record", where);
      assertThat(faults).isEmpty();
    }
  }

  @Test
  void aReviewIsPublishedWithItsProgressAndItsEditionStaysReachable() throws Exception {
    try (BrowserContext context =
        browser.newContext(
            new Browser.NewContextOptions()
                .setViewportSize(390, 900)
                .setBaseURL("http://localhost:" + server.port()))) {
      Page page = context.newPage();
      page.setDefaultTimeout(60_000);
      List<String> faults = new ArrayList<>();
      page.onPageError(faults::add);
      page.navigate("/c/" + cid + "/publish");
      page.waitForSelector("#why");
      assertThat(page.locator("h1").textContent()).isEqualTo("Not published yet");
      sound(page, "publish", "390");
      page.locator("form button.go").click();
      page.waitForURL("**/jobs/*");
      page.getByText("Go on").click();
      assertThat(page.locator("h1").textContent()).isEqualTo("The published review stands");
      assertThat(page.locator("main").textContent()).contains("Edition 1").contains("narration.md");
      sound(page, "published", "390");
      page.getByText("Edition 1, ").click();
      assertThat(page.url()).endsWith("/site/editions/1/index.html");
      page.navigate("/c/" + cid + "/site/");
      assertThat(page.locator("h1").textContent()).contains("Alder");
      assertThat(page.evaluate("getComputedStyle(document.body).fontFamily").toString())
          .contains("Sofia Sans");
      assertThat(page.request().get("/c/" + cid + "/publish/kit.zip").body())
          .startsWith('P', 'K', 3, 4);
      for (String outside :
          List.of("site/..%2f..%2fdesk.db", "site/../../desk.db", "kit/..%5csite%5cindex.html")) {
        assertThat(page.request().get("/c/" + cid + "/" + outside).status())
            .as(outside)
            .isGreaterThanOrEqualTo(400);
      }
      assertThat(faults).isEmpty();
    }
  }

  private static void write(Page page) {
    page.locator("#text")
        .fill(
            "# Which oven?\n\nAlder scored {alder/score} out of 10. Siskin scored 9.9 out of 10.\n"
                + "**Rowan** needs {rowan/toast/time}. <script>alert(1)</script> {alder/speed}\n");
    page.waitForCondition(() -> page.locator("#proof mark.contradicted").count() > 0);
    assertThat(page.locator("#proof article").textContent())
        .contains("<script>alert(1)</script>")
        .doesNotContain("{alder/score}");
    assertThat(page.locator("#proof").textContent())
        .contains("Names that no figure has")
        .contains("{alder/speed}");
    page.locator("#proof mark.contradicted a.ref").first().click();
    page.getByText("figures by name").first().click();
    page.locator("#find-figure").fill("siskin/rank");
    page.locator("#insert-figure").click();
    assertThat(page.locator("#text").inputValue()).contains("{siskin/rank}");
  }

  private static void sound(Page page, String what, String where) throws Exception {
    String shots = System.getProperty("screenshots");
    if (shots != null) {
      Files.createDirectories(Path.of(shots));
      page.screenshot(
          new Page.ScreenshotOptions()
              .setPath(Path.of(shots, what + "-" + where + ".png"))
              .setFullPage(true));
    }
    List<String> found =
        new AxeBuilder(page)
            .analyze().getViolations().stream()
                .map(
                    v ->
                        v.getId()
                            + ": "
                            + v.getNodes().stream().map(n -> n.getHtml()).limit(3).toList())
                .toList();
    assertThat(found).as("axe on " + what + " at " + where).isEmpty();
    Object sideways =
        page.evaluate(
            "document.documentElement.scrollWidth - document.documentElement.clientWidth");
    assertThat(((Number) sideways).intValue())
        .as(what + " scrolls sideways")
        .isLessThanOrEqualTo(0);
  }
}
