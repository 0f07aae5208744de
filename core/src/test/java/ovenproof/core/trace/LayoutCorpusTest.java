package ovenproof.core.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every layout of the corpus is read right with no option given. The files are invented and
 * written, with what must come out, by {@code src/test/layouts/make_layouts.py}.
 */
class LayoutCorpusTest {

  /** What must come out of one file: lines of "key value". */
  record Expected(String file, List<String> lines) {
    @Override
    public String toString() {
      return file;
    }

    List<String> all(String key) {
      return lines.stream()
          .filter(l -> l.startsWith(key + " "))
          .map(l -> l.substring(key.length() + 1))
          .toList();
    }
  }

  static Stream<Expected> corpus() throws IOException {
    List<Expected> all = new ArrayList<>();
    String text = new String(bytes("expected.txt"), StandardCharsets.UTF_8);
    for (String block : text.split("\n\n")) {
      List<String> lines = List.of(block.strip().split("\n"));
      all.add(new Expected(lines.get(0).substring(5), lines));
    }
    return all.stream();
  }

  private static byte[] bytes(String file) throws IOException {
    try (InputStream in = LayoutCorpusTest.class.getResourceAsStream("layouts/" + file)) {
      return Objects.requireNonNull(in, file).readAllBytes();
    }
  }

  @Test
  void thereAreAtLeastFortyLayouts() throws IOException {
    assertThat(corpus().count()).isGreaterThanOrEqualTo(40);
  }

  @ParameterizedTest
  @MethodSource("corpus")
  void channelsUnitsAndTimesAreReadWithNoOptionGiven(Expected expected) throws IOException {
    TraceFile file = TraceReader.withDefaults().read(bytes(expected.file));
    SoftAssertions softly = new SoftAssertions();
    softly.assertThat(file.problems()).isEmpty();
    softly.assertThat(file.layout().form().word()).isEqualTo(expected.all("form").get(0));
    softly.assertThat(file.time().form().word()).isEqualTo(expected.all("time").get(0));
    softly.assertThat(file.rows()).isEqualTo(Integer.parseInt(expected.all("rows").get(0)));
    softly
        .assertThat(file.time().medianStepSeconds())
        .isCloseTo(Double.parseDouble(expected.all("step").get(0)), within(1e-3));
    for (String start : expected.all("start")) {
      Long millis = file.time().startEpochMillis();
      long wanted = LocalDateTime.parse(start).toInstant(ZoneOffset.UTC).toEpochMilli();
      softly.assertThat(millis).as("start %s", start).isNotNull();
      softly.assertThat(millis == null ? 0 : millis - wanted).as("start").isBetween(-5L, 5L);
    }
    softly.assertThat(file.segments()).hasSize(Integer.parseInt(expected.all("segments").get(0)));
    for (String skipped : expected.all("skipped")) {
      softly.assertThat(file.layout().skippedRows()).isEqualTo(Integer.parseInt(skipped));
    }
    softly
        .assertThat(file.questions().stream().map(Question::id).toList())
        .isEqualTo(expected.all("question"));
    softly
        .assertThat(file.channels().stream().map(LayoutCorpusTest::words).toList())
        .isEqualTo(expected.all("channel"));
    softly.assertAll();
  }

  private static String words(Channel c) {
    double first = Double.NaN;
    double last = Double.NaN;
    for (double v : c.values()) {
      first = Double.isNaN(first) ? v : first;
      last = Double.isNaN(v) ? last : v;
    }
    return String.join(
        " | ",
        c.name(),
        c.quantityWord(),
        c.unit().symbol(),
        c.role().word(),
        number(first),
        number(last));
  }

  private static String number(double v) {
    return Double.isNaN(v) ? "none" : TraceMeasures.digits(v, 3).replaceAll("^-0.000$", "0.000");
  }
}
