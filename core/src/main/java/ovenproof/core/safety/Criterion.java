package ovenproof.core.safety;

/** What a method names as the condition for tasting: one of these, never both. */
public sealed interface Criterion {

  /**
   * A lowest core temperature with a rest.
   *
   * @param restSeconds for which the coldest place stays there
   */
  record FloorWithRest(double floorCelsius, double restSeconds) implements Criterion {}

  /**
   * An equivalent time at 70 °C.
   *
   * @param seconds 120 for the usual 2 min
   */
  record EquivalentTime(double seconds) implements Criterion {}
}
