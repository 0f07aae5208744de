package ovenproof.files;

import static org.assertj.core.api.Assertions.assertThatCode;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import ovenproof.input.InputException;
import ovenproof.measure.MeasureRegistry;
import ovenproof.method.Starters;

/** Whatever a folder is spoilt with: problems are reported, nothing else is thrown. */
class MutationTest {
  private static final List<String> FILES =
      List.of(
          "campaign.yaml",
          "method.yaml",
          "products.csv",
          "specimens.csv",
          "runs.csv",
          "events.csv",
          "instruments.csv",
          "calibrations.csv",
          "readings.csv",
          "pieces.csv",
          "ratings.csv");

  private static final List<String> SPLINTERS =
      List.of(
          "\"",
          ",",
          ";",
          "\n",
          "\t",
          ":",
          "{",
          "}",
          "[",
          "]",
          "- ",
          "#",
          "&a ",
          "*a",
          "|",
          ">",
          "?",
          "!!java.net.URL ",
          "%",
          "\u0000",
          "\u202E",
          "-",
          "9".repeat(400),
          "1e999",
          "±",
          " °C",
          "∞",
          "2026-13-45T99:99",
          "+99999999:00",
          "..",
          "\\",
          "'",
          "<<: ",
          "---\n",
          "NaN",
          "0x1F",
          "\r");

  @TempDir Path root;

  static Stream<Integer> seeds() {
    return IntStream.rangeClosed(1, 20).boxed();
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void aSpoiltFolderIsReportedAndNothingElseIsThrown(int seed) throws IOException {
    SplittableRandom random = new SplittableRandom(seed);
    for (int round = 0; round < 5; round++) {
      Folder folder = new Folder(root);
      if (random.nextInt(4) == 0) {
        folder.write("method.yaml", Starters.text("toasters"));
      }
      for (int change = 0; change < 1 + random.nextInt(3); change++) {
        spoil(random);
      }
      assertThatCode(this::loadOrExplain).doesNotThrowAnyException();
    }
  }

  private void loadOrExplain() {
    CampaignFolder folders = new CampaignFolder(MeasureRegistry.all());
    try {
      folders.load(root);
    } catch (InputException explained) {
      folders.check(root);
    }
  }

  private void spoil(SplittableRandom random) throws IOException {
    Path file = root.resolve(FILES.get(random.nextInt(FILES.size())));
    byte[] bytes = Files.readAllBytes(file);
    int at = random.nextInt(bytes.length + 1);
    int until = Math.min(bytes.length, at + random.nextInt(12));
    byte[] splinter =
        random.nextInt(5) == 0
            ? new byte[] {(byte) random.nextInt(256)}
            : SPLINTERS.get(random.nextInt(SPLINTERS.size())).getBytes(StandardCharsets.UTF_8);
    byte[] spoilt = new byte[at + splinter.length + bytes.length - until];
    System.arraycopy(bytes, 0, spoilt, 0, at);
    System.arraycopy(splinter, 0, spoilt, at, splinter.length);
    System.arraycopy(bytes, until, spoilt, at + splinter.length, bytes.length - until);
    Files.write(file, spoilt);
  }
}
