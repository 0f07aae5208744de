package ovenproof.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.desk.DatabaseKind;
import ovenproof.desk.Desk;

/**
 * A newcomer's path in a real browser: from nothing to a first score with the keyboard alone, on
 * both databases. On one of them every page is looked at in all widths, light and dark.
 */
class NewcomerBrowserTest {
  private static Chromium browser;

  @TempDir Path folder;

  @BeforeAll
  static void open() {
    browser = new Chromium();
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
  void fromNothingToAFirstScoreOnEveryWidth() throws IOException {
    path(DatabaseKind.SQLITE, 390, Chromium::sound);
  }

  @Test
  void theSameOnTheOtherDatabase() throws IOException {
    path(DatabaseKind.POSTGRESQL, 820, (page, what) -> {});
  }

  private void path(DatabaseKind kind, int width, Look look) throws IOException {
    try (Desk desk = kind.open(folder);
        WebServer server = WebServer.start(desk, 0);
        Page page = browser.page(server.port(), width)) {
      page.navigate("/");
      look.at(page, "home-empty");
      page.getByText("Start with one oven").click();
      look.at(page, "start");
      startWithTheKeyboardAlone(page);
      look.at(page, "run");
      page.locator("#at").fill("4 min");
      page.locator("button[value=stop]").click();
      assertThat(page.locator("table caption").first().textContent()).contains("saved");
      tasteTwice(page);
      assertThat(page.locator(".first-score").textContent()).contains("no rank");
      look.at(page, "first-score");
      String home = page.locator(".where a").getAttribute("href");
      for (String stage : List.of("", "/settings", "/plan", "/sort", "/verdict")) {
        page.navigate(home + stage);
        look.at(page, stage.isEmpty() ? "first-campaign" : "first-" + stage.substring(1));
      }
      assertThat(browser.errors).isEmpty();
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
}
