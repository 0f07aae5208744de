package ovenproof.core.trace;

import org.jspecify.annotations.Nullable;

/**
 * The times of a record.
 *
 * @param seconds per row, from the first row of the file; grows within each segment
 * @param startEpochMillis moment of the first row; null when the file holds no date
 * @param zone whether that moment is absolute or by the logger's own clock, read as if it were UTC
 * @param form how time was written
 * @param columns names of the columns it was read from
 * @param description in words, for a person
 * @param medianStepSeconds median distance of rows
 * @param startOfDaySeconds time of day of the first row when a clock without date was read, else
 *     NaN
 */
public record TimeAxis(
    double[] seconds,
    @Nullable Long startEpochMillis,
    Zone zone,
    Form form,
    java.util.List<String> columns,
    String description,
    double medianStepSeconds,
    double startOfDaySeconds) {

  /** What the moment of the first row means. */
  public enum Zone {
    /** Epoch seconds, or a zone was written. */
    ABSOLUTE,
    /** The logger's clock; its zone is not written. */
    LOCAL,
    UNKNOWN
  }

  /** How time was written. */
  public enum Form {
    DATE_AND_TIME,
    TIME_OF_DAY,
    ELAPSED,
    EPOCH,
    COUNTER,
    /** No times; rows are an interval apart. */
    INTERVAL,
    /** No times and no interval: rows are counted as seconds. */
    NONE;

    public String word() {
      return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }
  }
}
