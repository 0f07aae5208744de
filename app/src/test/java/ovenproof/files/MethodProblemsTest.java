package ovenproof.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a method can get wrong. Each asserts place, found, expected and remedy. */
class MethodProblemsTest {
  @TempDir Path root;
  Folder folder;

  @BeforeEach
  void makeFolder() {
    folder = new Folder(root);
  }

  @Test
  void anUnknownMeasureIsSaidWithTheNearest() {
    folder.replace("method.yaml", "take: lightness-mean", "take: lightnes-mean");
    assertThat(folder.lines())
        .containsExactly(
            "method.yaml:31:27: found \"lightnes-mean\", expected a measure (time-to-stop, signal-time, reading, mass-loss, mark, fact, rated, feature, features, preheat-first, preheat-band, preheat-steady, …); did you mean \"lightness-mean\"?");
  }

  @Test
  void twoScoredVariantsAreOneTooMany() {
    folder.replace(
        "method.yaml",
        "    replicates: 2\n",
        "    replicates: 2\n    variants: [{id: a, name: A, role: scored}, {id: b, name: B, role: scored}]\n");
    assertThat(folder.lines())
        .containsExactly(
            "method.yaml:17:15: found 2 scored variants, expected exactly one scored variant; give the others the role compared");
  }

  @Test
  void weightsOfTestsMustNotSumToNothing() {
    folder.replace("method.yaml", "    parts: 3\n", "    parts: 0\n");
    folder.replace("method.yaml", "    name: Use\n    parts: 1", "    name: Use\n    parts: 0");
    assertThat(folder.lines())
        .containsExactly(
            "method.yaml:13:3: found weights that sum to nothing, expected parts above 0 in at least one test");
  }

  @Test
  void weightsOfCriteriaMustNotSumToNothing() {
    folder.replace("method.yaml", "name: Controls, parts: 1", "name: Controls, parts: 0");
    assertThat(folder.lines())
        .containsExactly(
            "method.yaml:44:7: found weights that sum to nothing, expected parts above 0 in at least one criterion");
  }

  @Test
  void percentWeightsAreNoWholeParts() {
    folder.replace("method.yaml", "name: Controls, parts: 1", "name: Controls, parts: 33.3");
    assertThat(folder.lines())
        .containsExactly(
            "method.yaml:44:47: found \"33.3\", expected a whole number from 0 to 1000");
  }

  @Test
  void anchorsRise() {
    folder.replace("method.yaml", "[[3 min, 10], [8 min, 0]]", "[[8 min, 10], [3 min, 0]]");
    assertThat(folder.lines())
        .containsExactly(
            "method.yaml:33:88: found \"3 min\", expected more than 8 min, the anchor before it; put the anchors in rising order");
  }

  @Test
  void aCurveTakesTheUnitOfItsMeasure() {
    folder.replace("method.yaml", "[[3 min, 10], [8 min, 0]]", "[[3 g, 10], [8 min, 0]]");
    assertThat(folder.lines())
        .containsExactly(
            "method.yaml:33:75: found \"3 g\", expected a time; for example 12 min 30 s");
  }

  @Test
  void aTemperatureIsNoDifference() {
    folder.replace("method.yaml", "at_most: 90 °C", "at_most: 90 K");
    assertThat(folder.lines())
        .containsExactly(
            "method.yaml:36:93: found \"90 K\", expected a temperature; for example 230 °C or 446 °F");
  }

  @Test
  void pointsStayWithinTen() {
    folder.replace("method.yaml", "[[3 min, 10], [8 min, 0]]", "[[3 min, 100], [8 min, 0]]");
    assertThat(folder.lines())
        .containsExactly("method.yaml:33:82: found \"100\", expected a number from 0 to 10");
  }

  @Test
  void aWorstAnchorBeyondTheCapIsWarnedOf() {
    folder.replace("method.yaml", "[8 min, 0]", "[15 min, 0]");
    assertThat(folder.lines())
        .containsExactly(
            "warning: method.yaml:33:73: found a worst anchor at 15 min, beyond the cap of 10 min, expected a worst anchor up to the cap; a run that reaches the cap can then only be scored as a range");
  }

  @Test
  void aWindowIsInOrder() {
    folder.replace(
        "method.yaml",
        "{points: [[3 min, 10], [8 min, 0]]}",
        "{window: {from: 5 min, to: 3 min, zero_above: 8 min}}");
    assertThat(folder.lines())
        .containsExactly(
            "method.yaml:33:91: found \"to\" at 3 min, expected at least 5 min; the order is zero_below, from, to, zero_above");
  }

  @Test
  void aWindowFallsSomewhere() {
    folder.replace(
        "method.yaml", "{points: [[3 min, 10], [8 min, 0]]}", "{window: {from: 3 min, to: 5 min}}");
    assertThat(folder.lines())
        .containsExactly(
            "method.yaml:33:73: found a window that never falls, expected \"zero_below\" or \"zero_above\"");
  }

  @Test
  void aGateHasALimit() {
    folder.replace("method.yaml", ", at_most: 90 °C", "");
    assertThat(folder.lines())
        .containsExactly(
            "method.yaml:36:9: found a gate without limit, expected \"at_least\" or \"at_most\"; add the limit");
  }

  @Test
  void aGateThatNothingCanPassIsSaid() {
    folder.replace("method.yaml", "at_most: 90 °C", "at_least: 95 °C, at_most: 90 °C");
    assertThat(folder.lines())
        .containsExactly(
            "method.yaml:36:110: found at most 90 °C and at least 95 °C, expected a lower limit below the upper one; nothing can pass this gate");
  }

  @Test
  void aCeilingGateNamesItsCeiling() {
    folder.replace("method.yaml", ", ceiling: 5", "");
    assertThat(folder.lines())
        .containsExactly("method.yaml:36:9: found no \"ceiling\", expected \"ceiling\"; add it");
  }

  @Test
  void aCriterionNamesAMeasureOfItsTest() {
    folder.replace("method.yaml", "measure: crisp,", "measure: crips,");
    assertThat(folder.lines())
        .containsExactly(
            "method.yaml:34:57: found \"crips\", expected a measure of this test (time, crisp, skin, shade); did you mean \"crisp\"?");
  }

  @Test
  void aRatedCurveNeedsARatedFact() {
    folder.replace("method.yaml", "{points: [[3 min, 10], [8 min, 0]]}", "{rated: 4}");
    assertThat(folder.lines())
        .containsExactly(
            "method.yaml:33:72: found \"rated\" for the measure time, expected a measure that takes a rated fact; write take: rated, or another curve");
  }

  @Test
  void aChangeNeedsTwoBatches() {
    folder.replace("method.yaml", "    batches: 2\n", "");
    folder.replace(
        "method.yaml", "take: lightness-mean, face: top", "take: lightness-mean, summary: change");
    assertThat(folder.lines())
        .containsExactly(
            "method.yaml:30:52: found a change over one batch, expected batches: 2 or more");
  }

  @Test
  void aMarkMeasureNamesAMark() {
    folder.replace("method.yaml", "{id: crisp, take: mark}", "{id: crisp, take: mark, of: crispy}");
    assertThat(folder.lines())
        .containsExactly(
            "method.yaml:29:37: found \"crispy\", expected a mark of this method (crisp); did you mean \"crisp\"?");
  }

  @Test
  void aFaceIsOneOfThePhotos() {
    folder.replace("method.yaml", "face: top", "face: topp");
    assertThat(folder.lines())
        .containsExactly(
            "method.yaml:31:49: found \"topp\", expected a face of the photos (top, underside); did you mean \"top\"?");
  }

  @Test
  void aReadingHasAUnit() {
    folder.replace("method.yaml", "take: reading, unit: °C", "take: reading");
    assertThat(folder.lines())
        .containsExactly(
            "method.yaml:30:26: found a reading without unit, expected \"unit\"; add it, for example unit: °C");
  }

  @Test
  void stepsAreFive() {
    folder.replace(
        "method.yaml",
        "[needs the manual, hard, fair, easy, clear without reading]",
        "[bad, good]");
    assertThat(folder.lines())
        .containsExactly(
            "method.yaml:11:12: found 2 steps, expected five worded steps, 0 to 4; say what each step looks like, so that two people can agree on it");
  }

  @Test
  void aRunWithoutEndIsWarnedOf() {
    folder.replace("method.yaml", "      - {when: cap, at: 10 min}\n", "");
    assertThat(folder.lines())
        .containsExactly(
            "warning: method.yaml:19:7: found no cap, expected a cap: the longest that the desk waits; add {when: cap, at: …}; a run that reaches it is known only as longer",
            "warning: events.csv:4:22: found a stop by cap, expected a stop rule of the test (ends-by-itself); if it is right, the method was not followed: enter a deviation");
  }

  @Test
  void aShareKeepsItsPercentSign() {
    folder.replace(
        "method.yaml",
        "- {id: shade, take: lightness-mean, face: top}",
        "- {id: shade, take: share-dark, face: top}");
    folder.replace(
        "method.yaml",
        "measure: time, curve: {points: [[3 min, 10], [8 min, 0]]}",
        "measure: shade, curve: {points: [[3, 10], [8 %, 0]]}");
    folder.replace("method.yaml", "pieces: 4}", "pieces: 4, target: {L: 62, a: 9, b: 31}}");
    assertThat(folder.lines())
        .containsExactly(
            "method.yaml:33:76: found \"3\", expected a share with its unit; write 3 %, or a share between 0 and 1");
  }

  @Test
  void aMeasureAgainstAShadeNeedsTheShade() {
    folder.replace("method.yaml", "take: lightness-mean, face: top", "take: share-dark, face: top");
    assertThat(folder.lines())
        .containsExactly(
            "method.yaml:31:27: found a measure against a shade that is not given, expected \"target\" in \"photos\"; for example target: {L: 62, a: 9, b: 31}, or target: {from: shade-card}");
  }

  @Test
  void anIdStandsOnce() {
    folder.replace(
        "method.yaml",
        "      - {id: crisp, take: mark}\n",
        "      - {id: crisp, take: mark}\n      - {id: time, take: signal-time}\n");
    assertThat(folder.lines())
        .containsExactly(
            "method.yaml:30:14: found the id \"time\" for the second time, expected an id of its own; the first stands in line 28");
  }

  @Test
  void aCommaInsideBracesEndsAValue() {
    folder.replace("method.yaml", "name: Time, parts", "name: Time, in short, parts");
    assertThat(folder.lines())
        .containsExactly(
            "method.yaml:33:32: found the key \"in short\", expected one of id, name, parts, why, measure, curve, runs, cannot_do, not_asked, repeatability; a comma between { and } ends a value: put the text before it in quotes");
  }

  @Test
  void aMarkWithoutAnchorsIsWarnedOf() {
    folder.replace("method.yaml", "anchors: {0: fresh bread, 10: plain cracker}", "why: no time");
    assertThat(folder.lines())
        .containsExactly(
            "warning: method.yaml:23:9: found 0 anchors, expected a thing to taste or look at for both ends of the scale; without anchors each taster uses a scale of their own");
  }
}
