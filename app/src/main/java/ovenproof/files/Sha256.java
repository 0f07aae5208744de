package ovenproof.files;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 of a stream of bytes (FIPS 180-4), as evidence is named by. */
final class Sha256 {
  private final MessageDigest digest;

  Sha256() {
    try {
      digest = MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException("every Java platform has SHA-256", impossible);
    }
  }

  void add(byte[] block, int count) {
    digest.update(block, 0, count);
  }

  /** 64 lower-case hex digits; ends the stream. */
  String hex() {
    return HexFormat.of().formatHex(digest.digest());
  }
}
