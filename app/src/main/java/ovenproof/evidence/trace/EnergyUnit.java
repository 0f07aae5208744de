package ovenproof.evidence.trace;

import ovenproof.core.trace.TimeMean;
import ovenproof.core.trace.Trace;

/** Whether an energy counter without a written unit counts what it was taken to count. */
final class EnergyUnit {
  private static final double WATT_SECONDS_PER_KILOWATT_HOUR = 3.6e6;
  private static final double THOUSAND = 1000;

  /** A counter rounds, a meter errs: a thousand is a thousand within this factor. */
  private static final double WITHIN = 1.5;

  private EnergyUnit() {}

  /**
   * What the counter's values must be multiplied by to fit the power over the same time: 1, 1000 or
   * a thousandth. 1 where the two do not tell.
   *
   * @param counter kWh as taken
   * @param power W
   */
  static double factor(Trace counter, Trace power) {
    if (counter.size() < 2 || power.size() < 2) {
      return 1;
    }
    double from = Math.max(counter.seconds()[0], power.seconds()[0]);
    double to = Math.min(counter.lastSecond(), power.lastSecond());
    double used = TimeMean.integral(power, from, to) / WATT_SECONDS_PER_KILOWATT_HOUR;
    double counted = TimeMean.at(counter, to) - TimeMean.at(counter, from);
    if (!(used > 0) || !(counted > 0)) {
      return 1;
    }
    double ratio = used / counted;
    if (Math.abs(Math.log(ratio / THOUSAND)) < Math.log(WITHIN)) {
      return THOUSAND;
    }
    return Math.abs(Math.log(ratio * THOUSAND)) < Math.log(WITHIN) ? 1 / THOUSAND : 1;
  }
}
