package ovenproof.record;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Set;

/**
 * Takes what a camera or a person wrote beside the pixels out of a picture: place, owner, comments.
 * The pixels and how they are to be turned stay as they are.
 */
final class PictureMetadata {
  private static final Set<String> PNG_TEXT = Set.of("tEXt", "zTXt", "iTXt", "eXIf", "tIME");

  /** Chunks of a WebP picture that are pixels or say what pixels mean. */
  private static final Set<String> WEBP_PICTURE =
      Set.of("VP8 ", "VP8L", "VP8X", "ALPH", "ICCP", "ANIM", "ANMF");

  /** EXIF and XMP in the flags of VP8X. */
  private static final int WEBP_TEXT_FLAGS = 0x0c;

  private static final int START_OF_SCAN = 0xda;
  private static final int END_OF_IMAGE = 0xd9;
  private static final int COMMENT = 0xfe;

  private PictureMetadata() {}

  /** Whether the bytes are a picture of which the metadata can be taken out. */
  static boolean isPicture(byte[] bytes) {
    return isJpeg(bytes) || isPng(bytes) || isWebp(bytes);
  }

  /** ISO/IEC 14496-12: HEIC, AVIF and films begin so. */
  static boolean isContainer(byte[] bytes) {
    return says(bytes, 4, "ftyp");
  }

  private static boolean isJpeg(byte[] b) {
    return b.length > 3 && (b[0] & 255) == 0xff && (b[1] & 255) == 0xd8 && (b[2] & 255) == 0xff;
  }

  private static boolean isPng(byte[] b) {
    return b.length > 8 && (b[0] & 255) == 0x89 && b[1] == 'P' && b[2] == 'N' && b[3] == 'G';
  }

  private static boolean isWebp(byte[] b) {
    return b.length > 12 && says(b, 0, "RIFF") && says(b, 8, "WEBP");
  }

  /**
   * JPEG (ISO/IEC 10918-1, B.1.1), PNG (ISO/IEC 15948, 11.3) and WebP (RFC 9649, 2.7); anything
   * else as it is.
   */
  static byte[] without(byte[] bytes) {
    if (isJpeg(bytes)) {
      return jpeg(bytes);
    }
    if (isWebp(bytes)) {
      return webp(bytes);
    }
    return isPng(bytes) ? png(bytes) : bytes;
  }

  private static byte[] jpeg(byte[] b) {
    ByteArrayOutputStream out = new ByteArrayOutputStream(b.length);
    out.write(b, 0, 2);
    int at = 2;
    while (at + 4 <= b.length && (b[at] & 255) == 0xff) {
      int marker = b[at + 1] & 255;
      if (marker == 0xff) {
        at++;
        continue;
      }
      if (marker == END_OF_IMAGE) {
        break;
      }
      int end = Math.min(b.length, at + 2 + Math.max(2, (int) number(b, at + 2, 2, false)));
      if (marker == START_OF_SCAN) {
        end = endOfScan(b, end);
      }
      if (marker == 0xe1) {
        int turned = orientation(b, at + 4, end);
        if (turned > 1) {
          out.writeBytes(orientationOnly(turned));
        }
      } else if (isPartOfThePicture(b, at, marker)) {
        out.write(b, at, end - at);
      }
      at = end;
    }
    // What stands after the end of the image is no part of it: previews, films, second pictures.
    out.write(b, at, Math.min(2, b.length - at));
    return out.toByteArray();
  }

  /** JFIF, colour profile and Adobe's colour transform change what the pixels mean: they stay. */
  private static boolean isPartOfThePicture(byte[] b, int at, int marker) {
    return switch (marker) {
      case 0xe0 -> says(b, at + 4, "JFIF\0") && hasNoThumbnail(b, at);
      case 0xe2 -> says(b, at + 4, "ICC_PROFILE\0");
      case 0xee -> says(b, at + 4, "Adobe");
      default -> marker != COMMENT && (marker < 0xe0 || marker > 0xef);
    };
  }

  /** JFIF 1.02: width and height of a small picture of uncompressed pixels are bytes 12 and 13. */
  private static boolean hasNoThumbnail(byte[] b, int at) {
    return at + 18 <= b.length && b[at + 16] == 0 && b[at + 17] == 0;
  }

  private static boolean says(byte[] b, int at, String word) {
    return at + word.length() <= b.length
        && new String(b, at, word.length(), StandardCharsets.ISO_8859_1).equals(word);
  }

  /** The marker after a scan's data, in which FF is followed by 00 or a restart marker. */
  private static int endOfScan(byte[] b, int from) {
    for (int i = from; i + 1 < b.length; i++) {
      int next = b[i + 1] & 255;
      if ((b[i] & 255) == 0xff && next != 0 && next != 0xff && (next < 0xd0 || next > 0xd7)) {
        return i;
      }
    }
    return b.length;
  }

  /** RIFF (WebP): chunks of text are left out, and the header no longer promises them. */
  private static byte[] webp(byte[] b) {
    ByteArrayOutputStream out = new ByteArrayOutputStream(b.length);
    out.write(b, 0, 12);
    for (int at = 12; at + 8 <= b.length; ) {
      long size = number(b, at + 4, 4, true);
      long end = at + 8 + size + (size & 1);
      if (end > b.length) {
        break;
      }
      String type = new String(b, at, 4, StandardCharsets.ISO_8859_1);
      if (WEBP_PICTURE.contains(type)) {
        int start = out.size();
        out.write(b, at, (int) (end - at));
        if (type.equals("VP8X")) {
          byte[] so = out.toByteArray();
          so[start + 8] &= ~WEBP_TEXT_FLAGS;
          out.reset();
          out.writeBytes(so);
        }
      }
      at = (int) end;
    }
    byte[] clean = out.toByteArray();
    for (int i = 0; i < 4; i++) {
      clean[4 + i] = (byte) (clean.length - 8 >> 8 * i);
    }
    return clean;
  }

  /** Orientation (tag 0x0112) of the first directory, or 1. */
  private static int orientation(byte[] b, int from, int end) {
    String head =
        new String(b, from, Math.min(6, Math.max(0, end - from)), StandardCharsets.ISO_8859_1);
    int tiff = from + 6;
    if (!head.startsWith("Exif") || tiff + 8 > end) {
      return 1;
    }
    boolean little = b[tiff] == 'I';
    long directory = tiff + number(b, tiff + 4, 4, little);
    if (directory + 2 > end || directory < tiff) {
      return 1;
    }
    int count = (int) number(b, (int) directory, 2, little);
    for (int i = 0; i < count; i++) {
      int entry = (int) directory + 2 + 12 * i;
      if (entry + 12 > end) {
        return 1;
      }
      if (number(b, entry, 2, little) == 0x0112) {
        int value = (int) number(b, entry + 8, 2, little);
        return value >= 1 && value <= 8 ? value : 1;
      }
    }
    return 1;
  }

  private static long number(byte[] b, int at, int bytes, boolean little) {
    long value = 0;
    for (int i = 0; i < bytes; i++) {
      value = value << 8 | b[little ? at + bytes - 1 - i : at + i] & 255;
    }
    return value;
  }

  /** An EXIF segment that says only how the picture is turned. */
  private static byte[] orientationOnly(int orientation) {
    byte[] segment = new byte[4 + 6 + 8 + 2 + 12 + 4];
    segment[0] = (byte) 0xff;
    segment[1] = (byte) 0xe1;
    segment[3] = (byte) (segment.length - 2);
    byte[] head = "Exif\0\0MM\0*\0\0\0\b".getBytes(StandardCharsets.ISO_8859_1);
    System.arraycopy(head, 0, segment, 4, head.length);
    byte[] entry = {0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, (byte) orientation, 0, 0};
    System.arraycopy(entry, 0, segment, 4 + head.length, entry.length);
    return segment;
  }

  private static byte[] png(byte[] b) {
    ByteArrayOutputStream out = new ByteArrayOutputStream(b.length);
    out.write(b, 0, 8);
    int at = 8;
    while (at + 12 <= b.length) {
      long length = number(b, at, 4, false);
      long end = at + 12 + length;
      if (end > b.length) {
        break;
      }
      String type = new String(b, at + 4, 4, StandardCharsets.ISO_8859_1);
      if (!PNG_TEXT.contains(type)) {
        out.write(b, at, (int) (end - at));
      }
      at = (int) end;
      if (type.equals("IEND")) {
        break;
      }
    }
    return out.toByteArray();
  }
}
