package ovenproof.measure;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;

/**
 * What a measurement depends on, as a fingerprint: kind and revision of the arithmetic,
 * fingerprints of the files, corrections, calibrations, parameters.
 */
public record MeasurementKey(String hex) {

  /** The key of these parts; each is kept apart from its neighbours by its length. */
  public static MeasurementKey of(List<String> parts) {
    MessageDigest digest = sha256();
    for (String part : parts) {
      byte[] bytes = part.getBytes(StandardCharsets.UTF_8);
      digest.update(Integer.toString(bytes.length).getBytes(StandardCharsets.US_ASCII));
      digest.update((byte) ':');
      digest.update(bytes);
    }
    return new MeasurementKey(HexFormat.of().formatHex(digest.digest()));
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException("every Java has SHA-256", impossible);
    }
  }
}
