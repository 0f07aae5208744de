package ovenproof.core.photo;

import java.util.Arrays;
import java.util.List;
import ovenproof.core.colour.Lab;

/**
 * How far the colours of food may be trusted, told by the patches of the chart that are like it.
 *
 * <p>What a correction misses grows towards white, black and pure colours, which no crust has, so
 * patches count by their likeness to baked shades. Light that falls off across the chart moves
 * opposite patches apart and food not at all, so what runs straight across the chart is taken out
 * of L*.
 */
final class ChartMisfit {

  /**
   * What a whole print differs from the published values, as a standard uncertainty; the published
   * values and the averages of thirty charts lie 0.5 apart in the middle.
   */
  private static final double PRINT_LIGHTNESS = 0.3;

  private static final double PRINT_CHROMA = 0.4;
  private static final double CONTRAST_SHARE = 0.02;

  /** L* that light may differ over the frame when nothing showed it. Judgement. */
  private static final double UNSEEN_GRADIENT = 2;

  private static final double ASSUMED_BLOCK_NOISE = 0.2;

  /** Between golden, brown and dark crust. */
  private static final Lab BAKED = Lab.d50(50, 12, 27);

  /** Distance in Lab at which a patch still tells something of food: six or so of them do. */
  private static final double LIKE_FOOD = 30;

  private ChartMisfit() {}

  /** Found minus published in L*, a*, b*. */
  static double[] offset(Lab found, Lab published) {
    return new double[] {
      found.lightness() - published.lightness(),
      found.a() - published.a(),
      found.b() - published.b()
    };
  }

  /**
   * Trust in colours after the correction. A residual of the fit is too small by 1 − h and one of
   * leave-one-out too large by it, h being the patch's leverage; their product is unbiased.
   *
   * @param leaveOneOut L*, a*, b* of each patch less the published, corrected by the others; zeros
   *     for patches that were not used
   * @param fitted the same, corrected by all
   */
  static ColourTrust trust(
      double[][] leaveOneOut, double[][] fitted, List<Lab> published, String source) {
    double[][] left = level(leaveOneOut);
    double[][] fit = level(fitted);
    double[] squares = new double[3];
    double weights = 0;
    for (int i = 0; i < left.length; i++) {
      double weight = isUsed(leaveOneOut[i]) ? likeness(published.get(i)) : 0;
      weights += weight;
      for (int axis = 0; axis < 3; axis++) {
        squares[axis] += weight * Math.abs(left[i][axis] * fit[i][axis]);
      }
    }
    return new ColourTrust(
        source,
        Math.hypot(Math.sqrt(squares[0] / weights), PRINT_LIGHTNESS),
        Math.hypot(Math.sqrt(squares[1] / weights), PRINT_CHROMA),
        Math.hypot(Math.sqrt(squares[2] / weights), PRINT_CHROMA),
        CONTRAST_SHARE,
        UNSEEN_GRADIENT,
        ASSUMED_BLOCK_NOISE);
  }

  private static boolean isUsed(double[] offset) {
    return offset[0] != 0 || offset[1] != 0 || offset[2] != 0;
  }

  /** The same without what of L* runs straight across the chart; scaled for what that takes. */
  private static double[][] level(double[][] offsets) {
    double[][] design = new double[offsets.length][];
    double[] right = new double[offsets.length];
    int n = 0;
    for (int i = 0; i < offsets.length; i++) {
      if (isUsed(offsets[i])) {
        design[n] = place(i);
        right[n++] = offsets[i][0];
      }
    }
    double[] plane = LeastSquares.solve(Arrays.copyOf(design, n), Arrays.copyOf(right, n), 1e-9);
    if (plane == null || n <= plane.length) {
      return offsets;
    }
    double scale = Math.sqrt((n - 1.0) / (n - plane.length));
    double[][] out = new double[offsets.length][];
    for (int i = 0; i < offsets.length; i++) {
      double[] at = place(i);
      double slope = plane[1] * at[1] + plane[2] * at[2];
      out[i] = new double[] {scale * (offsets[i][0] - slope), offsets[i][1], offsets[i][2]};
    }
    return out;
  }

  /** 1 and the place on the chart, from its middle. */
  private static double[] place(int patch) {
    return new double[] {
      1,
      patch % ReferenceChart.COLUMNS + 0.5 - ReferenceChart.COLUMNS / 2.0,
      patch / ReferenceChart.COLUMNS + 0.5 - ReferenceChart.ROWS / 2.0
    };
  }

  /** 1 for the middle of baked shades, less the farther a patch lies from it. */
  private static double likeness(Lab patch) {
    double[] d = offset(patch, BAKED);
    return Math.exp(-(d[0] * d[0] + d[1] * d[1] + d[2] * d[2]) / (2 * LIKE_FOOD * LIKE_FOOD));
  }
}
