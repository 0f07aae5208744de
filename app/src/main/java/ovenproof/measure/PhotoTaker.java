package ovenproof.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import ovenproof.campaign.Photo;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.input.InputException;
import ovenproof.method.MeasureUse;

/** Takes what a photograph shows of each piece of a run. */
final class PhotoTaker implements Taker {
  private final PhotoLibrary library;
  private final MeasureDescription measure;

  PhotoTaker(PhotoLibrary library, MeasureDescription measure) {
    this.library = library;
    this.measure = measure;
  }

  @Override
  public List<Measurement> take(RunEvidence run, MeasureUse use) {
    List<Measurement> found = new ArrayList<>();
    for (Photo photo : run.campaign().photos()) {
      if (wanted(photo, run, use)) {
        Subject subject = run.subject().withBatch(photo.batch()).withFace(photo.face());
        try {
          library.measurements(photo, run.test(), use, subject).stream()
              .filter(m -> m.id().equals(measure.id()))
              .forEach(found::add);
        } catch (InputException unreadable) {
          found.add(Measurement.missing(measure, subject, String.valueOf(unreadable.getMessage())));
        }
      }
    }
    return found.isEmpty()
        ? List.of(Measurement.missing(measure, run.subject(), "no photograph" + of(use)))
        : found;
  }

  private static String of(MeasureUse use) {
    return (use.face() == null ? "" : " of the " + use.face())
        + (use.batch() == null ? "" : " of batch " + use.batch());
  }

  private static boolean wanted(Photo photo, RunEvidence run, MeasureUse use) {
    Integer batch = photo.batch() == null ? Integer.valueOf(1) : photo.batch();
    return photo.run().equals(run.run().id())
        && !Photo.SHADE_CARD.equals(photo.face())
        && (use.face() == null
            ? !Photo.BEFORE.equals(photo.face())
            : use.face().equals(photo.face()))
        && (use.batch() == null || Objects.equals(use.batch(), batch));
  }
}
