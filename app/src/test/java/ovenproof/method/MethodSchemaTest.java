package ovenproof.method;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import ovenproof.input.Problems;
import ovenproof.measure.MeasureRegistry;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The JSON Schema of a method accepts what the reader accepts, key by key. */
class MethodSchemaTest {
  private static final Path FILE = docs().resolve("schema/method.schema.json");

  private static Path docs() {
    Path here = Path.of("").toAbsolutePath();
    return (Files.exists(here.resolve("docs/files.md")) ? here : here.getParent()).resolve("docs");
  }

  private static Schema schema() throws IOException {
    return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
        .getSchema(Files.readString(FILE), InputFormat.JSON);
  }

  static List<String> starters() {
    return Starters.names();
  }

  @ParameterizedTest
  @MethodSource("starters")
  void startersAreValid(String starter) throws IOException {
    assertThat(schema().validate(Starters.text(starter), InputFormat.YAML)).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("starters")
  void whatTheWriterWritesIsValid(String starter) throws IOException {
    Method method =
        new MethodReader(MeasureRegistry.all().measures())
            .read("method.yaml", Starters.text(starter), new Problems())
            .orElseThrow();
    assertThat(schema().validate(MethodWriter.write(method), InputFormat.YAML)).isEmpty();
  }

  @Test
  void anUnknownKeyIsRefused() throws IOException {
    String spoilt = Starters.text("toasters").replace("population:", "popluation:");
    assertThat(schema().validate(spoilt, InputFormat.YAML)).isNotEmpty();
  }

  @Test
  void aGateWithoutLimitIsRefused() throws IOException {
    String spoilt = Starters.text("toasters").replace("at_most: 90 °C, ", "");
    assertThat(schema().validate(spoilt, InputFormat.YAML)).isNotEmpty();
  }

  static Stream<Arguments> keys() {
    return Map.<String, List<String>>ofEntries(
            Map.entry("fact", MethodReader.FACT_KEYS),
            Map.entry("rated", MethodReader.RATED_KEYS),
            Map.entry("feature", MethodReader.FEATURE_KEYS),
            Map.entry("scoring", MethodReader.SCORING_KEYS),
            Map.entry("profile", MethodReader.PROFILE_KEYS),
            Map.entry("test", TestPlanReader.TEST_KEYS),
            Map.entry("variant", TestPlanReader.VARIANT_KEYS),
            Map.entry("sample", TestPlanReader.SAMPLE_KEYS),
            Map.entry("setting", TestPlanReader.SETTING_KEYS),
            Map.entry("action", TestPlanReader.ACTION_KEYS),
            Map.entry("stop", TestPlanReader.STOP_KEYS),
            Map.entry("photos", PhotoPlanReader.PHOTO_KEYS),
            Map.entry("shade", PhotoPlanReader.SHADE_KEYS),
            Map.entry("shadeClass", PhotoPlanReader.CLASS_KEYS),
            Map.entry("mark", TestPlanReader.MARK_KEYS),
            Map.entry("measure", MeasureUseReader.MEASURE_KEYS),
            Map.entry("criterion", ValueTreeReader.CRITERION_KEYS),
            Map.entry("group", ValueTreeReader.GROUP_KEYS),
            Map.entry("gate", ValueTreeReader.GATE_KEYS),
            Map.entry("curve", CurveReader.CURVE_KEYS),
            Map.entry("window", CurveReader.WINDOW_KEYS),
            Map.entry("steps", CurveReader.STEPS_KEYS),
            Map.entry("checklist", CurveReader.CHECKLIST_KEYS),
            Map.entry("percentile", CurveReader.PERCENTILE_KEYS))
        .entrySet()
        .stream()
        .map(e -> Arguments.of(e.getKey(), e.getValue()));
  }

  @ParameterizedTest
  @MethodSource("keys")
  void schemaAndReaderKnowTheSameKeys(String node, List<String> keys) throws IOException {
    JsonNode schema = JsonMapper.shared().readTree(Files.readString(FILE));
    assertThat(schema.path("$defs").path(node).path("properties").propertyNames())
        .containsExactlyInAnyOrderElementsOf(keys);
  }

  @Test
  void schemaAndReaderKnowTheSameKeysAtTheTop() throws IOException {
    JsonNode schema = JsonMapper.shared().readTree(Files.readString(FILE));
    assertThat(schema.path("properties").propertyNames())
        .containsExactlyInAnyOrderElementsOf(MethodReader.METHOD_KEYS);
  }
}
