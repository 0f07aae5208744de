package ovenproof.core.panel;

/** How p values of all pairs are adjusted for how many there are. */
public enum PairAdjustment {
  /** Studentized range (Tukey–Kramer): the narrowest for all pairs. */
  TUKEY,
  /** Holm's step-down of t tests: when only some pairs matter. */
  HOLM
}
