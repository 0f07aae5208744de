package ovenproof.publish;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.files.CampaignFolder;
import ovenproof.files.LoadedCampaign;
import ovenproof.measure.MeasureService;
import ovenproof.measure.Measured;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.site.PictureCache;
import ovenproof.verdict.VerdictService;

/** The example of phone and thermometer: two photographs, each with a chart in the frame. */
class PictureCacheTest {
  @TempDir static Path folder;
  private static Edition edition;
  private static Map<String, String> without;

  @BeforeAll
  static void publishWithoutIt() throws IOException {
    Path here = Path.of("").toAbsolutePath();
    Path root = Files.isDirectory(here.resolve("examples")) ? here : here.getParent();
    LoadedCampaign loaded =
        CampaignFolder.withAllMeasures().load(root.resolve("examples/phone-and-thermometer"));
    Measured measured = MeasureService.withDefaults().measure(loaded.campaign(), loaded.evidence());
    edition =
        new Edition(
            loaded.campaign(),
            loaded.evidence(),
            measured,
            new VerdictService(1).verdict(loaded.campaign(), measured),
            java.time.LocalDate.of(2026, 5, 20));
    without = published(PictureCache.none(), "without");
  }

  private static Map<String, String> published(PictureCache cache, String name) throws IOException {
    Path site = new Publisher(cache).publish(edition, folder.resolve(name)).site();
    Map<String, String> files = new TreeMap<>();
    for (Path file : files(site)) {
      files.put(
          site.relativize(file).toString(),
          ovenproof.evidence.photo.PhotoFile.fingerprint(Files.readAllBytes(file)));
    }
    return files;
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> walk = Files.walk(folder)) {
      return walk.filter(Files::isRegularFile).toList();
    }
  }

  @Test
  void theSiteIsTheSameFirstAndAgainAndFromADamagedCache() throws IOException {
    Path kept = folder.resolve("kept");
    PictureCache cache = PictureCache.inFolder(kept);

    assertThat(published(cache, "first")).isEqualTo(without);
    assertThat(files(kept)).hasSize(2);
    assertThat(published(cache, "again")).isEqualTo(without);
    for (Path file : files(kept)) {
      byte[] bytes = Files.readAllBytes(file);
      Files.write(file, java.util.Arrays.copyOf(bytes, bytes.length / 2));
    }
    assertThat(published(cache, "damaged")).isEqualTo(without);
  }

  @Test
  void whatIsRememberedIsUsed() throws IOException {
    Path kept = folder.resolve("used");
    PictureCache cache = PictureCache.inFolder(kept);
    published(cache, "before");
    List<Path> files = files(kept);
    Files.copy(files.get(0), files.get(1), java.nio.file.StandardCopyOption.REPLACE_EXISTING);

    Map<String, String> after = published(cache, "after");

    List<String> pictures =
        after.entrySet().stream()
            .filter(e -> e.getKey().startsWith("pictures"))
            .map(Map.Entry::getValue)
            .toList();
    assertThat(pictures).hasSize(2);
    assertThat(pictures.get(0)).isEqualTo(pictures.get(1));
    assertThat(after).isNotEqualTo(without);
  }

  @Test
  void aFolderThatCannotBeWrittenOnlyCostsTime() throws IOException {
    Path file = Files.writeString(folder.resolve("a-file"), "not a folder");

    assertThat(published(PictureCache.inFolder(file), "unwritable")).isEqualTo(without);
  }
}
