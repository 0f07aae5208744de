package ovenproof.core.statistics;

/**
 * A closed interval of plausible values.
 *
 * @param low lower end, not above {@code high}
 * @param high upper end
 */
public record Interval(double low, double high) {

  public Interval {
    if (!(low <= high)) {
      throw new IllegalArgumentException("low must not exceed high, found " + low + " and " + high);
    }
  }

  public boolean contains(double value) {
    return low <= value && value <= high;
  }

  public double width() {
    return high - low;
  }
}
