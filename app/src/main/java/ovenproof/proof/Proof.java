package ovenproof.proof;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What the evidence says of a draft.
 *
 * @param claims in the order of the text
 */
public record Proof(List<Claim> claims) {

  public Proof {
    claims = List.copyOf(claims);
  }

  public long count(Finding finding) {
    return claims.stream().filter(c -> c.finding() == finding).count();
  }

  /**
   * A checkable statement.
   *
   * @param text the words of the statement
   * @param line from 1
   * @param column from 1, in characters
   * @param timecode of the caption it stands in, or null
   * @param stated what the text says, normalised
   * @param expected what the evidence says, in the unit of the text; null when there is none
   * @param evidence where that comes from
   * @param why the reason for the finding, in a sentence
   */
  public record Claim(
      String text,
      int line,
      int column,
      @Nullable String timecode,
      Kind kind,
      Finding finding,
      String stated,
      @Nullable String expected,
      List<String> evidence,
      String why) {
    public Claim {
      evidence = List.copyOf(evidence);
    }
  }

  /** What is claimed. */
  public enum Kind {
    QUANTITY,
    SCORE,
    COMPARISON,
    SUPERLATIVE,
    RANK,
    COUNT,
    SAFETY_TEMPERATURE;

    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  /** Four outcomes; only the first may be published without a thought. */
  public enum Finding {
    SUPPORTED,
    CONTRADICTED,
    /** A checkable statement for which the campaign holds no evidence. */
    UNSUPPORTED,
    /** The evidence does not decide it, or the text does not say what it speaks of. */
    UNCLEAR;

    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }
}
