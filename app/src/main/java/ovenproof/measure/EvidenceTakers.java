package ovenproof.measure;

import java.util.HashMap;
import java.util.Map;
import ovenproof.core.measure.MeasureDescription;

/** Which arm takes which measure. */
final class EvidenceTakers {

  private EvidenceTakers() {}

  /** The taker of every measure that belongs to runs, by id. */
  static Map<String, Taker> of(MeasureRegistry registry, Readers readers) {
    Map<String, Taker> takers = new HashMap<>();
    takers.put(EntryMeasures.TIME_TO_STOP.id(), EventMeasures::timeToStop);
    takers.put(EntryMeasures.SIGNAL_TIME.id(), EventMeasures::signalTime);
    takers.put(EntryMeasures.READING.id(), ReadingMeasures::readings);
    takers.put(EntryMeasures.MASS_LOSS.id(), ReadingMeasures::massLoss);
    takers.put(EntryMeasures.MARK.id(), readers.marks()::marks);
    for (MeasureDescription measure : registry.measures()) {
      readers.taker(measure).ifPresent(taker -> takers.putIfAbsent(measure.id(), taker));
    }
    return takers;
  }
}
