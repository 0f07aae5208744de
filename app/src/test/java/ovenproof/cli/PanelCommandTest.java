package ovenproof.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class PanelCommandTest {

  @TempDir Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String... args) {
    return Ovenproof.commandLine(new PrintWriter(out, true), new PrintWriter(err, true))
        .execute(args);
  }

  private String layout(String name) throws IOException {
    Path file = folder.resolve(name);
    try (InputStream in =
        PanelCommandTest.class.getResourceAsStream("/ovenproof/evidence/ratings/" + name)) {
      Files.write(file, Objects.requireNonNull(in, name).readAllBytes());
    }
    return file.toString();
  }

  private String file(String text) throws IOException {
    return Files.writeString(folder.resolve("table.csv"), text).toString();
  }

  private JsonNode json() {
    return new JsonMapper().readTree(out.toString());
  }

  @Test
  void jsonHoldsTheContract() throws IOException {
    assertThat(run("panel", layout("long-two-attributes.csv"), "--json")).isZero();
    JsonNode root = json();
    assertThat(root.get("format").asInt()).isEqualTo(1);
    assertThat(root.get("design").get("assessors").asInt()).isEqualTo(6);
    assertThat(root.get("products").size()).isEqualTo(8);
    for (String field : new String[] {"id", "attribute", "mean", "uncertainty", "groups"}) {
      assertThat(root.get("products").get(0).has(field)).as(field).isTrue();
    }
    for (String field : new String[] {"name", "attribute", "statistic", "df", "p"}) {
      assertThat(root.get("tests").get(0).has(field)).as(field).isTrue();
    }
    assertThat(root.get("assessors").size()).isEqualTo(6);
    assertThat(root.get("warnings").toString()).contains("batches apart");
  }

  @Test
  void problemsGoToStderrAndGiveExitOneButNothingIsLost() throws IOException {
    assertThat(run("panel", layout("typed-twice.csv"), "--json")).isEqualTo(1);
    assertThat(err.toString().lines().count()).isEqualTo(2);
    assertThat(err.toString()).contains("typed-twice.csv:9:3").contains("typed-twice.csv:27:3");
    assertThat(json().get("products").size()).isEqualTo(4);
  }

  @Test
  void questionsAreAskedAndWorkGoesOn() throws IOException {
    assertThat(run("panel", layout("two-spellings.csv"))).isZero();
    assertThat(err.toString()).contains("question:").contains("--same");
    out.getBuffer().setLength(0);
    err.getBuffer().setLength(0);
    assertThat(
            run(
                "panel",
                layout("two-spellings.csv"),
                "--same",
                "fenna=Fenna",
                "--same",
                "Dogwod=Dogwood"))
        .isZero();
    assertThat(err.toString()).isEmpty();
  }

  @Test
  void thePictureNamesNobody() throws IOException {
    Path picture = folder.resolve("out.svg");
    assertThat(run("panel", layout("products-in-columns.csv"), "--plot", picture.toString()))
        .isZero();
    String svg = Files.readString(picture);
    assertThat(svg).startsWith("<?xml").contains("<svg").contains("Alder");
    assertThat(svg).doesNotContain("Anna").doesNotContain("Fenna").doesNotContain("style=");
    try (var files = Files.list(folder)) {
      assertThat(files).hasSize(2);
    }
  }

  @Test
  void onePersonOneProductAndConstantMarksAreSaidInWords() throws IOException {
    assertThat(run("panel", file("taster,oven,score\nAnna,Alder,7\nAnna,Birch,5\nAnna,Cedar,6\n")))
        .isZero();
    assertThat(out.toString()).contains("One assessor");
    out.getBuffer().setLength(0);
    run("panel", file("taster,oven,score\nAnna,Alder,7\nBela,Alder,5\nCarlo,Alder,6\n"));
    assertThat(out.toString()).contains("Only one product");
    out.getBuffer().setLength(0);
    run(
        "panel",
        file("taster,oven,score\nAnna,Alder,5\nAnna,Birch,5\nBela,Alder,5\nBela,Birch,5\n"));
    assertThat(out.toString()).contains("All marks are equal");
  }

  /**
   * Binomial tails from scipy: P(X ≥ 14 of 30 at ⅓) 0.0897709, 2·P(X ≥ 12 of 15 at ½) 0.03515625.
   */
  @Test
  void countedTestsNeedNoTable() {
    assertThat(run("panel", "--triangle", "14/30", "--json")).isZero();
    JsonNode root = json();
    assertThat(root.get("neededAtFivePercent").asInt()).isEqualTo(15);
    out.getBuffer().setLength(0);
    assertThat(run("panel", "--paired", "12/15")).isZero();
    assertThat(out.toString()).contains("0.0352");
    assertThat(root.get("p").asDouble()).isCloseTo(0.0897709, offset(1e-6));
  }

  @Test
  void wrongUsageIsExitTwoAndAMissingFileExitOne() {
    assertThat(run("panel")).isEqualTo(2);
    assertThat(run("panel", "--triangle", "40/30")).isEqualTo(2);
    assertThat(run("panel", "--triangle", "many")).isEqualTo(2);
    assertThat(run("panel", folder.resolve("none.csv").toString())).isEqualTo(1);
    assertThat(err.toString()).contains("no such file");
  }
}
