package ovenproof.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gov.loc.repository.bagit.reader.BagReader;
import gov.loc.repository.bagit.verify.BagVerifier;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import ovenproof.campaign.Inquiry;
import ovenproof.campaign.InquiryStep;
import ovenproof.desk.DatabaseKind;
import ovenproof.desk.Desk;
import ovenproof.desk.EntryKind;
import ovenproof.desk.FolderExport;
import ovenproof.desk.FolderImport;
import ovenproof.desk.NewEntry;
import ovenproof.files.CampaignFolder;
import ovenproof.files.InquiryFile;
import ovenproof.files.LoadedCampaign;
import ovenproof.input.InputException;
import ovenproof.measure.MeasureService;
import ovenproof.measure.Measured;
import ovenproof.publish.SmallCampaign;
import ovenproof.publish.edition.Edition;

class EvidencePackTest {
  private static final LocalDate DAY = LocalDate.of(2026, 3, 20);

  @TempDir static Path folder;

  private static Path campaign;
  private static Edition edition;
  private static Path pack;

  @BeforeAll
  static void answer() {
    campaign = SmallCampaign.write(folder.resolve("campaign"));
    edition = SmallCampaign.edition(campaign);
    pack = new EvidencePack(edition, "siskin").write(folder.resolve("pack"), DAY);
  }

  private static List<Path> files() throws Exception {
    try (Stream<Path> walk = Files.walk(pack)) {
      return walk.filter(Files::isRegularFile).toList();
    }
  }

  @Test
  void nobodysNameAndNoOtherProductIsInAnyByteOfIt() throws Exception {
    for (Path file : files()) {
      String text =
          Files.readString(file, StandardCharsets.ISO_8859_1).toLowerCase(Locale.ROOT)
              + file.getFileName();
      for (String word : List.of("ana quill", "quill", "53.34n", "alder", "rowan", "dunnock")) {
        assertThat(text).as(pack.relativize(file).toString()).doesNotContain(word);
      }
    }
  }

  @Test
  void itIsASoundBagAndACampaignThatGivesTheSameMeasurements() throws Exception {
    try (BagVerifier verifier = new BagVerifier()) {
      verifier.isValid(new BagReader().read(pack), false);
    }
    LoadedCampaign loaded = CampaignFolder.withAllMeasures().load(Bag.open(pack).data());
    assertThat(loaded.campaign().products()).extracting(p -> p.id()).containsExactly("siskin");
    assertThat(loaded.campaign().ratings())
        .extracting(r -> r.assessor())
        .containsOnly("assessor-1", "assessor-2", "assessor-3");
    Measured again = MeasureService.withDefaults().measure(loaded.campaign(), loaded.evidence());
    List<Measured.Value> before =
        edition.measured().values().stream().filter(v -> v.product().equals("siskin")).toList();
    assertThat(again.values()).hasSameSizeAs(before);
    for (int i = 0; i < before.size(); i++) {
      Double then = before.get(i).value().value();
      Double now = again.values().get(i).value().value();
      // Order of the assessors may differ: equal to 1e-9 relative, as verify asks.
      assertThat(now == null ? Double.NaN : now)
          .isCloseTo(
              then == null ? Double.NaN : then,
              org.assertj.core.data.Percentage.withPercentage(1e-7));
    }
  }

  @Test
  void whoeverVerifiesItIsToldWhatOneProductCannotGiveAgain() {
    Verification verification = Verification.of(pack);
    assertThat(verification.differences()).isEmpty();
    assertThat(verification.remarks())
        .anySatisfy(r -> assertThat(r).contains("rest on the whole field"));
  }

  @Test
  void aScoreThatWasRewrittenWithItsFingerprintIsStillNamedInAPack() throws Exception {
    Path forged = new EvidencePack(edition, "siskin").write(folder.resolve("forged"), DAY);
    Path readings = forged.resolve("data/published/measurements.json");
    String text = Files.readString(readings);
    String changed = text.replaceFirst("\"value\"\\s*:\\s*76\\.", "\"value\" : 79.");
    assertThat(changed).isNotEqualTo(text);
    Files.writeString(readings, changed);
    for (Path list :
        List.of(forged.resolve("manifest-sha256.txt"), forged.resolve("tagmanifest-sha256.txt"))) {
      reseal(forged, list);
    }
    assertThat(Verification.of(forged).differences())
        .singleElement()
        .satisfies(d -> assertThat(d).contains("measurement.value").contains("published 79."));
  }

  private static void reseal(Path bag, Path list) throws Exception {
    StringBuilder lines = new StringBuilder();
    for (String line : Files.readAllLines(list)) {
      String name = line.substring(66);
      byte[] bytes = Files.readAllBytes(bag.resolve(name));
      String sha =
          java.util.HexFormat.of()
              .formatHex(java.security.MessageDigest.getInstance("SHA-256").digest(bytes));
      lines.append(sha).append("  ").append(name).append('\n');
    }
    Files.writeString(list, lines);
  }

  @Test
  void picturesKeepTheirPixelsAndTheListNamesTheOriginals() throws Exception {
    String photo = "photos/siskin-toast-1.jpg";
    BufferedImage original = ImageIO.read(campaign.resolve(photo).toFile());
    BufferedImage packed = ImageIO.read(pack.resolve("data/" + photo).toFile());
    assertThat(packed.getRGB(800, 600)).isEqualTo(original.getRGB(800, 600));
    assertThat(Files.readString(pack.resolve("data/evidence.csv")))
        .contains(photo + "," + Fingerprints.of(campaign.resolve(photo)))
        .contains("pixels only");
  }

  @Test
  void howAPictureIsTurnedStays() throws Exception {
    byte[] plain = Files.readAllBytes(campaign.resolve("photos/siskin-toast-1.jpg"));
    byte[] cleaned = PictureMetadata.without(plain);
    assertThat(PictureMetadata.without(cleaned)).isEqualTo(cleaned);
    // EXIF 2.32, 4.6.4: orientation is tag 0x0112, type SHORT; 6 is "turn by 90 degrees".
    byte[] turned = new byte[cleaned.length + 36];
    byte[] segment =
        java.util.HexFormat.of()
            .parseHex(
                "ffe10022457869660000"
                    + "4d4d002a00000008"
                    + "0001"
                    + "0112000300000001"
                    + "00060000"
                    + "00000000");
    assertThat(segment).hasSize(36);
    System.arraycopy(cleaned, 0, turned, 0, 2);
    System.arraycopy(segment, 0, turned, 2, 36);
    System.arraycopy(cleaned, 2, turned, 38, cleaned.length - 2);
    assertThat(PictureMetadata.without(turned)).isEqualTo(turned);
    assertThat(ImageIO.read(new ByteArrayInputStream(turned))).isNotNull();
  }

  @Test
  void aPictureThatIsCutOffOrNoneIsLeftInPeace() {
    for (byte[] odd :
        new byte[][] {
          {},
          {(byte) 0xff},
          {(byte) 0xff, (byte) 0xd8, (byte) 0xff},
          {1, 2, 3},
          {(byte) 0xff, (byte) 0xd8, (byte) 0xff, (byte) 0xe1, 0, 0},
          {(byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10, 0x7f, 0, 0, 0, 'I', 'D', 'A', 'T'}
        }) {
      assertThat(PictureMetadata.without(odd)).isNotNull();
    }
  }

  @Test
  void anUnknownProductAndATakenPlaceAreToldInWords() {
    assertThatThrownBy(() -> new EvidencePack(edition, "siskn"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("siskin");
    assertThatThrownBy(() -> new EvidencePack(edition, "siskin").write(pack, DAY))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("stands there already");
  }

  private static InquiryStep step(InquiryStep.Kind kind, String words) {
    boolean asked = kind == InquiryStep.Kind.ASKED;
    boolean decided = kind == InquiryStep.Kind.DECIDED;
    return new InquiryStep(
        "siskin-toast-time",
        kind,
        Instant.parse("2026-04-01T09:00:00Z"),
        "editor",
        asked ? InquiryStep.From.MAKER : null,
        asked ? "siskin" : null,
        asked ? List.of("Siskin took 4 min, \"slow\".", "שלום") : List.of(),
        asked ? List.of("siskin-toast-1", "siskin-toast-2") : List.of(),
        asked ? LocalDate.of(2026, 4, 15) : null,
        words,
        decided ? InquiryStep.Outcome.RETESTED : null,
        decided ? 2 : null);
  }

  @ParameterizedTest
  @EnumSource(DatabaseKind.class)
  void anInquiryIsEntriesThatGoOutAndInWithTheFolder(DatabaseKind kind) throws Exception {
    Path exported = folder.resolve("exported-" + kind);
    List<InquiryStep> steps =
        List.of(
            step(InquiryStep.Kind.ASKED, "Ours\ntakes 3."),
            step(InquiryStep.Kind.ANSWERED, "See the pack."),
            step(InquiryStep.Kind.DECIDED, ""));
    CampaignFolder folders = CampaignFolder.withAllMeasures();
    try (Desk desk = kind.open(folder.resolve("desk-" + kind))) {
      String id = new FolderImport(desk, folders).take(campaign, "lead");
      for (int i = 0; i < steps.size(); i++) {
        InquiryStep s = steps.get(i);
        NewEntry.Stamp stamp = NewEntry.Stamp.of(s.by(), s.at());
        NewEntry entry = new NewEntry("key-inquiry-" + i, EntryKind.INQUIRY, s, stamp, null);
        assertThat(desk.append(id, List.of(entry))).isEqualTo(1);
        assertThat(desk.append(id, List.of(entry))).isZero();
      }
      assertThat(desk.inquiries(id)).isEqualTo(steps);
      assertThat(Inquiry.of(desk.inquiries(id)))
          .singleElement()
          .satisfies(
              inquiry -> {
                assertThat(inquiry.outcome()).isEqualTo(InquiryStep.Outcome.RETESTED);
                assertThat(inquiry.runs()).containsExactly("siskin-toast-1", "siskin-toast-2");
                assertThat(inquiry.isOverdue(LocalDate.of(2026, 5, 1))).isFalse();
              });
      new FolderExport(desk, folders).write(id, exported);
    }
    assertThat(InquiryFile.read(exported)).isEqualTo(steps);
    try (Desk desk = Desk.open(kind.location(folder.resolve("again-" + kind)), Clock.systemUTC())) {
      String id = new FolderImport(desk, folders).take(exported, "lead");
      assertThat(desk.inquiries(id)).isEqualTo(steps);
    }
  }

  @Test
  void aBrokenFileOfInquiriesIsToldRowByRow() throws Exception {
    Path broken = Files.createDirectories(folder.resolve("broken"));
    Files.writeString(
        broken.resolve(InquiryFile.NAME),
        "inquiry,step,at,by,from,product,sentences,runs,deadline,words,outcome,edition\n"
            + "a,asked,2026-04-01T09:00:00Z,lead,maker,,,,soon,x,,\n"
            + "a,decided,2026-04-01T09:00:00Z,lead,,,,,,x,,\n"
            + "a,shouted,2026-04-01T09:00:00Z,lead,,,,,,x,,\n");
    assertThatThrownBy(() -> InquiryFile.read(broken))
        .isInstanceOf(InputException.class)
        .satisfies(e -> assertThat(((InputException) e).problems()).hasSize(3));
  }
}
