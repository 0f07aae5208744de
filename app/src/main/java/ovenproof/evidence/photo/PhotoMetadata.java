package ovenproof.evidence.photo;

import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.MetadataException;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import com.drew.metadata.icc.IccDirectory;
import com.drew.metadata.jpeg.JpegDirectory;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import org.jspecify.annotations.Nullable;

/**
 * What is kept of a file's metadata. Place, owner, camera serial number and every other name are
 * not read at all.
 *
 * @param orientation EXIF 1…8 (CIPA DC-008, tag 274)
 * @param takenAt camera's own clock, without zone; null when it does not say
 * @param offset of that clock from UTC, when the camera says it
 * @param whiteBalance how the camera chose white
 * @param profile name of the colour profile; null when none is embedded
 * @param components channels of a JPEG; 0 when unknown
 */
public record PhotoMetadata(
    int orientation,
    @Nullable LocalDateTime takenAt,
    @Nullable ZoneOffset offset,
    WhiteBalance whiteBalance,
    @Nullable String profile,
    int components) {

  /** How the camera chose white. */
  public enum WhiteBalance {
    AUTOMATIC,
    FIXED,
    UNKNOWN
  }

  private static final DateTimeFormatter EXIF_TIME =
      DateTimeFormatter.ofPattern("yyyy:MM:dd HH:mm:ss");

  private static final PhotoMetadata NONE =
      new PhotoMetadata(1, null, null, WhiteBalance.UNKNOWN, null, 0);

  /** Reads what there is; damaged metadata counts as none. */
  static PhotoMetadata of(byte[] bytes) {
    try {
      Metadata metadata = ImageMetadataReader.readMetadata(new ByteArrayInputStream(bytes));
      Directory exif = metadata.getFirstDirectoryOfType(ExifIFD0Directory.class);
      Directory sub = metadata.getFirstDirectoryOfType(ExifSubIFDDirectory.class);
      Directory icc = metadata.getFirstDirectoryOfType(IccDirectory.class);
      Directory jpeg = metadata.getFirstDirectoryOfType(JpegDirectory.class);
      return new PhotoMetadata(
          orientation(number(exif, ExifIFD0Directory.TAG_ORIENTATION, 1)),
          time(sub),
          offset(sub),
          whiteBalance(number(sub, ExifSubIFDDirectory.TAG_WHITE_BALANCE_MODE, -1)),
          icc == null ? null : icc.getString(IccDirectory.TAG_TAG_desc),
          number(jpeg, JpegDirectory.TAG_NUMBER_OF_COMPONENTS, 0));
    } catch (ImageProcessingException | IOException | RuntimeException damaged) {
      return NONE;
    }
  }

  private static int orientation(int value) {
    return value >= 1 && value <= 8 ? value : 1;
  }

  private static WhiteBalance whiteBalance(int value) {
    return switch (value) {
      case 0 -> WhiteBalance.AUTOMATIC;
      case 1 -> WhiteBalance.FIXED;
      default -> WhiteBalance.UNKNOWN;
    };
  }

  private static int number(@Nullable Directory directory, int tag, int fallback) {
    try {
      return directory != null && directory.containsTag(tag) ? directory.getInt(tag) : fallback;
    } catch (MetadataException e) {
      return fallback;
    }
  }

  private static @Nullable LocalDateTime time(@Nullable Directory sub) {
    String text = sub == null ? null : sub.getString(ExifSubIFDDirectory.TAG_DATETIME_ORIGINAL);
    try {
      return text == null ? null : LocalDateTime.parse(text.strip(), EXIF_TIME);
    } catch (DateTimeException e) {
      return null;
    }
  }

  private static @Nullable ZoneOffset offset(@Nullable Directory sub) {
    String text = sub == null ? null : sub.getString(ExifSubIFDDirectory.TAG_TIME_ZONE_ORIGINAL);
    try {
      return text == null ? null : ZoneOffset.of(text.strip());
    } catch (DateTimeException e) {
      return null;
    }
  }
}
