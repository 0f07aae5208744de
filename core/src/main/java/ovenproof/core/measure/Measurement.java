package ovenproof.core.measure;

import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Unit;

/**
 * The value of a measure for one subject, with everything a reader needs to doubt it.
 *
 * @param id id of the measure
 * @param label name of the measure for a person
 * @param subject what was measured
 * @param value in {@code unit}; null when it could not be measured (then {@code note} says why) or
 *     when it is censored (then {@code low} and {@code high} bound it)
 * @param unit contract unit
 * @param uncertainty standard uncertainty (k = 1) of {@code value}, the root of the summed squares
 *     of the components; null when unknown
 * @param components sources of the uncertainty, signed by sensitivity
 * @param n number of independent observations behind the value (samples of a trace are not
 *     independent: one run is one)
 * @param low lower bound when censored
 * @param high upper bound when censored
 * @param definition the definition in words, with the parameters used
 * @param revision revision of the arithmetic
 * @param note reason when missing, reservation otherwise
 * @param evidence names of the files, with fingerprint where known, and entries it was computed
 *     from
 */
public record Measurement(
    String id,
    String label,
    Subject subject,
    @Nullable Double value,
    Unit unit,
    @Nullable Double uncertainty,
    List<Component> components,
    int n,
    Censoring censored,
    @Nullable Double low,
    @Nullable Double high,
    String definition,
    int revision,
    @Nullable String note,
    List<String> evidence) {

  public Measurement {
    components = List.copyOf(components);
    evidence = List.copyOf(evidence);
    if (value != null && !Double.isFinite(value)) {
      throw new IllegalArgumentException(id + ": value must be finite or null, found " + value);
    }
    if (value == null && censored == Censoring.NONE && note == null) {
      throw new IllegalArgumentException(id + ": a missing value needs its reason in note");
    }
  }

  /** A measured value of one observation, without uncertainty yet. */
  public static Measurement of(MeasureDescription measure, Subject subject, double value) {
    return first(measure, subject, value, 1, Censoring.NONE, null, null, null);
  }

  /** What could not be measured, and why. */
  public static Measurement missing(MeasureDescription measure, Subject subject, String why) {
    return first(measure, subject, null, 0, Censoring.NONE, null, null, why);
  }

  /** Known to lie above a bound only. */
  public static Measurement above(MeasureDescription measure, Subject subject, double low) {
    return first(measure, subject, null, 1, Censoring.ABOVE, low, null, null);
  }

  /** Known to lie below a bound only. */
  public static Measurement below(MeasureDescription measure, Subject subject, double high) {
    return first(measure, subject, null, 1, Censoring.BELOW, null, high, null);
  }

  /** Known to lie between two looks only. */
  public static Measurement between(
      MeasureDescription measure, Subject subject, double low, double high) {
    return first(measure, subject, null, 1, Censoring.BETWEEN, low, high, null);
  }

  private static Measurement first(
      MeasureDescription measure,
      Subject subject,
      @Nullable Double value,
      int n,
      Censoring censored,
      @Nullable Double low,
      @Nullable Double high,
      @Nullable String note) {
    return new Measurement(
        measure.id(),
        measure.name(),
        subject,
        value,
        measure.unit(),
        null,
        List.of(),
        n,
        censored,
        low,
        high,
        measure.formula(),
        measure.revision(),
        note,
        List.of());
  }

  public boolean isMissing() {
    return value == null && censored == Censoring.NONE;
  }

  /** The same with these components; the uncertainty becomes the root of their summed squares. */
  public Measurement withComponents(List<Component> newComponents) {
    double sumOfSquares = newComponents.stream().mapToDouble(c -> c.u() * c.u()).sum();
    return copy(subject, Math.sqrt(sumOfSquares), newComponents, n, definition, note, evidence);
  }

  public Measurement withSubject(Subject newSubject) {
    return copy(newSubject, uncertainty, components, n, definition, note, evidence);
  }

  public Measurement withN(int newN) {
    return copy(subject, uncertainty, components, newN, definition, note, evidence);
  }

  public Measurement withDefinition(String newDefinition) {
    return copy(subject, uncertainty, components, n, newDefinition, note, evidence);
  }

  public Measurement withNote(@Nullable String newNote) {
    return copy(subject, uncertainty, components, n, definition, newNote, evidence);
  }

  public Measurement withEvidence(List<String> newEvidence) {
    return copy(subject, uncertainty, components, n, definition, note, newEvidence);
  }

  public Measurement withLabel(String newLabel) {
    return new Measurement(
        id,
        newLabel,
        subject,
        value,
        unit,
        uncertainty,
        components,
        n,
        censored,
        low,
        high,
        definition,
        revision,
        note,
        evidence);
  }

  /** The same quantity of another subject, not known there, and why. The evidence stays named. */
  public Measurement unknownFor(Subject newSubject, String why) {
    return new Measurement(
        id,
        label,
        newSubject,
        null,
        unit,
        null,
        List.of(),
        0,
        Censoring.NONE,
        null,
        null,
        definition,
        revision,
        why,
        evidence);
  }

  /** With the other sign: components turn with it, and what lay above a bound lies below it. */
  public Measurement negated() {
    return new Measurement(
        id,
        label,
        subject,
        negated(value),
        unit,
        uncertainty,
        components.stream().map(c -> new Component(c.source(), -c.u())).toList(),
        n,
        censored.mirrored(),
        negated(high),
        negated(low),
        definition,
        revision,
        note,
        evidence);
  }

  private static @Nullable Double negated(@Nullable Double of) {
    return of == null ? null : Double.valueOf(-of);
  }

  private Measurement copy(
      Subject newSubject,
      @Nullable Double newUncertainty,
      List<Component> newComponents,
      int newN,
      String newDefinition,
      @Nullable String newNote,
      List<String> newEvidence) {
    return new Measurement(
        id,
        label,
        newSubject,
        value,
        unit,
        newUncertainty,
        newComponents,
        newN,
        censored,
        low,
        high,
        newDefinition,
        revision,
        newNote,
        newEvidence);
  }
}
