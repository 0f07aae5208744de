package ovenproof.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Contrast of the look's tokens, computed as WCAG 2.2 defines it (relative luminance). */
class ContrastTest {
  private static final double TEXT = 4.5; // WCAG 2.2, success criterion 1.4.3
  private static final double SHAPE = 3.0; // WCAG 2.2, success criterion 1.4.11

  @ParameterizedTest
  @CsvSource({
    "ink, ground",
    "ink, sheet",
    "ink, sunk",
    "ink-2, ground",
    "ink-2, sheet",
    "hold, ground",
    "hold, sheet",
    "hold, hold-soft",
    "ink, hold-soft",
    "fail, ground",
    "fail, sheet",
    "fail, fail-soft",
    "heat, ground",
    "heat, sheet",
    "heat, heat-soft",
    "ink, heat-soft",
    "on-hold, hold",
    "on-fail, fail",
    "sheet, ink"
  })
  void textCanBeReadInBothThemes(String text, String ground) throws IOException {
    for (Map<String, Integer> theme : themes()) {
      assertThat(contrast(theme, text, ground)).as(text + " on " + ground).isGreaterThan(TEXT);
    }
  }

  @ParameterizedTest
  @CsvSource({"edge, ground", "edge, sheet", "hold, ground", "hold, sheet", "fail, sheet"})
  void shapesCanBeSeenInBothThemes(String shape, String ground) throws IOException {
    for (Map<String, Integer> theme : themes()) {
      assertThat(contrast(theme, shape, ground)).as(shape + " on " + ground).isGreaterThan(SHAPE);
    }
  }

  @Test
  void blackOnWhiteIsTwentyOneToOne() {
    // WCAG 2.2, definition of contrast ratio: from 1 to 21
    assertThat((luminance(0xFFFFFF) + 0.05) / (luminance(0) + 0.05)).isEqualTo(21.0);
  }

  private static double contrast(Map<String, Integer> theme, String a, String b) {
    double first = luminance(Objects.requireNonNull(theme.get(a), a));
    double second = luminance(Objects.requireNonNull(theme.get(b), b));
    return (Math.max(first, second) + 0.05) / (Math.min(first, second) + 0.05);
  }

  private static double luminance(int rgb) {
    return 0.2126 * linear(rgb >> 16 & 255)
        + 0.7152 * linear(rgb >> 8 & 255)
        + 0.0722 * linear(rgb & 255);
  }

  private static double linear(int channel) {
    double c = channel / 255.0;
    return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
  }

  /** Light, dark by the system's preference, dark by choice. */
  private static Iterable<Map<String, Integer>> themes() throws IOException {
    String css;
    try (var in = ContrastTest.class.getResourceAsStream("/static/look/look.css")) {
      css = new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
    Map<String, Integer> light = tokens(block(css, ":root {"));
    Map<String, Integer> system = tokens(block(css, ":root:not([data-theme=\"light\"]) {"));
    Map<String, Integer> chosen = tokens(block(css, ":root[data-theme=\"dark\"] {"));
    assertThat(system).isEqualTo(chosen);
    return java.util.List.of(light, system);
  }

  private static String block(String css, String selector) {
    int start = css.indexOf(selector);
    assertThat(start).as(selector).isNotNegative();
    return css.substring(start, css.indexOf('}', start));
  }

  private static Map<String, Integer> tokens(String block) {
    Map<String, Integer> tokens = new LinkedHashMap<>();
    Matcher matcher = Pattern.compile("--([a-z0-9-]+): #([0-9a-f]{6})").matcher(block);
    while (matcher.find()) {
      tokens.put(matcher.group(1), Integer.parseInt(matcher.group(2), 16));
    }
    return tokens;
  }
}
