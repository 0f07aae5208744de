package ovenproof.chart;

import java.util.ArrayList;
import java.util.List;

/**
 * A straight axis.
 *
 * @param low value at the left or lower end
 * @param high value at the right or upper end, above {@code low}
 * @param step distance of the ticks; ticks are multiples of it
 */
public record Scale(double low, double high, double step) {

  /** Scores always lie on the same axis. */
  public static final Scale POINTS = new Scale(0, 10, 1);

  public Scale {
    if (!(low < high) || !(step > 0)) {
      throw new IllegalArgumentException(
          "scale needs low < high and step > 0, found " + low + ", " + high + ", " + step);
    }
  }

  /**
   * A scale with round ticks that holds all values; a single value gets room on both sides.
   *
   * @param values finite; empty gives 0 to 1
   * @param ticks about how many ticks
   */
  public static Scale around(double[] values, int ticks) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (double value : values) {
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
    if (!(low <= high)) {
      return new Scale(0, 1, 0.2);
    }
    if (low == high) {
      double room = low == 0 ? 1 : Math.abs(low) * 0.1;
      low -= room;
      high += room;
    }
    double step = roundStep((high - low) / ticks);
    return new Scale(Math.floor(low / step) * step, Math.ceil(high / step) * step, step);
  }

  private static double roundStep(double raw) {
    double decade = Math.pow(10, Math.floor(Math.log10(raw)));
    double mantissa = raw / decade;
    double round = mantissa <= 1 ? 1 : mantissa <= 2 ? 2 : mantissa <= 5 ? 5 : 10;
    return round * decade;
  }

  /** Position in per cent of the width; outside values are held at the ends. */
  public double percent(double value) {
    return 100 * fraction(value);
  }

  /** Position between 0 and 1; outside values are held at the ends. */
  public double fraction(double value) {
    return Math.max(0, Math.min(1, (value - low) / (high - low)));
  }

  public List<Double> ticks() {
    List<Double> ticks = new ArrayList<>();
    long first = (long) Math.ceil(low / step - 1e-9);
    long last = (long) Math.floor(high / step + 1e-9);
    for (long i = first; i <= last && ticks.size() < 100; i++) {
      ticks.add(i * step);
    }
    return ticks;
  }

  /** A tick as people write it: as many decimals as the step has, a real minus. */
  public String label(double tick) {
    int decimals = (int) Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
    String digits =
        java.math.BigDecimal.valueOf(tick)
            .setScale(decimals, java.math.RoundingMode.HALF_UP)
            .toPlainString();
    return digits.replace('-', '−');
  }
}
