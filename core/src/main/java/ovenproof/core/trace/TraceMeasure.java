package ovenproof.core.trace;

import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;

/** A measure of one run's traces. Stateless; the same input gives the same measurement. */
public interface TraceMeasure {

  MeasureDescription description();

  /**
   * The measurement, with a missing value and its reason when the traces do not carry it. Never
   * throws for what a logger may have written.
   *
   * @param curve the prepared centre of {@code input}, so that many measures share the work
   */
  Measurement measure(TraceInput input, HeatCurve curve);

  default Measurement measure(TraceInput input) {
    return measure(input, HeatCurve.of(input.centre()));
  }
}
