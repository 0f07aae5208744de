package ovenproof.publish;

import static org.assertj.core.api.Assertions.assertThat;

import com.drew.imaging.ImageMetadataReader;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import com.drew.metadata.exif.GpsDirectory;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.publish.edition.Edition;
import ovenproof.record.EvidencePack;

/** Whatever stands beside the pixels of a photograph, no byte of it is in anything handed out. */
class PublishedPrivacyTest {
  @TempDir static Path folder;

  private static Path photos;
  private static Edition edition;

  @BeforeAll
  static void photographs() throws Exception {
    Path campaign = SmallCampaign.write(folder.resolve("campaign"));
    photos = campaign.resolve("photos");
    Files.write(photos.resolve("siskin-toast-1.jpg"), GossipyPhoto.jpeg(picture(), 1));
    Files.write(photos.resolve("siskin-toast-2.jpg"), GossipyPhoto.jpeg(picture(), 6));
    Files.write(photos.resolve("siskin-toast-3.jpg"), GossipyPhoto.png(picture()));
    edition = SmallCampaign.edition(campaign);
  }

  private static BufferedImage picture() {
    BufferedImage image = new BufferedImage(640, 480, BufferedImage.TYPE_INT_RGB);
    for (int i = 0; i < 640 * 480; i++) {
      image.setRGB(i % 640, i / 640, i % 640 > 200 && i / 640 > 150 ? 0xb08850 : 0x5f7680);
    }
    return image;
  }

  /** The pictures do tell all of it before: a reader of metadata finds owner and position. */
  @Test
  void thePicturesTellBeforeTheyArePublished() throws Exception {
    byte[] jpeg = Files.readAllBytes(photos.resolve("siskin-toast-1.jpg"));
    var metadata = ImageMetadataReader.readMetadata(new ByteArrayInputStream(jpeg));
    var position = metadata.getFirstDirectoryOfType(GpsDirectory.class);
    assertThat(position.getRationalArray(GpsDirectory.TAG_LATITUDE)[0].intValue()).isEqualTo(53);
    assertThat(metadata.getFirstDirectoryOfType(ExifSubIFDDirectory.class).getString(0xa430))
        .isEqualTo(GossipyPhoto.OWNER);
    for (byte[] secret : List.of(GossipyPhoto.LATITUDE, latin(GossipyPhoto.PLACE))) {
      assertThat(find(jpeg, secret)).isTrue();
    }
  }

  @Test
  void noByteOfThemIsInThePublishedSite() throws Exception {
    Path site = new Publisher().publish(edition, folder.resolve("site")).site();
    assertSilent(site);
    try (Stream<Path> all = Files.walk(site)) {
      assertThat(all.filter(p -> p.toString().endsWith(".jpg"))).hasSize(12);
    }
  }

  @Test
  void noByteOfThemIsInThePackForAMaker() throws Exception {
    Path pack =
        new EvidencePack(edition, "siskin")
            .write(folder.resolve("pack"), LocalDate.of(2026, 3, 20));
    assertSilent(pack);
  }

  private static void assertSilent(Path root) throws Exception {
    try (Stream<Path> all = Files.walk(root)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        byte[] bytes = Files.readAllBytes(file);
        for (byte[] secret : GossipyPhoto.secrets()) {
          assertThat(find(bytes, secret))
              .as("%s: %s", root.relativize(file), new String(secret, StandardCharsets.ISO_8859_1))
              .isFalse();
        }
      }
    }
  }

  private static byte[] latin(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  /** Byte for character, so that the search of strings is one of bytes. */
  private static boolean find(byte[] bytes, byte[] wanted) {
    return new String(bytes, StandardCharsets.ISO_8859_1)
        .contains(new String(wanted, StandardCharsets.ISO_8859_1));
  }
}
