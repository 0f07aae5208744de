package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import ovenproof.core.colour.Lab;

/**
 * Evens out the light over a frame by its ground, when the ground is even enough to be a flat
 * field; otherwise says how far the light may differ.
 */
final class GroundLight {

  /** log light; less is left as it is. */
  private static final double LEAST_SPAN = 0.03;

  /**
   * How far the light of parts of the ground may lie from a smooth fall-off, in log light, for the
   * ground to be taken for even.
   */
  private static final double EVEN_GROUND = 0.05;

  private static final double LARGEST_SPAN = 2;

  /** log light that a room at its worst may hide in a ground with a pattern; judgement. */
  private static final double MOST_DOUBTFUL_LIGHT = 0.3;

  private static final double WORTH_SAYING = 0.1;

  /** Change of L* with log light around L* 60: (60 + 16) / 3. */
  private static final double LIGHTNESS_PER_LOG_LIGHT = 25;

  private static final double DARKEST = 0.002;

  /** Distance in a*, b* within which a plain ground scatters. */
  private static final double LEAST_HUE_LIMIT = 5;

  /** A ground with a grain scatters more: so many times its median distance. */
  private static final double MANY_TIMES = 3;

  private static final int CELLS = 3;
  private static final int LEAST_CELLS = 6;
  private static final int LEAST_IN_CELL = 10;

  private GroundLight() {}

  /** Uses the ground as a flat field when it is even enough to be one. */
  static PhotoCalibration evened(
      PhotoCalibration calibration,
      ChartSighting chart,
      PieceFinder.Found found,
      List<String> warnings) {
    LightField field = field(calibration.colours(), found, reference(chart, found));
    if (field == null || found.outlines().isEmpty()) {
      return calibration;
    }
    if (field.misfit() > EVEN_GROUND || field.span() > LARGEST_SPAN) {
      return unevened(calibration, field, warnings);
    }
    if (field.span() < LEAST_SPAN) {
      double left = LIGHTNESS_PER_LOG_LIGHT * LEAST_SPAN / 2;
      return calibration.withTrust(calibration.trust().withLightGradient(left));
    }
    if (field.span() > 0.5) {
      warnings.add(
          String.format(
              Locale.ROOT,
              "the light differs by a factor of %.1f over the frame; it was evened out by the"
                  + " ground, but even light is better",
              Math.exp(field.span())));
    }
    double left = LIGHTNESS_PER_LOG_LIGHT * (field.misfit() / 2 + 0.1 * field.span());
    return calibration.under(field, left);
  }

  /**
   * The ground is shiny, shaded or of several materials, so it does not tell how the light falls.
   * The light may differ by what is seen of it, as far as that is not the ground's own pattern.
   */
  private static PhotoCalibration unevened(
      PhotoCalibration calibration, LightField field, List<String> warnings) {
    double doubtful = Math.min(field.misfit() + 0.1 * field.span(), MOST_DOUBTFUL_LIGHT);
    if (doubtful > WORTH_SAYING) {
      warnings.add(
          "light and ground differ over the frame, and the ground is too uneven to tell them apart:"
              + " a shadow, a lamp on one side or a shiny tray; pieces in different places of this"
              + " frame compare badly");
    }
    return calibration.withTrust(
        calibration.trust().withLightGradient(LIGHTNESS_PER_LOG_LIGHT * doubtful));
  }

  private static PixelPoint reference(ChartSighting chart, PieceFinder.Found found) {
    Picture work = found.work();
    Homography view = chart.view();
    if (chart.isWhole() && view != null) {
      // The sighting is in full pixels; the work picture is reduced by a whole factor.
      double factor = found.factor();
      PixelPoint middle = view.apply(ReferenceChart.COLUMNS / 2.0, ReferenceChart.ROWS / 2.0);
      return new PixelPoint(
          middle.x() / factor / work.width(), middle.y() / factor / work.height());
    }
    double x = 0;
    double y = 0;
    for (Outline outline : found.outlines()) {
      PixelPoint c = outline.centroid();
      x += c.x() / found.factor() / work.width() / found.outlines().size();
      y += c.y() / found.factor() / work.height() / found.outlines().size();
    }
    return new PixelPoint(x, y);
  }

  /** The light of the ground in corrected colours: what the camera's own curve bent is straight. */
  private static @Nullable LightField field(
      PixelColours colours, PieceFinder.Found found, PixelPoint reference) {
    List<PixelPoint> ground = found.ground();
    List<Lab> seen = seen(colours, found);
    boolean[] same = ofOneHue(seen);
    double[] u = new double[ground.size()];
    double[] v = new double[ground.size()];
    double[] light = new double[ground.size()];
    int n = 0;
    int[] covered = new int[CELLS * CELLS];
    for (int i = 0; i < ground.size(); i++) {
      double luminance = seen.get(i).toXyz().y();
      if (same[i] && luminance > DARKEST) {
        PixelPoint p = ground.get(i);
        u[n] = p.x();
        v[n] = p.y();
        light[n++] = luminance;
        covered[(int) (p.y() * CELLS) * CELLS + (int) (p.x() * CELLS)]++;
      }
    }
    long cells = IntStream.of(covered).filter(c -> c >= LEAST_IN_CELL).count();
    return cells < LEAST_CELLS
        ? null
        : LightField.fit(
            Arrays.copyOf(u, n),
            Arrays.copyOf(v, n),
            Arrays.copyOf(light, n),
            new double[] {reference.x(), reference.y()});
  }

  private static List<Lab> seen(PixelColours colours, PieceFinder.Found found) {
    Picture work = found.work();
    List<Lab> out = new ArrayList<>(found.ground().size());
    for (PixelPoint p : found.ground()) {
      int x = Math.min(work.width() - 1, (int) (p.x() * work.width()));
      int y = Math.min(work.height() - 1, (int) (p.y() * work.height()));
      out.add(colours.at(work, x, y));
    }
    return out;
  }

  /**
   * Which points have the hue of most of the ground. Light changes how bright a ground is and
   * hardly its hue; another run's food in the frame has one of its own.
   */
  private static boolean[] ofOneHue(List<Lab> seen) {
    boolean[] same = new boolean[seen.size()];
    if (seen.isEmpty()) {
      return same;
    }
    double[] a = seen.stream().mapToDouble(Lab::a).toArray();
    double[] b = seen.stream().mapToDouble(Lab::b).toArray();
    double middleA = median(a);
    double middleB = median(b);
    double[] off = new double[a.length];
    for (int i = 0; i < off.length; i++) {
      off[i] = Math.hypot(a[i] - middleA, b[i] - middleB);
    }
    double limit = Math.max(LEAST_HUE_LIMIT, MANY_TIMES * median(off));
    for (int i = 0; i < off.length; i++) {
      same[i] = off[i] <= limit;
    }
    return same;
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }
}
