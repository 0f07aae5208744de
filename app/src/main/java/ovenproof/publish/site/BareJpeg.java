package ovenproof.publish.site;

import java.io.ByteArrayOutputStream;
import java.util.Optional;

/**
 * Takes everything out of a JPEG that is not the picture: EXIF with place, time and camera,
 * comments, previews, and whatever hangs behind its end. The picture itself is copied bit for bit,
 * which is faster than encoding it anew and loses nothing.
 *
 * <p>Segments as in ITU-T T.81 (1992), annex B. Pictures that need more care give an empty result:
 * with a colour profile, with other than one or three components, or cut off before their end.
 */
final class BareJpeg {
  private static final int START = 0xD8;
  private static final int END = 0xD9;
  private static final int SCAN = 0xDA;
  private static final int PROFILE = 0xE2;
  private static final int ADOBE = 0xEE;
  private static final int COMMENT = 0xFE;

  private final byte[] bytes;
  private final ByteArrayOutputStream kept;
  private int at;
  private int width;
  private int height;
  private int components;

  private BareJpeg(byte[] bytes) {
    this.bytes = bytes;
    this.kept = new ByteArrayOutputStream(bytes.length);
  }

  /** The picture alone, with its size. */
  record Bare(byte[] jpeg, int width, int height) {}

  /** Empty when the bytes are no JPEG, a damaged one, or one that must be decoded. */
  static Optional<Bare> of(byte[] bytes) {
    BareJpeg jpeg = new BareJpeg(bytes);
    boolean whole = jpeg.copy() && jpeg.width > 0 && jpeg.height > 0;
    boolean plain = jpeg.components == 1 || jpeg.components == 3;
    return whole && plain
        ? Optional.of(new Bare(jpeg.kept.toByteArray(), jpeg.width, jpeg.height))
        : Optional.empty();
  }

  private boolean copy() {
    if (bytes.length < 4 || unsigned(0) != 0xFF || unsigned(1) != START) {
      return false;
    }
    kept.write(bytes, 0, 2);
    at = 2;
    while (at + 4 <= bytes.length) {
      if (unsigned(at) != 0xFF) {
        return false;
      }
      int marker = unsigned(at + 1);
      if (marker == 0xFF) {
        at++;
      } else if (marker == END) {
        return end();
      } else if (!segment(marker)) {
        return false;
      }
    }
    return at + 2 <= bytes.length && unsigned(at) == 0xFF && unsigned(at + 1) == END && end();
  }

  private boolean end() {
    kept.write(0xFF);
    kept.write(END);
    return true;
  }

  private boolean segment(int marker) {
    int length = unsigned(at + 2) << 8 | unsigned(at + 3);
    int next = at + 2 + length;
    if (length < 2 || next > bytes.length || marker == PROFILE) {
      return false;
    }
    if (isFrame(marker) && length >= 8) {
      height = unsigned(at + 5) << 8 | unsigned(at + 6);
      width = unsigned(at + 7) << 8 | unsigned(at + 8);
      components = unsigned(at + 9);
    }
    boolean aside = marker >= 0xE0 && marker <= 0xEF && marker != ADOBE || marker == COMMENT;
    if (!aside) {
      kept.write(bytes, at, next - at);
    }
    at = next;
    return marker != SCAN || scan();
  }

  /** Coded data run to the next marker that is neither a stuffed zero nor a restart. */
  private boolean scan() {
    int from = at;
    while (at + 1 < bytes.length) {
      int marker = unsigned(at + 1);
      boolean goesOn = marker == 0 || marker >= 0xD0 && marker <= 0xD7;
      if (unsigned(at) == 0xFF && !goesOn) {
        kept.write(bytes, from, at - from);
        return true;
      }
      at++;
    }
    return false;
  }

  /** SOF0 to SOF15 but for the tables that share their numbers. */
  private static boolean isFrame(int marker) {
    return marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 && marker != 0xCC;
  }

  private int unsigned(int index) {
    return bytes[index] & 0xFF;
  }
}
