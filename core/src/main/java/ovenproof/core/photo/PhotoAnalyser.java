package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import ovenproof.core.colour.Srgb;

/** The whole way from a picture to measured pieces. Immutable; safe to share. */
public final class PhotoAnalyser {

  /** Below this many pixels a millimetre, spots of a millimetre are lost. */
  private static final double LEAST_PIXELS_PER_MILLIMETRE = 5;

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

  private final ShadeSettings settings;
  private final @Nullable Integer expectedPieces;
  private final @Nullable Double chartPitchMillimetres;
  private final List<PixelPoint> chartCorners;

  private PhotoAnalyser(
      ShadeSettings settings,
      @Nullable Integer expectedPieces,
      @Nullable Double chartPitchMillimetres,
      List<PixelPoint> chartCorners) {
    this.settings = settings;
    this.expectedPieces = expectedPieces;
    this.chartPitchMillimetres = chartPitchMillimetres;
    this.chartCorners = List.copyOf(chartCorners);
  }

  /** No target, any number of pieces, no scale. */
  public static PhotoAnalyser withDefaults() {
    return new PhotoAnalyser(ShadeSettings.withDefaults(), null, null, List.of());
  }

  public PhotoAnalyser with(ShadeSettings newSettings) {
    return new PhotoAnalyser(newSettings, expectedPieces, chartPitchMillimetres, chartCorners);
  }

  /**
   * For a known number of pieces.
   *
   * @param count at least 1
   */
  public PhotoAnalyser expecting(int count) {
    return new PhotoAnalyser(settings, count, chartPitchMillimetres, chartCorners);
  }

  /**
   * With the scale taken from the chart.
   *
   * @param pitchMillimetres from the middle of a patch to the next; charts come in several sizes
   */
  public PhotoAnalyser withChartPitch(double pitchMillimetres) {
    if (!(pitchMillimetres > 0)) {
      throw new IllegalArgumentException(
          "pitchMillimetres must be above 0, found " + pitchMillimetres);
    }
    return new PhotoAnalyser(settings, expectedPieces, pitchMillimetres, chartCorners);
  }

  /**
   * With the chart where a person saw it, for pictures in which it is not found by itself.
   *
   * @param corners of its grid of patches, four in the order around it, in pixels of the upright
   *     picture; empty: to be found
   */
  public PhotoAnalyser withChartAt(List<PixelPoint> corners) {
    if (!corners.isEmpty() && corners.size() != 4) {
      throw new IllegalArgumentException("corners must be four or none, found " + corners.size());
    }
    return new PhotoAnalyser(settings, expectedPieces, chartPitchMillimetres, corners);
  }

  private ChartSighting chart(Picture picture) {
    return chartCorners.isEmpty()
        ? ChartFinder.find(picture)
        : ChartFinder.at(picture, chartCorners);
  }

  /**
   * Finds chart and pieces and measures them.
   *
   * @param source name of what photographs of this session share, such as {@code camera:session-1}
   */
  public PhotoAnalysis analyse(Picture picture, String source) {
    ChartSighting chart = chart(picture);
    PhotoCalibration calibration = calibration(picture, chart, source);
    PieceFinder finder =
        expectedPieces == null ? PieceFinder.anyNumber() : PieceFinder.expecting(expectedPieces);
    PieceFinder.Found found = finder.find(picture, calibration.colours(), chart);
    return analyse(picture, chart, calibration, found);
  }

  /**
   * Measures outlines that a person drew or mended.
   *
   * @param outlines named by their place in the list, from 1
   */
  public PhotoAnalysis measure(Picture picture, List<Outline> outlines, String source) {
    ChartSighting chart = chart(picture);
    PhotoCalibration calibration = calibration(picture, chart, source);
    return finish(picture, chart, calibration, outlines, new ArrayList<>(calibration.warnings()));
  }

  /**
   * Outlines and measures the piece in each box that a person drew.
   *
   * @param boxes in pixels of the picture; pieces are named by their place in the list, from 1
   */
  public PhotoAnalysis measureInside(Picture picture, List<PixelBox> boxes, String source) {
    ChartSighting chart = chart(picture);
    PhotoCalibration calibration = calibration(picture, chart, source);
    PieceFinder.Found found = BoxOutliner.find(picture, calibration.colours(), chart, boxes);
    List<String> warnings = new ArrayList<>(calibration.warnings());
    return finish(
        picture, chart, evened(calibration, chart, found, warnings), found.outlines(), warnings);
  }

  /** Its colours alone, from the chart in the frame; none without a whole chart. */
  public PhotoCalibration calibrate(Picture picture, String source) {
    return calibration(picture, chart(picture), source);
  }

  private static PhotoCalibration calibration(Picture picture, ChartSighting chart, String source) {
    return chart.isWhole()
        ? ChartCalibrator.withDefaults().calibrate(picture, chart, source)
        : PhotoCalibration.none(source);
  }

  private PhotoAnalysis analyse(
      Picture picture, ChartSighting chart, PhotoCalibration calibration, PieceFinder.Found found) {
    List<String> warnings = new ArrayList<>();
    warnChart(chart, warnings);
    warnings.addAll(calibration.warnings());
    warnPieces(found, chart, warnings);
    PhotoCalibration evened = evened(calibration, chart, found, warnings);
    return finish(picture, chart, evened, found.outlines(), warnings);
  }

  private PhotoAnalysis finish(
      Picture picture,
      ChartSighting chart,
      PhotoCalibration calibration,
      List<Outline> outlines,
      List<String> warnings) {
    if (!chartCorners.isEmpty() && !chart.isWhole()) {
      warnings.add(
          "the four corners given for the chart do not hold its colours: mark the corners of the"
              + " grid of patches, one after the other around it");
    }
    PhotoScale scale = scale(chart, warnings);
    ColourTrust trust = calibration.trust();
    if (chart.isWhole() && !outlines.isEmpty()) {
      PhotoScale block = scale != null ? scale : PhotoScale.shareOf(outlines.get(0));
      double blockPixels = block.pixelsPerMillimetre() * settings.blockMillimetres();
      trust =
          trust.withBlockNoise(
              ChartNoise.ofBlocks(picture, chart, calibration.colours(), blockPixels));
    }
    PhotoCalibration trusted = calibration.withTrust(trust);
    PhotoMeasures measures = PhotoMeasures.with(settings);
    List<PhotoAnalysis.Piece> pieces =
        IntStream.range(0, outlines.size())
            .parallel()
            .mapToObj(
                i ->
                    new PhotoAnalysis.Piece(
                        String.valueOf(i + 1),
                        measures.measure(
                            picture, outlines.get(i), trusted.colours(), trusted.trust(), scale)))
            .toList();
    new PictureQuality(picture).warn(outlines, warnings);
    return new PhotoAnalysis(chart, trusted, pieces, scale, warnings);
  }

  private static void warnChart(ChartSighting chart, List<String> warnings) {
    if (chart.status() == ChartSighting.Status.PART) {
      warnings.add(
          "only a part of the chart is in the frame ("
              + chart.patchesInFrame()
              + " of 24 patches): it was not used; move back so that the whole chart is seen");
    }
    if (chart.status() != ChartSighting.Status.WHOLE) {
      warnings.add(
          "no whole chart: colours are as the camera made them, so pieces compare within this"
              + " photograph only");
    }
  }

  private void warnPieces(PieceFinder.Found found, ChartSighting chart, List<String> warnings) {
    int count = found.outlines().size();
    if (count == 0) {
      warnings.add(
          (chart.isWhole() ? "only the chart, no food" : "no food")
              + " was found; outline the pieces by hand, or photograph them on a plain ground of"
              + " another colour");
    } else if (expectedPieces != null && expectedPieces != count) {
      warnings.add(
          "found "
              + count
              + (count == 1 ? " piece" : " pieces")
              + ", expected "
              + expectedPieces
              + ": correct the outlines before these numbers are used");
    }
    if (!found.doubts().isEmpty()) {
      warnings.add(
          PieceDoubts.START
              + String.join("; ", found.doubts())
              + ": look at the overlay, and draw the outlines by hand where they are wrong");
    }
  }

  /** Uses the ground as a flat field when it is even enough to be one. */
  private static PhotoCalibration evened(
      PhotoCalibration calibration,
      ChartSighting chart,
      PieceFinder.Found found,
      List<String> warnings) {
    LightField field = GroundLight.of(found, reference(chart, found));
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

  private @Nullable PhotoScale scale(ChartSighting chart, List<String> warnings) {
    if (!chart.isWhole() || chartPitchMillimetres == null) {
      return null;
    }
    PhotoScale scale =
        new PhotoScale(chart.pitchPixels() / chartPitchMillimetres, PhotoScale.Origin.CHART);
    if (scale.pixelsPerMillimetre() < LEAST_PIXELS_PER_MILLIMETRE) {
      warnings.add(
          String.format(
              Locale.ROOT,
              "low resolution: %.1f pixels a millimetre, %.0f are wanted; go closer",
              scale.pixelsPerMillimetre(),
              LEAST_PIXELS_PER_MILLIMETRE));
    }
    return scale;
  }

  /** The light of the ground over the frame. */
  private static final class GroundLight {

    private static final int CELLS = 3;
    private static final int LEAST_CELLS = 6;

    static @Nullable LightField of(PieceFinder.Found found, PixelPoint reference) {
      List<PixelPoint> ground = found.ground();
      Picture work = found.work();
      double[] u = new double[ground.size()];
      double[] v = new double[ground.size()];
      double[] light = new double[ground.size()];
      int n = 0;
      int[] covered = new int[CELLS * CELLS];
      for (PixelPoint p : ground) {
        int x = Math.min(work.width() - 1, (int) (p.x() * work.width()));
        int y = Math.min(work.height() - 1, (int) (p.y() * work.height()));
        double y1 = luminance(work.at(x, y));
        if (y1 > 0.002) {
          u[n] = p.x();
          v[n] = p.y();
          light[n++] = y1;
          covered[(int) (p.y() * CELLS) * CELLS + (int) (p.x() * CELLS)]++;
        }
      }
      long cells = IntStream.of(covered).filter(c -> c >= 10).count();
      if (cells < LEAST_CELLS) {
        return null;
      }
      return LightField.fit(
          java.util.Arrays.copyOf(u, n),
          java.util.Arrays.copyOf(v, n),
          java.util.Arrays.copyOf(light, n),
          new double[] {reference.x(), reference.y()});
    }

    private static double luminance(int pixel) {
      return 0.2126 * Srgb.linearOf(pixel >> 16 & 0xff)
          + 0.7152 * Srgb.linearOf(pixel >> 8 & 0xff)
          + 0.0722 * Srgb.linearOf(pixel & 0xff);
    }
  }
}
