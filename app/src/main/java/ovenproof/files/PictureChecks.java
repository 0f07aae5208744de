package ovenproof.files;

import com.drew.imaging.FileType;
import com.drew.imaging.FileTypeDetector;
import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.jpeg.JpegDirectory;
import com.drew.metadata.png.PngDirectory;
import com.drew.metadata.webp.WebpDirectory;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;
import ovenproof.input.OutsideException;
import ovenproof.input.Written;

/**
 * Whether a file is a picture, judged by its header only: the size is read before anything is
 * decoded, so that a small file cannot ask for a huge amount of memory.
 */
final class PictureChecks {
  /** Largest picture in pixels: above the largest telephone sensors of 2025 in full resolution. */
  static final long LARGEST_PIXELS = 250_000_000L;

  private final FolderEvidence evidence;

  /** Width and height as the header says them, before any rotation. */
  record Size(int width, int height) {
    long pixels() {
      return (long) width * height;
    }
  }

  PictureChecks(FolderEvidence evidence) {
    this.evidence = evidence;
  }

  /** Reports what is wrong; the size when nothing is. */
  Optional<Size> check(Written written) {
    FileType type = type(written.text());
    if (type == FileType.Heif) {
      written.error(
          "a JPEG or PNG picture",
          "it is HEIC: export it as JPEG (phones: camera settings, most compatible format)");
      return Optional.empty();
    }
    if (type != FileType.Jpeg && type != FileType.Png && type != FileType.WebP) {
      written.error("a JPEG, PNG or WebP picture", "its content is none, whatever its name");
      return Optional.empty();
    }
    Optional<Size> size = size(written.text());
    if (size.isEmpty()) {
      written.error("a whole picture", "its header is damaged: copy it again");
    } else if (size.get().pixels() > LARGEST_PIXELS) {
      written.error(
          "a picture of at most 250 megapixels",
          "its header says "
              + size.get().width()
              + " × "
              + size.get().height()
              + " pixels: export it smaller");
      return Optional.empty();
    }
    return size;
  }

  private FileType type(String path) {
    try (InputStream in = new BufferedInputStream(evidence.open(path))) {
      return FileTypeDetector.detectFileType(in);
    } catch (IOException failure) {
      throw new OutsideException("could not read " + path, failure);
    }
  }

  private Optional<Size> size(String path) {
    try (InputStream in = evidence.open(path)) {
      return size(ImageMetadataReader.readMetadata(in));
    } catch (ImageProcessingException | RuntimeException damaged) {
      return Optional.empty();
    } catch (IOException cutOff) {
      return Optional.empty();
    }
  }

  private static Optional<Size> size(Metadata metadata) {
    return size(
            metadata,
            JpegDirectory.class,
            JpegDirectory.TAG_IMAGE_WIDTH,
            JpegDirectory.TAG_IMAGE_HEIGHT)
        .or(
            () ->
                size(
                    metadata,
                    PngDirectory.class,
                    PngDirectory.TAG_IMAGE_WIDTH,
                    PngDirectory.TAG_IMAGE_HEIGHT))
        .or(
            () ->
                size(
                    metadata,
                    WebpDirectory.class,
                    WebpDirectory.TAG_IMAGE_WIDTH,
                    WebpDirectory.TAG_IMAGE_HEIGHT));
  }

  private static <D extends Directory> Optional<Size> size(
      Metadata metadata, Class<D> kind, int widthTag, int heightTag) {
    return metadata.getDirectoriesOfType(kind).stream()
        .filter(d -> d.getInteger(widthTag) != null && d.getInteger(heightTag) != null)
        .map(d -> new Size(d.getInteger(widthTag), d.getInteger(heightTag)))
        .filter(s -> s.width() > 0 && s.height() > 0)
        .findFirst();
  }
}
