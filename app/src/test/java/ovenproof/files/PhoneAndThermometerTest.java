package ovenproof.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import ovenproof.campaign.Campaign;
import ovenproof.kitchen.photo.Jpeg;
import ovenproof.kitchen.photo.Material;
import ovenproof.kitchen.photo.PhotoScene;
import ovenproof.kitchen.photo.Studio;
import ovenproof.kitchen.physics.Surface;
import ovenproof.measure.MeasureService;
import ovenproof.verdict.Verdict;
import ovenproof.verdict.VerdictService;

/** The smallest example is whole, invented, and light enough for a phone to have made it. */
class PhoneAndThermometerTest {
  private static final long PHONE_PICTURE_BYTES = 300_000;

  static Path folder() {
    Path here = Path.of("").toAbsolutePath();
    Path root = Files.isDirectory(here.resolve("examples")) ? here : here.getParent();
    return root.resolve("examples/phone-and-thermometer");
  }

  @Test
  void itHasNoProblems() {
    assertThat(CampaignFolder.withAllMeasures().check(folder())).isEmpty();
  }

  @Test
  void itSaysThatItIsInvented() {
    Campaign campaign = CampaignFolder.withAllMeasures().load(folder()).campaign();
    assertThat(campaign.info().provenance()).isEqualTo(Campaign.Provenance.INVENTED);
  }

  @Test
  void itsPicturesAreTwoAndSmall() {
    Campaign campaign = CampaignFolder.withAllMeasures().load(folder()).campaign();
    assertThat(campaign.photos()).hasSize(2);
    assertThat(campaign.evidence())
        .allSatisfy(e -> assertThat(e.bytes()).isLessThan(PHONE_PICTURE_BYTES));
    assertThat(campaign.traces()).isEmpty();
  }

  @Test
  void oneRunGivesNoIntervalAndNoRank() {
    LoadedCampaign loaded = CampaignFolder.withAllMeasures().load(folder());
    Verdict verdict =
        new VerdictService(1)
            .verdict(
                loaded.campaign(),
                MeasureService.withDefaults().measure(loaded.campaign(), loaded.evidence()));
    assertThat(verdict.products())
        .hasSize(3)
        .allSatisfy(
            p -> {
              assertThat(p.rank()).isNull();
              assertThat(p.score().note()).startsWith("one run: no interval, no rank");
            });
  }

  /** Draws the pictures again: {@code java … PhoneAndThermometerTest}. */
  public static void main(String[] none) throws IOException {
    Path photos = Files.createDirectories(folder().resolve("photos"));
    write(photos.resolve("ostler-toast.jpg"), 0.52, 0.05, "2026-05-19T09:08:00", 1);
    write(photos.resolve("marl-toast.jpg"), 0.24, 0.14, "2026-05-19T09:34:00", 2);
  }

  /** Four slices, browner to the right by so much from slice to slice. */
  private static void write(Path file, double browning, double step, String taken, long seed)
      throws IOException {
    List<PhotoScene.Item> slices = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      double x = 85 + 125 * (i % 2);
      double y = 75 + 115 * (i / 2);
      slices.add(
          new PhotoScene.Item(
              String.valueOf(i + 1),
              Material.BREAD_SLICE,
              PhotoScene.Shape.SLICE,
              x,
              y,
              100,
              95,
              0.06 * (i - 1.5),
              Surface.even(browning + step * (i % 2))));
    }
    PhotoScene scene =
        new PhotoScene(
            1500,
            300,
            PhotoScene.Ground.TABLE,
            slices,
            PhotoScene.ChartPose.NONE,
            PhotoScene.Light.NEUTRAL,
            new PhotoScene.Camera(0.01, 0, 0, 0.004, 0),
            seed);
    Files.write(file, Jpeg.of(Studio.take(scene), LocalDateTime.parse(taken)));
  }
}
