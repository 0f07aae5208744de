package ovenproof.evidence.photo;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import ovenproof.core.photo.Picture;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;

/**
 * A photograph as it came in, opened.
 *
 * @param picture upright
 * @param factor by which it was reduced; 1 for all pixels
 * @param format what the bytes are
 * @param metadata what is kept of the metadata
 * @param warnings what a person should know, in words
 */
public record PhotoFile(
    Picture picture,
    int factor,
    PhotoFormat format,
    PhotoMetadata metadata,
    List<String> warnings) {

  /** Larger files are no photographs of a tray. */
  public static final long LARGEST_BYTES = 64L << 20;

  /** Larger pictures are refused by their header, before anything is decoded. */
  public static final long LARGEST_PIXELS = 120_000_000L;

  public PhotoFile {
    warnings = List.copyOf(warnings);
  }

  /**
   * Opens a photograph.
   *
   * @param file name for messages
   * @throws InputException if it is no picture that can be read, cut off, in colours that cannot be
   *     read rightly, or too large
   */
  public static PhotoFile open(byte[] bytes, String file) {
    return open(bytes, file, 0);
  }

  /**
   * Opens a photograph smaller than it is, for pages: a large one takes a fraction of the memory.
   *
   * @param leastLongSide it is reduced by the largest whole factor that leaves its longer side so
   *     many pixels, at least 1
   * @throws InputException as {@link #open(byte[], String)} does
   */
  public static PhotoFile openReduced(byte[] bytes, String file, int leastLongSide) {
    if (leastLongSide < 1) {
      throw new IllegalArgumentException("leastLongSide must be ≥ 1, found " + leastLongSide);
    }
    return open(bytes, file, leastLongSide);
  }

  private static PhotoFile open(byte[] bytes, String file, int leastLongSide) {
    if (bytes.length == 0) {
      throw problem(file, "an empty file", "a photograph", "copy it again");
    }
    if (bytes.length > LARGEST_BYTES) {
      throw problem(
          file,
          bytes.length / (1 << 20) + " MB",
          "at most " + LARGEST_BYTES / (1 << 20) + " MB",
          "export it as JPEG");
    }
    PhotoFormat format = PhotoFormat.of(bytes);
    byte[] readable = format == PhotoFormat.HEIC ? HeifConvert.toJpeg(bytes, file) : bytes;
    return new PhotoDecoding(readable, file, format, leastLongSide).open();
  }

  /** Whether a file's name ends like that of a photograph that can be read. */
  public static boolean isNamedLikeOne(String name) {
    return PhotoFormat.isNamedLikeOne(name);
  }

  /** SHA-256 of the bytes in lower-case hex (FIPS 180-4), as evidence is named by. */
  public static String fingerprint(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException("every Java platform has SHA-256", impossible);
    }
  }

  static InputException problem(String file, String found, String expected, String remedy) {
    return new InputException(Problem.error(Place.of(file), found, expected, remedy));
  }
}
