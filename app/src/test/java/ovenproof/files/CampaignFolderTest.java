package ovenproof.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.campaign.Campaign;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Unit;
import ovenproof.input.InputException;

class CampaignFolderTest {
  @TempDir Path root;
  Folder folder;

  @BeforeEach
  void makeFolder() {
    folder = new Folder(root);
  }

  @Test
  void aValidFolderHasNoProblems() {
    assertThat(folder.lines()).isEmpty();
  }

  @Test
  void keysAreWhatPeopleWrote() {
    Campaign campaign = folder.load().campaign();
    assertThat(campaign.info().id()).isEqualTo("two-ovens");
    assertThat(campaign.products())
        .extracting(Campaign.Product::id)
        .containsExactly("alder", "birch");
    assertThat(campaign.run("alder-1")).isPresent();
  }

  @Test
  void clockTimesAreReadInTheCampaignsZone() {
    // Dublin keeps Greenwich time on 4 March (IANA time zone database).
    assertThat(folder.load().campaign().run("birch-1").orElseThrow().started())
        .isEqualTo(Instant.parse("2026-03-04T11:00:00Z"));
  }

  @Test
  void eventsCountFromTheStartWhicheverWayTheirTimeIsWritten() {
    Campaign campaign = folder.load().campaign();
    assertThat(campaign.eventsOf("alder-1"))
        .extracting(e -> e.elapsedSeconds())
        .containsExactly(0.0, 390.0);
    assertThat(campaign.eventsOf("birch-1").get(1).at())
        .isEqualTo(Instant.parse("2026-03-04T11:10:00Z"));
  }

  @Test
  void aRunWithoutStartBeginsAtItsStartEvent() {
    folder.replace("runs.csv", "2026-03-04T11:00", "");
    folder.append("events.csv", "birch-1,start,2026-03-04T11:02,");
    assertThat(folder.load().campaign().run("birch-1").orElseThrow().started())
        .isEqualTo(Instant.parse("2026-03-04T11:02:00Z"));
  }

  @Test
  void quantitiesKeepTheUnitTheyWereWrittenIn() {
    assertThat(folder.load().campaign().readings().get(0).value())
        .isEqualTo(Quantity.of(176, Unit.FAHRENHEIT));
  }

  @Test
  void theVariantLeftOutIsTheScoredOne() {
    assertThat(folder.load().campaign().run("alder-1").orElseThrow().variant())
        .isEqualTo("standard");
  }

  @Test
  void semicolonsByteOrderMarksCommentsAndEmptyRowsAreFine() {
    folder.write(
        "products.csv",
        "\uFEFF# our ovens\r\nname;product\r\n\"Alder; 20\";alder\r\n;\r\nBirch;birch\r\n");
    assertThat(folder.lines()).isEmpty();
    assertThat(folder.load().campaign().products().get(0).name()).isEqualTo("Alder; 20");
  }

  @Test
  void loadThrowsAllProblemsAtOnce() {
    folder.append("runs.csv", "x-1,alderr,toast,1,A1,day-1,2026-03-04T12:00");
    folder.replace("readings.csv", "176 °F", "176 K");
    assertThatThrownBy(folder::load)
        .isInstanceOfSatisfying(
            InputException.class, e -> assertThat(e.problems()).hasSizeGreaterThanOrEqualTo(2));
  }
}
