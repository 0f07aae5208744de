package ovenproof.core.photo;

import java.util.List;
import org.hipparchus.stat.descriptive.rank.Percentile;
import org.jspecify.annotations.Nullable;
import ovenproof.core.colour.Lab;

/**
 * Measures shade and evenness of one outlined piece. Immutable and safe to share.
 *
 * <p>The area measured is the outline without its margin; the margin is at most a third of the
 * depth of the piece, so that a thin fry keeps a middle.
 */
public final class PhotoMeasures {

  private static final double LARGEST_MARGIN_SHARE = 1 / 3.0;
  private static final double LARGEST_RIM_SHARE = 0.5;

  /** How far the outline may be off, in mm, as a standard uncertainty. Judgement. */
  static final double OUTLINE_MILLIMETRES = 0.5;

  private final ShadeSettings settings;

  private PhotoMeasures(ShadeSettings settings) {
    this.settings = settings;
  }

  public static PhotoMeasures with(ShadeSettings settings) {
    return new PhotoMeasures(settings);
  }

  /**
   * Measures one piece.
   *
   * @param scale null when the frame holds none; lengths are then shares of the piece
   * @return never null; {@link PieceShade#blocks()} is 0 when the outline holds no whole cell, and
   *     then nothing was measured
   */
  public PieceShade measure(
      Picture picture,
      Outline outline,
      PixelColours colours,
      ColourTrust trust,
      @Nullable PhotoScale scale) {
    PhotoScale used = scale != null ? scale : PhotoScale.shareOf(outline);
    double cellPixels =
        used.pixelsPerMillimetre() * settings.blockMillimetres() / ShadeMap.CELLS_PER_BLOCK;
    ShadeMap map = ShadeMap.of(picture, outline, colours, cellPixels);
    double cellsPerMillimetre = used.pixelsPerMillimetre() / map.cellPixels();
    double frameShare = outline.box().width() / (double) picture.width();
    return measure(map, outline, used, trust, cellsPerMillimetre, frameShare);
  }

  private PieceShade measure(
      ShadeMap map,
      Outline outline,
      PhotoScale scale,
      ColourTrust trust,
      double cellsPerMillimetre,
      double frameShare) {
    float[] depth = map.depth();
    float deepest = 0;
    for (float d : depth) {
      deepest = Math.max(deepest, d);
    }
    double margin =
        Math.min(settings.marginMillimetres() * cellsPerMillimetre, deepest * LARGEST_MARGIN_SHARE);
    double shift = Math.min(OUTLINE_MILLIMETRES * cellsPerMillimetre, margin);
    PieceRegion region = PieceRegion.deeperThan(map, depth, margin);
    if (region.isEmpty()) {
      return PieceShade.unmeasured(outline, scale, map);
    }
    double rimWidth =
        Math.min(
            settings.rimMillimetres() * cellsPerMillimetre, (deepest - margin) * LARGEST_RIM_SHARE);
    Estimates here = estimates(region, margin + rimWidth, depth);
    Estimates in =
        estimates(
            PieceRegion.deeperThan(map, depth, margin + shift), margin + shift + rimWidth, depth);
    Estimates out =
        estimates(
            PieceRegion.deeperThan(map, depth, margin - shift), margin - shift + rimWidth, depth);
    return new PieceShade(
        outline,
        scale,
        map,
        here,
        Estimates.effect(in.orElse(here), here, out.orElse(here)),
        trust,
        settings,
        frameShare,
        region.pixels());
  }

  private Estimates estimates(PieceRegion region, double rimDepth, float[] depth) {
    Lab mean = region.mean();
    List<double[]> blocks = region.blocks(PieceRegion.OVERLAPPING);
    double[] lightness = blocks.stream().mapToDouble(b -> b[2]).toArray();
    ShadePlane plane = region.plane();
    Shares shares = shares(region);
    return new Estimates(
        mean,
        region.blocks(PieceRegion.BESIDE).size(),
        sd(lightness),
        range(lightness),
        shares,
        region.rimDifference(depth, rimDepth),
        plane.frontBack(settings.front()),
        plane.leftRight(settings.front()),
        plane.residualSd(blocks));
  }

  private @Nullable Shares shares(PieceRegion region) {
    Lab target = settings.target();
    if (target == null) {
      return null;
    }
    float[] smooth = region.smoothed();
    double near = settings.nearLightness();
    double beyond = settings.beyondLightness();
    double wanted = target.lightness();
    return new Shares(
        region.share(smooth, wanted - near, wanted + near),
        region.share(smooth, Double.NEGATIVE_INFINITY, Math.nextDown(wanted - beyond)),
        region.share(smooth, Math.nextUp(wanted + beyond), Double.POSITIVE_INFINITY),
        region.largestPatch(smooth, Double.NEGATIVE_INFINITY, Math.nextDown(wanted - beyond)),
        region.largestPatch(smooth, Math.nextUp(wanted + beyond), Double.POSITIVE_INFINITY));
  }

  private static double sd(double[] values) {
    if (values.length < 2) {
      return 0;
    }
    double mean = java.util.Arrays.stream(values).average().orElseThrow();
    double sum = 0;
    for (double v : values) {
      sum += (v - mean) * (v - mean);
    }
    return Math.sqrt(sum / (values.length - 1));
  }

  /** 95 % minus 5 % quantile, linear between order statistics. */
  private static double range(double[] values) {
    if (values.length < 2) {
      return 0;
    }
    Percentile percentile = new Percentile().withEstimationType(Percentile.EstimationType.R_7);
    percentile.setData(values);
    return percentile.evaluate(95) - percentile.evaluate(5);
  }

  /** Shares of the area against the target, 0…1. */
  record Shares(double near, double dark, double pale, double largestDark, double largestPale) {

    List<Double> values() {
      return List.of(near, dark, pale, largestDark, largestPale);
    }
  }

  /** What one region says, without uncertainty. Lengths of tilt are the whole piece. */
  record Estimates(
      Lab mean,
      int blocks,
      double evennessSd,
      double evennessRange,
      @Nullable Shares shares,
      double rimDifference,
      double tiltFrontBack,
      double tiltLeftRight,
      double mottle) {

    /** A region that holds no whole block says nothing: the one in its place is taken instead. */
    Estimates orElse(Estimates other) {
      return blocks == 0 ? other : this;
    }

    /**
     * What changes when the outline moves to either side of its place. Of the colour half the
     * difference with its sign, since its parts move together; of all else the root mean square,
     * since many do not go up one way and down the other.
     */
    static Estimates effect(Estimates in, Estimates here, Estimates out) {
      return new Estimates(
          Lab.d50(
              half(in.mean.lightness(), out.mean.lightness()),
              half(in.mean.a(), out.mean.a()),
              half(in.mean.b(), out.mean.b())),
          0,
          moved(in.evennessSd, here.evennessSd, out.evennessSd),
          moved(in.evennessRange, here.evennessRange, out.evennessRange),
          shares(in.shares, here.shares, out.shares),
          moved(in.rimDifference, here.rimDifference, out.rimDifference),
          moved(in.tiltFrontBack, here.tiltFrontBack, out.tiltFrontBack),
          moved(in.tiltLeftRight, here.tiltLeftRight, out.tiltLeftRight),
          moved(in.mottle, here.mottle, out.mottle));
    }

    private static @Nullable Shares shares(
        @Nullable Shares in, @Nullable Shares here, @Nullable Shares out) {
      if (in == null || here == null || out == null) {
        return null;
      }
      double[] m = new double[here.values().size()];
      for (int i = 0; i < m.length; i++) {
        m[i] = moved(in.values().get(i), here.values().get(i), out.values().get(i));
      }
      return new Shares(m[0], m[1], m[2], m[3], m[4]);
    }

    private static double half(double in, double out) {
      return (in - out) / 2;
    }

    private static double moved(double in, double here, double out) {
      return Math.hypot(in - here, out - here) / Math.sqrt(2);
    }
  }
}
