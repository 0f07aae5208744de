package ovenproof.measure;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.photo.BatchMeasureCatalogue;
import ovenproof.core.photo.PhotoMeasureCatalogue;

/**
 * Every measure the program knows, by id, in the order in which documentation lists them. Screens,
 * exports, method validation and JSON read this one description.
 */
public final class MeasureRegistry {
  private final Map<String, MeasureDescription> byId = new LinkedHashMap<>();

  public MeasureRegistry(List<MeasureDescription> descriptions) {
    for (MeasureDescription description : descriptions) {
      if (byId.put(description.id(), description) != null) {
        throw new IllegalArgumentException("measure id used twice: " + description.id());
      }
    }
  }

  /** Everything this program can measure. */
  public static MeasureRegistry all() {
    List<MeasureDescription> measures = new ArrayList<>(EntryMeasures.ALL);
    for (TraceGroup group : TraceGroup.values()) {
      group.measures().forEach(m -> measures.add(m.description()));
    }
    measures.addAll(PhotoMeasureCatalogue.ALL);
    measures.addAll(BatchMeasureCatalogue.ALL);
    return new MeasureRegistry(measures);
  }

  public Optional<MeasureDescription> find(String id) {
    return Optional.ofNullable(byId.get(id));
  }

  public Collection<MeasureDescription> measures() {
    return List.copyOf(byId.values());
  }

  public Iterable<String> ids() {
    return List.copyOf(byId.keySet());
  }
}
