package ovenproof.core.scoring;

import java.util.Arrays;
import ovenproof.core.statistics.Distributions;
import ovenproof.core.statistics.Interval;

/**
 * From a measurement to 0–10 points: straight pieces between anchors, flat outside, with jumps
 * where the curve has steps. Immutable.
 *
 * <p>At each anchor k the curve has the value it comes from the left with, the value at the anchor
 * itself and the value it leaves to the right with; they are equal where there is no jump.
 */
public final class ValueCurve {

  /** Highest score. */
  public static final double BEST = 10;

  private final Shape shape;
  private final double[] anchors;
  private final double[] left;
  private final double[] at;
  private final double[] right;

  /** What a curve is called where it is shown. */
  public enum Shape {
    /** Straight lines between absolute anchors. */
    LINES,
    /** Full points inside a window, falling on both sides, not necessarily equally fast. */
    WINDOW,
    STEPS,
    /** Points of a rated fact or a checklist, scaled to 0–10. */
    POINTS,
    /** Share of a frozen pool that is no better. */
    PERCENTILE
  }

  /** Which end of the measurement is the good one. */
  public enum Better {
    HIGHER,
    LOWER
  }

  private ValueCurve(Shape shape, double[] anchors, double[] left, double[] at, double[] right) {
    this.shape = shape;
    this.anchors = anchors;
    this.left = left;
    this.at = at;
    this.right = right;
    requireRising(anchors);
    requireScores(left);
    requireScores(at);
    requireScores(right);
  }

  /**
   * Straight lines between anchors.
   *
   * @param anchors finite, strictly rising, at least one
   * @param scores 0–10, one per anchor
   */
  public static ValueCurve lines(double[] anchors, double[] scores) {
    return continuous(Shape.LINES, anchors, scores);
  }

  /**
   * A target window: 10 from {@code from} to {@code to}, 0 at {@code zeroBelow} and below, 0 at
   * {@code zeroAbove} and above; an infinite side never falls.
   */
  public static ValueCurve window(double zeroBelow, double from, double to, double zeroAbove) {
    if (!(zeroBelow < from && from <= to && to < zeroAbove)) {
      throw new IllegalArgumentException(
          "a window needs zeroBelow < from ≤ to < zeroAbove, found "
              + Arrays.toString(new double[] {zeroBelow, from, to, zeroAbove}));
    }
    double[][] points = {{zeroBelow, 0}, {from, BEST}, {to, BEST}, {zeroAbove, 0}};
    double[][] kept =
        Arrays.stream(points)
            .filter(p -> Double.isFinite(p[0]) && !(p[0] == from && p != points[1]))
            .toArray(double[][]::new);
    return continuous(
        Shape.WINDOW,
        Arrays.stream(kept).mapToDouble(p -> p[0]).toArray(),
        Arrays.stream(kept).mapToDouble(p -> p[1]).toArray());
  }

  /**
   * Steps: {@code below} before the first threshold, then the score of the highest threshold that
   * is reached; a threshold itself counts as reached.
   */
  public static ValueCurve steps(double below, double[] thresholds, double[] scores) {
    requireSameLength(thresholds, scores);
    double[] left = new double[scores.length];
    for (int i = 0; i < left.length; i++) {
      left[i] = i == 0 ? below : scores[i - 1];
    }
    return new ValueCurve(Shape.STEPS, thresholds.clone(), left, scores.clone(), scores.clone());
  }

  /** Points of a checklist or a rated fact from 0 to {@code highest}, scaled to 0–10. */
  public static ValueCurve points(double highest) {
    return continuous(Shape.POINTS, new double[] {0, highest}, new double[] {0, BEST});
  }

  /**
   * Percentile in a frozen pool: ten times the share of the pool that is worse, plus half the share
   * that is equal.
   *
   * @param pool at least two finite values; a pool of one has no percentiles
   */
  public static ValueCurve percentile(double[] pool, Better better) {
    if (pool.length < 2) {
      throw new IllegalArgumentException(
          "a percentile needs a pool of at least 2, found " + pool.length);
    }
    double[] sorted = pool.clone();
    Arrays.sort(sorted);
    double[] anchors = Arrays.stream(sorted).distinct().toArray();
    double[] left = new double[anchors.length];
    double[] at = new double[anchors.length];
    double[] right = new double[anchors.length];
    int below = 0;
    for (int k = 0; k < anchors.length; k++) {
      double anchor = anchors[k];
      int equal = (int) Arrays.stream(sorted).filter(v -> v == anchor).count();
      left[k] = share(below, pool.length, better);
      at[k] = share(below + equal / 2.0, pool.length, better);
      right[k] = share(below + equal, pool.length, better);
      below += equal;
    }
    return new ValueCurve(Shape.PERCENTILE, anchors, left, at, right);
  }

  private static double share(double below, int size, Better better) {
    double share = BEST * below / size;
    return better == Better.HIGHER ? share : BEST - share;
  }

  private static ValueCurve continuous(Shape shape, double[] anchors, double[] scores) {
    requireSameLength(anchors, scores);
    double[] copy = scores.clone();
    return new ValueCurve(shape, anchors.clone(), copy, copy, copy);
  }

  public Shape shape() {
    return shape;
  }

  /** The anchors in rising order. */
  public double[] anchors() {
    return anchors.clone();
  }

  int size() {
    return anchors.length;
  }

  double anchor(int k) {
    return anchors[k];
  }

  double jump(int k) {
    return right[k] - left[k];
  }

  /** Slope of the piece before anchor k; 0 before the first and after the last. */
  double slopeBefore(int k) {
    return k == 0 || k == anchors.length
        ? 0
        : (left[k] - right[k - 1]) / (anchors[k] - anchors[k - 1]);
  }

  /** The score far to the left. */
  double start() {
    return left[0];
  }

  /**
   * Points for a measurement; infinite ones get what the flat end says.
   *
   * @param value not NaN
   */
  public double score(double value) {
    if (Double.isNaN(value)) {
      throw new IllegalArgumentException("value must be a number, found NaN");
    }
    int found = Arrays.binarySearch(anchors, value);
    if (found >= 0) {
      return at[found];
    }
    int next = -found - 1;
    if (next == 0) {
      return left[0];
    }
    if (next == anchors.length) {
      return right[next - 1];
    }
    double share = (value - anchors[next - 1]) / (anchors[next] - anchors[next - 1]);
    return right[next - 1] + share * (left[next] - right[next - 1]);
  }

  /** Lowest and highest score that any measurement between the two gets. */
  public Interval image(double low, double high) {
    double least = Math.min(score(low), score(high));
    double most = Math.max(score(low), score(high));
    for (int k = 0; k < anchors.length; k++) {
      boolean inside = anchors[k] >= low && anchors[k] <= high;
      if (inside) {
        least = Math.min(least, at[k]);
        most = Math.max(most, at[k]);
      }
      if (inside && anchors[k] > low) {
        least = Math.min(least, left[k]);
        most = Math.max(most, left[k]);
      }
      if (inside && anchors[k] < high) {
        least = Math.min(least, right[k]);
        most = Math.max(most, right[k]);
      }
    }
    return new Interval(least, most);
  }

  /** The measurement between the two (closed) with the lowest or highest score. */
  double worst(double low, double high) {
    return extreme(low, high, -1);
  }

  /** As {@link #worst}, the best. */
  double best(double low, double high) {
    return extreme(low, high, 1);
  }

  private double extreme(double low, double high, int sign) {
    double best = finite(low, high);
    double[] candidates = Arrays.copyOf(anchors, anchors.length + 1);
    candidates[anchors.length] = finite(high, low);
    for (double candidate : candidates) {
      boolean inside = candidate >= low && candidate <= high;
      if (inside && sign * score(candidate) > sign * score(best)) {
        best = candidate;
      }
    }
    return best;
  }

  /** A finite stand-in for an open end: beyond every anchor the curve is flat. */
  private double finite(double end, double other) {
    if (Double.isFinite(end)) {
      return end;
    }
    double last = anchors[anchors.length - 1];
    double edge = end > 0 ? last : anchors[0];
    double span = Math.max(1, last - anchors[0]);
    double beyond = end > 0 ? edge + span : edge - span;
    return end > 0 ? Math.max(beyond, other) : Math.min(beyond, other);
  }

  /**
   * Expected score of a normal measurement, E[v(m + sZ)], in closed form: each change of slope adds
   * (m − k)Φ(z) + sφ(z), each jump Φ(z), with z = (m − k)/s.
   *
   * @param deviation s, 0 or more
   */
  public double expected(double mean, double deviation) {
    if (deviation == 0) {
      return score(mean);
    }
    double expected = left[0];
    for (int k = 0; k < anchors.length; k++) {
      double z = (mean - anchors[k]) / deviation;
      double above = Distributions.normalCumulative(z);
      double density = StrictMath.exp(-z * z / 2) / StrictMath.sqrt(2 * Math.PI);
      double bend = slopeBefore(k + 1) - slopeBefore(k);
      expected += bend * ((mean - anchors[k]) * above + deviation * density);
      expected += jump(k) * above;
    }
    return Math.max(0, Math.min(BEST, expected));
  }

  /**
   * Lowest and highest expected score while the mean moves between the two: ends, anchors and 32
   * places between them.
   */
  Interval expectedImage(double low, double high, double deviation) {
    double first = expected(low, deviation);
    double least = first;
    double most = first;
    int places = low == high ? 0 : 32;
    for (int i = 1; i <= places + anchors.length; i++) {
      double place = i <= places ? low + (high - low) * i / places : anchors[i - places - 1];
      if (place >= low && place <= high) {
        double score = expected(place, deviation);
        least = Math.min(least, score);
        most = Math.max(most, score);
      }
    }
    return new Interval(least, most);
  }

  /** Whether the curve turns inside the interval: higher or lower there than at both ends. */
  public boolean turnsWithin(double low, double high) {
    Interval image = image(low, high);
    double ends = Math.max(score(low), score(high));
    double bottoms = Math.min(score(low), score(high));
    return image.high() > ends + 1e-9 || image.low() < bottoms - 1e-9;
  }

  /**
   * Whether the curve still changes beyond a value: then a cap there hides differences that the
   * curve would score.
   */
  public boolean changesAbove(double value) {
    Interval beyond = image(value, Double.POSITIVE_INFINITY);
    return beyond.width() > 0;
  }

  @Override
  public String toString() {
    return shape
        + Arrays.toString(anchors)
        + Arrays.toString(left)
        + Arrays.toString(at)
        + Arrays.toString(right);
  }

  private static void requireSameLength(double[] anchors, double[] scores) {
    if (anchors.length != scores.length) {
      throw new IllegalArgumentException(
          "every anchor needs its score, found "
              + anchors.length
              + " anchors and "
              + scores.length
              + " scores");
    }
  }

  private static void requireRising(double[] anchors) {
    if (anchors.length == 0) {
      throw new IllegalArgumentException("a curve needs at least one anchor, found none");
    }
    for (int i = 0; i < anchors.length; i++) {
      if (!Double.isFinite(anchors[i])) {
        throw new IllegalArgumentException(
            "anchor " + (i + 1) + " must be finite, found " + anchors[i]);
      }
      if (i > 0 && !(anchors[i] > anchors[i - 1])) {
        throw new IllegalArgumentException(
            "anchors must rise, found " + anchors[i - 1] + " before " + anchors[i]);
      }
    }
  }

  private static void requireScores(double[] scores) {
    for (double score : scores) {
      if (!(score >= 0 && score <= BEST)) {
        throw new IllegalArgumentException("scores must lie in 0 … 10, found " + score);
      }
    }
  }
}
