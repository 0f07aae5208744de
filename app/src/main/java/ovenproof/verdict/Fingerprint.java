package ovenproof.verdict;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.TreeMap;
import ovenproof.core.scoring.Candidate;
import ovenproof.core.scoring.ScoringCase;

/** Short name of everything a verdict was computed from: the same case has the same one. */
final class Fingerprint {

  /** Raised whenever the arithmetic of scoring changes. */
  static final int REVISION = 2;

  private static final int DIGITS = 12;

  private Fingerprint() {}

  static String of(ScoringCase scoringCase) {
    StringBuilder text = new StringBuilder("scoring ").append(REVISION).append('\n');
    text.append(scoringCase.rules()).append('\n').append(scoringCase.root()).append('\n');
    scoringCase.variables().forEach(v -> text.append(v).append('\n'));
    scoringCase.gates().forEach(g -> text.append(g).append('\n'));
    for (Candidate product : scoringCase.products()) {
      text.append(product.id()).append(new TreeMap<>(product.answers())).append('\n');
    }
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256")
              .digest(text.toString().getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(digest).substring(0, DIGITS);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
