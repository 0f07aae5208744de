package ovenproof.core.measure;

import java.util.List;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Unit;

/**
 * One measure, described once for screens, exports, documentation and JSON.
 *
 * @param id the key that methods, files and JSON use, e.g. {@code preheat-first}
 * @param name short name for a table header
 * @param unit the contract unit of its values
 * @param help one or two sentences for a person: what it says and what it does not
 * @param formula how it is computed, in a line
 * @param source where the formula comes from, or "own definition"
 * @param evidence what it is computed from
 * @param parameters what a method may set
 * @param revision raised whenever the arithmetic changes, so that stored results are computed again
 */
public record MeasureDescription(
    String id,
    String name,
    Unit unit,
    String help,
    String formula,
    String source,
    EvidenceKind evidence,
    List<Parameter> parameters,
    int revision) {

  public MeasureDescription {
    parameters = List.copyOf(parameters);
  }

  /** The same with changed arithmetic. */
  public MeasureDescription revised(int newRevision) {
    return new MeasureDescription(
        id, name, unit, help, formula, source, evidence, parameters, newRevision);
  }

  /** What a measure reads. */
  public enum EvidenceKind {
    TRACE,
    PHOTO,
    READING,
    EVENTS,
    PIECES,
    RATINGS,
    FACTS
  }

  /**
   * Something a method may set for a measure.
   *
   * @param fallback what holds when the method is silent, in words that {@code QuantityParser}
   *     reads, or empty when the method must say it
   */
  public record Parameter(String id, String help, Dimension dimension, String fallback) {}
}
