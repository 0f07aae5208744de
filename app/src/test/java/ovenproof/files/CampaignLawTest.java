package ovenproof.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import ovenproof.campaign.Campaign;
import ovenproof.evidence.EvidenceSource;
import ovenproof.input.InputException;
import ovenproof.measure.MeasureRegistry;

/** What is saved is loaded again; what cannot be saved leaves nothing. */
class CampaignLawTest {
  @TempDir Path root;
  private final CampaignFolder folders = new CampaignFolder(MeasureRegistry.all());

  static Stream<Integer> seeds() {
    return IntStream.rangeClosed(1, 12).boxed();
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void loadAfterSaveIsTheSame(int seed) {
    RandomCampaign random = new RandomCampaign(seed);
    Campaign campaign = random.campaign();
    Path folder = root.resolve("saved");
    folders.save(campaign, random.evidence(), folder);
    LoadedCampaign loaded = folders.load(folder);
    assertThat(loaded.campaign()).isEqualTo(campaign);
  }

  @Test
  void aFolderWithFilesInItIsNotTouched() throws IOException {
    Files.writeString(root.resolve("mine.txt"), "mine");
    RandomCampaign random = new RandomCampaign(1);
    assertThatThrownBy(() -> folders.save(random.campaign(), random.evidence(), root))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("expected a new or empty folder");
    assertThatThrownBy(() -> folders.begin(root, "toasters", random.campaign().info()))
        .isInstanceOf(InputException.class);
    try (Stream<Path> files = Files.list(root)) {
      assertThat(files).containsExactly(root.resolve("mine.txt"));
    }
  }

  @Test
  void anEmptyFolderMayBeFilled() throws IOException {
    Path empty = Files.createDirectory(root.resolve("empty"));
    RandomCampaign random = new RandomCampaign(2);
    folders.save(random.campaign(), random.evidence(), empty);
    assertThat(folders.check(empty)).noneMatch(p -> p.severity().name().equals("ERROR"));
  }

  @Test
  void evidenceThatChangedSinceLeavesNothingBehind() throws IOException {
    RandomCampaign random = new RandomCampaign(3);
    EvidenceSource changed = new Changed(random.evidence());
    assertThatThrownBy(() -> folders.save(random.campaign(), changed, root.resolve("saved")))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("as recorded");
    try (Stream<Path> files = Files.list(root)) {
      assertThat(files).isEmpty();
    }
  }

  /** A source whose bytes are others than were recorded. */
  private record Changed(EvidenceSource source) implements EvidenceSource {
    @Override
    public InputStream open(String path) {
      return new ByteArrayInputStream(new byte[] {1});
    }

    @Override
    public Optional<String> fingerprint(String path) {
      return source.fingerprint(path);
    }

    @Override
    public Optional<Long> size(String path) {
      return source.size(path);
    }

    @Override
    public byte[] bytes(String path, long limit) {
      return source.bytes(path, limit);
    }
  }
}
