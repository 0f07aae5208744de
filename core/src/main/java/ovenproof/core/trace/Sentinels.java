package ovenproof.core.trace;

import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * Finds values that stand for "nothing connected" or "no reading", when they behave like it: always
 * exactly the same number, reached and left in one jump.
 */
final class Sentinels {

  /** Values that converters and loggers write for an open or failed input; from memory. */
  private static final double[] KNOWN = {
    0,
    -127,
    85,
    185,
    -196.6,
    -200,
    -270,
    -328,
    -454,
    -242.02,
    988.79,
    1372,
    1370,
    1372.1,
    2501.6,
    1300,
    1800,
    1820,
    2048,
    2047,
    2047.75,
    2047.94,
    2048.25,
    1023.75,
    1023,
    1024,
    4095,
    4096,
    400,
    850,
    851,
    600,
    999,
    999.9,
    9999,
    9999.9,
    99999,
    99.9,
    999999,
    888,
    888.8,
    8888,
    8888.8,
    777.7,
    7777,
    32767,
    32768,
    -32768,
    3276.7,
    3276.8,
    -3276.8,
    327.67,
    327.68,
    -327.68,
    6553.5,
    65535,
    655.35,
    -1,
    -99,
    -99.9,
    -999,
    -999.9,
    -9999,
    -99999,
    -100,
    -50,
    -55,
    125,
    1e10,
    1e30,
    9.9e37,
    9.91e37,
    1e38,
    6999,
    7999,
    214748364.7,
    2147483647,
    -2147483648,
    32,
    -17.78,
    -17.8
  };

  /** Beyond these no kitchen probe reads, in °C or °F. */
  private static final double HOTTEST = 2600;

  private static final double COLDEST = -210;

  private static final double SMALLEST_JUMP = 10;

  /** No logger has more ways of saying nothing. */
  private static final int MOST_SENTINELS = 5;

  private Sentinels() {}

  /**
   * What was found in a channel.
   *
   * @param values with NaN in their place; the argument itself when none was found
   * @param counts how often each was found
   * @param whole whether nothing else is in the channel
   */
  record Found(double[] values, Map<Double, Integer> counts, boolean whole) {
    String words() {
      StringBuilder text = new StringBuilder();
      counts.forEach(
          (value, n) ->
              text.append(text.isEmpty() ? "" : ", ")
                  .append(n)
                  .append(" × ")
                  .append(String.format(Locale.ROOT, "%s", tidy(value))));
      return text.toString();
    }

    private static String tidy(double value) {
      return value == Math.rint(value) && Math.abs(value) < 1e9
          ? String.valueOf((long) value)
          : String.valueOf(value);
    }
  }

  /** Nothing found. */
  static Found none(double[] values) {
    return new Found(values, Map.of(), false);
  }

  /**
   * Whether {@link #find} can find any in a channel of more than one value: one is entered and left
   * by a jump, or lies where no probe reads.
   *
   * @param widestStep largest difference of neighbouring readings
   */
  static boolean possible(double low, double high, double widestStep) {
    return widestStep > SMALLEST_JUMP || isImpossible(low) || isImpossible(high);
  }

  /** Looks for sentinels in readings of a temperature, or of what may be one, as written. */
  static Found find(double[] values) {
    double typical = typicalStep(values);
    double threshold = Math.max(SMALLEST_JUMP, 15 * typical);
    Map<Double, Integer> counts = new TreeMap<>();
    double[] cleaned = null;
    double before = Double.NaN;
    int others = 0;
    int i = 0;
    while (i < values.length) {
      double v = values[i];
      if (Double.isNaN(v)) {
        i++;
        continue;
      }
      if (!isCandidate(v)) {
        before = v;
        others++;
        i++;
        continue;
      }
      int end = i;
      while (end < values.length && (values[end] == v || Double.isNaN(values[end]))) {
        end++;
      }
      double after = nextOther(values, end);
      if (behaves(v, before, after, threshold)) {
        cleaned = cleaned == null ? values.clone() : cleaned;
        int n = blank(cleaned, i, end, v);
        counts.merge(v, n, Integer::sum);
      } else {
        before = v;
        others += end - i;
      }
      i = end;
    }
    int taken = counts.values().stream().mapToInt(Integer::intValue).sum();
    if (counts.size() > MOST_SENTINELS && taken > 0.3 * (taken + others)) {
      return none(values); // readings in a finer unit: there are few ways of saying nothing
    }
    if (others == 0 && !counts.isEmpty()) {
      return new Found(cleaned == null ? values : cleaned, counts, true);
    }
    return new Found(cleaned == null ? values : cleaned, counts, false);
  }

  private static int blank(double[] cleaned, int from, int to, double v) {
    int n = 0;
    for (int j = from; j < to; j++) {
      if (cleaned[j] == v) {
        cleaned[j] = Double.NaN;
        n++;
      }
    }
    return n;
  }

  /** The next reading that is no candidate itself: two sentinels may follow each other. */
  private static double nextOther(double[] values, int from) {
    for (int j = from; j < values.length; j++) {
      if (!Double.isNaN(values[j]) && !isImpossible(values[j])) {
        return values[j];
      }
    }
    return Double.NaN;
  }

  private static boolean behaves(double v, double before, double after, double threshold) {
    if (isImpossible(v)) {
      return true;
    }
    boolean enters = Double.isNaN(before) || Math.abs(v - before) > threshold;
    boolean leaves = Double.isNaN(after) || Math.abs(v - after) > threshold;
    boolean alone = Double.isNaN(before) && Double.isNaN(after);
    return alone ? isTelling(v) : enters && leaves;
  }

  /** A whole channel of room temperature is a reading; a whole channel of −127 is not. */
  private static boolean isTelling(double v) {
    return v == 0 || v <= -50 || v >= 300 || v == 85 || v == -1;
  }

  private static boolean isImpossible(double v) {
    return Double.isInfinite(v) || v > HOTTEST || v < COLDEST;
  }

  /** Whole degrees in which a known one lies: nearly every reading is done with after one look. */
  private static final boolean[] DEGREES = degrees();

  private static boolean[] degrees() {
    boolean[] degrees = new boolean[(int) (HOTTEST - COLDEST) + 3];
    for (double known : KNOWN) {
      for (double v : new double[] {known - 0.01, known + 0.01}) {
        if (!isImpossible(v)) {
          degrees[(int) Math.floor(v - COLDEST)] = true;
        }
      }
    }
    return degrees;
  }

  private static boolean isCandidate(double v) {
    if (isImpossible(v)) {
      return true;
    }
    if (!DEGREES[(int) (v - COLDEST)]) {
      return false;
    }
    for (double known : KNOWN) {
      if (Math.abs(v - known) < 0.006) {
        return true;
      }
    }
    return false;
  }

  /** Ninth decile of the steps between neighbours: what this channel does by itself. */
  private static double typicalStep(double[] values) {
    int stride = Math.max(1, values.length / 4000);
    double[] steps = new double[values.length / stride + 1];
    int n = 0;
    for (int i = 1; i < values.length; i += stride) {
      double d = Math.abs(values[i] - values[i - 1]);
      if (Double.isFinite(d)) {
        steps[n++] = d;
      }
    }
    if (n == 0) {
      return 0;
    }
    java.util.Arrays.sort(steps, 0, n);
    return steps[n / 2];
  }
}
