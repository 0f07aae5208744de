package ovenproof.photopage;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.BoundingBox;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.campaign.Photo;
import ovenproof.desk.DatabaseKind;
import ovenproof.desk.Desk;
import ovenproof.tracepage.HeatedDesk;
import ovenproof.web.Chromium;
import ovenproof.web.WebServer;

/** Curves and outlines in a real browser: by mouse, by keys, at three widths, light and dark. */
class OutlineBrowserTest {
  private static final String C = "/c/" + HeatedDesk.CID;
  private static final String PAGE = C + "/photo?path=" + HeatedDesk.PHOTO;

  private static final String TRACE = C + "/runs/alder-1/trace";

  @TempDir static Path folder;
  private static Desk desk;
  private static WebServer server;
  private static Playwright playwright;
  private static Browser browser;

  @BeforeAll
  static void open() throws Exception {
    desk = DatabaseKind.SQLITE.open(folder);
    HeatedDesk.fill(desk);
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

  private static BrowserContext context(int width, ColorScheme scheme) {
    BrowserContext context =
        browser.newContext(
            new Browser.NewContextOptions()
                .setViewportSize(width, 900)
                .setColorScheme(scheme)
                .setBaseURL("http://localhost:" + server.port()));
    context.setDefaultTimeout(60_000);
    return context;
  }

  @Test
  void everyPageIsSoundAtEveryWidthInBothThemes() {
    List<String> found = new ArrayList<>();
    found.addAll(
        sound(
            390,
            ColorScheme.DARK,
            List.of(
                TRACE,
                C + "/tests/heat/traces",
                C + "/log?path=runs/alder-1/log.csv",
                C + "/traces",
                PAGE,
                C + "/tests/heat/photos")));
    found.addAll(sound(820, ColorScheme.LIGHT, List.of(TRACE)));
    found.addAll(sound(1440, ColorScheme.LIGHT, List.of(PAGE)));
    assertThat(found).isEmpty();
  }

  private static List<String> sound(int width, ColorScheme scheme, List<String> paths) {
    List<String> found = new ArrayList<>();
    try (BrowserContext context = context(width, scheme)) {
      Page page = context.newPage();
      page.onConsoleMessage(
          m -> {
            if (m.type().equals("error")) {
              found.add(width + ": " + m.text());
            }
          });
      for (String path : paths) {
        page.navigate(path);
        new AxeBuilder(page)
            .analyze()
            .getViolations()
            .forEach(
                v ->
                    found.add(
                        width
                            + " "
                            + path
                            + " "
                            + v.getId()
                            + ": "
                            + v.getNodes().get(0).getHtml()));
        Object sideways =
            page.evaluate(
                "document.documentElement.scrollWidth - document.documentElement.clientWidth");
        if (((Number) sideways).intValue() > 0) {
          found.add(width + " " + path + " scrolls sideways");
        }
      }
    }
    return found;
  }

  @Test
  void aMarkOpensItsDefinitionAndTheCurveIsSeenLarge() {
    try (BrowserContext context = context(1440, ColorScheme.LIGHT)) {
      Page page = context.newPage();
      page.navigate(TRACE);
      page.locator(".heat-chart a[href='#m-highest']").focus();
      page.keyboard().press("Enter");
      page.waitForCondition(() -> page.locator("#m-highest").isVisible());
      page.locator("#at").focus();
      String before = page.locator("#answer").textContent();
      for (int i = 0; i < 30; i++) {
        page.keyboard().press("ArrowLeft");
      }
      page.waitForCondition(() -> !page.locator("#answer").textContent().equals(before));
      page.getByText("Look closer").click();
      page.waitForSelector(".uplot canvas");
      page.getByText("Closer", new Page.GetByTextOptions().setExact(true)).click();
      assertThat(page.locator(".uplot .u-legend").textContent()).contains("centre");
    }
  }

  @Test
  void outlinesAreMovedSplitMergedDeletedNamedAndKept() {
    try (BrowserContext context = context(1440, ColorScheme.LIGHT)) {
      Page page = context.newPage();
      page.navigate(PAGE);
      assertThat(page.locator(".edge").count()).isEqualTo(4);
      String first = line(page, 0);
      drag(page);
      assertThat(line(page, 0)).isNotEqualTo(first);
      page.getByText("Split it").click();
      assertThat(page.locator(".edge").count()).isEqualTo(5);
      page.getByText("Merge with…").click();
      page.locator(".edge").nth(1).focus();
      page.keyboard().press("Enter");
      assertThat(page.locator(".edge").count()).isEqualTo(4);
      // By keys alone: choose, move by one pixel or more, take a corner away.
      page.locator(".edge").nth(2).focus();
      page.keyboard().press("Enter");
      String third = line(page, 2);
      page.keyboard().press("ArrowRight");
      assertThat(line(page, 2)).isNotEqualTo(third);
      int corners = page.locator(".corner").count();
      page.locator(".corner").first().focus();
      page.keyboard().press("Delete");
      assertThat(page.locator(".corner").count()).isEqualTo(corners - 1);
      page.locator("#piece-name").fill("the third one");
      page.locator("#piece-name").press("Tab");
      page.locator(".edge").nth(3).focus();
      page.keyboard().press("Enter");
      page.getByText("Delete it").click();
      page.locator("#why").fill("one was eaten");
      page.getByText("Keep the outlines").click();
      page.waitForSelector(".pieces");
    }
    Photo kept = desk.load(HeatedDesk.CID).photos().get(0);
    assertThat(kept.outlines()).extracting(Photo.Drawn::piece).hasSize(3).contains("the-third-one");
    assertThat(kept.note()).isEqualTo("one was eaten");
  }

  private static void drag(Page page) {
    BoundingBox box = page.locator(".edge").first().boundingBox();
    page.mouse().move(box.x + box.width / 2, box.y + box.height / 3);
    page.mouse().down();
    page.mouse().move(box.x + box.width / 2 + 20, box.y + box.height / 3 + 14);
    page.mouse().move(box.x + box.width / 2 + 30, box.y + box.height / 3 + 20);
    page.mouse().up();
  }

  private static String line(Page page, int piece) {
    return page.locator("#outlines").inputValue().split("\n")[piece];
  }
}
