package ovenproof.core.ranking;

/** Whether probabilities are pulled towards the field. */
public enum FieldPooling {
  /** Partial pooling with a uniform prior on the shrinkage: what is published. */
  PARTIAL,
  /** As measured; P(best) is then too sure of itself in a close field. */
  NONE
}
