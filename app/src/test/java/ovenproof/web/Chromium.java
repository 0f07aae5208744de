package ovenproof.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** A real browser, and what every page has to stand in it. */
public final class Chromium implements AutoCloseable {
  private static final int[] WIDTHS = {390, 820, 1440};

  private final Playwright playwright = driver();
  private final Browser browser = playwright.chromium().launch(options());

  /** Complaints of the page's own scripts, in the order they came. */
  final List<String> errors = new ArrayList<>();

  /** The driver alone; it fetches no browser of its own. */
  public static Playwright driver() {
    return Playwright.create(
        new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
  }

  /** The system's Chromium, quiet and without a sandbox, as builds that run as root need it. */
  public static BrowserType.LaunchOptions options() {
    return new BrowserType.LaunchOptions()
        .setExecutablePath(Path.of("/usr/bin/chromium"))
        .setArgs(
            List.of(
                "--no-sandbox",
                "--disable-gpu",
                "--disable-quic",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync"));
  }

  Page page(int port, int width) {
    Page page =
        browser
            .newContext(
                new Browser.NewContextOptions()
                    .setViewportSize(width, 900)
                    .setReducedMotion(com.microsoft.playwright.options.ReducedMotion.REDUCE)
                    .setBaseURL("http://localhost:" + port))
            .newPage();
    page.setDefaultTimeout(120_000);
    page.onPageError(errors::add);
    page.onConsoleMessage(
        m -> {
          if (m.type().equals("error") && !m.text().contains("Failed to load resource")) {
            errors.add(m.text());
          }
        });
    return page;
  }

  /**
   * Nothing scrolls sideways on phone, tablet and desktop, and axe finds nothing: on the phone in
   * light, on the desktop in dark. The page is resized, not loaded again. With {@code
   * -Dscreenshots=DIR} every width is kept in both schemes, and as it prints.
   */
  static void sound(Page page, String what) throws IOException {
    for (int width : WIDTHS) {
      page.setViewportSize(width, 900);
      Number sideways =
          (Number)
              page.evaluate(
                  "document.documentElement.scrollWidth - document.documentElement.clientWidth");
      assertThat(sideways.intValue())
          .as(what + " scrolls sideways at " + width)
          .isLessThanOrEqualTo(0);
      keep(page, what, width);
    }
    axe(page, what, 390, ColorScheme.LIGHT);
    axe(page, what, 1440, ColorScheme.DARK);
    page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.LIGHT));
  }

  private static void axe(Page page, String what, int width, ColorScheme scheme) {
    page.setViewportSize(width, 900);
    page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
    if (Boolean.FALSE.equals(page.evaluate("'axe' in window"))) {
      page.evaluate(axe());
    }
    assertThat(violations(page, List.of()))
        .as("axe on " + what + " at " + width + ", " + scheme)
        .isEmpty();
  }

  /** Rules whose outcome depends on width or colours; all others say the same at every width. */
  public static final List<String> RULES_OF_THE_LAYOUT =
      List.of("color-contrast", "target-size", "scrollable-region-focusable");

  /** The script of axe, to be evaluated in a page once. */
  public static String axe() {
    try (java.io.InputStream script = AxeBuilder.class.getResourceAsStream("/axe.min.js")) {
      return new String(
          java.util.Objects.requireNonNull(script).readAllBytes(),
          java.nio.charset.StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  /**
   * What axe finds. Only violations travel back: what it passed would be most of the time.
   *
   * @param rules those to run; all of them when empty
   */
  public static List<String> violations(Page page, List<String> rules) {
    Object found =
        page.evaluate(
            "async rules => {"
                + " const only = rules.length ? {runOnly: {type: 'rule', values: rules}} : {};"
                + " const r = await axe.run(document, {resultTypes: ['violations'], ...only});"
                + " return r.violations.map(v => v.id + ' ' + v.nodes.slice(0, 3)"
                + ".map(n => n.html).join(' | ')); }",
            rules);
    return ((List<?>) found).stream().map(String::valueOf).toList();
  }

  private static void keep(Page page, String what, int width) throws IOException {
    String shots = System.getProperty("screenshots");
    if (shots == null) {
      return;
    }
    Files.createDirectories(Path.of(shots));
    for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
      page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
      String name = what + "-" + width + "-" + scheme.name().toLowerCase(Locale.ROOT) + ".png";
      page.screenshot(new Page.ScreenshotOptions().setPath(Path.of(shots, name)).setFullPage(true));
    }
    if (width == 820) {
      page.emulateMedia(
          new Page.EmulateMediaOptions()
              .setColorScheme(ColorScheme.LIGHT)
              .setMedia(com.microsoft.playwright.options.Media.PRINT));
      page.screenshot(
          new Page.ScreenshotOptions()
              .setPath(Path.of(shots, what + "-print.png"))
              .setFullPage(true));
      page.emulateMedia(
          new Page.EmulateMediaOptions().setMedia(com.microsoft.playwright.options.Media.SCREEN));
    }
  }

  @Override
  public void close() {
    browser.close();
    playwright.close();
  }
}
