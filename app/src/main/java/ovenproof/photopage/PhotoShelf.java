package ovenproof.photopage;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Photo;
import ovenproof.core.photo.Picture;
import ovenproof.evidence.EvidenceSource;
import ovenproof.evidence.photo.PhotoFile;
import ovenproof.input.OutsideException;
import ovenproof.measure.PhotoReading;
import ovenproof.measure.ShadeCards;
import ovenproof.method.TestPlan;

/**
 * Photographs opened and read for pages. What was read is kept in memory, what was drawn in the
 * desk's folder of derived things; both can be thrown away at any time. Safe for threads: one
 * photograph is decoded at a time, because twelve million pixels take their room.
 */
public final class PhotoShelf {
  private static final int READINGS_KEPT = 24;

  /** Raised when drawing changes, so that old drawings are not shown. */
  private static final int REVISION = 3;

  private final Path folder;
  private @Nullable Cards lastCards;
  private final Map<String, Opened> kept =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Opened> eldest) {
          return size() > READINGS_KEPT;
        }
      };

  /**
   * @param derived folder for what can be made again
   */
  public PhotoShelf(Path derived) {
    this.folder = derived.resolve("pictures");
  }

  /** A photograph's size and what was seen on it. */
  public record Opened(int width, int height, java.util.List<String> notes, PhotoReading reading) {}

  /**
   * Reads a photograph, or remembers it.
   *
   * @throws ovenproof.input.InputException if it cannot be read
   */
  public synchronized Opened open(
      Campaign campaign, EvidenceSource evidence, Photo photo, TestPlan test) {
    ShadeCards cards = cards(campaign, evidence);
    String key = key(evidence, cards, photo, test, "reading");
    Opened known = kept.get(key);
    return known != null ? known : read(evidence, cards, photo, test, key).opened();
  }

  /** One version of a campaign after the other: its shade cards are read once. */
  private ShadeCards cards(Campaign campaign, EvidenceSource evidence) {
    Cards last = lastCards;
    if (last == null || last.campaign() != campaign) {
      last = new Cards(campaign, new ShadeCards(campaign, evidence));
      lastCards = last;
    }
    return last.cards();
  }

  private record Cards(Campaign campaign, ShadeCards cards) {}

  private record Fresh(Opened opened, Picture picture) {}

  private Fresh read(
      EvidenceSource evidence, ShadeCards cards, Photo photo, TestPlan test, String key) {
    PhotoFile file =
        PhotoFile.open(evidence.bytes(photo.file(), PhotoFile.LARGEST_BYTES), photo.file());
    Picture picture = file.picture();
    Opened known = kept.get(key);
    Opened opened =
        known != null
            ? known
            : new Opened(
                picture.width(),
                picture.height(),
                file.warnings(),
                PhotoReading.of(
                    photo, test, picture, cards.target(photo, test), cards.others(photo)));
    kept.put(key, opened);
    return new Fresh(opened, picture);
  }

  /** A drawing as JPEG, at most {@code side} pixels on its longer side. */
  public synchronized byte[] picture(
      Campaign campaign, EvidenceSource evidence, Photo photo, TestPlan test, Look look, int side) {
    ShadeCards cards = cards(campaign, evidence);
    Path place = folder.resolve(key(evidence, cards, photo, test, look.word() + side) + ".jpg");
    try {
      if (Files.exists(place)) {
        return Files.readAllBytes(place);
      }
      Fresh fresh =
          read(evidence, cards, photo, test, key(evidence, cards, photo, test, "reading"));
      byte[] drawn = Drawing.jpeg(fresh.picture(), fresh.opened().reading(), look, side);
      keep(place, drawn);
      return drawn;
    } catch (IOException failure) {
      throw new OutsideException("cannot keep a drawing in " + folder, failure);
    }
  }

  private void keep(Path place, byte[] drawn) throws IOException {
    Files.createDirectories(folder);
    Path part = Files.createTempFile(folder, "part-", ".jpg");
    Files.write(part, drawn);
    Files.move(part, place, StandardCopyOption.REPLACE_EXISTING);
  }

  private static String key(
      EvidenceSource evidence, ShadeCards cards, Photo photo, TestPlan test, String what) {
    String all =
        REVISION
            + "|"
            + evidence.fingerprint(photo.file()).orElse("missing")
            + "|"
            + photo
            + "|"
            + test.photos()
            + cards.target(photo, test)
            + cards.others(photo)
            + "|"
            + test.measures()
            + "|"
            + what;
    return PhotoFile.fingerprint(all.getBytes(StandardCharsets.UTF_8));
  }
}
