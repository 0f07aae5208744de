package ovenproof.publish;

import static org.assertj.core.api.Assertions.assertThat;

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
import ovenproof.publish.edition.Edition;
import ovenproof.web.Chromium;

/**
 * One page of each kind in a real browser: axe (WCAG 2.2 AA rules). All rules run once; the
 * document is the same at every width and in both schemes, so the others run again only where the
 * outcome depends on the layout or the colours.
 */
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
          "data/index.html",
          "standing.html",
          "corrections.html",
          "editions/1/index.html");

  @TempDir Path folder;

  @Test
  void axeFindsNothingAtThreeWidthsInLightAndDark() {
    Edition edition = SmallCampaign.edition(SmallCampaign.write(folder.resolve("campaign")));
    Path other = new Publisher().publish(edition, folder.resolve("other")).site();
    Path target = folder.resolve("site");
    Path root = new Publisher().publish(edition, target, target, null, List.of(other)).site();
    List<String> found = new ArrayList<>();
    try (Playwright playwright = Chromium.driver();
        Browser browser = playwright.chromium().launch(options())) {
      BrowserContext context = browser.newContext();
      Page page = context.newPage();
      String axe = Chromium.axe();
      page.setContent("<html lang=en><title>planted</title><main><img src=x></main></html>");
      page.evaluate(axe);
      List<String> planted = new ArrayList<>();
      check(page, "planted", true, planted);
      assertThat(planted).anyMatch(v -> v.contains("image-alt"));
      for (String path : PAGES) {
        page.setViewportSize(390, 900);
        page.navigate(root.resolve(path).toUri().toString());
        page.evaluate(axe);
        visit(page, path, found);
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

  private static void visit(Page page, String path, List<String> found) {
    boolean whole = true;
    for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
      page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
      for (int width : new int[] {390, 820, 1440}) {
        page.setViewportSize(width, 900);
        String where = path + " at " + width + " " + scheme;
        check(page, where, whole, found);
        whole = false;
        keep(page, path, scheme, width);
      }
    }
  }

  private static void check(Page page, String where, boolean whole, List<String> found) {
    Chromium.violations(page, whole ? List.of() : Chromium.RULES_OF_THE_LAYOUT)
        .forEach(v -> found.add(where + ": " + v));
    Object wider = page.evaluate("document.documentElement.scrollWidth - innerWidth");
    if (((Number) wider).intValue() > 0) {
      found.add(where + ": the page is " + wider + " px wider than the screen");
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
