package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** The whole way from a picture to measured pieces. Immutable; safe to share. */
public final class PhotoAnalyser {

  /** Below this many pixels a millimetre, spots of a millimetre are lost. */
  private static final double LEAST_PIXELS_PER_MILLIMETRE = 5;

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
    return measure(picture, outlines, List.of(), source);
  }

  /**
   * The same in a frame with more food in it.
   *
   * @param others around food that is not to be measured and is no ground either: that of another
   *     run
   */
  public PhotoAnalysis measure(
      Picture picture, List<Outline> outlines, List<PixelBox> others, String source) {
    ChartSighting chart = chart(picture);
    PhotoCalibration calibration = calibration(picture, chart, source);
    PieceFinder.Found drawn =
        BoxOutliner.around(picture, calibration.colours(), chart, outlines, others);
    List<String> warnings = new ArrayList<>(calibration.warnings());
    return finish(
        picture,
        chart,
        GroundLight.evened(calibration, chart, drawn, warnings),
        outlines,
        warnings);
  }

  /**
   * Outlines and measures the piece in each box that a person drew.
   *
   * @param boxes in pixels of the picture; pieces are named by their place in the list, from 1
   */
  public PhotoAnalysis measureInside(Picture picture, List<PixelBox> boxes, String source) {
    return measureInside(picture, boxes, List.of(), source);
  }

  /**
   * The same in a frame with more food in it.
   *
   * @param others around food that is not to be measured and is no ground either
   */
  public PhotoAnalysis measureInside(
      Picture picture, List<PixelBox> boxes, List<PixelBox> others, String source) {
    ChartSighting chart = chart(picture);
    PhotoCalibration calibration = calibration(picture, chart, source);
    PieceFinder.Found found =
        BoxOutliner.find(picture, calibration.colours(), chart, boxes, others);
    List<String> warnings = new ArrayList<>(calibration.warnings());
    return finish(
        picture,
        chart,
        GroundLight.evened(calibration, chart, found, warnings),
        found.outlines(),
        warnings);
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
    PhotoCalibration evened = GroundLight.evened(calibration, chart, found, warnings);
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
}
