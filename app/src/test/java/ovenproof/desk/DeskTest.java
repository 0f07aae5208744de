package ovenproof.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Entry;
import ovenproof.campaign.Event;
import ovenproof.campaign.Reading;
import ovenproof.campaign.Run;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Unit;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;

class DeskTest {
  private static final Instant NOON = Instant.parse("2026-03-04T12:00:00Z");

  static final String METHOD =
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

  static Field field() {
    return Field.of(
            new Campaign.Info(
                "toasters-2026",
                "Toasters",
                "Quarry Street (invented)",
                ZoneId.of("Europe/Dublin"),
                "EUR",
                Campaign.Provenance.INVENTED,
                null,
                null,
                null))
        .withProducts(
            List.of(
                new Campaign.Product("alder", "Alder", null, null, null),
                new Campaign.Product("rowan", "Rowan ‏שלום‏ <b>", null, null, "ö".repeat(300))))
        .withPrices(
            List.of(new Campaign.Price("alder", 49.9, "EUR", LocalDate.of(2026, 3, 1), null)));
  }

  private static NewEntry run(String key, String id) {
    Run run =
        new Run(
            id,
            "alder",
            null,
            "toast",
            "standard",
            1,
            Run.Kind.COUNTED,
            null,
            null,
            NOON,
            null,
            null,
            null,
            "lead",
            null);
    return new NewEntry(key, EntryKind.RUN, run, NewEntry.Stamp.of("lead", NOON), null);
  }

  private static NewEntry reading(String key, String corrects, double celsius) {
    Reading reading =
        new Reading(
            "r1",
            "skin",
            null,
            null,
            null,
            new Quantity(celsius, Unit.CELSIUS),
            null,
            null,
            null,
            null,
            new Entry.Provenance(key, "operator", NOON, corrects));
    return new NewEntry(
        key, EntryKind.READING, reading, NewEntry.Stamp.of("operator", NOON), corrects);
  }

  @ParameterizedTest
  @EnumSource(DatabaseKind.class)
  void whatWasSavedIsThereAfterAReopening(DatabaseKind kind) {
    DeskLocation location = kind.location(folder);
    Campaign before;
    try (Desk desk = Desk.open(location, Clock.systemUTC())) {
      desk.create(field(), METHOD, "lead");
      desk.append(
          "toasters-2026", List.of(run("key-run-1", "r1"), reading("key-read-1", null, 61.5)));
      before = desk.load("toasters-2026");
    }
    try (Desk desk = Desk.open(location, Clock.systemUTC())) {
      assertThat(desk.load("toasters-2026")).isEqualTo(before);
      assertThat(before.products()).isEqualTo(field().products());
      assertThat(before.readings().get(0).value()).isEqualTo(new Quantity(61.5, Unit.CELSIUS));
    }
  }

  @ParameterizedTest
  @EnumSource(DatabaseKind.class)
  void anEntrySentTwiceIsAppendedOnce(DatabaseKind kind) {
    try (Desk desk = kind.open(folder)) {
      desk.create(field(), METHOD, "lead");
      assertThat(desk.append("toasters-2026", List.of(run("key-run-1", "r1")))).isEqualTo(1);
      assertThat(desk.append("toasters-2026", List.of(run("key-run-1", "r1")))).isZero();
      assertThat(desk.load("toasters-2026").runs()).hasSize(1);
    }
  }

  @ParameterizedTest
  @EnumSource(DatabaseKind.class)
  void aCorrectionReplacesAndBothStayInTheRecord(DatabaseKind kind) {
    try (Desk desk = kind.open(folder)) {
      desk.create(field(), METHOD, "lead");
      desk.append(
          "toasters-2026", List.of(run("key-run-1", "r1"), reading("key-read-1", null, 615)));
      desk.append("toasters-2026", List.of(reading("key-read-2", "key-read-1", 61.5)));
      Campaign campaign = desk.load("toasters-2026");
      assertThat(campaign.readings()).hasSize(2);
      assertThat(Entry.effective(campaign.readings()))
          .extracting(r -> r.value().value())
          .containsExactly(61.5);
      assertThat(desk.entries("toasters-2026")).hasSize(3);
    }
  }

  @ParameterizedTest
  @EnumSource(DatabaseKind.class)
  void anEntryWithoutAKeyGetsItsRowsKeyWhenItIsMended(DatabaseKind kind) {
    try (Desk desk = kind.open(folder)) {
      desk.create(field(), METHOD, "lead");
      Event stop =
          new Event("r1", Event.Type.STOP, 300, null, null, "cap", null, Entry.Provenance.UNKNOWN);
      desk.append(
          "toasters-2026",
          List.of(
              new NewEntry(
                  "row-key-1", EntryKind.EVENT, stop, NewEntry.Stamp.of("x", NOON), null)));
      assertThat(desk.load("toasters-2026").events().get(0).origin().id()).isNull();
      Event mended =
          new Event(
              "r1",
              Event.Type.STOP,
              310,
              null,
              null,
              "cap",
              null,
              new Entry.Provenance("row-key-2", "lead", NOON, "row-key-1"));
      desk.append(
          "toasters-2026",
          List.of(
              new NewEntry(
                  "row-key-2",
                  EntryKind.EVENT,
                  mended,
                  NewEntry.Stamp.of("x", NOON),
                  "row-key-1")));
      assertThat(desk.load("toasters-2026").eventsOf("r1"))
          .extracting(Event::elapsedSeconds)
          .containsExactly(310.0);
    }
  }

  @ParameterizedTest
  @EnumSource(DatabaseKind.class)
  void theSecondOfTwoTabsIsShownBothVersions(DatabaseKind kind) {
    try (Desk desk = kind.open(folder)) {
      desk.create(field(), METHOD, "lead");
      String mine = METHOD.replace("parts: 1\n", "parts: 2\n");
      String theirs = METHOD.replace("parts: 1\n", "parts: 3\n");
      assertThat(desk.saveMethod("toasters-2026", 1, theirs, "cook", null)).isEqualTo(2);
      assertThatThrownBy(() -> desk.saveMethod("toasters-2026", 1, mine, "lead", null))
          .isInstanceOfSatisfying(
              StaleRevisionException.class,
              stale -> {
                assertThat(stale.current().body()).isEqualTo(theirs);
                assertThat(stale.current().who()).isEqualTo("cook");
                assertThat(stale.yours()).isEqualTo(mine);
              });
      assertThat(desk.saveMethod("toasters-2026", 1, theirs, "cook", null))
          .as("the same form sent twice")
          .isEqualTo(2);
    }
  }

  @ParameterizedTest
  @EnumSource(DatabaseKind.class)
  void ofManyWhoSaveAtOnceExactlyOneWins(DatabaseKind kind) throws Exception {
    try (Desk desk = kind.open(folder)) {
      desk.create(field(), METHOD, "lead");
      AtomicInteger won = new AtomicInteger();
      AtomicInteger told = new AtomicInteger();
      CountDownLatch start = new CountDownLatch(1);
      var threads = Executors.newFixedThreadPool(8);
      List<Future<?>> all = new ArrayList<>();
      for (int i = 0; i < 8; i++) {
        String text = METHOD.replace("parts: 1\n", "parts: " + (i + 2) + "\n");
        all.add(
            threads.submit(
                () -> {
                  start.await();
                  try {
                    desk.saveMethod("toasters-2026", 1, text, "lead", null);
                    won.incrementAndGet();
                  } catch (StaleRevisionException stale) {
                    told.incrementAndGet();
                  }
                  return null;
                }));
      }
      start.countDown();
      for (Future<?> one : all) {
        one.get();
      }
      threads.shutdown();
      assertThat(won).hasValue(1);
      assertThat(told).hasValue(7);
    }
  }

  @ParameterizedTest
  @EnumSource(DatabaseKind.class)
  void entriesFromManyTabletsGetNumbersWithoutGapsOrTwins(DatabaseKind kind) throws Exception {
    try (Desk desk = kind.open(folder)) {
      desk.create(field(), METHOD, "lead");
      var threads = Executors.newFixedThreadPool(6);
      List<Future<Integer>> all = new ArrayList<>();
      for (int i = 0; i < 60; i++) {
        NewEntry entry = run("many-runs-" + i, "r" + i);
        all.add(threads.submit(() -> desk.append("toasters-2026", List.of(entry))));
      }
      for (Future<Integer> one : all) {
        assertThat(one.get()).isEqualTo(1);
      }
      threads.shutdown();
      List<Long> numbers = desk.entries("toasters-2026").stream().map(StoredEntry::seq).toList();
      assertThat(numbers).hasSize(60).doesNotHaveDuplicates().isSorted();
      assertThat(numbers.get(59)).isEqualTo(60L);
    }
  }

  @ParameterizedTest
  @EnumSource(DatabaseKind.class)
  void aMethodWithProblemsIsNotSaved(DatabaseKind kind) {
    try (Desk desk = kind.open(folder)) {
      desk.create(field(), METHOD, "lead");
      String broken = METHOD.replace("12 min}", "12 mni}").replace("parts: 1\n", "parts: no\n");
      assertThatThrownBy(() -> desk.saveMethod("toasters-2026", 1, broken, "lead", null))
          .isInstanceOfSatisfying(
              InputException.class, e -> assertThat(e.problems()).hasSizeGreaterThan(1));
      assertThat(desk.document("toasters-2026", Document.METHOD).revision()).isEqualTo(1);
    }
  }

  @ParameterizedTest
  @EnumSource(DatabaseKind.class)
  void sameBytesUnderOneNameAreAttachedOnceOthersGetANumber(DatabaseKind kind) throws IOException {
    try (Desk desk = kind.open(folder)) {
      desk.create(field(), METHOD, "lead");
      assertThat(attach(desk, "photos/top.jpg", "one")).isEqualTo("photos/top.jpg");
      assertThat(attach(desk, "photos/top.jpg", "one")).isEqualTo("photos/top.jpg");
      assertThat(attach(desk, "photos/top.jpg", "two")).isEqualTo("photos/top-2.jpg");
      try (InputStream in = desk.evidenceOf("toasters-2026").open("photos/top-2.jpg")) {
        assertThat(in.readAllBytes()).isEqualTo("two".getBytes());
      }
      assertThat(desk.attachments("toasters-2026")).hasSize(2);
    }
  }

  private static String attach(Desk desk, String path, String bytes) {
    var stored = desk.evidence().put(path, new ByteArrayInputStream(bytes.getBytes()), 1000);
    return desk.attach("toasters-2026", path, stored, "cook");
  }

  @Test
  void evidenceKnowsItsPublishedFingerprint() {
    // FIPS 180-2, appendix B.1: SHA-256 of "abc"
    try (Desk desk = DatabaseKind.SQLITE.open(folder)) {
      var stored = desk.evidence().put("abc", new ByteArrayInputStream("abc".getBytes()), 10);
      assertThat(stored.sha256())
          .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
      assertThat(Files.exists(desk.evidence().place(stored.sha256()))).isTrue();
    }
  }

  @Test
  void aFileThatIsTooLargeOrBreaksOffLeavesNothingBehind() throws IOException {
    try (Desk desk = DatabaseKind.SQLITE.open(folder)) {
      assertThatThrownBy(
              () -> desk.evidence().put("big", new ByteArrayInputStream(new byte[2000]), 1000))
          .isInstanceOf(InputException.class);
      InputStream broken =
          new InputStream() {
            private int left = 500;

            @Override
            public int read() throws IOException {
              if (left <= 0) {
                throw new IOException("the browser went away");
              }
              left--;
              return 1;
            }
          };
      assertThatThrownBy(() -> desk.evidence().put("cut", broken, 1000))
          .isInstanceOf(OutsideException.class)
          .hasMessageContaining("Nothing was kept");
      try (var files = Files.walk(folder.resolve("evidence"))) {
        assertThat(files.filter(Files::isRegularFile)).isEmpty();
      }
    }
  }

  @Test
  void aSecondProgramIsToldWhoHoldsTheDesk() {
    try (Desk desk = DatabaseKind.SQLITE.open(folder)) {
      assertThatThrownBy(() -> DatabaseKind.SQLITE.open(folder))
          .isInstanceOf(OutsideException.class)
          .hasMessageContaining("in use by process " + ProcessHandle.current().pid());
      assertThat(desk.campaigns()).isEmpty();
    }
  }

  @Test
  void theNewestMigrationIsTheOneThatOpeningLooksFor() throws IOException {
    var migrations = getClass().getResource("/ovenproof/desk/migrations");
    try (var files = Files.list(Path.of(java.net.URI.create(migrations.toString())))) {
      assertThat(files.map(f -> f.getFileName().toString().replaceAll("V(\\d+)__.*", "$1")))
          .contains(Database.NEWEST_MIGRATION)
          .allMatch(v -> Integer.parseInt(v) <= Integer.parseInt(Database.NEWEST_MIGRATION));
    }
  }

  @Test
  void keysAreUuidsOfVersionSevenAndSortByTime() {
    // RFC 9562, appendix A.6: example of a version 7 UUID, 2022-02-22 14:22:22.00 GMT-05:00
    String key = Keys.of(0x017F22E279B0L, 0xCC3L, 0x18C4DC0C0C07398FL);
    assertThat(key).isEqualTo("017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
    assertThat(Keys.of(1, 0, 0)).isLessThan(Keys.of(2, 0, 0));
    assertThat(Keys.isKey(key)).isTrue();
    assertThat(Keys.isKey("a'; drop")).isFalse();
  }
}
