package ovenproof.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * The verb as a person uses it. The curves are calculated: one exponential, 21 °C to 225 °C with a
 * time constant of 300 s, held at 200 °C by a switch of ± 3 K in 80 s.
 */
class TraceCommandTest {

  @TempDir Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String... args) {
    return Ovenproof.commandLine(new PrintWriter(out, true), new PrintWriter(err, true))
        .execute(args);
  }

  private JsonNode json() {
    return new JsonMapper().readTree(out.toString());
  }

  private JsonNode measurement(String id) {
    for (JsonNode m : json().get("measurements")) {
      if (m.get("id").asString().equals(id)) {
        return m;
      }
    }
    throw new AssertionError("no measurement " + id);
  }

  private String file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text).toString();
  }

  private static double oven(double t) {
    double heating = 225 - 204 * Math.exp(-t / 300);
    return heating < 200 ? heating : 200 + 3 * Math.sin((t - 629.7) * 2 * Math.PI / 80);
  }

  private static String rows(String header, int n, IntFunction<String> row) {
    StringBuilder text = new StringBuilder(header).append('\n');
    for (int i = 0; i < n; i++) {
      text.append(row.apply(i)).append('\n');
    }
    return text.toString();
  }

  private static String oneDecimal(double value) {
    return String.format(Locale.ROOT, "%.1f", value);
  }

  private String plain() throws IOException {
    return file(
        "oven.csv", rows("Time (s),Centre (°C)", 1200, i -> 2 * i + "," + oneDecimal(oven(2 * i))));
  }

  @Test
  void jsonHoldsTheContract() throws IOException {
    assertThat(run("trace", plain(), "--set", "200C", "--json")).isZero();
    JsonNode root = json();
    assertThat(root.get("format").asInt()).isEqualTo(1);
    for (String field :
        new String[] {"file", "layout", "channels", "measurements", "questions", "warnings"}) {
      assertThat(root.has(field)).as(field).isTrue();
    }
    for (String field :
        new String[] {"name", "quantity", "unit", "rows", "gaps", "unused", "suspect", "why"}) {
      assertThat(root.get("channels").get(0).has(field)).as(field).isTrue();
    }
    for (String id :
        "preheat-first preheat-band preheat-steady overshoot steady-mean offset cycle-amplitude cycle-period spread highest ceiling-temperature time-constant energy core-highest lethality"
            .split(" ")) {
      assertThat(measurement(id).has("value")).as(id).isTrue();
    }
  }

  /** First crossing of 200 °C: 300·ln(204/25) = 629.7 s, by hand. */
  @Test
  void measuresAreThoseOfTheCalculatedCurve() throws IOException {
    assertThat(run("trace", plain(), "--set", "392F", "--json")).isZero();
    assertThat(measurement("preheat-first").get("value").asDouble()).isCloseTo(629.7, offset(4.0));
    assertThat(measurement("steady-mean").get("value").asDouble()).isCloseTo(200, offset(0.2));
    assertThat(measurement("cycle-period").get("value").asDouble()).isCloseTo(80, offset(1.0));
    assertThat(measurement("cycle-amplitude").get("value").asDouble()).isCloseTo(6, offset(0.3));
    assertThat(measurement("ceiling-temperature").get("value").asDouble())
        .isCloseTo(225, offset(2.0));
    assertThat(measurement("time-constant").get("value").asDouble()).isCloseTo(300, offset(6.0));
    assertThat(json().get("story").asString()).contains("200 °C").contains("225 °C");
  }

  @Test
  void startMayBeAClockOrASecond() throws IOException {
    String log =
        file(
            "clock.csv",
            rows(
                "Time,T1 (C)",
                600,
                i ->
                    String.format(
                        Locale.ROOT,
                        "12:%02d:%02d,%s",
                        (2 * i) / 60,
                        2 * i % 60,
                        oneDecimal(oven(Math.max(0, 2 * i - 100))))));
    assertThat(run("trace", log, "--set", "150C", "--start", "12:01:40", "--json")).isZero();
    double byClock = measurement("preheat-first").get("value").asDouble();
    out.getBuffer().setLength(0);
    assertThat(run("trace", log, "--set", "150C", "--start", "100s", "--json")).isZero();
    assertThat(measurement("preheat-first").get("value").asDouble()).isEqualTo(byClock);
    // 300·ln(204/75) = 300.2 s, by hand.
    assertThat(byClock).isCloseTo(300.2, offset(4.0));
  }

  @Test
  void aLongRecordIsMeasuredOverOneOfItsHeatUps() throws IOException {
    IntFunction<String> row =
        i -> {
          double t = (5 * i) % 6000;
          double celsius = t < 3600 ? oven(t) : 21 + 179 * Math.exp(-(t - 3600) / 500);
          return 5 * i + "," + oneDecimal(celsius);
        };
    String log = file("day.csv", rows("Time (s),Centre (°C)", 2400, row));
    assertThat(run("trace", log, "--set", "200C", "--json")).isZero();
    assertThat(json().get("notes").toString()).contains("2 heat-ups").contains("--start");
    assertThat(measurement("preheat-first").get("value").asDouble()).isCloseTo(630, offset(10.0));
    out.getBuffer().setLength(0);
    assertThat(run("trace", log, "--set", "200C", "--start", "6000s", "--json")).isZero();
    assertThat(measurement("preheat-first").get("value").asDouble()).isCloseTo(630, offset(15.0));
  }

  /** 1500 W for half an hour are 0.75 kWh. */
  @Test
  void aMeterAloneGivesItsEnergy() throws IOException {
    String log = file("plug.csv", rows("Time (s),Power (W)", 361, i -> 5 * i + ",1500"));
    assertThat(run("trace", log, "--json")).isZero();
    assertThat(measurement("energy").get("value").asDouble()).isCloseTo(0.75, offset(1e-6));
    assertThat(measurement("highest").get("value").isNull()).isTrue();
    assertThat(json().get("notes").toString()).contains("No temperature was logged");
  }

  @Test
  void aNeedlesTargetIsNotTheDial() throws IOException {
    String log =
        file(
            "roast.csv",
            rows(
                "Elapsed (s),Ambient °C,Probe 1 °C,Probe 1 Target °C",
                400,
                i ->
                    5 * i
                        + ","
                        + oneDecimal(oven(5 * i))
                        + ","
                        + oneDecimal(5 + i * 0.18)
                        + ",74"));
    assertThat(run("trace", log, "--json")).isZero();
    assertThat(measurement("offset").get("note").asString()).contains("setting is not known");
    assertThat(measurement("core-highest").get("value").asDouble()).isCloseTo(76.8, offset(0.5));
  }

  @Test
  void aPersonsPlacesGiveContrasts() throws IOException {
    String log =
        file(
            "places.csv",
            rows(
                "Time (s),A (°C),B (°C)",
                1200,
                i -> 2 * i + "," + oneDecimal(oven(2 * i)) + "," + oneDecimal(oven(2 * i) - 8)));
    assertThat(run("trace", log, "--channel", "A=front-left", "--channel", "B=back-left", "--json"))
        .isZero();
    assertThat(measurement("front-back").get("value").asDouble()).isCloseTo(8, offset(0.1));
  }

  @Test
  void wrongUseNamesWhatWasFoundAndWhatIsExpected() throws IOException {
    assertThat(run("trace", plain(), "--channel", "Centra=centre")).isEqualTo(2);
    assertThat(err.toString()).contains("Centra").contains("Centre");
    err.getBuffer().setLength(0);
    assertThat(run("trace", plain(), "--set", "hot")).isEqualTo(2);
    assertThat(err.toString()).contains("--set");
    err.getBuffer().setLength(0);
    assertThat(run("trace", plain(), "--temperatures", "W")).isEqualTo(2);
    assertThat(err.toString()).contains("expected C or F");
  }

  @Test
  void theDrawingIsWrittenAndHoldsNoHostileName() throws IOException {
    String log =
        file(
            "name.csv",
            rows(
                "Time (s),<script>x</script> (°C)",
                300,
                i -> 5 * i + "," + oneDecimal(oven(5 * i))));
    Path svg = folder.resolve("out.svg");
    assertThat(run("trace", log, "--set", "200C", "--plot", svg.toString())).isZero();
    assertThat(Files.readString(svg)).startsWith("<svg").doesNotContain("<script");
    assertThat(out.toString()).contains("Certainty of this reading");
  }

  @Test
  void whatIsNotThereIsAnsweredInWords() {
    assertThat(run("trace", folder.resolve("none.csv").toString())).isEqualTo(1);
    assertThat(run("trace", folder.toString(), "--json")).isEqualTo(1);
    assertThat(err.toString())
        .contains("no such file")
        .contains("a folder")
        .doesNotContain("\tat ");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "\n\n\n",
        "a",
        "%PDF-1.7\n1 0 obj\n",
        "<html><table>",
        "Time,T\n",
        "PK\u0003\u0004zzzz",
        "The oven got hot.\nWe had tea.\n"
      })
  void whatIsNoLogIsAnsweredInWords(String content) throws IOException {
    Path file = folder.resolve("bad.bin");
    Files.write(file, content.getBytes(StandardCharsets.ISO_8859_1));
    assertThat(run("trace", file.toString(), "--json")).isEqualTo(1);
    assertThat(json().get("warnings").size()).isPositive();
    assertThat(err.toString()).isNotBlank().doesNotContain("Exception").doesNotContain("\tat ");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "s,T\n1,20\n",
        "s,T\n1,NaN\n2,NaN\n3,NaN\n",
        "s,T\n1,-127\n2,-127\n3,-127\n4,-127\n"
      })
  void aLogThatCarriesNothingIsReadAndMeasuresSayWhy(String content) throws IOException {
    assertThat(run("trace", file("poor.csv", content), "--json")).isZero();
    for (JsonNode m : json().get("measurements")) {
      boolean reasoned = !m.get("value").isNull() || !m.get("note").asString().isBlank();
      assertThat(reasoned).as(m.get("id").asString()).isTrue();
    }
    assertThat(err.toString()).doesNotContain("Exception");
  }
}
