package ovenproof.evidence.photo;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;

/** Kinds of picture files, told by their first bytes and never by their name. */
public enum PhotoFormat {
  JPEG("JPEG", List.of("jpg", "jpeg", "jpe", "jfif")),
  PNG("PNG", List.of("png")),
  WEBP("WebP", List.of("webp")),
  HEIC("HEIC", List.of("heic", "heif", "hif")),
  /** Anything else. */
  OTHER("no picture format that is known", List.of());

  private final String words;
  private final List<String> extensions;

  PhotoFormat(String words, List<String> extensions) {
    this.words = words;
    this.extensions = extensions;
  }

  public String words() {
    return words;
  }

  /** Whether a file of this name is expected to hold this format. */
  boolean fits(String name) {
    int dot = name.lastIndexOf('.');
    String extension = dot < 0 ? "" : name.substring(dot + 1).toLowerCase(Locale.ROOT);
    return extension.isEmpty() || extensions.contains(extension);
  }

  /** Whether a file's name ends like that of a photograph. */
  static boolean isNamedLikeOne(String name) {
    String lower = name.toLowerCase(Locale.ROOT);
    return java.util.Arrays.stream(values())
        .flatMap(f -> f.extensions.stream())
        .anyMatch(e -> lower.endsWith("." + e));
  }

  /** What a file is that cannot be read, as far as its first bytes tell; for a message. */
  static String nameOfOther(byte[] bytes) {
    if (starts(bytes, 0, 'G', 'I', 'F', '8')) {
      return "a GIF";
    }
    if (starts(bytes, 0, 'B', 'M')) {
      return "a BMP";
    }
    if (starts(bytes, 0, 'I', 'I', 42, 0) || starts(bytes, 0, 'M', 'M', 0, 42)) {
      return "a TIFF or a camera's raw file";
    }
    if (starts(bytes, 0, '%', 'P', 'D', 'F')) {
      return "a PDF";
    }
    if (starts(bytes, 4, 'f', 't', 'y', 'p')) {
      return starts(bytes, 8, 'a', 'v', 'i') ? "an AVIF picture" : "a film";
    }
    return OTHER.words();
  }

  /** By the signature at the start: JPEG FF D8 FF, PNG 89 50 …, RIFF…WEBP, ftyp heic and kin. */
  static PhotoFormat of(byte[] bytes) {
    if (starts(bytes, 0, 0xff, 0xd8, 0xff)) {
      return JPEG;
    }
    if (starts(bytes, 0, 0x89, 'P', 'N', 'G', 0x0d, 0x0a, 0x1a, 0x0a)) {
      return PNG;
    }
    if (starts(bytes, 0, 'R', 'I', 'F', 'F') && starts(bytes, 8, 'W', 'E', 'B', 'P')) {
      return WEBP;
    }
    if (starts(bytes, 4, 'f', 't', 'y', 'p') && bytes.length >= 12) {
      String brand = new String(bytes, 8, 4, StandardCharsets.US_ASCII);
      boolean heif = List.of("heic", "heix", "hevc", "mif1", "msf1", "heim").contains(brand);
      return heif ? HEIC : OTHER;
    }
    return OTHER;
  }

  private static boolean starts(byte[] bytes, int at, int... values) {
    if (bytes.length < at + values.length) {
      return false;
    }
    for (int i = 0; i < values.length; i++) {
      if ((bytes[at + i] & 0xff) != values[i]) {
        return false;
      }
    }
    return true;
  }
}
