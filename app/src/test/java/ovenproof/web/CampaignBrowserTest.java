package ovenproof.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.desk.DatabaseKind;
import ovenproof.desk.Desk;
import ovenproof.publish.SmallCampaign;

/**
 * Work on a whole campaign in a real browser, on both databases: bring it in, weigh, follow a score
 * to its file, move a value curve, mend a method. On one of them every page of the way is looked at
 * in all widths, light and dark; {@link EveryPageBrowserTest} looks at all others.
 */
class CampaignBrowserTest {
  private static Chromium browser;

  @TempDir static Path folder;

  private static Path written;

  @BeforeAll
  static void open() throws Exception {
    browser = new Chromium();
    written = SmallCampaign.write(folder.resolve("campaign"));
  }

  @AfterAll
  static void close() {
    browser.close();
  }

  /** What is done with each page on the way. */
  private interface Look {
    void at(Page page, String what) throws IOException;
  }

  @Test
  void fromAFolderToAMendedMethodOnEveryWidth() throws Exception {
    path(DatabaseKind.SQLITE, 1440, Chromium::sound);
  }

  @Test
  void theSameOnTheOtherDatabase() throws Exception {
    path(DatabaseKind.POSTGRESQL, 820, (page, what) -> {});
  }

  private static void path(DatabaseKind kind, int width, Look look) throws Exception {
    try (Desk desk = kind.open(folder.resolve("desk-" + kind));
        WebServer server = WebServer.start(desk, 0);
        Page page = browser.page(server.port(), width)) {
      page.navigate("/");
      page.locator("#folder").fill(written.toString());
      page.getByText("Bring in the folder").click();
      page.getByText("Open the campaign").click();
      String home = page.url();
      look.at(page, "campaign");
      weigh(page, home, look);
      downToTheFile(page, look);
      moveACurve(page, home, width, look);
      mendAMethod(page, home, look, desk);
      assertThat(browser.errors).isEmpty();
    }
  }

  private static void weigh(Page page, String home, Look look) throws IOException {
    page.navigate(home + "/verdict");
    page.waitForSelector(".ranks");
    look.at(page, "verdict");
    String before = page.locator("#yours tbody").textContent();
    page.locator(".weights input[type=range]").first().focus();
    for (int i = 0; i < 6; i++) {
      page.keyboard().press("ArrowRight");
    }
    page.waitForCondition(() -> !page.locator("#yours tbody").textContent().equals(before));
  }

  private static void downToTheFile(Page page, Look look) throws IOException {
    page.locator(".matrix td a").first().click();
    page.waitForSelector("article");
    look.at(page, "score");
    page.locator("article td a[href*='/runs/'], article th a[href*='/runs/']").first().click();
    page.waitForSelector(".files");
    look.at(page, "big-run");
    assertThat(page.locator(".files a[href*='files?path=']").count()).isPositive();
  }

  /** A corner by keyboard, then by pointer: the field and the picture follow. */
  private static void moveACurve(Page page, String home, int width, Look look) throws IOException {
    page.navigate(home + "/method");
    page.locator("details.test summary").first().click();
    page.locator("details.test a[href*='/method/curve/']").first().click();
    page.waitForSelector(".curve-edit");
    look.at(page, "curve");
    page.setViewportSize(width, 900);
    Locator corner = page.locator(".handle").last();
    Locator field = page.locator("#" + corner.getAttribute("data-at"));
    String typed = field.inputValue();
    corner.focus();
    page.keyboard().press("ArrowLeft");
    assertThat(field.inputValue()).isNotEqualTo(typed);
    assertThat(corner.getAttribute("aria-valuetext")).startsWith(field.inputValue());
    String moved = field.inputValue();
    String path = page.locator(".curve-edit .curve").getAttribute("d");
    corner.scrollIntoViewIfNeeded();
    var box = corner.boundingBox();
    page.mouse().move(box.x + box.width / 2, box.y + box.height / 2);
    page.mouse().down();
    page.mouse().move(box.x + box.width / 2 - 60, box.y + box.height / 2);
    page.mouse().up();
    assertThat(field.inputValue()).isNotEqualTo(moved);
    assertThat(page.locator(".curve-edit .curve").getAttribute("d")).isNotEqualTo(path);
    page.getByText("Look at the effect").click();
    page.waitForSelector("#effect table");
    assertThat(page.locator("#change").textContent()).contains("the value curve changed");
    look.at(page, "method-effect");
  }

  private static void mendAMethod(Page page, String home, Look look, Desk desk) throws IOException {
    page.navigate(home + "/method");
    look.at(page, "method");
    String right = page.locator("#text").inputValue();
    page.locator("#text").fill(right.replaceFirst("parts: \\d+", "parts: many"));
    page.getByText("Keep the text").click();
    assertThat(page.locator("[role=alert]").textContent()).contains("Line ");
    look.at(page, "method-broken");
    assertThat(page.locator("#text").inputValue()).contains("parts: many");
    String changed =
        right
            .replaceFirst("(?m)^version: .*$", "version: \"77\"")
            .replaceFirst("parts: \\d+", "parts: 9");
    page.locator("#text").fill(changed);
    page.locator("form:has(#text) button[value=look]").click();
    assertThat(page.locator("main").textContent())
        .contains("What the change does")
        .contains("became 9");
    page.locator("#why").fill("An invented reason");
    page.locator("#change button[value=keep]").click();
    assertThat(page.locator("h1").textContent()).contains("version 77");
    String id = desk.campaigns().get(0).id();
    assertThat(desk.document(id, "method").revision()).isEqualTo(2);
  }
}
