package ovenproof.core.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever a file holds, the answer is words, not an exception. */
class BadInputTest {

  private static TraceFile read(String text) {
    return TraceReader.withDefaults().read(text.getBytes(StandardCharsets.UTF_8));
  }

  private static void measureAll(TraceFile file) {
    for (Channel channel : file.channels()) {
      TraceInput input = TraceInput.of(file.trace(channel)).withSetting(200.0);
      assertThat(TraceMeasures.measure(input)).hasSize(TraceMeasures.all().size());
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "\n",
        "   \n\n",
        "hello",
        "time,T1\n",
        "{",
        "[]",
        "{}\n{}\n",
        "\u0000",
        ",,,\n,,,\n",
        "=\n=\n",
        "\"",
        "\"\n\"\n",
        "T1:",
        "[12:00:00]",
        ";;;"
      })
  void nothingToReadIsSaidInWords(String text) {
    TraceFile file = read(text);
    assertThat(file.problems()).isNotEmpty();
    assertThat(file.problems().get(0)).contains(" ").endsWith(".");
  }

  @Test
  void binaryIsCalledBinary() {
    byte[] bytes = new byte[5000];
    new Random(1).nextBytes(bytes);
    assertThat(TraceReader.withDefaults().read(bytes).problems().get(0)).contains("binary");
  }

  @Test
  void oneRowIsARow() {
    TraceFile file = read("Time (s),T1 (C)\n0,23.5\n");
    measureAll(file);
    assertThat(file.rows()).isEqualTo(1);
  }

  @ParameterizedTest
  @ValueSource(strings = {"nan", "-127", "20", "0", "OL", "1e308", "-1e308", ""})
  void channelOfOneValueIsMeasuredOrRefused(String value) {
    StringBuilder text = new StringBuilder("Time (s),T1 (C),T2 (C)\n");
    for (int i = 0; i < 200; i++) {
      text.append(i).append(',').append(value).append(",25\n");
    }
    measureAll(read(text.toString()));
  }

  @Test
  void negativeTimesAreTimes() {
    StringBuilder text = new StringBuilder("Time (s),T1 (C)\n");
    for (int i = -20; i < 100; i++) {
      text.append(i).append(',').append(20 + 0.5 * i).append('\n');
    }
    TraceFile file = read(text.toString());
    assertThat(file.rows()).isEqualTo(120);
    measureAll(file);
  }

  @Test
  void twoThousandColumnsAreRead() {
    StringBuilder text = new StringBuilder("Time (s)");
    for (int c = 0; c < 2000; c++) {
      text.append(",T").append(c).append(" (C)");
    }
    for (int r = 0; r < 30; r++) {
      text.append('\n').append(r);
      for (int c = 0; c < 2000; c++) {
        text.append(',').append(20 + r + c % 7);
      }
    }
    assertThat(read(text + "\n").channels()).hasSize(2000);
  }

  @Test
  void lineOfAMillionCharactersIsSurvived() {
    String line = "x".repeat(1_000_000);
    TraceFile file = read("Time (s),T1 (C)\n0,20\n1,21\n" + line + "\n2,22\n3,23\n");
    assertThat(file.rows()).isEqualTo(4);
    assertThat(read(line).problems()).isNotEmpty();
    assertThat(read("1,".repeat(500_000)).problems()).isNotEmpty();
  }

  @Test
  void tooManyNumbersAreRefusedBeforeTheyFillTheMemory() {
    StringBuilder text = new StringBuilder("Time (s),T1 (C)\n");
    for (int i = 0; i < 5000; i++) {
      text.append(i).append(",20\n");
    }
    byte[] bytes = text.toString().getBytes(StandardCharsets.UTF_8);
    ReadOptions small = ReadOptions.withDefaults().withMaximumNumbers(1000);
    assertThat(TraceReader.with(small).read(bytes).problems().get(0)).contains("Split");
  }

  /** Seeded damage: bytes flipped, cut and doubled in a good file never bring an exception. */
  @Test
  void damagedFilesNeverThrow() {
    SplittableRandom random = new SplittableRandom(7);
    StringBuilder text = new StringBuilder("Date,Time,T1 (°C),T2,state\n");
    for (int i = 0; i < 60; i++) {
      text.append(
          String.format(
              java.util.Locale.ROOT,
              "14.03.2026,09:%02d:%02d,%.1f,%d,%s%n",
              i / 60,
              i % 60,
              20 + i * 0.7,
              30 + i,
              i < 30 ? "heat" : "hold"));
    }
    byte[] good = text.toString().getBytes(StandardCharsets.UTF_8);
    for (int k = 0; k < 300; k++) {
      byte[] bad = Arrays.copyOf(good, 20 + random.nextInt(good.length - 20));
      for (int j = random.nextInt(30); j >= 0; j--) {
        bad[random.nextInt(bad.length)] = (byte) random.nextInt(256);
      }
      TraceFile file = TraceReader.withDefaults().read(bad);
      measureAll(file);
    }
  }
}
