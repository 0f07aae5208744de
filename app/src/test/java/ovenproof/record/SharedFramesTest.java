package ovenproof.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.publish.SmallCampaign;
import ovenproof.publish.edition.Edition;

/** One tray with the toast of two ovens on it, and two ovens of which one name holds the other. */
class SharedFramesTest {
  private static final LocalDate DAY = LocalDate.of(2026, 3, 20);
  private static final Color OWN = new Color(180, 120, 60);
  private static final Color OTHER = new Color(60, 30, 200);

  @TempDir static Path folder;

  private static Path campaign;
  private static Edition edition;
  private static Path pack;

  @BeforeAll
  static void answer() throws Exception {
    campaign =
        SmallCampaign.write(
            folder.resolve("campaign"), List.of("Alder", "Siskin", "Siskin Mini", "Dunnock"));
    tray(campaign.resolve("photos/siskin-rowan-tray.png"));
    Path table = campaign.resolve("photos.csv");
    String photos = Files.readString(table);
    String shared =
        photos
            .replace(
                "photos/siskin-toast-1.jpg,siskin-toast-1,1,top,\"1:40,40,200,200\"",
                "photos/siskin-rowan-tray.png,siskin-toast-1,1,top,\"1:10,10,80,80\"")
            .replace(
                "photos/rowan-toast-1.jpg,rowan-toast-1,1,top,\"1:40,40,200,200\"",
                "photos/siskin-rowan-tray.png,rowan-toast-1,1,top,\"1:110,10,80,80\"");
    assertThat(shared).contains("siskin-rowan-tray.png,rowan-toast-1");
    Files.writeString(table, shared);
    Path deviations = campaign.resolve("deviations.csv");
    Files.writeString(
        deviations,
        Files.readString(deviations)
            + "siskin-toast-2,1,stood beside SISKIN MINI and Dunnock,a Siskin of ours\n");
    edition = SmallCampaign.edition(campaign);
    pack = new EvidencePack(edition, "siskin").write(folder.resolve("pack"), DAY);
  }

  private static void tray(Path file) throws Exception {
    BufferedImage image = new BufferedImage(200, 100, BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = image.createGraphics();
    graphics.setColor(new Color(95, 118, 128));
    graphics.fillRect(0, 0, 200, 100);
    graphics.setColor(OWN);
    graphics.fillRect(10, 10, 80, 80);
    graphics.setColor(OTHER);
    graphics.fillRect(110, 10, 80, 80);
    graphics.dispose();
    ImageIO.write(image, "png", file.toFile());
  }

  private static List<Path> files(Path of) throws Exception {
    try (Stream<Path> walk = Files.walk(of)) {
      return walk.filter(Files::isRegularFile).toList();
    }
  }

  @Test
  void noPixelOfAnotherProductsFoodIsHandedOut() throws Exception {
    int pictures = 0;
    for (Path file : files(pack)) {
      if (file.toString().matches(".*\\.(png|jpg)")) {
        pictures++;
        BufferedImage image = ImageIO.read(file.toFile());
        for (int y = 0; y < image.getHeight(); y += 7) {
          for (int x = 0; x < image.getWidth(); x += 7) {
            assertThat(image.getRGB(x, y))
                .as(file + " " + x + ", " + y)
                .isNotEqualTo(OTHER.getRGB());
          }
        }
      }
    }
    assertThat(pictures).isEqualTo(3);
  }

  @Test
  void theOwnPieceIsCutOutAndTheListHoldsTheFingerprintOfTheFrame() throws Exception {
    Path piece = pack.resolve("data/pieces/siskin-toast-1-top-1.png");
    BufferedImage image = ImageIO.read(piece.toFile());
    assertThat(image.getWidth()).isEqualTo(80);
    assertThat(image.getRGB(40, 40)).isEqualTo(OWN.getRGB());
    assertThat(Files.readString(pack.resolve("data/evidence.csv")))
        .contains(
            "pieces/siskin-toast-1-top-1.png,"
                + Fingerprints.of(campaign.resolve("photos/siskin-rowan-tray.png"))
                + ","
                + Fingerprints.of(piece)
                + ",a piece cut out: other products' food is in the frame");
  }

  @Test
  void noOtherProductIsNamedInItWhateverTheCaseOfTheLetters() throws Exception {
    for (Path file : files(pack)) {
      String text =
          Files.readString(file, StandardCharsets.ISO_8859_1).toLowerCase(Locale.ROOT)
              + pack.relativize(file).toString().toLowerCase(Locale.ROOT);
      for (String word : List.of("siskin mini", "rowan", "alder", "dunnock", "ana quill")) {
        assertThat(text).as(pack.relativize(file).toString()).doesNotContain(word);
      }
    }
    assertThat(Files.readString(pack.resolve("data/deviations.csv")))
        .contains("stood beside another product and another product")
        .contains("a Siskin of ours");
  }

  @Test
  void theProductWithTheLongerNameKeepsItsOwn() throws Exception {
    Path mini = new EvidencePack(edition, "rowan").write(folder.resolve("mini"), DAY);
    assertThat(Files.readString(mini.resolve("data/products.csv"))).contains("Siskin Mini");
    assertThat(Files.readString(mini.resolve("data/published/verdict.json")))
        .contains("\"Siskin Mini\"");
  }
}
