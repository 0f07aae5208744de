package ovenproof.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Folders as somebody writes them who knows the description of the files only, with answers worked
 * out on paper beside each. Everything is invented.
 */
class KnownFoldersTest {
  private static final String CAMPAIGN =
      "format: 1\ncampaign: known\ntitle: Known\nkitchen: Invented\nzone: Europe/Dublin\n"
          + "currency: EUR\ninvented: yes\n";

  @TempDir Path folder;

  private final StringWriter err = new StringWriter();

  private KnownFoldersTest file(String name, String text) throws IOException {
    Files.writeString(folder.resolve(name), text);
    return this;
  }

  /** A method of which only scoring and tests differ. */
  private KnownFoldersTest method(String rest) throws IOException {
    return file("campaign.yaml", CAMPAIGN)
        .file(
            "method.yaml",
            "format: 1\nmethod: known\ntitle: Known\nversion: \"1\"\npopulation: Invented ovens\n"
                + rest);
  }

  /** One test "a" with criteria on readings m, m2 …, all of them of one unit. */
  private KnownFoldersTest oneTest(String unit, String measures, String rest) throws IOException {
    StringBuilder text = new StringBuilder("scoring: {draws: 2000, seed: 3}\ntests:\n");
    text.append("  - id: a\n    name: A\n    parts: 1\n    replicates: 3\n    measures:\n");
    for (String measure : measures.split(" ")) {
      text.append("      - {id: ").append(measure).append(", take: reading, unit: \"");
      text.append(unit).append("\"}\n");
    }
    return method(text + rest);
  }

  /** Products, each with one run per cell of readings; measures beside each other by "|". */
  private KnownFoldersTest readings(String measures, String... rows) throws IOException {
    List<String> products = new ArrayList<>(List.of("product,name"));
    List<String> runs = new ArrayList<>(List.of("run,product,test,replicate"));
    List<String> readings = new ArrayList<>(List.of("run,reading,value"));
    for (String row : rows) {
      String[] words = row.split(": ", 2);
      products.add(words[0] + "," + words[0]);
      String[] values = words[1].split("; ");
      for (int r = 0; r < values.length; r++) {
        String run = words[0] + r;
        runs.add(run + "," + words[0] + ",a," + (r + 1));
        String[] each = values[r].split(" \\| ");
        for (int m = 0; m < each.length; m++) {
          readings.add(run + "," + measures.split(" ")[m] + "," + each[m]);
        }
      }
    }
    return file("products.csv", String.join("\n", products))
        .file("runs.csv", String.join("\n", runs))
        .file("readings.csv", String.join("\n", readings));
  }

  private static String criterion(String curve) {
    return "    criteria:\n      - {id: c, name: C, parts: 1, measure: m, " + curve + "}\n";
  }

  private JsonNode verdict(String... options) throws IOException {
    StringWriter out = new StringWriter();
    List<String> words = new ArrayList<>(List.of("verdict", folder.toString(), "--json"));
    words.addAll(List.of(options));
    int exit =
        Ovenproof.commandLine(new PrintWriter(out, true), new PrintWriter(err, true))
            .execute(words.toArray(new String[0]));
    assertThat(exit).as(err.toString()).isZero();
    return new JsonMapper().readTree(out.toString());
  }

  private String refusal() throws IOException {
    StringWriter out = new StringWriter();
    int exit =
        Ovenproof.commandLine(new PrintWriter(out, true), new PrintWriter(err, true))
            .execute("verdict", folder.toString());
    assertThat(exit).as(out.toString() + err).isEqualTo(ExitCode.INPUT);
    return err.toString();
  }

  private static JsonNode product(JsonNode root, String id) {
    for (JsonNode product : root.get("products")) {
      if (product.get("id").asString().equals(id)) {
        return product;
      }
    }
    throw new AssertionError("no product " + id);
  }

  private static double score(JsonNode root, String id) {
    return product(root, id).get("score").asDouble();
  }

  private static final String WINDOW =
      "curve: {window: {zero_below: 150 °C, from: 175 °C, to: 185 °C, zero_above: 215 °C}}";

  @Test
  void aWindowScoresItsRunsBeforeTheirMean() throws IOException {
    // 162.5 is half way up (12.5 of 25), 180 inside, 200 half way down (15 of 30):
    // (5 + 10 + 5) / 3 = 6.67.
    JsonNode root =
        oneTest("°C", "m", criterion(WINDOW))
            .readings("m", "oak: 162.5 °C; 180 °C; 200 °C")
            .verdict();
    assertThat(score(root, "oak")).isEqualTo(6.7);
  }

  @Test
  void averagedFirstTheSameRunsAreOnTarget() throws IOException {
    // (162.5 + 180 + 200) / 3 = 180.8: inside the window.
    JsonNode root =
        oneTest("°C", "m", criterion("runs: average-then-score, " + WINDOW))
            .readings("m", "oak: 162.5 °C; 180 °C; 200 °C")
            .verdict();
    assertThat(score(root, "oak")).isEqualTo(10.0);
  }

  @Test
  void stepsCountFromTheirEdge() throws IOException {
    // Averaged first unless said otherwise: 2 is worth 4, 4.33 is worth 10. Scored first: 1 → 0,
    // 2 → 4, 3 → 4: 8/3 = 2.67.
    String steps = "curve: {steps: {below: 0, from: [[2 pieces, 4], [4 pieces, 10]]}}";
    JsonNode first =
        oneTest("pieces", "m", criterion("runs: score-then-average, " + steps))
            .readings("m", "oak: 1; 2; 3")
            .verdict();
    assertThat(score(first, "oak")).isEqualTo(2.7);
    JsonNode root =
        oneTest("pieces", "m", criterion(steps))
            .readings("m", "oak: 1; 2; 3", "elm: 4; 4; 5")
            .verdict();
    assertThat(score(root, "oak")).isEqualTo(4.0);
    assertThat(score(root, "elm")).isEqualTo(10.0);
  }

  @Test
  void timesAreReadAsPeopleWriteThem() throws IOException {
    // 4 min, 8:30 and 6 min 30 s are 6:20 on average: 5 min 40 s of the 7 min from 7 points at
    // 5 min to none at 12 min are left, 7 · 5.667 / 7 = 5.67.
    JsonNode root =
        oneTest("min", "m", criterion("curve: {points: [[3 min, 10], [5 min, 7], [12 min, 0]]}"))
            .readings("m", "oak: 4 min; 8:30; 6 min 30 s", "elm: 240 s; 0:04:00; 4 min")
            .verdict();
    assertThat(score(root, "oak")).isEqualTo(5.7);
    assertThat(score(root, "elm")).isEqualTo(8.5);
  }

  private static final String LINE = "curve: {points: [[0 °C, 0], [100 °C, 10]]}";

  @Test
  void fahrenheitIsAnotherWayToWriteCelsius() throws IOException {
    // 212, 122 and 32 °F are 100, 50 and 0 °C: (10 + 5 + 0) / 3.
    JsonNode root =
        oneTest("°C", "m", criterion(LINE)).readings("m", "oak: 212 °F; 122 °F; 32 °F").verdict();
    assertThat(score(root, "oak")).isEqualTo(5.0);
  }

  @Test
  void poundsAreMasses() throws IOException {
    // 1 lb = 453.59237 g (exact, 1959): 4.54 points of 10 at 1 kg; 2 oz less of it: 396.9 g.
    JsonNode root =
        oneTest("g", "m", criterion("curve: {points: [[0 g, 0], [1 kg, 10]]}"))
            .readings("m", "oak: 1 lb; 453.6 g; 0.4536 kg", "elm: 14 oz; 14 oz; 14 oz")
            .verdict();
    assertThat(score(root, "oak")).isEqualTo(4.5);
    assertThat(score(root, "elm")).isEqualTo(4.0);
  }

  @Test
  void aSpreadsheetOfTheContinentIsRead() throws IOException {
    // Byte order mark, semicolons, decimal commas, CRLF, columns in another order, a comment.
    JsonNode root =
        oneTest("°C", "m", criterion(LINE))
            .file("products.csv", "\uFEFFname;product\r\n\"Oak; the first\";oak\r\n")
            .file(
                "runs.csv",
                "\uFEFFtest;replicate;product;run\r\n# by hand\r\na;2;oak;r2\r\n\r\na;1;oak;r1\r\n")
            .file("readings.csv", "value;run;reading\r\n69,4 °C;r1;m\r\n69,6 °C;r2;m\r\n")
            .verdict();
    assertThat(score(root, "oak")).isEqualTo(7.0);
    assertThat(product(root, "oak").get("name").asString()).isEqualTo("Oak; the first");
  }

  @Test
  void aGeometricMeanOfThreeWeights() throws IOException {
    // (4 · 9 · 6²)^(1/4) = 1296^(1/4) = 6.
    JsonNode root =
        oneTest(
                "°C",
                "m m2 m3",
                "    combine: geometric\n    criteria:\n      - {id: c, name: C, parts: 1, measure: m, "
                    + LINE
                    + "}\n      - {id: d, name: D, parts: 1, measure: m2, "
                    + LINE
                    + "}\n      - {id: e, name: E, parts: 2, measure: m3, "
                    + LINE
                    + "}\n")
            .readings("m m2 m3", "oak: 40 °C | 90 °C | 60 °C; 40 °C | 90 °C | 60 °C")
            .verdict();
    assertThat(score(root, "oak")).isEqualTo(6.0);
  }

  @Test
  void aFloorInsideATreeOfFourLevels() throws IOException {
    // floor(6.95 → 7.0, 3.2) = 3.2; (2 · 3.2 + 9.0) / 3 = 5.133 → 5.1; (3 · 5.1 + 9.9) / 4 = 6.3.
    // From hidden digits (3 · 5.1333 + 9.9) / 4 = 6.325, the same; the next level tells:
    // (5.1 + 9.9 · 3) / 4 = 8.7.
    String leaf = "{id: %s, name: %s, parts: %d, measure: %s, " + LINE + "}\n";
    JsonNode root =
        oneTest(
                "°C",
                "m m2 m3 m4",
                "    criteria:\n      - id: g\n        name: G\n        parts: 1\n        criteria:\n"
                    + "          - id: h\n            name: H\n            parts: 2\n"
                    + "            combine: floor\n            criteria:\n              - "
                    + String.format(leaf, "p", "P", 1, "m")
                    + "              - "
                    + String.format(leaf, "q", "Q", 1, "m2")
                    + "          - "
                    + String.format(leaf, "r", "R", 1, "m3")
                    + "      - "
                    + String.format(leaf, "s", "S", 3, "m4"))
            .readings("m m2 m3 m4", "oak: 69.5 °C | 32 °C | 90 °C | 99 °C")
            .verdict();
    assertThat(score(root, "oak")).isEqualTo(8.7);
  }

  private static final String RATED =
      "rated:\n  - id: knob\n    name: Knob\n    raters: 2\n    steps: [worst, poor, fair, good, best]\n"
          + "facts:\n  - {id: volume, name: Volume, unit: L}\n"
          + "scoring: {draws: 2000, seed: 3}\ntests:\n"
          + "  - id: use\n    name: Use\n    parts: 1\n    replicates: 0\n    measures:\n"
          + "      - {id: k, take: rated, of: knob}\n      - {id: v, take: fact, of: volume}\n"
          + "    criteria:\n      - {id: k, name: K, parts: 3, measure: k, curve: {rated: 4}}\n"
          + "      - {id: v, name: V, parts: 1, measure: v, curve: {points: [[20 L, 0], [40 L, 10]]}}\n";

  @Test
  void factsAndRatedStepsNeedNoRuns() throws IOException {
    // Steps 3 and 4: 3.5 of 4 is 8.75 → 8.8; 25 L is 2.5; (3 · 8.8 + 2.5) / 4 = 7.225 → 7.2.
    JsonNode root =
        method(RATED)
            .file("products.csv", "product,name\noak,Oak\n")
            .file("rated.csv", "product,fact,rater,step\noak,knob,ann,3\noak,knob,ben,4\n")
            .file("facts.csv", "product,fact,nameplate,measured\noak,volume,26 L,25 L\n")
            .verdict();
    assertThat(product(root, "oak").get("tests").get(0).get("score").asDouble()).isEqualTo(7.2);
    assertThat(score(root, "oak")).isEqualTo(7.2);
  }

  @Test
  void aCorrectionTakesThePlaceOfWhatItCorrects() throws IOException {
    // 96 was 69 with its digits turned: 6.9.
    JsonNode root =
        oneTest("°C", "m", criterion(LINE))
            .readings("m", "oak: 1 °C; 69 °C; 69 °C")
            .file(
                "readings.csv",
                "run,reading,value,entry,corrects,by\noak0,m,96 °C,e1,,ann\noak1,m,69 °C,e2,,ann\n"
                    + "oak2,m,69 °C,e3,,ann\noak0,m,69 °C,e4,e1,ann\n")
            .verdict();
    assertThat(score(root, "oak")).isEqualTo(6.9);
  }

  @Test
  void trialsAndComparedVariantsDoNotScore() throws IOException {
    // Counted runs of the scored variant only: 50.
    JsonNode root =
        method(
                "scoring: {draws: 2000, seed: 3}\ntests:\n  - id: a\n    name: A\n    parts: 1\n"
                    + "    replicates: 2\n    variants:\n"
                    + "      - {id: preset, name: Preset, role: scored}\n"
                    + "      - {id: manual, name: Manual, role: compared}\n"
                    + "    measures:\n      - {id: m, take: reading, unit: °C}\n"
                    + criterion(LINE))
            .file("products.csv", "product,name\noak,Oak\n")
            .file(
                "runs.csv",
                "run,product,test,replicate,variant,kind,started\n"
                    + "t,oak,a,1,preset,trial,2026-03-01T09:00\n"
                    + "r1,oak,a,1,preset,counted,2026-03-02T09:00\n"
                    + "r2,oak,a,2,preset,counted,2026-03-02T13:00\n"
                    + "v1,oak,a,1,manual,counted,2026-03-03T09:00\n")
            .file(
                "readings.csv",
                "run,reading,value\nt,m,100 °C\nr1,m,49 °C\nr2,m,51 °C\nv1,m,100 °C\n")
            .verdict();
    assertThat(score(root, "oak")).isEqualTo(5.0);
  }

  @Test
  void aRedoTakesThePlaceOfItsRun() throws IOException {
    JsonNode root =
        oneTest("°C", "m", criterion(LINE))
            .file("products.csv", "product,name\noak,Oak\n")
            .file(
                "runs.csv",
                "run,product,test,replicate,redo_of,cause\nr1,oak,a,1,,\nr2,oak,a,2,,\n"
                    + "r2b,oak,a,2,r2,fuse blew\n")
            .file("readings.csv", "run,reading,value\nr1,m,60 °C\nr2,m,5 °C\nr2b,m,62 °C\n")
            .verdict();
    assertThat(score(root, "oak")).isEqualTo(6.1);
  }

  private static String gate(String words) {
    return criterion(LINE) + "    gates:\n      - {id: g, name: G, measure: m2, " + words + "}\n";
  }

  @Test
  void aFlagSaysAndChangesNothing() throws IOException {
    JsonNode root =
        oneTest("°C", "m m2", gate("kind: flag, reason: quality, at_most: 90 °C, scope: total"))
            .readings("m m2", "oak: 70 °C | 99 °C; 70 °C | 99 °C")
            .verdict();
    assertThat(score(root, "oak")).isEqualTo(7.0);
    assertThat(product(root, "oak").get("gates").toString()).contains("G");
  }

  @Test
  void aVetoOnATestScoresTheTestNought() throws IOException {
    JsonNode root =
        oneTest("°C", "m m2", gate("kind: veto, reason: quality, at_most: 90 °C, scope: test"))
            .readings(
                "m m2",
                "oak: 70 °C | 99 °C; 70 °C | 99.1 °C",
                "elm: 60 °C | 50 °C; 60 °C | 50.1 °C")
            .verdict();
    assertThat(product(root, "oak").get("tests").get(0).get("score").asDouble()).isZero();
    assertThat(score(root, "oak")).isZero();
    assertThat(score(root, "elm")).isEqualTo(6.0);
  }

  @Test
  void aVetoOnTheTotalLeavesNoScoreAndNoRank() throws IOException {
    JsonNode root =
        oneTest("°C", "m m2", gate("kind: veto, reason: safety, at_most: 90 °C, scope: total"))
            .readings(
                "m m2",
                "oak: 70 °C | 99 °C; 70 °C | 99.1 °C",
                "elm: 60 °C | 50 °C; 61 °C | 50.1 °C")
            .file(
                "readings.csv",
                "run,reading,value,uncertainty\noak0,m,70 °C,\noak1,m,70 °C,\nelm0,m,60 °C,\n"
                    + "elm1,m,61 °C,\noak0,m2,99 °C,2 K\noak1,m2,99.1 °C,2 K\n"
                    + "elm0,m2,50 °C,2 K\nelm1,m2,50.1 °C,2 K\n")
            .verdict();
    assertThat(product(root, "oak").get("score").isNull()).isTrue();
    assertThat(product(root, "oak").get("rank").isNull()).isTrue();
    assertThat(score(root, "elm")).isEqualTo(6.1);
  }

  @Test
  void unequalNumbersOfRunsShareOneDeviation() throws IOException {
    // Deviations about the means: 0 (one run), −2, 0, +2: s² = 8 / 2 = 4, s = 2 K with 2 degrees.
    // t(0.95; 2) = 2.920 (table of t): oak ± 5.84 K, elm ± 5.84/√3 = 3.37 K.
    JsonNode root =
        oneTest("°C", "m", criterion("runs: average-then-score, " + LINE))
            .readings("m", "oak: 70 °C", "elm: 38 °C; 40 °C; 42 °C")
            .verdict();
    JsonNode oak = product(root, "oak").get("criteria").get(0);
    assertThat(oak.get("low").asDouble()).isEqualTo(6.42, offset(0.051));
    assertThat(oak.get("high").asDouble()).isEqualTo(7.58, offset(0.051));
    JsonNode elm = product(root, "elm").get("criteria").get(0);
    assertThat(elm.get("low").asDouble()).isEqualTo(3.66, offset(0.051));
    assertThat(elm.get("high").asDouble()).isEqualTo(4.34, offset(0.051));
  }

  @Test
  void aDeclaredRepeatabilityGivesOneRunAnInterval() throws IOException {
    // 1.645 · 3 K = 4.9 K: 7.0 from 6.5 to 7.5.
    JsonNode root =
        oneTest("°C", "m", criterion("runs: average-then-score, repeatability: 3 K, " + LINE))
            .readings("m", "oak: 70 °C", "elm: 30 °C")
            .verdict();
    JsonNode oak = product(root, "oak").get("criteria").get(0);
    assertThat(oak.get("low").asDouble()).isEqualTo(6.51, offset(0.051));
    assertThat(oak.get("high").asDouble()).isEqualTo(7.49, offset(0.051));
    assertThat(product(root, "elm").get("tier").asInt()).isEqualTo(2);
  }

  @Test
  void tiesStandInOneTierByName() throws IOException {
    JsonNode root =
        oneTest("°C", "m", criterion(LINE))
            .readings("m", "yew: 50 °C; 52 °C", "ash: 52 °C; 50 °C", "elm: 10 °C; 12 °C")
            .verdict();
    assertThat(root.get("products").get(0).get("id").asString()).isEqualTo("ash");
    assertThat(product(root, "yew").get("tier").asInt()).isEqualTo(1);
    assertThat(product(root, "yew").get("rank").get("low").asInt()).isEqualTo(1);
    assertThat(product(root, "yew").get("rank").get("high").asInt()).isEqualTo(2);
    assertThat(product(root, "elm").get("tier").asInt()).isEqualTo(2);
  }

  @Test
  void aWeightOfNoughtIsShownAndDoesNotCount() throws IOException {
    JsonNode root =
        oneTest(
                "°C",
                "m m2",
                "    criteria:\n      - {id: c, name: C, parts: 2, measure: m, "
                    + LINE
                    + "}\n      - {id: d, name: D, parts: 0, measure: m2, "
                    + LINE
                    + "}\n")
            .readings("m m2", "oak: 70 °C | 10 °C; 70 °C | 10 °C", "elm: 60 °C; 60 °C")
            .verdict();
    assertThat(score(root, "oak")).isEqualTo(7.0);
    // What is missing at weight nought leaves no bounds.
    assertThat(score(root, "elm")).isEqualTo(6.0);
    assertThat(product(root, "elm").get("known").asString()).isNotEqualTo("bounds");
  }

  @Test
  void twoDecimalsRoundHalfUpAsPeopleDo() throws IOException {
    // 69.55 °C is 6.955 points: 6.96, although no binary number is.
    JsonNode root =
        method(
                "scoring: {draws: 2000, seed: 3, decimals: 2}\ntests:\n  - id: a\n    name: A\n"
                    + "    parts: 1\n    replicates: 1\n    measures:\n"
                    + "      - {id: m, take: reading, unit: °C}\n"
                    + criterion(LINE))
            .readings("m", "oak: 69.55 °C")
            .verdict();
    assertThat(score(root, "oak")).isEqualTo(6.96);
  }

  @Test
  void aFrozenPoolGivesTheShareThatIsBeaten() throws IOException {
    // 9 min beats 10 and 12 of 4, 6, 8, 10, 12; 3 min beats all, 20 min none.
    JsonNode root =
        oneTest(
                "min",
                "m",
                criterion(
                    "curve: {percentile: {pool: old, better: lower, values: [4 min, 6 min, 8 min,"
                        + " 10 min, 12 min]}}"))
            .readings("m", "oak: 8 min; 8 min", "elm: 3 min; 3 min", "yew: 20 min; 20 min")
            .verdict();
    assertThat(score(root, "elm")).isEqualTo(10.0);
    assertThat(score(root, "yew")).isZero();
    // The median of the pool is worth half, whatever the rule of interpolation.
    assertThat(score(root, "oak")).isEqualTo(5.0);
  }

  @Test
  void readingsByBatchMayCountByTheirWorst() throws IOException {
    // Largest of 50 and 60 is 60; of 52 and 40 is 52: (6.0 + 5.2) / 2 = 5.6.
    JsonNode root =
        method(
                "scoring: {draws: 2000, seed: 3}\ntests:\n  - id: a\n    name: A\n    parts: 1\n"
                    + "    replicates: 2\n    batches: 2\n    measures:\n"
                    + "      - {id: m, take: reading, unit: °C, summary: largest}\n"
                    + criterion(LINE))
            .file("products.csv", "product,name\noak,Oak\n")
            .file("runs.csv", "run,product,test,replicate\nr1,oak,a,1\nr2,oak,a,2\n")
            .file(
                "readings.csv",
                "run,reading,value,batch\nr1,m,50 °C,1\nr1,m,60 °C,2\nr2,m,52 °C,1\nr2,m,40 °C,2\n")
            .verdict();
    assertThat(score(root, "oak")).isEqualTo(5.6);
  }

  @Test
  void aReaderMayWeighATestWithNought() throws IOException {
    JsonNode root =
        method(
                "scoring: {draws: 2000, seed: 3}\ntests:\n"
                    + "  - {id: a, name: A, parts: 1, replicates: 1, measures: [{id: m, take: reading,"
                    + " unit: °C}], criteria: [{id: c, name: C, parts: 1, measure: m, "
                    + LINE
                    + "}]}\n"
                    + "  - {id: b, name: B, parts: 1, replicates: 1, measures: [{id: m, take: reading,"
                    + " unit: °C}], criteria: [{id: c, name: C, parts: 1, measure: m, "
                    + LINE
                    + "}]}\n"
                    + "profiles:\n  - {id: bakers, name: Bakers, parts: {a: 0, b: 3}}\n")
            .file("products.csv", "product,name\noak,Oak\n")
            .file("runs.csv", "run,product,test,replicate\nr1,oak,a,1\nr2,oak,b,1\n")
            .file("readings.csv", "run,reading,value\nr1,m,20 °C\nr2,m,80 °C\n")
            .verdict("--profile", "bakers");
    assertThat(score(root, "oak")).isEqualTo(8.0);
  }

  @Test
  void aWithdrawnProductLeavesTheOthersTheirScores() throws IOException {
    // Ash, elm, yew: 9.0, 6.0, 3.0, each a tier of its own; without elm, yew is second of two.
    JsonNode root =
        oneTest("°C", "m", criterion(LINE))
            .readings("m", "ash: 89 °C; 91 °C", "elm: 59 °C; 61 °C", "yew: 29 °C; 31 °C")
            .verdict("--withdrawn", "elm");
    JsonNode rows = root.get("answers").get(0).get("rows");
    assertThat(rows.get(0).get("score").asString()).isEqualTo("9.0");
    assertThat(rows.get(0).get("tier").asString()).isEqualTo("1");
    assertThat(rows.get(1).get("score").asString()).isEqualTo("3.0");
    assertThat(rows.get(1).get("tier").asString()).isEqualTo("3 → 2");
    assertThat(rows.get(1).get("rank").asString()).isEqualTo("3 → 2");
    assertThat(root.get("products").size()).isEqualTo(3);
  }

  @Test
  void newPricesMoveTheFrontAndNoScore() throws IOException {
    // Ash 9.0 for 200, elm 6.0 for 100: both on the front. At 90, ash leaves elm behind.
    JsonNode root =
        oneTest("°C", "m", criterion(LINE))
            .readings("m", "ash: 89 °C; 91 °C", "elm: 59 °C; 61 °C")
            .file(
                "prices.csv",
                "product,price,on,currency\nash,200,2026-01-10,EUR\nelm,100,2026-01-10,EUR\n"
                    + "ash,90,2026-03-01,EUR\n")
            .verdict("--prices", "2026-02-01");
    String rows = root.get("answers").get(0).get("rows").toString();
    assertThat(rows)
        .contains("200.00 EUR on 2026-01-10", "90.00 EUR on 2026-03-01")
        .contains("on the front → dearer than one as good");
    assertThat(score(root, "ash")).isEqualTo(9.0);
  }

  @Test
  void notANumberIsRefusedWithItsPlace() throws IOException {
    String said =
        oneTest("°C", "m", criterion(LINE)).readings("m", "oak: 70 °C; NaN °C; inf °C").refusal();
    assertThat(said).contains("readings.csv:3").contains("readings.csv:4").contains("NaN");
  }

  @Test
  void anEmptyTableIsAnEmptyTable() throws IOException {
    String said =
        oneTest("°C", "m", criterion(LINE))
            .file("products.csv", "product,name\noak,Oak\n")
            .file("runs.csv", "")
            .file("readings.csv", "")
            .verdict()
            .get("products")
            .get(0)
            .toString();
    assertThat(said).contains("\"score\":null").contains("missing");
  }

  @Test
  void unknownKeysAndColumnsAreNamedWithTheNearestKnown() throws IOException {
    String said =
        oneTest("°C", "m", criterion("wieght: 2, " + LINE))
            .file("products.csv", "product,nmae\noak,Oak\n")
            .refusal();
    assertThat(said).contains("method.yaml:").contains("wieght").contains("products.csv:1");
    assertThat(said).contains("name");
  }
}
