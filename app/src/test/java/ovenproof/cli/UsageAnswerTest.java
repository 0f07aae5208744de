package ovenproof.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A mistyped command gets an answer in words, with what to type next. */
class UsageAnswerTest {
  @TempDir Path folder;

  private static String said(String... words) {
    StringWriter err = new StringWriter();
    int exit =
        Ovenproof.commandLine(new PrintWriter(new StringWriter()), new PrintWriter(err, true))
            .execute(words);
    assertThat(exit).isEqualTo(ExitCode.USAGE);
    return err.toString();
  }

  @Test
  void anUnknownVerbIsSaidWithTheNearest() {
    assertThat(said("verdikt", "demo"))
        .isEqualToNormalizingNewlines(
            """
            ovenproof: "verdikt" is no verb; did you mean verdict?
            Try: ovenproof help
            """);
    assertThat(said("help", "publsh")).contains("\"publsh\" is no verb; did you mean publish?");
    assertThat(said("xyzzy"))
        .startsWith("ovenproof: \"xyzzy\" is no verb\n".replace("\n", System.lineSeparator()));
  }

  @Test
  void aMisspeltOptionIsSaidWithTheNearestAlsoBeforeItsValue() {
    assertThat(said("serve", "--prot", "80"))
        .contains(
            "--prot is no option of serve; did you mean --port?", "Try: ovenproof help serve");
    assertThat(said("verdict", "x", "--jsn=3"))
        .contains("--jsn is no option of verdict; did you mean --json?");
  }

  @Test
  void whatIsMissingIsSaidWithAnExample() {
    assertThat(said("new"))
        .contains("new needs --starter NAME (", "DIR (a new or empty folder)")
        .contains("For example: ovenproof new my-campaign --starter countertop-ovens");
    assertThat(said("verdict")).contains("verdict needs DIR (the campaign folder)");
  }

  @Test
  void aWordTooManyAndAPortThatNoneHasAreSaid() {
    assertThat(said("demo", "extra")).contains("\"extra\" is one word too many for demo");
    assertThat(said("serve", "--port", "99999"))
        .contains("--port is a number from 0 to 65535, found 99999");
  }

  @Test
  void theFolderAboveACampaignIsNamedAsSuch() throws Exception {
    Files.createDirectories(folder.resolve("campaign"));
    Files.writeString(folder.resolve("campaign/campaign.yaml"), "format: 1\n");
    Files.writeString(folder.resolve("notes.csv"), "a,b\n");
    assertThat(ovenproof.files.CampaignFolder.withAllMeasures().check(folder))
        .singleElement()
        .asString()
        .contains("no file of a campaign in it", "did you mean " + folder.resolve("campaign"));
  }

  @Test
  void everyVerbHasAnExampleThatIsItsOwn() {
    for (var verb :
        Ovenproof.commandLine(
                new PrintWriter(new StringWriter()), new PrintWriter(new StringWriter()))
            .getSubcommands()
            .entrySet()) {
      if (!verb.getKey().equals("help")) {
        assertThat(String.join(" ", verb.getValue().getCommandSpec().usageMessage().footer()))
            .contains("For example: ovenproof " + verb.getKey() + " ");
      }
    }
  }
}
