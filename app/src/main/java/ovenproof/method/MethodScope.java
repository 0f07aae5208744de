package ovenproof.method;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.MeasureDescription.EvidenceKind;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Unit;

/** What the nodes of a method may refer to. */
record MethodScope(
    Map<String, MeasureDescription> measures,
    List<Method.Fact> facts,
    List<Method.RatedFact> rated,
    List<Method.Feature> features) {

  /** What a use's values are; empty when that cannot be known because something else is wrong. */
  Optional<Dimension> dimension(MeasureUse use) {
    return own(use).map(d -> difference(use.summary(), d));
  }

  private Optional<Dimension> own(MeasureUse use) {
    MeasureDescription description = measures.get(use.take());
    if (description == null) {
      return Optional.empty();
    }
    if (use.unit() != null) {
      return Optional.of(use.unit().dimension());
    }
    if (description.evidence() == EvidenceKind.FACTS && description.unit() == Unit.ONE) {
      return facts.stream()
          .filter(f -> f.id().equals(use.ofOrId()))
          .findFirst()
          .map(f -> f.unit().dimension());
    }
    boolean unitIsTheMethods =
        description.evidence() == EvidenceKind.READING && description.unit() == Unit.ONE;
    return unitIsTheMethods ? Optional.empty() : Optional.of(description.unit().dimension());
  }

  /** The change, spread or difference of a temperature is a difference. */
  private static Dimension difference(MeasureUse.Summary summary, Dimension dimension) {
    boolean differs =
        switch (summary) {
          case MEAN, LARGEST, SMALLEST -> false;
          case SPREAD, CHANGE, ABSOLUTE_CHANGE, SLOPE, FACE_DIFFERENCE -> true;
        };
    return differs && dimension == Dimension.TEMPERATURE
        ? Dimension.TEMPERATURE_DIFFERENCE
        : dimension;
  }
}
