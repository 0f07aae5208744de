package ovenproof.measure;

import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Stream;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.safety.SafetyMeasures;
import ovenproof.core.thermal.ThermalMeasures;
import ovenproof.core.trace.TraceMeasure;
import ovenproof.core.trace.TraceMeasures;

/**
 * Measures of traces that are computed together because they share their work. A method that asks
 * for none of the thermal model does not pay for its fit.
 */
enum TraceGroup {
  CURVE(TraceMeasures::all),
  MODEL(ThermalMeasures::all),
  FOOD(SafetyMeasures::all);

  private final Supplier<List<TraceMeasure>> measures;

  TraceGroup(Supplier<List<TraceMeasure>> measures) {
    this.measures = measures;
  }

  List<TraceMeasure> measures() {
    return measures.get();
  }

  /** The group that holds a measure. */
  static TraceGroup of(MeasureDescription measure) {
    return Stream.of(values())
        .filter(g -> g.measures().stream().anyMatch(m -> m.description().equals(measure)))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no measure of traces: " + measure.id()));
  }
}
