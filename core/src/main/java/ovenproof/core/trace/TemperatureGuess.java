package ovenproof.core.trace;

import java.util.List;
import ovenproof.core.quantity.Unit;

/**
 * The unit of temperatures that are written without one, from what kitchens are like.
 *
 * @param unit most plausible
 * @param scale factor on top: 0.1 for tenths of a degree
 * @param sure whether the other one is out of the question
 * @param why in words
 */
record TemperatureGuess(Unit unit, double scale, boolean sure, String why) {

  /** No countertop appliance reads higher; in °F this is 565 °C. */
  private static final double HIGHEST_FAHRENHEIT = 1050;

  TemperatureGuess(Unit unit, boolean sure, String why) {
    this(unit, 1, sure, why);
  }

  /** Asked when it is not sure. */
  String question() {
    return scale == 1
        ? "Are the temperatures in °C or in °F?"
        : "Are the temperatures in " + part() + " of a degree?";
  }

  private String part() {
    return scale == 0.1 ? "tenths" : "hundredths";
  }

  /** The one assumed first. */
  List<String> readings() {
    if (scale != 1) {
      return List.of(part() + " of °C", "°F");
    }
    return unit == Unit.CELSIUS ? List.of("°C", "°F") : List.of(unit.symbol(), "°C");
  }

  /**
   * Rooms are 15–35 °C (59–95 °F); a probe that starts between 55 and 110 is a room in °F or a warm
   * oven in °C, which set-points and the highest reading may decide.
   *
   * @param readings per channel, NaN where missing
   * @param setPoints per set-point column
   */
  static TemperatureGuess of(List<double[]> readings, List<double[]> setPoints) {
    double lowestStart = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    boolean roomCelsius = false;
    boolean roomFahrenheit = false;
    for (double[] values : readings) {
      double start = start(values);
      if (Double.isNaN(start)) {
        continue;
      }
      lowestStart = Math.min(lowestStart, start);
      high = Math.max(high, highest(values));
      roomCelsius |= start >= 10 && start <= 40;
      roomFahrenheit |= start >= 55 && start <= 100;
    }
    double set = setPoints.stream().mapToDouble(TemperatureGuess::highest).max().orElse(Double.NaN);
    String starts = "it starts at " + TraceMeasures.digits(lowestStart, 0);
    if (lowestStart >= 270 && lowestStart <= 315) {
      return new TemperatureGuess(Unit.KELVIN_ABSOLUTE, true, starts + ", a room in K");
    }
    if (lowestStart < 10) {
      boolean fridge = lowestStart > -5 || !roomFahrenheit;
      return new TemperatureGuess(
          Unit.CELSIUS, fridge && !roomFahrenheit, starts + ", cold food in °C");
    }
    if (roomCelsius && !(roomFahrenheit && lowestStart > 30)) {
      return new TemperatureGuess(Unit.CELSIUS, true, starts + ", a room in °C");
    }
    boolean tenths =
        high > HIGHEST_FAHRENHEIT && lowestStart >= 100 && lowestStart <= 400 && whole(readings);
    if (tenths) {
      return new TemperatureGuess(
          Unit.CELSIUS,
          0.1,
          false,
          starts
              + " and goes to "
              + TraceMeasures.digits(high, 0)
              + ": tenths of °C, as controllers keep them");
    }
    boolean hundredths =
        high > 4 * HIGHEST_FAHRENHEIT
            && lowestStart >= 1000
            && lowestStart <= 4000
            && whole(readings);
    if (hundredths) {
      return new TemperatureGuess(
          Unit.CELSIUS,
          0.01,
          false,
          starts
              + " and goes to "
              + TraceMeasures.digits(high, 0)
              + ": hundredths of °C, as programs for small machines keep them");
    }
    if (high > 330 || set > 290) {
      return new TemperatureGuess(
          Unit.FAHRENHEIT,
          roomFahrenheit,
          starts
              + " and goes to "
              + TraceMeasures.digits(Math.max(high, Double.isNaN(set) ? 0 : set), 0)
              + ", as ovens do in °F");
    }
    if (roomFahrenheit) {
      boolean dial = !Double.isNaN(set) && set % 10 == 0 && set <= 260 && set % 25 != 0;
      return dial
          ? new TemperatureGuess(
              Unit.CELSIUS,
              false,
              "the set-point " + TraceMeasures.digits(set, 0) + " is usual in °C")
          : new TemperatureGuess(
              Unit.FAHRENHEIT,
              lowestStart >= 60 && lowestStart <= 90 && high > 280,
              starts + ", a room in °F; in °C it would be a hot start");
    }
    return new TemperatureGuess(Unit.CELSIUS, lowestStart < 55, starts);
  }

  private static boolean whole(List<double[]> readings) {
    return readings.stream()
        .flatMapToDouble(java.util.Arrays::stream)
        .filter(Double::isFinite)
        .allMatch(v -> v == Math.rint(v));
  }

  /** Lowest of the first three readings: a fast curve has left the room by the fifth. */
  private static double start(double[] values) {
    double lowest = Double.NaN;
    int n = 0;
    for (int i = 0; i < values.length && n < 3; i++) {
      if (Double.isFinite(values[i])) {
        lowest = Double.isNaN(lowest) ? values[i] : Math.min(lowest, values[i]);
        n++;
      }
    }
    return lowest;
  }

  private static double highest(double[] values) {
    double high = Double.NEGATIVE_INFINITY;
    for (double v : values) {
      high = v > high ? v : high;
    }
    return high;
  }
}
