package ovenproof.core.trace;

import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Unit;

/**
 * A person's answers to the questions a file may leave open, and the limits of reading.
 *
 * @param intervalSeconds distance of rows of a file without times; null when not given
 * @param temperatureUnit unit of temperatures whose unit is not written; null when not given
 * @param dateOrder order of dates whose form leaves it open; null when not given
 * @param counted unit of a time column whose unit is not written; null when not given
 * @param maximumColumns columns beyond are not read
 * @param maximumNumbers rows times columns that may be kept; larger files are refused
 * @param maximumTextBytes size of a file that has to be held as text: JSON, named values, lines
 *     behind a stamp, two bytes per character
 */
public record ReadOptions(
    @Nullable Double intervalSeconds,
    @Nullable Unit temperatureUnit,
    @Nullable DateOrder dateOrder,
    @Nullable Unit counted,
    int maximumColumns,
    long maximumNumbers,
    int maximumTextBytes) {

  public static ReadOptions withDefaults() {
    return new ReadOptions(null, null, null, null, 4096, 400_000_000L, 300 << 20);
  }

  public ReadOptions withIntervalSeconds(double seconds) {
    return new ReadOptions(
        seconds,
        temperatureUnit,
        dateOrder,
        counted,
        maximumColumns,
        maximumNumbers,
        maximumTextBytes);
  }

  public ReadOptions withTemperatureUnit(Unit unit) {
    return new ReadOptions(
        intervalSeconds,
        unit,
        dateOrder,
        counted,
        maximumColumns,
        maximumNumbers,
        maximumTextBytes);
  }

  public ReadOptions withDateOrder(DateOrder order) {
    return new ReadOptions(
        intervalSeconds,
        temperatureUnit,
        order,
        counted,
        maximumColumns,
        maximumNumbers,
        maximumTextBytes);
  }

  /**
   * @param unit a unit of time
   */
  public ReadOptions withCounted(Unit unit) {
    if (unit.dimension() != ovenproof.core.quantity.Dimension.TIME) {
      throw new IllegalArgumentException("unit is " + unit.symbol() + ", must be one of time");
    }
    return new ReadOptions(
        intervalSeconds,
        temperatureUnit,
        dateOrder,
        unit,
        maximumColumns,
        maximumNumbers,
        maximumTextBytes);
  }

  public ReadOptions withMaximumNumbers(long numbers) {
    return new ReadOptions(
        intervalSeconds,
        temperatureUnit,
        dateOrder,
        counted,
        maximumColumns,
        numbers,
        maximumTextBytes);
  }

  public ReadOptions withMaximumTextBytes(int bytes) {
    return new ReadOptions(
        intervalSeconds,
        temperatureUnit,
        dateOrder,
        counted,
        maximumColumns,
        maximumNumbers,
        bytes);
  }
}
