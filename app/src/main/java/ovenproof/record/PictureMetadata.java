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

  private PictureMetadata() {}

  /** Whether the bytes are a picture of which the metadata can be taken out. */
  static boolean isPicture(byte[] bytes) {
    return isJpeg(bytes) || isPng(bytes);
  }

  private static boolean isJpeg(byte[] b) {
    return b.length > 3 && (b[0] & 255) == 0xff && (b[1] & 255) == 0xd8 && (b[2] & 255) == 0xff;
  }

  private static boolean isPng(byte[] b) {
    return b.length > 8 && (b[0] & 255) == 0x89 && b[1] == 'P' && b[2] == 'N' && b[3] == 'G';
  }

  /** JPEG (ISO/IEC 10918-1, B.1.1) and PNG (ISO/IEC 15948, 11.3); anything else as it is. */
  static byte[] without(byte[] bytes) {
    if (isJpeg(bytes)) {
      return jpeg(bytes);
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
      if (marker == 0xda || marker == 0xd9) {
        break;
      }
      int length = (b[at + 2] & 255) << 8 | b[at + 3] & 255;
      int end = Math.min(b.length, at + 2 + Math.max(2, length));
      boolean exif = marker == 0xe1;
      // JFIF, colour profile and Adobe's colour transform change what the pixels mean: they stay.
      boolean said = marker == 0xfe || marker > 0xe2 && marker <= 0xef && marker != 0xee || exif;
      if (exif) {
        int turned = orientation(b, at + 4, end);
        if (turned > 1) {
          out.writeBytes(orientationOnly(turned));
        }
      }
      if (!said) {
        out.write(b, at, end - at);
      }
      at = end;
    }
    int last = endOfImage(b, at);
    out.write(b, at, last - at);
    return out.toByteArray();
  }

  /** What stands after the end of the image is no part of it. */
  private static int endOfImage(byte[] b, int from) {
    for (int i = b.length - 2; i >= from; i--) {
      if ((b[i] & 255) == 0xff && (b[i + 1] & 255) == 0xd9) {
        return i + 2;
      }
    }
    return b.length;
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
