package ovenproof.publish;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.deque.html.axecore.results.Rule;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The site in a real browser: axe (WCAG 2.2 AA rules) at three widths, in light and dark. */
class SiteAccessibilityTest {
  private static final List<String> PAGES =
      List.of(
          "index.html",
          "products/dunnock.html",
          "tests/toast.html",
          "tests/poultry.html",
          "method.html",
          "evidence/index.html",
          "evidence/scores/alder/toast.html",
          "evidence/runs/alder-toast-2.html",
          "data/index.html");

  @TempDir Path folder;

  @Test
  void axeFindsNothingAtThreeWidthsInLightAndDark() {
    Path root =
        new Publisher()
            .publish(
                SmallCampaign.edition(SmallCampaign.write(folder.resolve("campaign"))),
                folder.resolve("site"))
            .site();
    List<String> found = new ArrayList<>();
    try (Playwright playwright = Playwright.create();
        Browser browser = playwright.chromium().launch(options())) {
      for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
        for (int width : new int[] {390, 820, 1440}) {
          visit(browser, root, scheme, width, found);
        }
      }
    }
    assertThat(found).isEmpty();
  }

  private static BrowserType.LaunchOptions options() {
    return new BrowserType.LaunchOptions()
        .setExecutablePath(Path.of("/usr/bin/chromium"))
        .setChromiumSandbox(false)
        .setArgs(
            List.of(
                "--disable-gpu",
                "--disable-quic",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--allow-file-access-from-files"));
  }

  private static void visit(
      Browser browser, Path root, ColorScheme scheme, int width, List<String> found) {
    try (BrowserContext context =
        browser.newContext(
            new Browser.NewContextOptions().setViewportSize(width, 900).setColorScheme(scheme))) {
      Page page = context.newPage();
      for (String path : PAGES) {
        page.navigate(root.resolve(path).toUri().toString());
        String where = path + " at " + width + " " + scheme;
        for (Rule rule : new AxeBuilder(page).analyze().getViolations()) {
          found.add(where + ": " + rule.getId() + " " + rule.getNodes().get(0).getHtml());
        }
        Object wider = page.evaluate("document.documentElement.scrollWidth - innerWidth");
        if (((Number) wider).intValue() > 0) {
          found.add(where + ": the page is " + wider + " px wider than the screen");
        }
        keep(page, path, scheme, width);
      }
    }
  }

  /** Pictures for a person to look at, when asked for. */
  private static void keep(Page page, String path, ColorScheme scheme, int width) {
    String keep = System.getProperty("ovenproof.shots");
    if (keep != null) {
      String name = path.replace('/', '_').replace(".html", "") + "-" + width + "-" + scheme;
      page.screenshot(
          new Page.ScreenshotOptions()
              .setFullPage(true)
              .setPath(Path.of(keep, name.toLowerCase(java.util.Locale.ROOT) + ".png")));
    }
  }
}
