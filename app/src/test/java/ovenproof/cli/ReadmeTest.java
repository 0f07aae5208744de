package ovenproof.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The first page a stranger reads says only what is so. */
class ReadmeTest {
  private static final Path TOP = top();
  private static final long PICTURE_BYTES = 120_000;

  private static Path top() {
    Path here = Path.of("").toAbsolutePath();
    return Files.exists(here.resolve("README.md")) ? here : here.getParent();
  }

  private static String text() throws IOException {
    return Files.readString(TOP.resolve("README.md"));
  }

  private static List<String> found(String regex) throws IOException {
    return Pattern.compile(regex).matcher(text()).results().map(m -> m.group(1)).toList();
  }

  @Test
  void theJobStandsInOneParagraphAtTheTop() throws IOException {
    List<String> paragraphs = Stream.of(text().split("\n\n")).toList();
    assertThat(paragraphs.get(0)).startsWith("# Ovenproof");
    assertThat(paragraphs.get(1)).contains("buys", "cooks", "tasted", "scores", "publishes");
  }

  @Test
  void everyLinkLeadsSomewhere() throws IOException {
    assertThat(found("\\]\\(([^)#]+)[^)]*\\)"))
        .isNotEmpty()
        .allSatisfy(link -> assertThat(TOP.resolve(link)).as(link).exists());
  }

  @Test
  void picturesAreSmallAndSayWhatTheyShow() throws IOException {
    assertThat(found("!\\[([^\\]]*)\\]"))
        .isNotEmpty()
        .allSatisfy(alt -> assertThat(alt).hasSizeGreaterThan(20));
    for (String picture : found("!\\[[^\\]]*\\]\\(([^)]+)\\)")) {
      assertThat(Files.size(TOP.resolve(picture))).as(picture).isLessThan(PICTURE_BYTES);
    }
  }

  @Test
  void everyVerbOfTheTableExistsAndEveryVerbIsInIt() throws IOException {
    List<String> rows =
        Pattern.compile("(?m)^\\| (`.+?) \\|")
            .matcher(text())
            .results()
            .map(m -> m.group(1))
            .toList();
    List<String> told =
        rows.stream()
            .flatMap(row -> Pattern.compile("`([a-z]+)").matcher(row).results())
            .map((MatchResult m) -> m.group(1))
            .toList();
    List<String> verbs =
        Ovenproof.commandLine(new PrintWriter(System.out), new PrintWriter(System.err))
            .getSubcommands()
            .keySet()
            .stream()
            .filter(verb -> !List.of("help", "demo").contains(verb))
            .toList();
    assertThat(told).containsExactlyInAnyOrderElementsOf(verbs);
  }
}
