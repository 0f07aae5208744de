package ovenproof.method;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * What is scored: a measure of the test and the curve that turns it into points.
 *
 * @param measure id of a {@link MeasureUse} of the same test
 * @param runs whether runs are scored and averaged, or averaged and scored
 * @param cannotDo points for a product that cannot do it at all
 * @param notAsked what holds where the method does not ask it of a product
 * @param repeatability declared standard deviation between runs, as written, for a test with one
 *     run only; null when none is declared
 */
public record Criterion(
    String id,
    String name,
    int parts,
    @Nullable String why,
    String measure,
    CurveSpec curve,
    Runs runs,
    BigDecimal cannotDo,
    NotAsked notAsked,
    @Nullable String repeatability)
    implements ValueNode {

  public Criterion {
    // 2 and 2.0 are the same points: one form, so that criteria compare by what they say.
    cannotDo = cannotDo.setScale(Math.max(0, cannotDo.stripTrailingZeros().scale()));
  }

  /** Order of scoring and averaging. */
  public enum Runs {
    /** Each run is scored, then the scores are averaged: a run off target costs points. */
    SCORE_THEN_AVERAGE,
    /** The runs are averaged, then the mean is scored. */
    AVERAGE_THEN_SCORE
  }

  /** What a criterion that was not asked of a product does to the siblings. */
  public enum NotAsked {
    /** The siblings share its parts. */
    REWEIGHT,
    /** It stays open: bounds from 0 to 10. */
    BOUNDS
  }
}
