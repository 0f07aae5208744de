package ovenproof.core.trace;

/**
 * The steady part of a curve.
 *
 * @param startSecond start of the first cycle (or minute); from here on the moving mean drifts less
 *     than 1 K in 10 min
 * @param settledSecond the same between two cycles, interpolated
 * @param settledU standard uncertainty of that, in s: a cycle's length, and how far the scatter of
 *     the means moves it
 * @param endSecond end of the last whole cycle, or of the hold
 * @param meanCelsius time-mean over whole cycles
 * @param standardError of the mean, from the scatter of cycle (or minute) means with their
 *     autocorrelation
 * @param blocks how many cycle or minute means it rests on
 * @param driftKelvinPerHour slope of those means
 * @param driftUKelvinPerHour standard uncertainty of that, from the scatter about the line
 * @param swing whether the curve swings; decides what "whole cycles" means
 */
public record SteadyState(
    double startSecond,
    double settledSecond,
    double settledU,
    double endSecond,
    double meanCelsius,
    double standardError,
    int blocks,
    double driftKelvinPerHour,
    double driftUKelvinPerHour,
    Swing swing) {

  /** How the appliance holds its temperature. */
  public enum Swing {
    /** A thermostat switches: means are over whole cycles. */
    CYCLING,
    /** The power is trimmed or always on: means are over minutes. */
    STILL
  }
}
