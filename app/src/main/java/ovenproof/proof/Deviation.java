package ovenproof.proof;

import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.proof.Judge.Ruling;
import ovenproof.proof.Proof.Finding;

/**
 * Which way something is off: "five degrees too hot" of an oven that runs cold is wrong however
 * right the five are.
 */
final class Deviation {
  private static final Pattern UPWARDS_AFTER =
      Pattern.compile(
          "(?is)^\\s*(?:[CFK]\\s+)?(?:too (?:hot|warm|high|pale|light)|(?:hotter|warmer|higher|paler|lighter) than|(?:above|over) it\\b|(?:above|over|beyond|past) (?:the |its |what )?(?:dial|sett?ing|set|asked|target)|high\\b).*");

  private static final Pattern DOWNWARDS_AFTER =
      Pattern.compile(
          "(?is)^\\s*(?:[CFK]\\s+)?(?:too (?:cold|cool|low|dark|brown)|(?:colder|cooler|lower|darker|browner) than|(?:below|under) it\\b|(?:below|under|short of|shy of) (?:the |its |what )?(?:dial|sett?ing|set|asked|target)|low\\b).*");

  private static final Pattern UPWARDS_BEFORE =
      Pattern.compile(
          "(?is).*\\b(?:too (?:hot|warm|high|pale|light)|(?:lighter|paler|hotter|warmer) than (?:the target|wanted|intended|asked)|(?:runs?|ran|was|is|were|are) (?:hot|high|pale|light))\\s*,?\\s*(?:by\\s+)?(?:about\\s+|some\\s+|a\\s+|good\\s+)*$|.*\\b(?:pale|light)\\b,\\s*(?:by\\s+)?(?:about\\s+|some\\s+)?$");

  private static final Pattern DOWNWARDS_BEFORE =
      Pattern.compile(
          "(?is).*\\b(?:too (?:cold|cool|low|dark|brown)|(?:darker|browner|colder|cooler) than (?:the target|wanted|intended|asked)|(?:runs?|ran|was|is|were|are) (?:cold|cool|low|dark))\\s*,?\\s*(?:by\\s+)?(?:about\\s+|some\\s+|a\\s+|good\\s+)*$");

  private Deviation() {}

  /** The ruling where the size holds or not, but the direction is the wrong one; else nothing. */
  static Optional<Ruling> turned(NumberPhrase number, Figure figure, String text, Ruling ofSize) {
    @Nullable Double value = figure.value();
    boolean deviation =
        figure.take().equals("offset") || figure.take().equals("lightness-difference");
    if (!deviation || value == null || Math.abs(value) < 1) {
      return Optional.empty();
    }
    String before = Wording.before(text, Math.min(number.start(), text.length()));
    String after = Wording.after(text, Math.min(number.end(), text.length()));
    boolean up = UPWARDS_AFTER.matcher(after).matches() || UPWARDS_BEFORE.matcher(before).matches();
    boolean down =
        DOWNWARDS_AFTER.matcher(after).matches() || DOWNWARDS_BEFORE.matcher(before).matches();
    up |= Wording.is(before, "(?s).*\\+\\s?$");
    down |= Wording.is(before, "(?s).*[\\s(,][−-]\\s?$");
    boolean wrong = value > 0 ? down && !up : up && !down;
    return wrong
        ? Optional.of(
            new Ruling(
                Finding.CONTRADICTED, ofSize.expected(), ofSize.why() + ", in the other direction"))
        : Optional.empty();
  }
}
