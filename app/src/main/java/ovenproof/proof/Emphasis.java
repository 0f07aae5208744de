package ovenproof.proof;

import java.util.regex.Pattern;
import ovenproof.proof.Proof.Finding;

/**
 * "Clearly the better", "by far the worst", "wins easily": words that claim not an order but a
 * separation. Where the runs do not separate the two, such a sentence is wrong, not open.
 */
final class Emphasis {
  private static final String WORDS =
      "clearly|plainly|easily|comfortably|decidedly|definitely|undoubtedly|undisputed|undeniably|unquestionably|significantly|hands down|without (?:a )?doubt|beyond doubt|by far|by a (?:mile|distance|long way|wide margin|clear margin)|no contest|obviously|outright|convincingly";

  private static final Pattern BEFORE =
      Pattern.compile("(?is).*\\b(?:" + WORDS + ")\\b[^,;.]{0,14}$");

  private static final Pattern AFTER =
      Pattern.compile("(?is)^[^;.]{0,30}\\b(?:" + WORDS + ")\\b.*");

  private Emphasis() {}

  /** What an undecided finding is worth where the words claim a decision. */
  static Finding sharpened(SentenceClaims sentence, int start, int end, Finding finding) {
    boolean claimsSeparation =
        BEFORE.matcher(Wording.before(sentence.text(), start)).matches()
            || AFTER.matcher(Wording.after(sentence.text(), end)).matches();
    return finding == Finding.UNCLEAR && claimsSeparation ? Finding.CONTRADICTED : finding;
  }
}
