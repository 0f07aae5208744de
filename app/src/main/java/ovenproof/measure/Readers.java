package ovenproof.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ovenproof.campaign.Campaign;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.evidence.EvidenceSource;

/** The readers of one campaign's evidence; each file is opened and read once. */
final class Readers {
  private final MarkMeasures marks;
  private final TraceLibrary traces;
  private final PhotoLibrary photos;
  private final MeasurementCache cache;

  Readers(Campaign campaign, EvidenceSource evidence, MeasurementCache cache) {
    this.marks = new MarkMeasures(campaign);
    this.traces = new TraceLibrary(evidence, campaign.info().zone());
    this.photos = new PhotoLibrary(campaign, evidence, cache);
    this.cache = cache;
  }

  MarkMeasures marks() {
    return marks;
  }

  /** The arm for a measure of a file, by the kind of evidence it is taken from. */
  Optional<Taker> taker(MeasureDescription measure) {
    return switch (measure.evidence()) {
      case TRACE -> Optional.of(new TraceTaker(traces, cache, measure));
      case PHOTO ->
          Optional.of(
              BatchTaker.takes(measure)
                  ? new BatchTaker(photos, measure)
                  : new PhotoTaker(photos, measure));
      case READING, EVENTS, PIECES, RATINGS, FACTS -> Optional.empty();
    };
  }

  /** What reading had to say, in sentences; call when everything is measured. */
  List<String> warnings() {
    List<String> all = new ArrayList<>(marks.warnings());
    all.addAll(traces.warnings());
    all.addAll(photos.warnings());
    return all;
  }
}
