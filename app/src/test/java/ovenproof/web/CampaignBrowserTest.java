package ovenproof.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import ovenproof.desk.DatabaseKind;
import ovenproof.desk.Desk;
import ovenproof.publish.SmallCampaign;

/**
 * Work on a whole campaign in a real browser: bring it in, weigh, follow a score, mend a method.
 */
class CampaignBrowserTest {
  private static Playwright playwright;
  private static Browser browser;

  @TempDir Path folder;

  @BeforeAll
  static void open() {
    playwright = Playwright.create();
    browser =
        playwright
            .chromium()
            .launch(
                new BrowserType.LaunchOptions()
                    .setExecutablePath(Path.of("/usr/bin/chromium"))
                    .setArgs(
                        List.of(
                            "--no-sandbox",
                            "--disable-gpu",
                            "--disable-quic",
                            "--no-first-run",
                            "--disable-background-networking",
                            "--disable-component-update",
                            "--disable-sync")));
  }

  @AfterAll
  static void close() {
    browser.close();
    playwright.close();
  }

  @ParameterizedTest
  @CsvSource({"SQLITE, 390, DARK", "SQLITE, 1440, LIGHT", "POSTGRESQL, 820, LIGHT"})
  void fromAFolderToAMendedMethod(DatabaseKind kind, int width, ColorScheme scheme)
      throws Exception {
    Path written = SmallCampaign.write(folder.resolve("campaign"));
    try (Desk desk = kind.open(folder.resolve("desk"));
        WebServer server = WebServer.start(desk, 0);
        BrowserContext context =
            browser.newContext(
                new Browser.NewContextOptions()
                    .setViewportSize(width, 900)
                    .setColorScheme(scheme)
                    .setBaseURL("http://localhost:" + server.port()))) {
      Page page = context.newPage();
      page.setDefaultTimeout(120_000);
      String where = kind.name().toLowerCase(java.util.Locale.ROOT) + "-" + width;
      page.navigate("/");
      page.locator("#folder").fill(written.toString());
      page.getByText("Bring in the folder").click();
      page.getByText("Open the campaign").click();
      String home = page.url();
      sound(page, "big-campaign", where);
      page.navigate(home + "/verdict");
      page.waitForSelector(".ranks");
      sound(page, "big-verdict", where);
      String before = page.locator("#yours tbody").textContent();
      page.locator(".weights input[type=range]").first().focus();
      for (int i = 0; i < 6; i++) {
        page.keyboard().press("ArrowRight");
      }
      page.waitForCondition(() -> !page.locator("#yours tbody").textContent().equals(before));
      page.locator(".matrix td a").first().click();
      page.waitForSelector("article");
      sound(page, "big-score", where);
      page.locator("article td a[href*='/runs/'], article th a[href*='/runs/']").first().click();
      page.waitForSelector(".files");
      sound(page, "big-run", where);
      assertThat(page.locator(".files a[href*='files?path=']").count()).isPositive();
      mendAMethod(page, home, where, desk);
      for (String stage : List.of("/products", "/bench", "/record")) {
        page.navigate(home + stage);
        sound(page, "big-" + stage.substring(1), where);
      }
      page.locator("body").evaluate("() => 0");
    }
  }

  private static void mendAMethod(Page page, String home, String where, Desk desk)
      throws Exception {
    page.navigate(home + "/method");
    sound(page, "big-method", where);
    String right = page.locator("#text").inputValue();
    page.locator("#text").fill(right.replaceFirst("parts: \\d+", "parts: many"));
    page.getByText("Keep it").click();
    assertThat(page.locator("[role=alert]").textContent()).contains("Line ");
    sound(page, "big-method-broken", where);
    assertThat(page.locator("#text").inputValue()).contains("parts: many");
    String changed =
        right
            .replaceFirst("(?m)^version: .*$", "version: \"77\"")
            .replaceFirst("parts: \\d+", "parts: 9");
    page.locator("#text").fill(changed);
    page.getByText("Look at the effect").click();
    assertThat(page.locator("main").textContent())
        .contains("What the change does")
        .contains("became 9");
    sound(page, "big-method-effect", where);
    page.locator("#why").fill("An invented reason");
    page.getByText("Keep it").click();
    assertThat(page.locator("h1").textContent()).contains("version 77");
    String id = desk.campaigns().get(0).id();
    assertThat(desk.document(id, "method").revision()).isEqualTo(2);
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
    var found =
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
