package ovenproof.draft;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import ovenproof.desk.DatabaseKind;
import ovenproof.desk.Desk;
import ovenproof.desk.DeskLocation;
import ovenproof.desk.FolderImport;
import ovenproof.desk.Job;
import ovenproof.evidence.photo.PhotoFile;
import ovenproof.files.CampaignFolder;
import ovenproof.input.InputException;
import ovenproof.publish.SmallCampaign;
import ovenproof.record.DeskBackup;
import ovenproof.record.DeskRestore;
import ovenproof.web.Workbench;

/** What a desk published goes with it to another machine and another database. */
class PublishedBackupTest {
  private static final Instant NOON = Instant.parse("2026-03-24T12:00:00Z");
  private static final Clock CLOCK = Clock.fixed(NOON, java.time.ZoneOffset.UTC);

  @TempDir Path folder;

  private static void publish(Desk desk, String id, String why) throws Exception {
    Publication publication = new Publication(desk, new Workbench(desk));
    desk.jobs().register(Publication.KIND, publication::run);
    String job = desk.jobs().submit(Publication.KIND, id, why, "lead").id();
    for (int i = 0; i < 1200; i++) {
      Job now = desk.jobs().find(job).orElseThrow();
      if (now.state() == Job.State.DONE) {
        return;
      }
      assertThat(now.state()).as(now.message()).isIn(Job.State.WAITING, Job.State.RUNNING);
      Thread.sleep(100);
    }
    throw new AssertionError("not published in two minutes");
  }

  private static Map<String, String> files(Path desk) throws Exception {
    Path root = desk.resolve("published");
    Map<String, String> files = new TreeMap<>();
    try (Stream<Path> walk = Files.walk(root)) {
      for (Path file : walk.filter(Files::isRegularFile).toList()) {
        files.put(
            root.relativize(file).toString(), PhotoFile.fingerprint(Files.readAllBytes(file)));
      }
    }
    return files;
  }

  @ParameterizedTest
  @CsvSource("SQLITE, POSTGRESQL, .zip")
  void anEmptyMachineServesAndPublishesTheSameBytes(
      DatabaseKind from, DatabaseKind to, String ending) throws Exception {
    DeskLocation before = from.location(folder.resolve("before"));
    Path backup = folder.resolve("backup" + ending);
    Map<String, String> published;
    String id;
    try (Desk desk = Desk.open(before, CLOCK)) {
      Path campaign = SmallCampaign.write(folder.resolve("campaign"));
      id = new FolderImport(desk, CampaignFolder.withAllMeasures()).take(campaign, "lead");
      publish(desk, id, "");
      published = files(before.folder());
      assertThat(DeskBackup.write(before, backup, NOON).published()).isEqualTo(published.size());
    }
    assertThat(published.keySet()).anyMatch(f -> f.endsWith("site/editions/1/edition.txt"));

    DeskLocation after = to.location(folder.resolve("after"));
    assertThat(DeskRestore.read(backup, after, CLOCK).published()).isEqualTo(published.size());
    assertThat(files(after.folder())).isEqualTo(published);
    try (Desk desk = Desk.open(after, CLOCK)) {
      publish(desk, id, "");
      Map<String, String> again = files(after.folder());
      again.entrySet().removeAll(published.entrySet());
      // The register of cards alone goes on: it notes those that were handed out before.
      String register = id + "/kit/cards/register.json";
      assertThat(again.keySet()).containsOnly(register);
      assertThat(Files.readString(after.folder().resolve("published").resolve(register)))
          .contains("\"changedSince\" : [ ]");
    }
  }

  /** A publication replaces the folder by renaming it: a backup holds one of both, whole. */
  @Test
  void aBackupWhileAFolderIsReplacedHoldsOneStateOfIt() throws Exception {
    DeskLocation location = DatabaseKind.SQLITE.location(folder.resolve("desk"));
    try (Desk desk = Desk.open(location, CLOCK)) {
      Path campaign = location.folder().resolve("published/toasters");
      state(campaign.resolve("site"), 0);
      AtomicBoolean end = new AtomicBoolean();
      CompletableFuture<Void> publisher =
          CompletableFuture.runAsync(() -> replaceUntil(campaign, end));
      for (int i = 0; i < 5; i++) {
        Path backup = folder.resolve("backup-" + i);
        DeskBackup.write(location, backup, NOON);
        Path site = backup.resolve("data/published/toasters/site");
        try (Stream<Path> files = Files.list(site)) {
          assertThat(files.map(PublishedBackupTest::text).distinct()).hasSize(1);
        }
        try (Stream<Path> files = Files.list(site)) {
          assertThat(files).hasSize(40);
        }
      }
      end.set(true);
      publisher.join();
    }
  }

  private static void replaceUntil(Path campaign, AtomicBoolean end) {
    try {
      for (int i = 1; !end.get(); i++) {
        state(campaign.resolve(".site-draft"), i);
        Files.move(campaign.resolve("site"), campaign.resolve(".site-old-" + i));
        Files.move(campaign.resolve(".site-draft"), campaign.resolve("site"));
        Thread.sleep(400);
      }
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }

  private static void state(Path site, int number) throws Exception {
    Files.createDirectories(site);
    for (int i = 0; i < 40; i++) {
      Files.writeString(site.resolve("page-" + i + ".html"), "state " + number);
    }
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (java.io.IOException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void aDeskThatHasPublishedIsNotWrittenOver() throws Exception {
    DeskLocation before = DatabaseKind.SQLITE.location(folder.resolve("from"));
    Path backup = folder.resolve("backup");
    try (Desk desk = Desk.open(before, CLOCK)) {
      assertThat(desk.campaigns()).isEmpty();
      DeskBackup.write(before, backup, NOON);
    }
    DeskLocation taken = DatabaseKind.SQLITE.location(folder.resolve("taken"));
    state(taken.folder().resolve("published/other/site"), 1);

    assertThatThrownBy(() -> DeskRestore.read(backup, taken, CLOCK))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("published reviews");
  }
}
