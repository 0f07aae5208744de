package ovenproof.core.trace;

import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Unit;

/**
 * A person's answers to the questions a file may leave open, and the limits of reading.
 *
 * @param intervalSeconds distance of rows of a file without times; null when not given
 * @param temperatureUnit unit of temperatures whose unit is not written; null when not given
 * @param dateOrder order of dates whose form leaves it open; null when not given
 * @param maximumColumns columns beyond are not read
 * @param maximumNumbers rows times columns that may be kept; larger files are refused
 */
public record ReadOptions(
    @Nullable Double intervalSeconds,
    @Nullable Unit temperatureUnit,
    @Nullable DateOrder dateOrder,
    int maximumColumns,
    long maximumNumbers) {

  public static ReadOptions withDefaults() {
    return new ReadOptions(null, null, null, 4096, 400_000_000L);
  }

  public ReadOptions withIntervalSeconds(double seconds) {
    return new ReadOptions(seconds, temperatureUnit, dateOrder, maximumColumns, maximumNumbers);
  }

  public ReadOptions withTemperatureUnit(Unit unit) {
    return new ReadOptions(intervalSeconds, unit, dateOrder, maximumColumns, maximumNumbers);
  }

  public ReadOptions withDateOrder(DateOrder order) {
    return new ReadOptions(intervalSeconds, temperatureUnit, order, maximumColumns, maximumNumbers);
  }

  public ReadOptions withMaximumNumbers(long numbers) {
    return new ReadOptions(intervalSeconds, temperatureUnit, dateOrder, maximumColumns, numbers);
  }
}
