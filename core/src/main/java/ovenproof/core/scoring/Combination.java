package ovenproof.core.scoring;

/** How the parts of a node make its score. Example: parts 2 and 8, equal weights. */
public enum Combination {
  /** Weighted mean; a strength offsets a weakness: 5. */
  ARITHMETIC,
  /** Weighted geometric mean; a weakness weighs more than a strength: 4. */
  GEOMETRIC,
  /** The lowest part, whatever the weights (as long as they are not 0): 2. */
  FLOOR
}
