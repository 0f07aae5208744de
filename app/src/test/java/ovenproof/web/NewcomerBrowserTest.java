package ovenproof.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import ovenproof.desk.DatabaseKind;
import ovenproof.desk.Desk;

/**
 * A newcomer's path in a real browser: from nothing to a first score, on a phone, a tablet and a
 * desktop, light and dark, with the keyboard alone, on both databases. Every page passes axe, has
 * no sideways scrolling, and no script error.
 */
class NewcomerBrowserTest {
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
  @CsvSource({
    "SQLITE, 390, LIGHT",
    "SQLITE, 820, DARK",
    "SQLITE, 1440, LIGHT",
    "POSTGRESQL, 390, DARK",
    "POSTGRESQL, 1440, DARK"
  })
  void fromNothingToAFirstScore(DatabaseKind kind, int width, ColorScheme scheme)
      throws IOException {
    try (Desk desk = kind.open(folder);
        WebServer server = WebServer.start(desk, 0);
        BrowserContext context =
            browser.newContext(
                new Browser.NewContextOptions()
                    .setViewportSize(width, 900)
                    .setColorScheme(scheme)
                    .setBaseURL("http://localhost:" + server.port()))) {
      Page page = context.newPage();
      page.setDefaultTimeout(60_000);
      List<String> errors = new ArrayList<>();
      page.onPageError(errors::add);
      page.onConsoleMessage(
          m -> {
            if (m.type().equals("error") && !m.text().contains("Failed to load resource")) {
              errors.add(m.text());
            }
          });
      String name = kind.name().toLowerCase(java.util.Locale.ROOT) + "-" + width;
      page.navigate("/");
      sound(page, "home-empty", name);
      page.getByText("Start with one oven").click();
      sound(page, "start", name);
      startWithTheKeyboardAlone(page);
      sound(page, "run", name);
      page.getByLabel("Since the start", new Page.GetByLabelOptions().setExact(true))
          .last()
          .fill("4 min");
      page.locator("button[value=stop]").click();
      assertThat(page.locator("table caption").first().textContent()).contains("saved");
      tasteTwice(page);
      assertThat(page.locator(".first-score").textContent()).contains("no rank");
      sound(page, "first-score", name);
      String home = page.locator(".where a").getAttribute("href");
      for (String stage : List.of("", "/products", "/method", "/bench", "/verdict", "/record")) {
        page.navigate(home + stage);
        sound(page, stage.isEmpty() ? "campaign" : stage.substring(1), name);
      }
      assertThat(errors).isEmpty();
    }
  }

  /** Tab, type, arrow, Enter: nobody touches a mouse. */
  private static void startWithTheKeyboardAlone(Page page) {
    page.locator("#oven").focus();
    page.keyboard().type("Alder");
    page.keyboard().press("Enter");
    assertThat(page.locator("#dial-error").textContent()).contains("Expected");
    assertThat(page.locator("#oven").inputValue()).isEqualTo("Alder");
    page.locator("#oven").focus();
    page.keyboard().press("Tab");
    assertThat(page.evaluate("document.activeElement.id")).isEqualTo("test");
    page.keyboard().press("Tab");
    assertThat(page.evaluate("document.activeElement.id")).isEqualTo("dial");
    page.keyboard().type("shade 4");
    page.keyboard().press("Enter");
    page.waitForURL("**/runs/**");
  }

  private static void tasteTwice(Page page) {
    int marks = page.locator("#mark option").count();
    for (int i = 0; i < Math.min(2, marks); i++) {
      page.locator("#mark").selectOption(page.locator("#mark option").nth(i).getAttribute("value"));
      page.locator("#points").fill("7");
      page.locator("#assessor").fill("A1");
      page.getByText("Save the mark").click();
    }
  }

  /** axe finds nothing, nothing scrolls sideways, pictures are kept for whoever wants to look. */
  private static void sound(Page page, String what, String where) throws IOException {
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
