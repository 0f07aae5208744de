package ovenproof.record;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import ovenproof.input.OutsideException;

/** SHA-256 (FIPS 180-4) in lower-case hex. */
final class Fingerprints {

  private Fingerprints() {}

  static String of(Path file) {
    MessageDigest digest = digest();
    try (InputStream in = Files.newInputStream(file)) {
      byte[] block = new byte[1 << 16];
      for (int n = in.read(block); n >= 0; n = in.read(block)) {
        digest.update(block, 0, n);
      }
    } catch (IOException e) {
      throw new OutsideException("could not read " + file + ": " + e, e);
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  static String of(String text) {
    return HexFormat.of().formatHex(digest().digest(text.getBytes(StandardCharsets.UTF_8)));
  }

  static String of(byte[] bytes) {
    return HexFormat.of().formatHex(digest().digest(bytes));
  }

  /** Of text that comes in parts. */
  static final class Running {
    private final MessageDigest digest = digest();

    void add(String text) {
      digest.update(text.getBytes(StandardCharsets.UTF_8));
    }

    /** The fingerprint of all parts; call once. */
    String hex() {
      return HexFormat.of().formatHex(digest.digest());
    }
  }

  private static MessageDigest digest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
