package ovenproof.publish.card;

/**
 * One card.
 *
 * @param id name of its files
 * @param sentence what it says, for its title and the register
 * @param staySeconds how long it should stay: 3 s and 0.3 s for every word
 * @param svg the drawing
 */
public record Card(String id, Kind kind, String sentence, double staySeconds, String svg) {

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
    CAUTION
  }
}
