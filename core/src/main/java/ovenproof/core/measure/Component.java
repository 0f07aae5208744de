package ovenproof.core.measure;

/**
 * One source of uncertainty of a measurement.
 *
 * @param source {@link #RUN} for what belongs to this measurement alone, else the name of a source
 *     that other measurements share, such as {@code probe:P3@2026-03}
 * @param u standard uncertainty (k = 1) in the unit of the measurement, signed by the sensitivity:
 *     two measurements with components of the same source and opposite signs move apart when the
 *     source is in error
 */
public record Component(String source, double u) {

  /** The source of what is independent from measurement to measurement. */
  public static final String RUN = "run";

  public Component {
    if (source.isBlank()) {
      throw new IllegalArgumentException("source must be named");
    }
    if (!Double.isFinite(u)) {
      throw new IllegalArgumentException("u of " + source + " must be finite, found " + u);
    }
  }

  public static Component run(double u) {
    return new Component(RUN, u);
  }

  public static Component shared(String source, double u) {
    return new Component(source, u);
  }

  public boolean isShared() {
    return !source.equals(RUN);
  }
}
