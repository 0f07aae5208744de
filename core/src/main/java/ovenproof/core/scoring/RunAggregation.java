package ovenproof.core.scoring;

/**
 * Order of scoring and averaging. Example: a window of 10 points at 0 that loses 1 point per unit,
 * runs at −6, 0 and +6.
 */
public enum RunAggregation {
  /** Each run is scored, then averaged: (4 + 10 + 4)/3 = 6. The default for target windows. */
  SCORE_THEN_AVERAGE,
  /** Runs are averaged, the mean is scored: 10. */
  AVERAGE_THEN_SCORE
}
