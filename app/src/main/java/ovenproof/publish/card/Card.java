package ovenproof.publish.card;

import java.awt.image.BufferedImage;
import java.util.Locale;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * One card.
 *
 * @param id name of its files
 * @param sentence what it says, for its title and the register
 * @param staySeconds how long it should stay: 3 s and 0.3 s for every word
 * @param svg the drawing
 * @param shows fingerprint of the words on it and of where its marks lie; the verdict's version is
 *     no part of it
 * @param picture draws it as pixels, 1920 × 1080, transparent where nothing is painted
 * @param motion for a clock that runs, else null
 */
public record Card(
    String id,
    Kind kind,
    String sentence,
    double staySeconds,
    String svg,
    String shows,
    Supplier<BufferedImage> picture,
    @Nullable Motion motion) {

  /** What moves on a card. */
  public interface Motion {
    /** How long it moves; then it stays as the card's own picture. */
    long seconds();

    /** The whole card after so many seconds. */
    BufferedImage at(long second);
  }

  /** What a card is for. */
  public enum Kind {
    TITLE,
    SCORE,
    TEST_RESULT,
    COMPARISON,
    RANKING,
    CLOCK,
    THERMOMETER,
    NOT_DONE,
    SPLIT,
    SHADE_STRIP,
    TRACE,
    CAUTION;

    /** As the register has it: {@code shade-strip}. */
    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }
}
