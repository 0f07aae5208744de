package ovenproof.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the verbs print is what their schemas say, key by key. */
class JsonSchemasTest {

  static Schema schema(String name) throws IOException {
    Path here = Path.of("").toAbsolutePath();
    Path root = Files.exists(here.resolve("docs/files.md")) ? here : here.getParent();
    return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
        .getSchema(
            Files.readString(root.resolve("docs/schema/" + name + ".schema.json")),
            InputFormat.JSON);
  }

  private static String run(String... words) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    Ovenproof.commandLine(new PrintWriter(out, true), new PrintWriter(err, true)).execute(words);
    assertThat(out.toString()).as(err.toString()).startsWith("{");
    return out.toString();
  }

  private static Path resource(String name) throws URISyntaxException {
    return Path.of(JsonSchemasTest.class.getResource("/ovenproof/" + name).toURI());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "batches-and-order.csv",
        "several-scales.csv",
        "two-spellings.csv",
        "out-of-scale.csv",
        "typed/wide-consumers.csv",
        "typed/constant.csv",
        "typed/one-taster.csv",
        "typed/aggregated.csv",
        "typed/not-ratings.csv",
        "typed/with-summary-and-key.xlsx",
        "typed/junk.csv",
        "typed/transposed.csv"
      })
  void panelsAreAsTheSchemaSays(String table) throws Exception {
    String json = run("panel", resource("evidence/ratings/" + table).toString(), "--json");
    assertThat(schema("panel").validate(json, InputFormat.JSON)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"four-invented-ovens", "three-tasted-ovens"})
  void verdictsWithAllQuestionsAreAsTheSchemaSays(String campaign) throws Exception {
    List<String> words =
        new ArrayList<>(List.of("verdict", resource("verdict/" + campaign).toString(), "--json"));
    words.addAll(List.of("--unseat", "--acceptability", "--profiles", "--worth", "--value"));
    words.addAll(List.of("--drop", "test", "--suited", "toast:first-tier,no-gate"));
    if (campaign.startsWith("three")) {
      words.addAll(List.of("--why", "oak", "elm", "--more-runs", "oak", "elm"));
      words.addAll(List.of("--reference", "oak", "--since", "2026-03-02"));
    }
    String json = run(words.toArray(new String[0]));
    assertThat(schema("verdict").validate(json, InputFormat.JSON)).isEmpty();
  }

  @Test
  void aMisspeltKeyIsMissed() throws Exception {
    String json =
        run("panel", resource("evidence/ratings/batches-and-order.csv").toString(), "--json");
    assertThat(
            schema("panel").validate(json.replace("\"groups\"", "\"letters\""), InputFormat.JSON))
        .isNotEmpty();
    String verdict = run("verdict", resource("verdict/three-tasted-ovens").toString(), "--json");
    assertThat(
            schema("verdict").validate(verdict.replace("\"tier\"", "\"class\""), InputFormat.JSON))
        .isNotEmpty();
  }
}
