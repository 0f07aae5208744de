package ovenproof.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Campaign folders small enough to be scored on paper, through the command line. Readings are in °C
 * and worth a tenth of a point per degree, so 69.5 °C is 6.95 points. Everything is invented.
 */
class KnownVerdictsTest {
  private static final String LINE = "points: [[0 °C, 0], [100 °C, 10]]";

  @TempDir Path folder;

  private final Map<String, String> tests = new LinkedHashMap<>();
  private final List<String> readings = new ArrayList<>();
  private final List<String> runs = new ArrayList<>();
  private final List<String> products = new ArrayList<>();
  private final Map<String, String> more = new LinkedHashMap<>();
  private String scoring = "scoring: {draws: 4000, seed: 7}";
  private String profiles = "";

  private KnownVerdictsTest test(String id, int parts, String criterion) {
    return test(id, parts, criterion, "");
  }

  /** A test with one criterion on one reading. */
  private KnownVerdictsTest test(String id, int parts, String criterion, String gates) {
    tests.put(
        id,
        String.format(
            "  - id: %1$s%n    name: %1$s%n    parts: %2$d%n    replicates: 3%n    measures:%n"
                + "      - {id: m, take: reading, unit: °C}%n    criteria:%n"
                + "      - {id: c, name: c, parts: 1, measure: m, %3$s}%n%4$s",
            id, parts, criterion, gates));
    return this;
  }

  private static String curve(String curve) {
    return "curve: {" + curve + "}";
  }

  /** Readings of one product in one test, one per run. */
  private KnownVerdictsTest measured(String product, String test, String... values) {
    return measuredBy("", product, test, values);
  }

  private KnownVerdictsTest measuredBy(
      String instrument, String product, String test, String... values) {
    if (!products.contains(product)) {
      products.add(product);
    }
    for (int r = 1; r <= values.length; r++) {
      String run = test + "-" + product + "-" + r;
      runs.add(run + "," + product + "," + test + "," + r);
      readings.add(run + ",m," + values[r - 1] + " °C," + instrument);
    }
    return this;
  }

  private KnownVerdictsTest file(String name, String text) {
    more.put(name, text);
    return this;
  }

  private void write() throws IOException {
    Files.writeString(
        folder.resolve("campaign.yaml"),
        "format: 1\ncampaign: known\ntitle: Known answers\nkitchen: Invented\nzone: Europe/Dublin\n"
            + "currency: EUR\ninvented: yes\n");
    Files.writeString(
        folder.resolve("method.yaml"),
        "format: 1\nmethod: known\ntitle: Known\nversion: \"1\"\npopulation: Invented ovens\n"
            + scoring
            + "\ntests:\n"
            + String.join("", tests.values())
            + profiles);
    StringBuilder field = new StringBuilder("product,name\n");
    products.forEach(p -> field.append(p).append(',').append(p.toUpperCase()).append('\n'));
    Files.writeString(folder.resolve("products.csv"), field);
    Files.writeString(
        folder.resolve("runs.csv"), "run,product,test,replicate\n" + String.join("\n", runs));
    Files.writeString(
        folder.resolve("readings.csv"),
        "run,reading,value,instrument\n" + String.join("\n", readings));
    for (Map.Entry<String, String> file : more.entrySet()) {
      Files.writeString(folder.resolve(file.getKey()), file.getValue());
    }
  }

  private final StringWriter err = new StringWriter();

  private JsonNode verdict(String... options) throws IOException {
    write();
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
    write();
    StringWriter out = new StringWriter();
    int exit =
        Ovenproof.commandLine(new PrintWriter(out, true), new PrintWriter(err, true))
            .execute("verdict", folder.toString());
    assertThat(exit).isEqualTo(ExitCode.INPUT);
    assertThat(out.toString()).isEmpty();
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

  private static String answer(JsonNode root) {
    return root.get("answers").get(0).toString();
  }

  @Test
  void aTotalFollowsFromTheDigitsShown() throws IOException {
    // 69.5 → 6.95 → shown 7.0 (half up); 62 → 6.2; (2 · 7.0 + 6.2) / 3 = 6.733 → 6.7.
    // From hidden digits it would be (13.9 + 6.2) / 3 = 6.70; 6.25 → 6.3 shows the half up.
    JsonNode root =
        test("a", 2, curve(LINE))
            .test("b", 1, curve(LINE))
            .measured("oak", "a", "69.4", "69.5", "69.6")
            .measured("oak", "b", "61.9", "62", "62.1")
            .measured("elm", "a", "62.4", "62.5", "62.6")
            .measured("elm", "b", "62.4", "62.5", "62.6")
            .verdict();
    assertThat(product(root, "oak").get("tests").get(0).get("score").asDouble()).isEqualTo(7.0);
    assertThat(score(root, "oak")).isEqualTo(6.7);
    assertThat(score(root, "elm")).isEqualTo(6.3);
  }

  @Test
  void aMissingTestGivesBounds() throws IOException {
    // 3 : 1, 8.0 and nothing: from (24 + 0) / 4 = 6.0 to (24 + 10) / 4 = 8.5.
    JsonNode root =
        test("a", 3, curve(LINE))
            .test("b", 1, curve(LINE))
            .measured("oak", "a", "79", "80", "81")
            .measured("elm", "a", "29", "30", "31")
            .measured("elm", "b", "29", "30", "31")
            .verdict();
    JsonNode oak = product(root, "oak");
    assertThat(oak.get("known").asString()).isEqualTo("bounds");
    assertThat(oak.get("low").asDouble()).isEqualTo(6.0, offset(0.3)).isLessThanOrEqualTo(6.0);
    assertThat(oak.get("high").asDouble()).isEqualTo(8.5, offset(0.3)).isGreaterThanOrEqualTo(8.5);
    assertThat(oak.get("missing").toString()).contains("b");
    // At both bounds oak lies above elm (3.0): separated.
    assertThat(oak.get("tier").asInt()).isEqualTo(1);
    assertThat(product(root, "elm").get("tier").asInt()).isEqualTo(2);
  }

  @Test
  void boundsThatCrossAnotherProductDoNotSeparate() throws IOException {
    // Oak 6.0 … 8.5 around elm 7.0: one tier, although the middle is 7.25.
    JsonNode root =
        test("a", 3, curve(LINE))
            .test("b", 1, curve(LINE))
            .measured("oak", "a", "79.9", "80", "80.1")
            .measured("elm", "a", "69.9", "70", "70.1")
            .measured("elm", "b", "69.9", "70", "70.1")
            .verdict();
    assertThat(product(root, "elm").get("tier").asInt()).isEqualTo(1);
    assertThat(product(root, "oak").get("tier").asInt()).isEqualTo(1);
  }

  @Test
  void cannotDoScoresNothingAndNotAskedIsReweighted() throws IOException {
    // Cannot do: (3 · 8 + 0) / 4 = 6.0. Not asked and declared so: 8.0. Else bounds.
    String reweight = "not_asked: reweight, " + curve(LINE);
    JsonNode root =
        test("a", 3, curve(LINE))
            .test("b", 1, reweight)
            .measured("oak", "a", "79", "80", "81")
            .measured("elm", "a", "79", "80", "81")
            .measured("yew", "a", "49", "50", "51")
            .measured("yew", "b", "49", "50", "51")
            .file(
                "not-run.csv",
                "product,test,state,reason\noak,b,cannot-do,the tray does not fit\n"
                    + "elm,b,not-asked,no such mode\n")
            .verdict();
    assertThat(score(root, "oak")).isEqualTo(6.0);
    assertThat(score(root, "elm")).isEqualTo(8.0);
    assertThat(score(root, "yew")).isEqualTo(5.0);
  }

  @Test
  void aSharedCalibrationErrorWidensScoresAndCancelsBetweenProducts() throws IOException {
    // Both by one probe with 5 K of calibration uncertainty: 1.0 point apart, certainly.
    String instruments = "instrument,name,quantity\nP1,Probe,temperature\nP2,Probe,temperature\n";
    String calibrations =
        "instrument,on,correction,uncertainty\nP1,2026-03-01,0 K,5 K\nP2,2026-03-01,0 K,5 K\n";
    JsonNode shared =
        test("a", 1, curve(LINE))
            .measuredBy("P1", "oak", "a", "69.9", "70", "70.1")
            .measuredBy("P1", "elm", "a", "59.9", "60", "60.1")
            .file("instruments.csv", instruments)
            .file("calibrations.csv", calibrations)
            .verdict();
    assertThat(product(shared, "elm").get("tier").asInt()).isEqualTo(2);
    double width =
        product(shared, "oak").get("high").asDouble()
            - product(shared, "oak").get("low").asDouble();
    // 90 % of ± 1.645 · 0.5 points.
    assertThat(width).isEqualTo(1.645, offset(0.15));
    assertThat(shared.get("pairs").get(0).get("probability").asDouble()).isGreaterThan(0.99);
  }

  @Test
  void errorsOfTwoProbesDoNotCancel() throws IOException {
    String instruments = "instrument,name,quantity\nP1,Probe,temperature\nP2,Probe,temperature\n";
    String calibrations =
        "instrument,on,correction,uncertainty\nP1,2026-03-01,0 K,5 K\nP2,2026-03-01,0 K,5 K\n";
    // 10 K apart with √2 · 5 K: 1.41 standard errors, below the 1.645 of two products.
    JsonNode apart =
        test("a", 1, curve(LINE))
            .measuredBy("P1", "oak", "a", "69.9", "70", "70.1")
            .measuredBy("P2", "elm", "a", "59.9", "60", "60.1")
            .file("instruments.csv", instruments)
            .file("calibrations.csv", calibrations)
            .verdict();
    assertThat(product(apart, "elm").get("tier").asInt()).isEqualTo(1);
    // Two products with normal errors: c is the 90 % quantile of |z|, 1.645 (any normal table),
    // times √2 · 0.5 points.
    assertThat(apart.get("margin").asDouble()).isEqualTo(1.163, offset(0.05));
  }

  @Test
  void aCeilingHoldsTheTotalDown() throws IOException {
    String gate =
        "    gates:\n      - {id: skin, name: Skin, kind: ceiling, reason: quality, measure: m,"
            + " at_most: 90 °C, ceiling: 5, scope: total}\n";
    JsonNode root =
        test("a", 1, curve(LINE))
            .test("skin", 0, curve(LINE), gate)
            .measured("oak", "a", "79", "80", "81")
            .measured("oak", "skin", "96", "97", "98")
            .measured("elm", "a", "69", "70", "71")
            .measured("elm", "skin", "69", "70", "71")
            .verdict();
    assertThat(score(root, "oak")).isEqualTo(5.0);
    assertThat(score(root, "elm")).isEqualTo(7.0);
    assertThat(product(root, "oak").get("gates").get(0).get("state").asString()).isEqualTo("fired");
  }

  @Test
  void aSafetyVetoPassesOnlyWhereItIsShown() throws IOException {
    String gate =
        "    gates:\n      - {id: core, name: Core, kind: veto, reason: safety, measure: m,"
            + " at_least: 74 °C, scope: total}\n";
    // Each run must keep it, known to 0.5 K: 79 is shown (10 standard errors), 74.6 is not
    // (P(z < 1.2) = 0.885), 69 fails. Without a known uncertainty nothing is shown.
    JsonNode root =
        test("a", 1, curve(LINE), gate)
            .measuredBy("P1", "oak", "a", "79", "80", "81")
            .measuredBy("P1", "elm", "a", "74.6", "75.6", "76.6")
            .measuredBy("P1", "yew", "a", "69", "70", "71")
            .measured("ash", "a", "79", "80", "81")
            .file("instruments.csv", "instrument,name,quantity\nP1,Probe,temperature\n")
            .file(
                "calibrations.csv",
                "instrument,on,correction,uncertainty\nP1,2026-03-01,0 K,0.5 K\n")
            .verdict();
    assertThat(product(root, "ash").get("gates").get(0).get("words").asString())
        .contains("without a known uncertainty");
    assertThat(product(root, "elm").get("gates").get(0).get("probabilityMeets").asDouble())
        .isEqualTo(0.885, offset(0.002));
    assertThat(product(root, "oak").get("gates").get(0).get("state").asString())
        .isEqualTo("passed");
    assertThat(product(root, "elm").get("gates").get(0).get("state").asString())
        .isEqualTo("not-shown");
    assertThat(product(root, "yew").get("score").isNull()).isTrue();
    assertThat(product(root, "yew").get("rank").isNull()).isTrue();
    assertThat(product(root, "elm").get("score").isNull()).isTrue();
  }

  @Test
  void aGateThatHangsOnItsLimitSaysWithWhichProbability() throws IOException {
    // 88 ± 2 against 90 with many runs' worth of certainty: P(beyond) = 16 % (statistics of a
    // normal error one standard deviation below its limit; three runs make Student's t of it).
    String gate =
        "    gates:\n      - {id: skin, name: Skin, kind: ceiling, reason: quality, measure: m,"
            + " at_most: 90 °C, ceiling: 5, scope: total}\n";
    JsonNode root =
        test("a", 1, curve(LINE), gate)
            .measured("oak", "a", "86", "88", "90")
            .measured("elm", "a", "58", "60", "62")
            .verdict();
    JsonNode found = product(root, "oak").get("gates").get(0);
    // Mean 88, s = 2, n = 3: t = 2 / 1.1547 = 1.732 with 4 degrees of freedom: P = 0.921.
    assertThat(found.get("probabilityMeets").asDouble()).isEqualTo(0.921, offset(0.002));
    assertThat(found.get("state").asString()).isEqualTo("hangs-on-the-limit");
  }

  @Test
  void identicalProductsShareOneTierAndHalfTheChance() throws IOException {
    JsonNode root =
        test("a", 1, curve(LINE))
            .measured("oak", "a", "69", "70", "71")
            .measured("elm", "a", "69", "70", "71")
            .verdict();
    for (String id : List.of("oak", "elm")) {
      assertThat(product(root, id).get("tier").asInt()).isEqualTo(1);
      assertThat(product(root, id).get("probabilityBest").asDouble()).isEqualTo(0.5, offset(0.04));
      assertThat(product(root, id).get("rank").get("high").asInt()).isEqualTo(2);
    }
  }

  @Test
  void oneRunHasNoIntervalAndNoRank() throws IOException {
    JsonNode root =
        test("a", 1, curve(LINE)).measured("oak", "a", "70").measured("elm", "a", "50").verdict();
    assertThat(score(root, "oak")).isEqualTo(7.0);
    assertThat(product(root, "oak").get("low").isNull()).isTrue();
    assertThat(product(root, "oak").get("rank").isNull()).isTrue();
    assertThat(product(root, "oak").get("note").asString()).contains("one run");
  }

  @Test
  void aGeometricTotalDoesNotForgiveANought() throws IOException {
    scoring = "scoring: {combine: geometric, draws: 2000}";
    // √(8 · 2) = 4.0; a test at 0 makes 0.
    JsonNode root =
        test("a", 1, curve(LINE))
            .test("b", 1, curve(LINE))
            .measured("oak", "a", "79", "80", "81")
            .measured("oak", "b", "19", "20", "21")
            .measured("elm", "a", "89", "90", "91")
            .measured("elm", "b", "0", "0", "0")
            .verdict();
    assertThat(score(root, "oak")).isEqualTo(4.0);
    assertThat(score(root, "elm")).isEqualTo(0.0);
  }

  @Test
  void aFloorIsTheLowestPart() throws IOException {
    scoring = "scoring: {combine: floor, draws: 2000}";
    JsonNode root =
        test("a", 1, curve(LINE))
            .test("b", 3, curve(LINE))
            .measured("oak", "a", "79", "80", "81")
            .measured("oak", "b", "59", "60", "61")
            .verdict();
    assertThat(score(root, "oak")).isEqualTo(6.0);
  }

  private KnownVerdictsTest rivals() {
    return test("a", 1, curve(LINE))
        .test("b", 1, curve(LINE))
        .measured("oak", "a", "79", "80", "81")
        .measured("oak", "b", "59", "60", "61")
        .measured("elm", "a", "59", "60", "61")
        .measured("elm", "b", "74", "75", "76");
  }

  @Test
  void theSmallestWeightChangeIsThatOfPaperAndPencil() throws IOException {
    // Oak 8 and 6, elm 6 and 7.5, half each. Moving δ to b: 7 − 2δ = 6.75 + 1.5δ, δ = 7.1 %.
    assertThat(answer(rivals().verdict("--unseat")))
        .contains("7.1 %")
        .contains("linear program")
        .contains("50.0 % → 57.1 %");
  }

  @Test
  void aDominatedRivalIsNeverFirst() throws IOException {
    String answer =
        answer(
            test("a", 1, curve(LINE))
                .test("b", 1, curve(LINE))
                .measured("oak", "a", "79", "80", "81")
                .measured("oak", "b", "59", "60", "61")
                .measured("elm", "a", "49", "50", "51")
                .measured("elm", "b", "49", "50", "51")
                .verdict("--unseat"));
    assertThat(answer).contains("never").contains("no weights do it");
  }

  @Test
  void whyAddsUpToTheDisplayedDifference() throws IOException {
    // Oak 7.0, elm 6.75 → 6.8: a gives +1.00, b −0.75, rounding −0.05, together +0.20.
    assertThat(answer(rivals().verdict("--why", "oak", "elm")))
        .contains("+1.00")
        .contains("−0.75")
        .contains("−0.05")
        .contains("+0.20");
  }

  @Test
  void anotherReaderHasOtherTotals() throws IOException {
    profiles = "profiles:\n  - {id: bakers, name: Bakers, parts: {b: 3}}\n";
    // 1 : 3: oak (8 + 18) / 4 = 6.5, elm (6 + 22.5) / 4 = 7.125 → 7.1.
    JsonNode root = rivals().verdict("--profile", "bakers");
    assertThat(score(root, "oak")).isEqualTo(6.5);
    assertThat(score(root, "elm")).isEqualTo(7.1);
  }

  @Test
  void acceptabilityOfTwoTestsIsAShareOfWeights() throws IOException {
    // Elm leads where b has more than 57.1 % of the weight. The share of b is Beta(15, 15) at
    // concentration 30: P(above 0.571) = 0.217 (commons-statistics).
    double expected =
        org.apache.commons.statistics.distribution.BetaDistribution.of(15, 15)
            .survivalProbability(4.0 / 7);
    JsonNode root = rivals().verdict("--acceptability");
    JsonNode rows = root.get("answers").get(0).get("rows");
    String shown = "";
    for (JsonNode row : rows) {
      shown = row.get("product").asString().equals("ELM") ? row.get("1").asString() : shown;
    }
    assertThat(Double.parseDouble(shown.replace(" %", ""))).isEqualTo(100 * expected, offset(1.7));
  }

  @Test
  void valueForMoneyIsTheFrontOfScoreAndPrice() throws IOException {
    String answer =
        answer(
            test("a", 1, curve(LINE))
                .measured("oak", "a", "79", "80", "81")
                .measured("elm", "a", "69", "70", "71")
                .measured("yew", "a", "49", "50", "51")
                .file(
                    "prices.csv",
                    "product,price,on\noak,200,2026-01-10\noak,180,2026-03-01\nelm,100,2026-03-01\n"
                        + "yew,120,2026-03-01\n")
                .verdict("--value"));
    assertThat(answer)
        .contains("180.00 EUR")
        .doesNotContain("200.00")
        .contains("dearer than one as good")
        .contains("100.00 EUR (ELM)");
  }

  @Test
  void droppingATestSaysWhichBoundaryItHeld() throws IOException {
    // Without b oak and elm are equal in a.
    String answer =
        answer(
            test("a", 1, curve(LINE))
                .test("b", 1, curve(LINE))
                .measured("oak", "a", "69", "70", "71")
                .measured("oak", "b", "89", "90", "91")
                .measured("elm", "a", "69", "70", "71")
                .measured("elm", "b", "49", "50", "51")
                .verdict("--drop", "test"));
    assertThat(answer).contains("OAK and ELM in one tier");
  }

  @Test
  void leavingOneTasterOutIsMeasuredAnew() throws IOException {
    // Three tasters mark elm two above oak; the fourth marks oak nine above elm, so that oak leads
    // by
    // (9 − 6) / 4 = 0.75 points with the fourth and trails by 2 without.
    tests.put(
        "eat",
        """
          - id: eat
            name: eat
            parts: 1
            replicates: 2
            marks:
              - {id: taste, name: Taste, kind: liking, anchors: {0: bad, 10: good}}
            measures:
              - {id: m, take: mark, of: taste}
            criteria:
              - {id: c, name: c, parts: 1, measure: m, curve: {points: [[0, 0], [10, 10]]}}
        """);
    StringBuilder ratings = new StringBuilder("session,assessor,run,mark,value,batch\n");
    products.addAll(List.of("oak", "elm"));
    for (int r = 1; r <= 2; r++) {
      for (String product : products) {
        runs.add("eat-" + product + "-" + r + "," + product + ",eat," + r);
        for (int t = 1; t <= 4; t++) {
          boolean oak = product.equals("oak");
          double mark = t == 4 ? oak ? 9.5 : 0.5 : oak ? 5 : 7;
          double noise = r == 1 ? 0.1 * (t - 2) : -0.1 * (t - 2);
          ratings.append(
              String.format(
                  "day,taster-%d,eat-%s-%d,taste,%s,1%n",
                  t, product, r, java.math.BigDecimal.valueOf(Math.round(10 * (mark + noise)), 1)));
        }
      }
    }
    String answer = answer(file("ratings.csv", ratings.toString()).verdict("--drop", "assessor"));
    assertThat(answer)
        .contains("\"without\":\"taster-4\",\"first then\":\"ELM\"")
        .contains("\"without\":\"taster-1\",\"first then\":\"OAK\"");
  }

  @Test
  void shrunkenSpreadIsHadByAsking() throws IOException {
    // One product of three spreads ten times as much. Pooled, all share its deviation; shrunken,
    // the
    // quiet ones keep most of their own.
    test("a", 1, curve(LINE))
        .measured("oak", "a", "69.9", "70", "70.1", "70", "69.9", "70.1")
        .measured("elm", "a", "59.9", "60", "60.1", "60", "59.9", "60.1")
        .measured("yew", "a", "40", "50", "60", "45", "55", "50");
    tests.replaceAll((id, text) -> text.replace("replicates: 3", "replicates: 6"));
    JsonNode pooled = verdict();
    scoring = "scoring: {draws: 4000, seed: 7, run_spread: shrunken}";
    JsonNode shrunken = verdict();
    assertThat(width(shrunken, "oak")).isLessThan(0.7 * width(pooled, "oak"));
    assertThat(pooled.get("warnings").toString()).contains("spread more than those of the field");
  }

  private static double width(JsonNode root, String id) {
    JsonNode product = product(root, id);
    return product.get("high").asDouble() - product.get("low").asDouble();
  }

  @Test
  void suitedListsRefuseWhatTiersDoNotSupport() throws IOException {
    String answer =
        answer(
            test("a", 1, curve(LINE))
                .measured("oak", "a", "75", "80", "85")
                .measured("elm", "a", "74", "79", "84")
                .measured("yew", "a", "25", "30", "35")
                .verdict("--suited", "a:first-tier"));
    assertThat(answer)
        .contains("\"product\":\"OAK\",\"on the list\":\"yes\"")
        .contains("\"product\":\"ELM\",\"on the list\":\"yes\"")
        .contains("\"product\":\"YEW\",\"on the list\":\"no\"");
  }

  @Test
  void weightsThatSumToNothingAreRefusedWithTheirPlace() throws IOException {
    String said = test("a", 0, curve(LINE)).measured("oak", "a", "79", "80", "81").refusal();
    assertThat(said).contains("method.yaml").contains("weight");
  }

  @Test
  void curvesOutOfOrderAreRefusedWithTheirPlace() throws IOException {
    String said =
        test("a", 1, curve("points: [[50 °C, 0], [20 °C, 10]], points: [[0 °C, 0]]"))
            .measured("oak", "a", "79")
            .refusal();
    assertThat(said).contains("method.yaml");
  }

  @Test
  void everybodyMissingATestIsSaidAndNeverZero() throws IOException {
    JsonNode root =
        test("a", 1, curve(LINE))
            .test("b", 1, curve(LINE))
            .measured("oak", "a", "79", "80", "81")
            .measured("elm", "a", "69", "70", "71")
            .verdict();
    assertThat(root.get("warnings").toString()).contains("no product has a measurement");
    assertThat(product(root, "oak").get("known").asString()).isEqualTo("bounds");
    // 8 and nothing: 4.0 … 9.0; 7 and nothing: 3.5 … 8.5. Nothing is separated.
    assertThat(product(root, "elm").get("tier").asInt()).isEqualTo(1);
  }

  @Test
  void aPoolOfOneHasNoPercentilesButAbsoluteCurvesStillScore() throws IOException {
    JsonNode root =
        test("a", 1, curve(LINE))
            .test("b", 1, "curve: {percentile: {pool: old, better: higher, values: [50 °C]}}")
            .measured("oak", "a", "79", "80", "81")
            .measured("oak", "b", "79", "80", "81")
            .verdict();
    assertThat(root.get("warnings").toString() + err).contains("pool");
    assertThat(product(root, "oak").get("tests").get(0).get("score").asDouble()).isEqualTo(8.0);
  }
}
