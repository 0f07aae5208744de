package ovenproof.method;

/** How the parts of a node make its score. */
public enum Combine {
  /** Weighted mean: a strength offsets a weakness. */
  ARITHMETIC,
  /** Weighted geometric mean: one 0 makes 0, a weakness weighs more than a strength. */
  GEOMETRIC,
  /** The lowest part counts. */
  FLOOR
}
