package ovenproof.measure;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Photo;
import ovenproof.core.colour.Lab;
import ovenproof.core.photo.CalibratedPicture;
import ovenproof.core.photo.PhotoAnalysis;
import ovenproof.core.photo.PhotoCalibration;
import ovenproof.core.photo.PhotoMeasureCatalogue;
import ovenproof.core.photo.Picture;
import ovenproof.core.photo.ShadeSettings;
import ovenproof.core.photo.SmallerPicture;
import ovenproof.evidence.photo.PhotoFile;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan;

/**
 * One photograph of a campaign, read as its measures are: same target, same limits, same outlines.
 * For pages that show what was measured.
 *
 * @param settings target and limits of the test
 * @param planned how many pieces the method expects on a picture
 * @param analysis everything seen
 */
public record PhotoReading(ShadeSettings settings, int planned, PhotoAnalysis analysis) {

  /** Pixels of the longer side at which a chart is found as well as in the full photograph. */
  private static final int CHART_SIDE = 1600;

  /**
   * Reads it; pieces that a person outlined bear the names they were given.
   *
   * @param target the shade wanted, see {@link ShadeCards}
   * @param others around the pieces of other runs in the frame, likewise
   */
  public static PhotoReading of(
      Photo photo, TestPlan test, Picture picture, @Nullable Lab target, List<Photo.Box> others) {
    PhotoSetup setup = PhotoSetup.of(photo, test, use(photo, test), target, others);
    List<String> names = PhotoSetup.names(photo);
    PhotoAnalysis seen = setup.read(photo, picture);
    int planned = Photo.SHADE_CARD.equals(photo.face()) ? 1 : planned(test);
    return new PhotoReading(setup.settings(), planned, names.isEmpty() ? seen : named(seen, names));
  }

  /** Its colours alone, by the chart that is found or was marked in the frame. */
  public static PhotoCalibration calibration(Photo photo, Picture picture) {
    return PhotoSetup.calibration(photo, picture);
  }

  /**
   * The photograph as all calibrated ones look, small: the same surface has the same colour on
   * each. Decoded reduced, with the chart found and the colours fitted at that size, which moves
   * patch colours by less than ΔE00 0.3 against the full photograph.
   *
   * @param bytes of the file
   * @param longSide the longer side has so many pixels, unless the photograph itself is smaller
   * @return empty when no whole chart is in the frame, or its colours do not come out within the
   *     gate
   * @throws ovenproof.input.InputException if it cannot be opened
   */
  public static Optional<Picture> alike(Photo photo, byte[] bytes, int longSide) {
    PhotoFile file = PhotoFile.openReduced(bytes, photo.file(), Math.max(longSide, CHART_SIDE));
    PhotoCalibration calibration = PhotoSetup.calibration(photo, file.picture(), file.factor());
    if (!calibration.withinGate()) {
      return Optional.empty();
    }
    Picture small = SmallerPicture.of(file.picture(), longSide);
    return Optional.of(CalibratedPicture.of(small, calibration.colours()));
  }

  /** How many pieces the method expects; 1 when it does not say. */
  public static int planned(TestPlan test) {
    return PhotoSetup.planned(test);
  }

  /** The first use of a photo measure that looks at this face. */
  private static @Nullable MeasureUse use(Photo photo, TestPlan test) {
    return test.measures().stream()
        .filter(u -> PhotoMeasureCatalogue.ALL.stream().anyMatch(m -> m.id().equals(u.take())))
        .filter(u -> u.face() == null || u.face().equals(photo.face()))
        .findFirst()
        .orElse(null);
  }

  private static PhotoAnalysis named(PhotoAnalysis analysis, List<String> names) {
    List<PhotoAnalysis.Piece> pieces =
        IntStream.range(0, names.size())
            .mapToObj(i -> new PhotoAnalysis.Piece(names.get(i), analysis.pieces().get(i).shade()))
            .toList();
    return new PhotoAnalysis(
        analysis.chart(), analysis.calibration(), pieces, analysis.scale(), analysis.warnings());
  }
}
