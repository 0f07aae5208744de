package ovenproof.core.trace;

/**
 * When a moving mean comes into a band for good.
 *
 * @param mean of the curve
 * @param halfWidthKelvin of the band
 */
record BandEntry(MovingMean mean, double halfWidthKelvin) {

  /**
   * The time after which the mean stays within the band around a level, interpolated; NaN when it
   * is outside at the end, minus infinity when it is inside from the start.
   */
  double second(double level) {
    int i = mean.size() - 1;
    if (i < 0 || outside(i, level)) {
      return Double.NaN;
    }
    while (i > 0 && !outside(i - 1, level)) {
      i--;
    }
    if (i == 0) {
      return Double.NEGATIVE_INFINITY;
    }
    double before = mean.value(i - 1);
    double edge = level + Math.copySign(halfWidthKelvin, before - level);
    double share = (edge - before) / (mean.value(i) - before);
    return mean.second(i - 1) + share * (mean.second(i) - mean.second(i - 1));
  }

  /**
   * Change of that time per kelvin that the curve reads high, over so many kelvin to either side: a
   * mean that creeps along the edge of the band moves its entry by minutes.
   */
  double sensitivity(double level, double kelvin) {
    double here = second(level);
    double high = second(level - kelvin);
    double low = second(level + kelvin);
    if (!Double.isFinite(high) && !Double.isFinite(low)) {
      return 0;
    }
    return Double.isFinite(high) && Double.isFinite(low)
        ? (high - low) / (2 * kelvin)
        : (Double.isFinite(high) ? high - here : here - low) / kelvin;
  }

  /**
   * Standard uncertainty that the length of a cycle, not known exactly, adds: the entry moves by
   * none to half of what the window does.
   */
  static double ofWindow(HeatCurve curve) {
    return periodU(curve) / 2 / Math.sqrt(3);
  }

  /** A window that is not quite a cycle long leaves some of the swing in the mean, K. */
  static double rippleKelvin(HeatCurve curve) {
    Cycles cycles = curve.cycles();
    return cycles.size() == 0
        ? 0
        : cycles.medianAmplitude() * periodU(curve) / cycles.medianPeriodSeconds();
  }

  /** Scatter of the cycles, and the step of the logger in each. */
  private static double periodU(HeatCurve curve) {
    int n = curve.cycles().size();
    double step = n == 0 ? 0 : curve.clean().medianStepSeconds() / Math.sqrt(6) / Math.sqrt(n);
    return Math.hypot(curve.cycles().medianPeriodU(), step);
  }

  private boolean outside(int i, double level) {
    return Math.abs(mean.value(i) - level) > halfWidthKelvin;
  }
}
