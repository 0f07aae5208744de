package ovenproof.measure;

import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Photo;
import ovenproof.core.colour.Lab;
import ovenproof.core.photo.PhotoAnalysis;
import ovenproof.core.photo.PhotoCalibration;
import ovenproof.core.photo.PhotoMeasureCatalogue;
import ovenproof.core.photo.Picture;
import ovenproof.core.photo.ShadeSettings;
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

  /**
   * Reads it; pieces that a person outlined bear the names they were given.
   *
   * @param target the shade wanted, see {@link ShadeCards}
   */
  public static PhotoReading of(Photo photo, TestPlan test, Picture picture, @Nullable Lab target) {
    PhotoSetup setup = PhotoSetup.of(photo, test, use(photo, test), target);
    List<String> names = PhotoSetup.names(photo);
    PhotoAnalysis seen = setup.read(photo, picture);
    int planned = Photo.SHADE_CARD.equals(photo.face()) ? 1 : planned(test);
    return new PhotoReading(setup.settings(), planned, names.isEmpty() ? seen : named(seen, names));
  }

  /** Its colours alone, by the chart that is found or was marked in the frame. */
  public static PhotoCalibration calibration(Photo photo, Picture picture) {
    return PhotoSetup.calibration(photo, picture);
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
