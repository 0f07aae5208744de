package ovenproof.core.trace;

import org.jspecify.annotations.Nullable;

/**
 * What a large number counts when it is a moment: the instant it counts from and the unit it counts
 * in, told apart by the size that moments of our time have.
 */
enum EpochScale {
  SECONDS(0.9e9, 2.2e9, 1, 0, "seconds since 1970"),
  MILLISECONDS(0.9e12, 2.2e12, 1e-3, 0, "milliseconds since 1970"),
  MICROSECONDS(0.9e15, 2.2e15, 1e-6, 0, "fine fractions of seconds since 1970"),
  NANOSECONDS(0.9e18, 2.2e18, 1e-9, 0, "fine fractions of seconds since 1970"),
  SECONDS_OF_1904(3.0e9, 4.1e9, 1, -2_082_844_800.0, "seconds since 1904"),
  /** Hundreds of nanoseconds, as files' times are kept. */
  TICKS_OF_1601(1.2e17, 1.5e17, 1e-7, -11_644_473_600.0, "tenths of microseconds since 1601"),
  TICKS_OF_YEAR_1(6.2e17, 6.6e17, 1e-7, -62_135_596_800.0, "tenths of microseconds since year 1"),
  SPREADSHEET_DAYS(
      30_000, 60_000, Day.S, -25_569 * Day.S, "days since 1900, as spreadsheets count"),
  DAYS_OF_YEAR_0(
      729_000, 766_000, Day.S, -719_529 * Day.S, "days since year 0, as matrix programs count"),
  JULIAN_DAYS(2.4470e6, 2.4890e6, Day.S, -2_440_587.5 * Day.S, "Julian days"),
  MODIFIED_JULIAN_DAYS(60_000, 75_000, Day.S, -40_587 * Day.S, "modified Julian days");

  private static final class Day {
    static final double S = 86_400;
  }

  private final double low;
  private final double high;
  final double unitSeconds;
  private final double offsetSeconds;
  final String words;

  EpochScale(double low, double high, double unitSeconds, double offsetSeconds, String words) {
    this.low = low;
    this.high = high;
    this.unitSeconds = unitSeconds;
    this.offsetSeconds = offsetSeconds;
    this.words = words;
  }

  /** Counts whole days and fractions of them. */
  boolean inDays() {
    return unitSeconds == Day.S;
  }

  /** Clocks that count days count those of the place they hang in. */
  TimeAxis.Zone zone() {
    return inDays() ? TimeAxis.Zone.LOCAL : TimeAxis.Zone.ABSOLUTE;
  }

  /** Seconds since 1970; days are written to a millisecond at best. */
  double seconds(double count) {
    double seconds = count * unitSeconds + offsetSeconds;
    return inDays() ? Math.rint(seconds * 1000) / 1000 : seconds;
  }

  /** The scale on which a number is a moment of our time; null when there is none. */
  static @Nullable EpochScale of(double number) {
    for (EpochScale scale : values()) {
      if (number > scale.low && number < scale.high) {
        return scale;
      }
    }
    return null;
  }
}
