package ovenproof.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Broken documents: what YAML and the two documents can get wrong. Each asserts place, found,
 * expected and remedy.
 */
class DocumentProblemsTest {
  @TempDir Path root;
  Folder folder;

  @BeforeEach
  void makeFolder() {
    folder = new Folder(root);
  }

  @Test
  void brokenYamlIsSaidWithItsPlace() {
    folder.replace("campaign.yaml", "title: Two", "title: \"Two");
    assertThat(folder.lines())
        .containsExactly(
            "campaign.yaml:8:1: found broken YAML: found unexpected end of stream, expected a YAML document; mind indentation (spaces, no tabs), a space after each colon, and quotes");
  }

  @Test
  void tabsInsteadOfSpacesAreSaid() {
    folder.replace("method.yaml", "  - {id: volume", "	- {id: volume");
    assertThat(folder.lines())
        .containsExactly(
            "method.yaml:7:1: found broken YAML: found character '\\t(TAB)' that cannot start any token. (Do not use \\t(TAB) for indentation), expected a YAML document; mind indentation (spaces, no tabs), a space after each colon, and quotes");
  }

  @Test
  void anEmptyDocumentIsSaid() {
    folder.write("campaign.yaml", "");
    assertThat(folder.lines())
        .containsExactly(
            "campaign.yaml:1:1: found an empty document, expected a document of \"key: value\" lines; begin with \"format: 1\"");
  }

  @Test
  void aListInsteadOfADocumentIsSaid() {
    folder.write("campaign.yaml", "- a\n- b\n");
    assertThat(folder.lines())
        .containsExactly(
            "campaign.yaml:1:1: found no keys, expected a document of \"key: value\" lines; begin with \"format: 1\"");
  }

  @Test
  void aMissingMethodIsSaid() throws IOException {
    Files.delete(root.resolve("method.yaml"));
    assertThat(folder.lines())
        .containsExactly(
            "method.yaml: found no such file, expected the file that every campaign folder has; \"ovenproof new DIR --starter NAME\" writes one");
  }

  @Test
  void aMisspeltKeyIsNamedWithTheNearest() {
    folder.replace("campaign.yaml", "kitchen:", "kitchn:");
    assertThat(folder.lines())
        .containsExactly(
            "campaign.yaml:4:1: found the key \"kitchn\", expected one of format, campaign, title, kitchen, zone, currency, invented, published, disclosure, note; did you mean \"kitchen\"?");
  }

  @Test
  void aKeyThatStandsTwiceIsSaid() {
    folder.append("campaign.yaml", "title: Another");
    assertThat(folder.lines())
        .containsExactly(
            "campaign.yaml:8:1: found \"title\" for the second time, expected each key once; the first stands in line 3");
  }

  @Test
  void anUnknownZoneIsSaidWithTheNearest() {
    folder.replace("campaign.yaml", "Europe/Dublin", "Europe/Dubln");
    assertThat(folder.lines())
        .containsExactly(
            "campaign.yaml:5:7: found \"Europe/Dubln\", expected a time zone such as Europe/Dublin; did you mean \"Europe/Dublin\"?");
  }

  @Test
  void anUnknownCurrencyIsSaid() {
    folder.replace("campaign.yaml", "EUR", "EURO");
    assertThat(folder.lines())
        .containsExactly(
            "campaign.yaml:6:11: found \"EURO\", expected a currency code of three letters (ISO 4217); for example EUR");
  }

  @Test
  void anAliasIsRefused() {
    folder.replace("campaign.yaml", "title: Two invented ovens", "title: &t Two\nnote: *t");
    assertThat(folder.lines())
        .containsExactly(
            "campaign.yaml:3:8: found a value used again through an alias (*), expected each value written where it is used; copy it");
  }

  @Test
  void anotherFormatIsRefused() {
    folder.replace("campaign.yaml", "format: 1", "format: 2");
    assertThat(folder.lines()).containsExactly("campaign.yaml:1:9: found \"2\", expected 1");
  }

  @Test
  void bytesThatAreNoUtf8AreSaidWithTheirPlace() {
    folder.write("products.csv", new byte[] {'p', 'r', 'o', (byte) 0xE9, '\n'});
    assertThat(folder.lines())
        .containsExactly(
            "products.csv:1:4: found the byte 0xE9, expected text in UTF-8; save the file as UTF-8 (spreadsheets: \"CSV UTF-8\")");
  }

  @Test
  void aLineLongerThanAMebibyteIsNotRead() {
    folder.write("events.csv", "a,".repeat(600_000));
    assertThat(folder.lines())
        .containsExactly(
            "events.csv:1: found a line longer than 1 MiB, expected lines of ordinary length; is this the file you meant, and not a picture or a binary log?");
  }

  @Test
  void aTableWithAnotherNameIsNotOverlooked() {
    folder.write("readngs.csv", "run,reading,value\n");
    assertThat(folder.lines())
        .containsExactly(
            "warning: readngs.csv: found a file that is no table of a campaign, expected one of products.csv, left-out.csv, specimens.csv, prices.csv, facts.csv, rated.csv, features.csv, settings.csv, plan.csv, runs.csv, not-run.csv, events.csv, deviations.csv, readings.csv, lots.csv, pieces.csv, ratings.csv, instruments.csv, calibrations.csv, traces.csv, photos.csv, campaign.yaml, method.yaml; did you mean \"readings.csv\"? Nothing in this file is used");
  }
}
