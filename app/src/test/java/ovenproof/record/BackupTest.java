package ovenproof.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gov.loc.repository.bagit.reader.BagReader;
import gov.loc.repository.bagit.verify.BagVerifier;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Run;
import ovenproof.desk.DatabaseKind;
import ovenproof.desk.Desk;
import ovenproof.desk.DeskLocation;
import ovenproof.desk.EntryKind;
import ovenproof.desk.EvidenceStore;
import ovenproof.desk.Field;
import ovenproof.desk.NewEntry;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;

class BackupTest {
  private static final Instant NOON = Instant.parse("2026-03-04T12:00:00Z");
  private static final String ID = "toasters-2026";
  private static final String METHOD =
      """
      format: 1
      method: toasters
      title: Invented toasters
      version: "1"
      population: Invented toasters
      tests:
        - id: toast
          name: Toast
          parts: 1
          replicates: 2
          stops:
            - {when: ends-by-itself}
            - {when: cap, at: 12 min}
          measures:
            - {id: time, take: time-to-stop}
          criteria:
            - {id: time, name: Time, parts: 1, measure: time, curve: {points: [[3 min, 10], [12 min, 0]]}}
      """;

  @TempDir Path folder;

  private static void fill(Desk desk) {
    desk.create(
        Field.of(
                new Campaign.Info(
                    ID,
                    "Toasters ‏שלום‏ 🍞 \"quoted\"\nsecond line",
                    "Quarry Street (invented)",
                    ZoneId.of("Europe/Dublin"),
                    "EUR",
                    Campaign.Provenance.INVENTED,
                    null,
                    null,
                    null))
            .withProducts(List.of(new Campaign.Product("alder", "Alder", null, null, null))),
        METHOD,
        "lead");
    run(desk, 1);
    attach(desk, "log,1\n2,3\n");
  }

  private static void run(Desk desk, int number) {
    Run run =
        new Run(
            "r" + number,
            "alder",
            null,
            "toast",
            "standard",
            number,
            Run.Kind.COUNTED,
            null,
            null,
            NOON,
            null,
            null,
            null,
            "lead",
            null);
    desk.append(
        ID,
        List.of(
            new NewEntry(
                "key-run-" + number, EntryKind.RUN, run, NewEntry.Stamp.of("lead", NOON), null)));
  }

  private static void attach(Desk desk, String text) {
    EvidenceStore.Stored stored =
        desk.evidence()
            .put("log", new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), 1_000_000);
    desk.attach(ID, "traces/log.csv", stored, "operator");
  }

  @ParameterizedTest
  @CsvSource({"SQLITE, POSTGRESQL, ''", "POSTGRESQL, SQLITE, .zip", "SQLITE, SQLITE, .zip"})
  void aDeskComesBackOnEitherDatabase(DatabaseKind from, DatabaseKind to, String ending)
      throws Exception {
    DeskLocation before = from.location(folder.resolve("before"));
    Path backup = folder.resolve("backup" + ending);
    Campaign campaign;
    try (Desk desk = Desk.open(before, Clock.systemUTC())) {
      fill(desk);
      campaign = desk.load(ID);
      DeskBackup.Written written = DeskBackup.write(before, backup, NOON);
      assertThat(written.rows()).containsEntry("campaign", 1L).containsEntry("entry", 1L);
      assertThat(written.evidence()).isEqualTo(1);
    }
    DeskLocation after = to.location(folder.resolve("after"));
    DeskRestore.Restored restored = DeskRestore.read(backup, after, Clock.systemUTC());
    assertThat(restored.rows()).containsEntry("document", 2L).containsEntry("attachment", 1L);
    try (Desk desk = Desk.open(after, Clock.systemUTC())) {
      assertThat(desk.load(ID)).isEqualTo(campaign);
      assertThat(desk.evidenceOf(ID).open("traces/log.csv")).hasContent("log,1\n2,3\n");
      run(desk, 2);
      assertThat(desk.load(ID).runs()).hasSize(2);
    }
  }

  /** What was acknowledged before the backup began is in it; nothing is torn, no writer waits. */
  @ParameterizedTest
  @EnumSource(DatabaseKind.class)
  void aBackupWhileServingHoldsOneMoment(DatabaseKind kind) throws Exception {
    DeskLocation location = kind.location(folder.resolve("desk"));
    try (Desk desk = Desk.open(location, Clock.systemUTC())) {
      fill(desk);
      AtomicInteger acknowledged = new AtomicInteger(1);
      AtomicBoolean end = new AtomicBoolean();
      CountDownLatch busy = new CountDownLatch(20);
      CompletableFuture<Void> writer =
          CompletableFuture.runAsync(
              () -> {
                while (!end.get()) {
                  int next = acknowledged.get() + 1;
                  attach(desk, "log " + next);
                  run(desk, next);
                  acknowledged.set(next);
                  busy.countDown();
                }
              });
      busy.await();
      int atLeast = acknowledged.get();
      DeskBackup.Written written = DeskBackup.write(location, folder.resolve("backup"), NOON);
      int atMost = acknowledged.get() + 1;
      end.set(true);
      writer.join();
      long entries = written.rows().getOrDefault("entry", 0L);
      assertThat(entries).isBetween((long) atLeast, (long) atMost);
      assertThat(written.rows().get("attachment")).isBetween(entries, entries + 1);
    }
    DeskLocation after = DatabaseKind.SQLITE.location(folder.resolve("after"));
    DeskRestore.read(folder.resolve("backup"), after, Clock.systemUTC());
  }

  @Test
  void theBackupIsABagForAnIndependentReader() throws Exception {
    Path backup = sqliteBackup();
    try (BagVerifier verifier = new BagVerifier()) {
      verifier.isValid(new BagReader().read(backup), false);
    }
  }

  private Path sqliteBackup() {
    DeskLocation location = DeskLocation.sqlite(folder.resolve("desk"));
    try (Desk desk = Desk.open(location, Clock.systemUTC())) {
      fill(desk);
      return DeskBackup.write(location, folder.resolve("backup"), NOON).place();
    }
  }

  @Test
  void everyChangedOrMissingFileOfABackupIsNamedAndNothingIsRestored() throws Exception {
    Path backup = sqliteBackup();
    List<Path> files;
    try (Stream<Path> walk = Files.walk(backup)) {
      files =
          walk.filter(Files::isRegularFile)
              .filter(f -> f.startsWith(backup.resolve("data")))
              .toList();
    }
    assertThat(files).hasSizeGreaterThan(4);
    for (Path file : files) {
      byte[] sound = Files.readAllBytes(file);
      byte[] flipped = sound.clone();
      if (flipped.length > 0) {
        flipped[flipped.length / 2] ^= 1;
        refused(backup, file, flipped);
        refused(backup, file, java.util.Arrays.copyOf(sound, sound.length - 1));
      }
      Files.delete(file);
      refused(backup, backup.relativize(file).toString());
      Files.write(file, sound);
    }
    DeskRestore.read(backup, DeskLocation.sqlite(folder.resolve("sound")), Clock.systemUTC());
  }

  private void refused(Path backup, Path file, byte[] bytes) throws IOException {
    Files.write(file, bytes);
    refused(backup, backup.relativize(file).toString());
  }

  private void refused(Path backup, String named) {
    Path target = folder.resolve("target");
    assertThatThrownBy(
            () -> DeskRestore.read(backup, DeskLocation.sqlite(target), Clock.systemUTC()))
        .isInstanceOf(InputException.class)
        .hasMessageContaining(named);
    assertThat(target).doesNotExist();
  }

  @Test
  void aDeskThatHoldsSomethingIsNotWrittenOver() {
    Path backup = sqliteBackup();
    assertThatThrownBy(
            () ->
                DeskRestore.read(
                    backup, DeskLocation.sqlite(folder.resolve("desk")), Clock.systemUTC()))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("holds campaigns already");
  }

  @Test
  void aDeskThatIsServedIsNotRestoredInto() {
    Path backup = sqliteBackup();
    DeskLocation served = DeskLocation.sqlite(folder.resolve("served"));
    try (Desk held = Desk.open(served, Clock.systemUTC())) {
      assertThatThrownBy(() -> DeskRestore.read(backup, served, Clock.systemUTC()))
          .isInstanceOf(OutsideException.class)
          .hasMessageContaining("is in use by");
      assertThat(held.campaigns()).isEmpty();
    }
  }

  @Test
  void damagedEvidenceOnTheDeskIsNamedAndNoBackupPretendsToBeWhole() throws Exception {
    DeskLocation location = DeskLocation.sqlite(folder.resolve("desk"));
    String sha256;
    try (Desk desk = Desk.open(location, Clock.systemUTC())) {
      fill(desk);
      sha256 = desk.attachments(ID).get(0).sha256();
      Files.writeString(desk.evidence().place(sha256), "log,1\n2,4\n");
    }
    assertThatThrownBy(() -> DeskBackup.write(location, folder.resolve("backup"), NOON))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("other bytes than were taken in")
        .hasMessageContaining(sha256.substring(2));
    assertThat(folder.resolve("backup")).doesNotExist();
  }

  @Test
  void aDamagedDatabaseIsToldInWords() throws Exception {
    DeskLocation location = DeskLocation.sqlite(folder.resolve("desk"));
    try (Desk desk = Desk.open(location, Clock.systemUTC())) {
      fill(desk);
    }
    try (RandomAccessFile file =
        new RandomAccessFile(folder.resolve("desk/desk.db").toFile(), "rw")) {
      for (long at = 8192; at < file.length(); at += 512) {
        file.seek(at);
        file.write(new byte[256]);
      }
    }
    assertThatThrownBy(() -> DeskBackup.write(location, folder.resolve("backup"), NOON))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("damaged database");
  }

  @Test
  void whatIsNoDeskOrNoBackupIsToldInWords() throws Exception {
    assertThatThrownBy(
            () -> DeskBackup.write(DeskLocation.sqlite(folder), folder.resolve("backup"), NOON))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("no desk.db");
    Path campaign = folder.resolve("other");
    Files.createDirectories(campaign.resolve("data"));
    Files.writeString(campaign.resolve("data/campaign.yaml"), "campaign: x\n");
    BagSeal.close(campaign, java.util.Map.of(), java.util.Map.of());
    List<Throwable> said = new ArrayList<>();
    try {
      DeskRestore.read(campaign, DeskLocation.sqlite(folder.resolve("target")), Clock.systemUTC());
    } catch (InputException refusal) {
      said.add(refusal);
    }
    assertThat(said).hasSize(1);
    assertThat(said.get(0)).hasMessageContaining("no description of a desk");
    assertThat(folder.resolve("target")).doesNotExist();
  }
}
