package ovenproof.publish.site;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Photo;
import ovenproof.core.photo.PhotoMeasureCatalogue;
import ovenproof.measure.CacheFolder;
import ovenproof.measure.MeasurementKey;

/**
 * Photographs as readers get them, remembered by all that they depend on: the file, where its chart
 * was marked, the arithmetic and the encoder. A site comes out the same with it, without it, and
 * with a damaged one; only the time differs.
 */
public final class PictureCache {
  /** Raised when the way from a file to a reader's picture changes. */
  private static final int REVISION = 1;

  private final @Nullable CacheFolder calibrated;
  private final @Nullable CacheFolder plain;

  private PictureCache(@Nullable Path folder) {
    this.calibrated = folder == null ? null : new CacheFolder(folder, "-calibrated.jpg");
    this.plain = folder == null ? null : new CacheFolder(folder, "-plain.jpg");
  }

  /** Remembers nothing. */
  public static PictureCache none() {
    return new PictureCache(null);
  }

  /** Remembers in a folder that may be deleted at any time. */
  public static PictureCache inFolder(Path folder) {
    return new PictureCache(folder);
  }

  /** Remembers among a person's caches. */
  public static PictureCache ofUser() {
    return inFolder(CacheFolder.ofUser("pictures"));
  }

  /** Makes a picture that is not remembered. */
  @FunctionalInterface
  interface Maker {
    ReaderPicture make() throws IOException;
  }

  /**
   * The remembered picture, or the one that is made now.
   *
   * @param fingerprint SHA-256 of the file
   * @throws IOException when it is not remembered and cannot be made
   */
  ReaderPicture get(Photo photo, String fingerprint, int longest, Maker maker) throws IOException {
    if (calibrated == null || plain == null) {
      return maker.make();
    }
    MeasurementKey key = key(photo, fingerprint, longest);
    Optional<ReaderPicture> known =
        picture(calibrated.read(key), true).or(() -> picture(plain.read(key), false));
    if (known.isPresent()) {
      return known.get();
    }
    ReaderPicture made = maker.make();
    (made.calibrated() ? calibrated : plain).write(key, made.jpeg());
    return made;
  }

  private static Optional<ReaderPicture> picture(Optional<byte[]> jpeg, boolean calibrated) {
    return jpeg.flatMap(
        bytes ->
            BareJpeg.of(bytes)
                .map(size -> new ReaderPicture(bytes, size.width(), size.height(), calibrated)));
  }

  private static MeasurementKey key(Photo photo, String fingerprint, int longest) {
    return MeasurementKey.of(
        List.of(
            "reader picture " + REVISION,
            "photo measures " + PhotoMeasureCatalogue.ALL.stream().map(m -> m.revision()).toList(),
            Runtime.version().toString(),
            fingerprint,
            photo.file(),
            photo.frame().toString(),
            Integer.toString(longest)));
  }
}
