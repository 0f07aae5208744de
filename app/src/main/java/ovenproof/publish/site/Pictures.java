package ovenproof.publish.site;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Photo;
import ovenproof.campaign.Run;
import ovenproof.core.photo.Picture;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.measure.PhotoReading;
import ovenproof.publish.edition.Edition;

/**
 * Photographs for readers: upright, small, without metadata, so that no place, time, camera or name
 * travels with them. A picture that cannot be read is left out and said so.
 */
final class Pictures {
  private static final int LONGEST_SIDE = 800;
  private static final long MOST_BYTES = 80L << 20;

  private final Edition edition;
  private final SiteAddresses addresses;
  private final PictureCache cache;
  private final List<String> unreadable = new ArrayList<>();

  Pictures(Edition edition, SiteAddresses addresses, PictureCache cache) {
    this.edition = edition;
    this.cache = cache;
    this.addresses = addresses;
  }

  /** Writes all pictures; those of each run by its key, in the campaign's order. */
  Map<String, List<View.Picture>> write(SiteFolder folder) {
    List<Photo> photos = edition.campaign().photos();
    List<View.@Nullable Picture> made =
        java.util.stream.IntStream.range(0, photos.size())
            .parallel()
            .<View.@Nullable Picture>mapToObj(i -> write(folder, photos.get(i), i))
            .toList();
    Map<String, List<View.Picture>> byRun = new LinkedHashMap<>();
    for (int i = 0; i < photos.size(); i++) {
      View.Picture picture = made.get(i);
      if (picture != null) {
        byRun.computeIfAbsent(photos.get(i).run(), r -> new ArrayList<>()).add(picture);
      }
    }
    return byRun;
  }

  /** Files that could not be shown, with the reason. */
  List<String> unreadable() {
    synchronized (unreadable) {
      return unreadable.stream().sorted().toList();
    }
  }

  private View.@Nullable Picture write(SiteFolder folder, Photo photo, int number) {
    try {
      String fingerprint = edition.evidence().fingerprint(photo.file()).orElse("");
      ReaderPicture made = cache.get(photo, fingerprint, LONGEST_SIDE, () -> made(photo));
      String path =
          "pictures/" + addresses.name("picture", photo.run()) + "-" + (number + 1) + ".jpg";
      folder.write(path, made.jpeg());
      return new View.Picture(
          path,
          made.width(),
          made.height(),
          Objects.requireNonNullElse(photo.face(), ""),
          Objects.requireNonNullElse(photo.batch(), 1),
          made.calibrated(),
          sentence(photo) + (made.calibrated() ? ", calibrated" : ""));
    } catch (IOException | InputException | OutsideException e) {
      synchronized (unreadable) {
        unreadable.add(photo.file() + ": " + e.getMessage());
      }
      return null;
    }
  }

  private ReaderPicture made(Photo photo) throws IOException {
    byte[] bytes = edition.evidence().bytes(photo.file(), MOST_BYTES);
    Optional<Picture> calibrated = calibrated(bytes, photo);
    return calibrated.isPresent()
        ? ReaderPicture.calibrated(calibrated.get())
        : ReaderPicture.plain(bytes, LONGEST_SIDE);
  }

  /**
   * The picture as all calibrated ones look. Empty without a chart in the frame, or with one that
   * the camera's colours cannot be brought to.
   */
  private static Optional<Picture> calibrated(byte[] bytes, Photo photo) {
    try {
      return PhotoReading.alike(photo, bytes, LONGEST_SIDE);
    } catch (InputException notForMeasuring) {
      return Optional.empty();
    }
  }

  /** What the picture shows, for those who do not see it. */
  private String sentence(Photo photo) {
    String of =
        edition
            .campaign()
            .run(photo.run())
            .map(this::subject)
            .orElse("Photograph of run " + photo.run());
    String face = photo.face() == null ? "" : ", " + photo.face();
    String batch = photo.batch() == null ? "" : ", batch " + photo.batch();
    return of + batch + face;
  }

  private String subject(Run run) {
    String test =
        edition.campaign().method().test(run.test()).map(t -> t.name()).orElse(run.test());
    return edition.name(run.product()) + ", " + test + ", replicate " + run.replicate();
  }
}
