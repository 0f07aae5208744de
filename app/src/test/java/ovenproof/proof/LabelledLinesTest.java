package ovenproof.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import ovenproof.proof.LabelledLines.Count;

/**
 * Drafts whose sentences were labelled true or false, some by people who did not know the program,
 * about the invented ovens simulated again. Prints what was found; docs/truth.md has what a first
 * reading gave, which is lower.
 */
class LabelledLinesTest {
  private static final Path DRAFTS = Path.of("src/test/resources/ovenproof/proof/lines");

  private static Proofreader proofreader;

  @BeforeAll
  static void load() {
    proofreader = FrozenCampaign.again().proofreader();
  }

  @Test
  void ninetyFivePercentOfTheErrorsAreFoundAndThreePercentOfTheTruthsAreCalledWrong()
      throws IOException {
    int errors = 0;
    int truths = 0;
    List<String> missed = new ArrayList<>();
    List<String> falseAlarms = new ArrayList<>();
    for (Path draft : drafts()) {
      LabelledLines lines = LabelledLines.of(Files.readString(draft));
      Count count = lines.count(proofreader.read(lines.text()));
      System.out.printf(
          "%s: %d of %d false sentences found, %d of %d true sentences called contradicted%n",
          draft.getFileName(),
          count.errors() - count.missed().size(),
          count.errors(),
          count.falseAlarms().size(),
          count.truths());
      count.missed().forEach(s -> System.out.println("  missed " + s));
      count.falseAlarms().forEach(s -> System.out.println("  false  " + s));
      errors += count.errors();
      truths += count.truths();
      missed.addAll(count.missed());
      falseAlarms.addAll(count.falseAlarms());
    }
    assertThat(errors + truths).isGreaterThanOrEqualTo(300);
    assertThat(missed.size() / (double) errors).as("%s", missed).isLessThanOrEqualTo(0.05);
    assertThat(falseAlarms.size() / (double) truths)
        .as("%s", falseAlarms)
        .isLessThanOrEqualTo(0.03);
  }

  private static List<Path> drafts() throws IOException {
    try (Stream<Path> files = Files.list(DRAFTS)) {
      return files.sorted().toList();
    }
  }
}
