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
import java.util.Map;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Questions over the years, on invented folders; a tenth of a point per degree. */
class YearsCommandTest {
  @TempDir Path root;

  private final StringWriter err = new StringWriter();

  private static String method(String version, int a, int b) {
    return """
        format: 1
        method: known
        title: Known
        version: "%s"
        population: Invented ovens
        scoring: {draws: 4000, seed: 7}
        tests:
        """
            .formatted(version)
        + test("a", a)
        + test("b", b);
  }

  private static String test(String id, int parts) {
    return """
          - id: %1$s
            name: %1$s
            parts: %2$d
            replicates: 3
            measures:
              - {id: m, take: reading, unit: °C}
            criteria:
              - {id: c, name: c, parts: 1, measure: m, curve: {points: [[0 °C, 0], [100 °C, 10]]}}
        """
        .formatted(id, parts);
  }

  /** A run per value, on a day. */
  private record Cooked(
      String product, String test, String session, String day, double... values) {}

  private Path campaign(String name, String method, String published, List<Cooked> cooked)
      throws IOException {
    Path folder = Files.createDirectories(root.resolve(name));
    Files.writeString(
        folder.resolve("campaign.yaml"),
        "format: 1\ncampaign: "
            + name
            + "\ntitle: "
            + name
            + "\nkitchen: Invented\nzone: Europe/Dublin\ncurrency: EUR\ninvented: yes\n"
            + (published.isEmpty() ? "" : "published: " + published + "\n"));
    Files.writeString(folder.resolve("method.yaml"), method);
    StringBuilder products = new StringBuilder("product,name\n");
    cooked.stream()
        .map(Cooked::product)
        .distinct()
        .forEach(p -> products.append(p).append(',').append(p.toUpperCase()).append('\n'));
    Files.writeString(folder.resolve("products.csv"), products);
    StringBuilder runs = new StringBuilder("run,product,test,replicate,session,started\n");
    StringBuilder readings = new StringBuilder("run,reading,value\n");
    Map<String, Integer> replicate = new java.util.HashMap<>();
    for (Cooked c : cooked) {
      for (double value : c.values()) {
        int r = replicate.merge(c.product() + c.test(), 1, Integer::sum);
        String run = c.test() + "-" + c.product() + "-" + r;
        String hour = String.format("T%02d:00", (c.test().equals("a") ? 1 : 12) + r % 10);
        runs.append(
            String.join(
                ",", run, c.product(), c.test(), "" + r, c.session(), c.day() + hour + "\n"));
        readings.append(run).append(",m,").append(value).append(" °C\n");
      }
    }
    Files.writeString(folder.resolve("runs.csv"), runs);
    Files.writeString(folder.resolve("readings.csv"), readings);
    return folder;
  }

  private JsonNode answer(Path folder, String... options) {
    StringWriter out = new StringWriter();
    List<String> words = new ArrayList<>(List.of("verdict", folder.toString(), "--json"));
    words.addAll(List.of(options));
    int exit =
        Ovenproof.commandLine(new PrintWriter(out, true), new PrintWriter(err, true))
            .execute(words.toArray(new String[0]));
    assertThat(exit).as(err.toString()).isZero();
    JsonNode answers = new JsonMapper().readTree(out.toString()).get("answers");
    return answers.get(answers.size() - 1);
  }

  private static List<Cooked> field(String day, Object... productAndValue) {
    List<Cooked> cooked = new ArrayList<>();
    for (int i = 0; i < productAndValue.length; i += 2) {
      double v = ((Number) productAndValue[i + 1]).doubleValue();
      for (String test : List.of("a", "b")) {
        cooked.add(new Cooked((String) productAndValue[i], test, day, day, v - 0.5, v, v + 0.5));
      }
    }
    return cooked;
  }

  @Test
  void threeSpecimensTestedInBothMakeABridge() throws IOException {
    // All three moved by +5 K = +0.5 points: ash, 8.0 then, is 8.5 now and above all: first of
    // four.
    Path old =
        campaign(
            "y2025",
            method("1", 1, 1),
            "",
            field("2025-03-03", "oak", 60, "elm", 50, "yew", 70, "ash", 80));
    Path now =
        campaign(
            "y2026", method("1", 1, 1), "", field("2026-03-03", "oak", 65, "elm", 55, "yew", 75));
    JsonNode answer = answer(now, "--bridge", old.toString());
    JsonNode ash = answer.get("rows").get(0);
    assertThat(answer.get("rows").size()).isEqualTo(1);
    assertThat(ash.get("product").asString()).isEqualTo("ASH");
    assertThat(ash.get("on this scale").asString()).isEqualTo("8.5");
    assertThat(ash.get("places it may hold").asString()).isEqualTo("1 of 4");
    assertThat(answer.get("sentences").toString()).contains("moved by +0.50 points");
  }

  @Test
  void twoSpecimensMakeNone() throws IOException {
    Path old =
        campaign(
            "y2025", method("1", 1, 1), "", field("2025-03-03", "oak", 60, "elm", 50, "ash", 80));
    Path now = campaign("y2026", method("1", 1, 1), "", field("2026-03-03", "oak", 65, "elm", 55));
    JsonNode answer = answer(now, "--bridge", old.toString());
    assertThat(answer.get("rows").get(0).get("places it may hold").asString())
        .isEqualTo("unranked");
    assertThat(answer.get("sentences").toString()).contains("2 tested in both").contains("3 are");
  }

  @Test
  void specimensThatMovedEachItsOwnWayMakeNone() throws IOException {
    Path old =
        campaign(
            "y2025",
            method("1", 1, 1),
            "",
            field("2025-03-03", "oak", 60, "elm", 50, "yew", 70, "ash", 80));
    Path now =
        campaign(
            "y2026", method("1", 1, 1), "", field("2026-03-03", "oak", 65, "elm", 30, "yew", 95));
    JsonNode answer = answer(now, "--bridge", old.toString());
    assertThat(answer.get("rows").get(0).get("on this scale").asString()).isEqualTo("–");
    assertThat(answer.get("sentences").toString()).contains("moved so differently");
  }

  @Test
  void aProductTestedLaterStaysUnrankedBesideOneReferenceOnly() throws IOException {
    List<Cooked> cooked = new ArrayList<>(field("2026-03-03", "oak", 60, "elm", 50));
    cooked.addAll(field("2026-05-04", "oak", 61, "ash", 80));
    Path folder =
        campaign(
            "y2026",
            method("1", 1, 1).replace("replicates: 3", "replicates: 6"),
            "2026-04-01",
            cooked);
    JsonNode answer = answer(folder, "--later");
    assertThat(answer.get("rows").size()).isEqualTo(1);
    assertThat(answer.get("rows").get(0).get("product").asString()).isEqualTo("ASH");
    assertThat(answer.get("rows").get(0).get("tested later").asString()).isEqualTo("8.0");
    assertThat(answer.get("rows").get(0).get("places it may hold").asString())
        .isEqualTo("unranked");
    assertThat(answer.get("sentences").toString()).contains("1 tested in both (OAK)");
  }

  @Test
  void theReferenceApplianceIsChartedOverCampaigns() throws IOException {
    double[] means = {60.2, 59.8, 60.5, 60.1, 59.6, 60.3, 66};
    List<Cooked> before = new ArrayList<>();
    List<Cooked> after = new ArrayList<>();
    for (int s = 0; s < means.length; s++) {
      String session = "s" + (s + 1);
      Cooked one =
          new Cooked(
              "oak",
              "a",
              session,
              (s < 4 ? "2025-0" : "2026-0") + (s % 4 + 1) + "-03",
              means[s] - 0.4,
              means[s] + 0.4);
      (s < 4 ? before : after).add(one);
    }
    String method = method("1", 1, 0).replace("replicates: 3", "replicates: 9");
    Path old = campaign("y2025", method, "", before);
    Path now = campaign("y2026", method, "", after);
    JsonNode answer = answer(now, "--reference", "oak", "--earlier", old.toString());
    JsonNode row = answer.get("rows").get(0);
    assertThat(row.get("sessions").asInt()).isEqualTo(7);
    assertThat(row.get("chart").asString()).isEqualTo("s7 far out");
    // T = (66 − x̄) / (s √(1 + 1/6)) with 5 degrees of freedom, mapped to a normal (statistics.md
    // 13;
    // distributions of commons-statistics).
    double mean = 0;
    for (int i = 0; i < 6; i++) {
      mean += means[i] / 6;
    }
    double squares = 0;
    for (int i = 0; i < 6; i++) {
      squares += (means[i] - mean) * (means[i] - mean);
    }
    double t = (66 - mean) / Math.sqrt(squares / 5 * (1 + 1.0 / 6));
    double z =
        NormalDistribution.of(0, 1)
            .inverseSurvivalProbability(TDistribution.of(5).survivalProbability(t));
    assertThat(Double.parseDouble(row.get("z").asString())).isEqualTo(z, offset(0.006));
    assertThat(answer.get("sentences").toString()).contains("from the sixth");
  }

  @Test
  void anotherMethodVersionIsShownAndNothingIsSaved() throws IOException {
    // a 80 and b 60: 1 : 1 gives 7.0, 1 : 3 gives 6.5; elm 60 and 75: 6.8, then (6 + 22.5)/4 → 7.1.
    List<Cooked> cooked = new ArrayList<>();
    cooked.add(new Cooked("oak", "a", "s", "2026-03-03", 79, 80, 81));
    cooked.add(new Cooked("oak", "b", "s", "2026-03-04", 59, 60, 61));
    cooked.add(new Cooked("elm", "a", "s", "2026-03-05", 59, 60, 61));
    cooked.add(new Cooked("elm", "b", "s", "2026-03-06", 74, 75, 76));
    Path folder = campaign("y2026", method("1", 1, 1), "", cooked);
    Path other = Files.writeString(root.resolve("method-2.yaml"), method("2", 1, 3));
    JsonNode answer = answer(folder, "--under", other.toString());
    String rows = answer.get("rows").toString();
    assertThat(answer.get("title").asString()).contains("method 1 → 2");
    assertThat(rows)
        .contains("\"product\":\"ELM\",\"then\":\"6.8\",\"now\":\"7.1\",\"difference\":\"+0.30\"")
        .contains("\"product\":\"OAK\",\"then\":\"7.0\",\"now\":\"6.5\",\"difference\":\"−0.50\"");
    assertThat(Files.readString(folder.resolve("method.yaml"))).contains("version: \"1\"");
  }
}
