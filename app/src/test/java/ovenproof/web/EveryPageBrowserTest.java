package ovenproof.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Run;
import ovenproof.desk.DatabaseKind;
import ovenproof.desk.Desk;
import ovenproof.desk.FolderImport;
import ovenproof.files.CampaignFolder;
import ovenproof.publish.SmallCampaign;

/**
 * One page of each kind, as somebody meets it who uses the keyboard or a screen reader: every
 * control can be reached and shows that it is, and has a name; axe (WCAG 2.2 AA) finds nothing at
 * three widths in light and dark.
 */
class EveryPageBrowserTest {
  @TempDir static Path folder;

  private static Chromium browser;
  private static Desk desk;
  private static WebServer server;
  private static String home;
  private static List<String> pages;

  @BeforeAll
  static void bringInACampaign() throws Exception {
    desk = DatabaseKind.SQLITE.open(folder.resolve("desk"));
    Path written = SmallCampaign.write(folder.resolve("campaign"));
    String cid = new FolderImport(desk, CampaignFolder.withAllMeasures()).take(written, "lead");
    home = "/c/" + cid;
    pages = pages(desk.load(cid));
    server = WebServer.start(desk, 0);
    browser = new Chromium();
  }

  @AfterAll
  static void close() {
    browser.close();
    server.close();
    desk.close();
  }

  /** All pages of the stages, and one of each kind beneath them. */
  private static List<String> pages(Campaign c) {
    List<String> all = new ArrayList<>(List.of("/", "/start", "/new", "/no-such-page", home));
    Stage.shown().forEach(s -> s.pages().forEach(p -> all.add(home + p.path())));
    Run run = c.runs().get(0);
    String product = c.products().get(0).id();
    all.add(home + "/products/" + product);
    all.add(home + "/settings/" + product + "/" + run.test());
    all.add(home + "/runs/" + run.id());
    all.add(home + "/runs/" + run.id() + "/photos");
    all.add(home + "/tests/" + run.test() + "/photos");
    all.add(home + "/tests/" + run.test() + "/strip");
    all.add(home + "/verdict/" + product);
    all.add(home + "/verdict/questions/worth");
    all.add(home + "/features");
    return all;
  }

  private static void open(Page page, String path) {
    page.navigate(path);
    page.waitForCondition(() -> page.locator("#working, [data-waiting]").count() == 0);
  }

  @Test
  void everyControlIsReachedShowsItAndHasAName() {
    List<String> found = new ArrayList<>();
    try (Page page = browser.page(server.port(), 1440)) {
      for (String path : pages) {
        open(page, path);
        page.keyboard().press("Tab");
        ((List<?>) page.evaluate(FOCUS)).forEach(f -> found.add(path + ": " + f));
      }
    }
    assertThat(found).isEmpty();
  }

  /**
   * Focuses whatever can be focused and compares its looks before and after. A focus that was
   * reached by script shows as one by keyboard, because the last key was Tab.
   */
  private static final String FOCUS =
      """
      () => {
        const looks = e => {
          const s = getComputedStyle(e);
          return [s.outlineStyle, s.outlineWidth, s.outlineColor, s.stroke, s.fill, s.strokeWidth,
            s.boxShadow, s.left, s.opacity].join();
        };
        const inside = e => [e, ...e.querySelectorAll('circle, path, rect')].map(looks).join(';');
        const told = e => e.outerHTML.slice(0, 160);
        const found = [];
        for (const e of document.querySelectorAll('details')) { e.open = true; }
        const all = document.querySelectorAll(
          'a[href], button, input:not([type=hidden]), select, textarea, summary, [tabindex]');
        for (const e of all) {
          if (!e.checkVisibility({visibilityProperty: true}) || e.disabled || e.hidden) { continue; }
          if (e.tabIndex > 0) { found.push('order of its own: ' + told(e)); }
          if (e.tabIndex < 0) { continue; }
          if (document.activeElement) { document.activeElement.blur(); }
          const before = inside(e);
          e.focus();
          if (document.activeElement !== e) { found.push('not reached: ' + told(e)); continue; }
          if (before === inside(e)) { found.push('does not show its focus: ' + told(e)); }
        }
        return found;
      }
      """;

  /** Tab alone, from the top to the end: everything comes once, nothing holds the focus. */
  @Test
  void tabGoesThroughAPageAndOutOfIt() {
    try (Page page = browser.page(server.port(), 1440)) {
      for (String path : List.of("/start", home + "/verdict", home + "/features")) {
        open(page, path);
        int stops = 0;
        String at = "";
        do {
          page.keyboard().press("Tab");
          at = String.valueOf(page.evaluate(AT));
          stops++;
        } while (!at.equals("out") && stops < 400);
        assertThat(at).as("the focus leaves " + path + " at its end").isEqualTo("out");
        int there = ((Number) page.evaluate("window.allStops()")).intValue();
        assertThat(stops - 1).as("stops of " + path).isEqualTo(there);
      }
    }
  }

  private static final String AT =
      """
      () => {
        window.allStops = () => {
          const groups = new Set();
          return [...document.querySelectorAll(
            'a[href], button, input:not([type=hidden]), select, textarea, summary, [tabindex="0"]')]
            .filter(e => e.checkVisibility({visibilityProperty: true}) && !e.disabled)
            .filter(e => e.type !== 'radio' || !groups.has(e.name) && groups.add(e.name)).length;
        };
        return document.activeElement && document.activeElement !== document.body
          ? document.activeElement.outerHTML.slice(0, 80) : 'out';
      }
      """;

  @Test
  void axeFindsNothingAtThreeWidthsInLightAndDark() {
    List<String> found = new ArrayList<>();
    String axe = Chromium.axe();
    try (Page page = browser.page(server.port(), 390)) {
      for (String path : pages) {
        open(page, path);
        page.evaluate(axe);
        look(page, path, 390, ColorScheme.LIGHT, List.of(), found);
        look(page, path, 820, ColorScheme.LIGHT, SHAPES, found);
        look(page, path, 1440, ColorScheme.LIGHT, SHAPES, found);
        look(page, path, 1440, ColorScheme.DARK, Chromium.RULES_OF_THE_LAYOUT, found);
        look(page, path, 820, ColorScheme.DARK, SHAPES, found);
        look(page, path, 390, ColorScheme.DARK, SHAPES, found);
      }
    }
    assertThat(found).isEmpty();
  }

  /** Rules of size alone: contrast was looked at in the same colours at another width. */
  private static final List<String> SHAPES = List.of("target-size", "scrollable-region-focusable");

  private static void look(
      Page page,
      String path,
      int width,
      ColorScheme scheme,
      List<String> rules,
      List<String> found) {
    page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
    page.setViewportSize(width, 900);
    String where = path + " at " + width + " " + scheme.name().toLowerCase(Locale.ROOT) + ": ";
    Chromium.violations(page, rules).forEach(v -> found.add(where + v));
    Number wider =
        (Number)
            page.evaluate(
                "document.documentElement.scrollWidth - document.documentElement.clientWidth");
    if (wider.intValue() > 0) {
      found.add(where + "scrolls sideways by " + wider);
    }
  }
}
