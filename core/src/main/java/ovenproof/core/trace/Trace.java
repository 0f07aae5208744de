package ovenproof.core.trace;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Unit;

/**
 * One channel over time.
 *
 * @param channel name of the channel, as in the file
 * @param seconds times, never decreasing; seconds from the start of the record or of the window
 * @param values same length, in {@code unit}; NaN where nothing was read
 * @param unit contract unit (°C, W, kWh, V, A, %)
 *     <p>The arrays are not copied: whoever makes a trace leaves them alone afterwards.
 */
public record Trace(String channel, double[] seconds, double[] values, Unit unit) {

  public Trace {
    if (seconds.length != values.length) {
      throw new IllegalArgumentException(
          "seconds and values must be of one length, found "
              + seconds.length
              + " and "
              + values.length);
    }
  }

  /** The same arrays under one name and unit; plain code, as traces are keys of what is shared. */
  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Trace t
        && t.seconds == seconds
        && t.values == values
        && t.unit == unit
        && t.channel.equals(channel);
  }

  @Override
  public int hashCode() {
    return 31 * System.identityHashCode(values) + channel.hashCode();
  }

  public int size() {
    return seconds.length;
  }

  /**
   * The part from {@code startSeconds} to {@code endSeconds}, both included, with times counted
   * from {@code startSeconds}. Empty when the window holds no sample.
   */
  public Trace window(double startSeconds, double endSeconds) {
    int from = firstAtOrAfter(startSeconds);
    int to = from;
    while (to < seconds.length && seconds[to] <= endSeconds) {
      to++;
    }
    double[] shifted = new double[to - from];
    for (int i = 0; i < shifted.length; i++) {
      shifted[i] = seconds[from + i] - startSeconds;
    }
    return new Trace(channel, shifted, Arrays.copyOfRange(values, from, to), unit);
  }

  /** The part from {@code startSeconds} to {@code endSeconds}, both included, times as they are. */
  public Trace part(double startSeconds, double endSeconds) {
    int from = firstAtOrAfter(startSeconds);
    int to = from;
    while (to < seconds.length && seconds[to] <= endSeconds) {
      to++;
    }
    return new Trace(
        channel, Arrays.copyOfRange(seconds, from, to), Arrays.copyOfRange(values, from, to), unit);
  }

  /** The same without the samples that hold no value. */
  public Trace present() {
    int n = 0;
    for (double value : values) {
      n += Double.isFinite(value) ? 1 : 0;
    }
    if (n == values.length) {
      return this;
    }
    double[] keptSeconds = new double[n];
    double[] keptValues = new double[n];
    int next = 0;
    for (int i = 0; i < values.length; i++) {
      if (Double.isFinite(values[i])) {
        keptSeconds[next] = seconds[i];
        keptValues[next++] = values[i];
      }
    }
    return new Trace(channel, keptSeconds, keptValues, unit);
  }

  public Trace withValues(double[] newValues) {
    return new Trace(channel, seconds, newValues, unit);
  }

  /** Index of the first sample at or after a time; {@link #size()} when there is none. */
  public int firstAtOrAfter(double time) {
    int found = Arrays.binarySearch(seconds, time);
    if (found < 0) {
      return -found - 1;
    }
    while (found > 0 && seconds[found - 1] == time) {
      found--;
    }
    return found;
  }

  /** Time of the last sample; 0 when empty. */
  public double lastSecond() {
    return seconds.length == 0 ? 0 : seconds[seconds.length - 1];
  }

  /** Median distance of neighbouring samples in seconds; 0 with fewer than two. */
  public double medianStepSeconds() {
    if (seconds.length < 2) {
      return 0;
    }
    int stride = Math.max(1, (seconds.length - 1) / 2000);
    double[] steps = new double[(seconds.length - 2) / stride + 1];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = seconds[i * stride + 1] - seconds[i * stride];
    }
    return Medians.of(steps);
  }
}
