package ovenproof.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gov.loc.repository.bagit.reader.BagReader;
import gov.loc.repository.bagit.verify.BagVerifier;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.input.InputException;
import ovenproof.publish.SmallCampaign;
import ovenproof.publish.edition.Edition;

class BagTest {
  @TempDir Path folder;

  private Path campaign;
  private Path bag;

  @BeforeEach
  void export() {
    campaign = SmallCampaign.write(folder.resolve("campaign"));
    bag = export("bag");
  }

  private Path export(String name) {
    Edition edition = SmallCampaign.edition(campaign);
    return new BagExport(
            campaign,
            edition.campaign(),
            edition.evidence(),
            edition.measured(),
            edition.verdict(),
            LocalDate.of(2026, 3, 20))
        .write(folder.resolve(name));
  }

  /** RFC 8493 checked by a library of its own: gov.loc:bagit 5.2.0. */
  @Test
  void anIndependentLibraryFindsTheBagCompleteAndValid() throws Exception {
    var read = new BagReader().read(bag);
    try (BagVerifier verifier = new BagVerifier()) {
      verifier.isComplete(read, false);
      verifier.isValid(read, false);
    }
    assertThat(read.getMetadata().get("Bagging-Date")).containsExactly("2026-03-20");
  }

  /** The manifest is the format of GNU coreutils: sha256sum --check reads it. */
  @Test
  void sha256sumAgrees() throws Exception {
    Process check =
        new ProcessBuilder("sha256sum", "--check", "--strict", "--quiet", "manifest-sha256.txt")
            .directory(bag.toFile())
            .redirectErrorStream(true)
            .start();
    String output = new String(check.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(check.waitFor()).as(output).isZero();
  }

  @Test
  void theVerdictComesOutTheSame() {
    Verification verification = Verification.of(bag);
    assertThat(verification.differences()).isEmpty();
    assertThat(verification.files()).isGreaterThan(20);
  }

  @Test
  void aZipIsVerifiedLikeAFolder() {
    assertThat(Verification.of(export("bag.zip")).isSame()).isTrue();
  }

  @Test
  void importGivesTheSameFilesAgain() throws Exception {
    Path copy = BagImport.read(bag, folder.resolve("copy"));
    Map<String, String> original = contents(campaign);
    assertThat(contents(copy)).containsAllEntriesOf(original);
    campaign = copy;
    assertThat(Bag.open(export("again")).fingerprints()).isEqualTo(Bag.open(bag).fingerprints());
  }

  private static Map<String, String> contents(Path folder) throws IOException {
    Map<String, String> contents = new TreeMap<>();
    try (Stream<Path> walk = Files.walk(folder)) {
      walk.filter(Files::isRegularFile)
          .forEach(f -> contents.put(folder.relativize(f).toString(), Fingerprints.of(f)));
    }
    return contents;
  }

  @Test
  void nothingIsOverwritten() {
    assertThatThrownBy(() -> export("bag"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("stands there already");
  }

  @Test
  void aChangedDigitIsNamed() throws Exception {
    Path readings = bag.resolve("data/readings.csv");
    Files.writeString(readings, Files.readString(readings).replaceFirst("76", "77"));
    refused("data/readings.csv", "other bytes than were packed");
  }

  @Test
  void aVerdictThatWasRewrittenWithItsFingerprintIsComputedAgainAndNamed() throws Exception {
    Path verdict = bag.resolve("data/" + BagExport.VERDICT);
    String before = Fingerprints.of(verdict);
    Files.writeString(
        verdict,
        Files.readString(verdict).replaceFirst("\"score\" : \\d+\\.\\d", "\"score\" : 9.9"));
    replace("manifest-sha256.txt", before, Fingerprints.of(verdict));
    Path info = bag.resolve("bag-info.txt");
    Files.writeString(info, Files.readString(info).replaceAll("Payload-Oxum.*\n", ""));
    Files.delete(bag.resolve("tagmanifest-sha256.txt"));
    assertThat(Verification.of(bag).differences())
        .anySatisfy(d -> assertThat(d).contains("score").contains("published 9.9"));
  }

  private void replace(String file, String from, String to) throws IOException {
    Path path = bag.resolve(file);
    Files.writeString(path, Files.readString(path).replace(from, to));
  }

  @Test
  void aLostFileIsNamed() throws Exception {
    Files.delete(bag.resolve("data/ratings.csv"));
    refused("data/ratings.csv", "nothing");
  }

  @Test
  void aCutOffFileIsNamed() throws Exception {
    Path photo = bag.resolve("data/photos/alder-toast-1.jpg");
    byte[] bytes = Files.readAllBytes(photo);
    Files.write(photo, java.util.Arrays.copyOf(bytes, bytes.length / 2));
    refused("data/photos/alder-toast-1.jpg", "cut off");
  }

  @Test
  void aFileThatNoListNamesIsRefused() throws Exception {
    Files.writeString(bag.resolve("data/extra.csv"), "x");
    refused("data/extra.csv", "no list names");
  }

  @Test
  void aLinkIsRefused() throws Exception {
    Path readings = bag.resolve("data/readings.csv");
    Files.delete(readings);
    Files.createSymbolicLink(readings, Path.of("/etc/hostname"));
    refused("data/readings.csv", "a link");
  }

  @Test
  void aListThatLeavesTheBagIsRefused() throws Exception {
    Path manifest = bag.resolve("manifest-sha256.txt");
    Files.writeString(manifest, Files.readString(manifest) + "0".repeat(64) + "  data/../../x\n");
    refused("manifest-sha256.txt", "a path inside the bag");
  }

  @Test
  void aListThatNamesAFileTwiceIsRefused() throws Exception {
    Path manifest = bag.resolve("manifest-sha256.txt");
    String text = Files.readString(manifest);
    Files.writeString(manifest, text + text.lines().findFirst().orElseThrow() + "\n");
    refused("manifest-sha256.txt", "a second line");
  }

  @Test
  void aFolderThatIsNoBagIsRefused() {
    assertThatThrownBy(() -> Verification.of(campaign))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("bagit.txt");
  }

  private void refused(String place, String words) {
    assertThatThrownBy(() -> Verification.of(bag))
        .isInstanceOf(InputException.class)
        .hasMessageContaining(place)
        .hasMessageContaining(words);
  }

  @Test
  void aZipWithUnsafeNamesIsRefusedBeforeAnythingIsWritten() throws Exception {
    for (String name :
        List.of("../x", "/etc/x", "a/../../x", "C:/x", "a\\..\\x", "bag/con", "bag/a\u0000b")) {
      Path zip = zip(Map.of(name, new byte[1]));
      assertThatThrownBy(() -> Verification.of(zip))
          .as(name)
          .isInstanceOf(InputException.class)
          .hasMessageContaining("unsafe");
    }
  }

  @Test
  void aZipWithTheSameNameTwiceIsRefused() throws Exception {
    Path zip = zip(Map.of("bag/data/A.csv", new byte[1], "bag/data/a.csv", new byte[1]));
    assertThatThrownBy(() -> Verification.of(zip))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("second file");
  }

  @Test
  void aBombIsStoppedWhileItUnpacks() throws Exception {
    Path zip = zip(Map.of("bag/data/zeros", new byte[100 << 20]));
    assertThatThrownBy(() -> Verification.of(zip))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("contents of more than");
  }

  @Test
  void aCutOffZipIsRefusedInWords() throws Exception {
    byte[] bytes = Files.readAllBytes(export("whole.zip"));
    Path cut = folder.resolve("cut.zip");
    Files.write(cut, java.util.Arrays.copyOf(bytes, bytes.length * 2 / 3));
    assertThatThrownBy(() -> Verification.of(cut))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("damaged or cut off");
  }

  private Path zip(Map<String, byte[]> files) throws IOException {
    Path zip = Files.createTempFile(folder, "hostile", ".zip");
    try (OutputStream out = Files.newOutputStream(zip);
        ZipOutputStream packed = new ZipOutputStream(out)) {
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        packed.putNextEntry(new ZipEntry(file.getKey()));
        packed.write(file.getValue());
        packed.closeEntry();
      }
    }
    return zip;
  }
}
