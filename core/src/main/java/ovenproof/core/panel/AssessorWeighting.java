package ovenproof.core.panel;

/** Whether everybody counts alike. Declared before the marks are seen; nobody is ever dropped. */
public enum AssessorWeighting {
  /** Everybody counts alike: the default. */
  EQUAL,
  /**
   * Weight = panel's repeatability variance over the person's own, at most 1 and at least ¼:
   * somebody whose repetitions scatter twice as far (four times the variance) counts a quarter.
   * Without repetitions everybody counts alike.
   */
  REPEATABILITY;

  static final double LEAST = 0.25;

  double weight(double ownVariance, double panelVariance) {
    if (this == EQUAL || !(ownVariance > 0) || !(panelVariance > 0)) {
      return 1;
    }
    return Math.max(LEAST, Math.min(1, panelVariance / ownVariance));
  }
}
