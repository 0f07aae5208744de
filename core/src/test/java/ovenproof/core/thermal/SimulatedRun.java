package ovenproof.core.thermal;

import java.util.SplittableRandom;
import ovenproof.core.quantity.Unit;
import ovenproof.core.trace.Happening;
import ovenproof.core.trace.ProbeAccuracy;
import ovenproof.core.trace.Radiation;
import ovenproof.core.trace.Trace;
import ovenproof.core.trace.TraceInput;

/**
 * One invented run of a heater of air and walls, with everything that the uncertainty of a measure
 * speaks of drawn anew: calibration, placement, what a bare junction feels of the walls, noise, the
 * thermostat's own scatter, the mains, a person's taps on the clock.
 */
final class SimulatedRun {
  static final double CALIBRATION = 0.6;
  static final double PLACEMENT = 0.4;
  static final double UNLIKE = 0.8;
  static final double NOISE = 0.15;
  static final double ROOM = 21;
  static final double NOMINAL_VOLT = 230;
  private static final double TAPPED = 1;
  private static final double DT = 0.25;
  private static final int INNER = 8;

  /**
   * The invented oven: two nodes, elements that give to the air, a thermostat that lags behind it.
   */
  record Build(
      double ratedWatt,
      double airJoule,
      double wallJoule,
      double exchange,
      double loss,
      double setting,
      double halfBand,
      double probeSeconds,
      double elementSeconds,
      double sensorSeconds) {

    static Build drawn(SplittableRandom r) {
      return new Build(
          between(r, 1350, 1800),
          between(r, 700, 1100),
          between(r, 2000, 3000),
          between(r, 8, 11),
          between(r, 5, 7),
          between(r, 150, 210),
          between(r, 3, 6),
          between(r, 4, 8),
          between(r, 15, 30),
          between(r, 8, 20));
    }

    /** Loss of the air node when everything is warm: exchange and wall in series. */
    double lossWattPerKelvin() {
      return 1 / (1 / exchange + 1 / loss);
    }
  }

  static double between(SplittableRandom r, double low, double high) {
    return low + (high - low) * r.nextDouble();
  }

  /** Whether the elements are switched. */
  enum Mode {
    THERMOSTAT,
    FULL_POWER
  }

  final Build build;
  final double volt;
  private final SplittableRandom random;

  /** Probe without any error, each quarter of a second. */
  double[] truth = {};

  /** Power without any error, each quarter of a second. */
  double[] power = {};

  SimulatedRun(Build build, double volt, SplittableRandom random) {
    this.build = build;
    this.volt = volt;
    this.random = random;
  }

  /**
   * Runs it.
   *
   * @param jitter standard deviation of where the thermostat switches, K
   * @param doorAt when the door stands open for 15 s; NaN for never
   */
  SimulatedRun run(double seconds, Mode mode, double jitter, double doorAt) {
    int n = (int) Math.round(seconds / DT) + 1;
    truth = new double[n];
    power = new double[n];
    double a = ROOM;
    double w = ROOM;
    double p = ROOM;
    double felt = ROOM;
    double elements = 0;
    boolean on = true;
    double high = build.setting + build.halfBand;
    double low = build.setting - build.halfBand;
    double full = build.ratedWatt * Math.pow(volt / NOMINAL_VOLT, 2);
    for (int i = 0; i < n; i++) {
      truth[i] = p;
      if (mode == Mode.THERMOSTAT && on && felt > high) {
        on = false;
        low = build.setting - build.halfBand + jitter * random.nextGaussian();
      } else if (mode == Mode.THERMOSTAT && !on && felt < low) {
        on = true;
        high = build.setting + build.halfBand + jitter * random.nextGaussian();
      }
      power[i] = on ? full : 0;
      boolean open = i * DT >= doorAt && i * DT < doorAt + 15;
      double toWall = build.exchange * (a - w);
      double out = open ? 60 * (a - ROOM) : 0;
      elements += (power[i] - elements) / build.elementSeconds * DT;
      felt += (a - felt) / build.sensorSeconds * DT;
      a += (elements - toWall - out) / build.airJoule * DT;
      w += (toWall - build.loss * (w - ROOM)) / build.wallJoule * DT;
      p += (a - p) / build.probeSeconds * DT;
    }
    return this;
  }

  /** Time-mean of the truth. */
  double mean(double from, double to) {
    return mean(truth, from, to);
  }

  double meanPower(double from, double to) {
    return mean(power, from, to);
  }

  private static double mean(double[] values, double from, double to) {
    double sum = 0;
    int first = (int) Math.round(from / DT);
    int last = Math.min(values.length - 1, (int) Math.round(to / DT));
    for (int i = first; i < last; i++) {
      sum += (values[i] + values[i + 1]) / 2;
    }
    return sum / (last - first);
  }

  /** First time at which the truth is at a level; NaN when never. */
  double crossing(double level, double from) {
    for (int i = Math.max(1, (int) (from / DT)); i < truth.length; i++) {
      if (truth[i] >= level) {
        return (i - 1 + (level - truth[i - 1]) / (truth[i] - truth[i - 1])) * DT;
      }
    }
    return Double.NaN;
  }

  double at(double second) {
    return truth[(int) Math.min(truth.length - 1, Math.round(second / DT))];
  }

  double highest(double from, double to) {
    double top = Double.NEGATIVE_INFINITY;
    for (int i = (int) (from / DT); i < truth.length && i * DT <= to; i++) {
      top = Math.max(top, truth[i]);
    }
    return top;
  }

  double lowest(double from, double to) {
    double low = Double.POSITIVE_INFINITY;
    for (int i = (int) (from / DT); i < truth.length && i * DT <= to; i++) {
      low = Math.min(low, truth[i]);
    }
    return low;
  }

  /** Moments of switching on between two times. */
  private int[] switchings(double from, double to) {
    return java.util.stream.IntStream.range((int) (from / DT) + 1, power.length)
        .filter(i -> i * DT <= to && power[i] > 0 && power[i - 1] == 0)
        .toArray();
  }

  /** Mean time from one switching on to the next. */
  double period(double from, double to) {
    int[] on = switchings(from, to);
    return on.length < 2 ? Double.NaN : (on[on.length - 1] - on[0]) * DT / (on.length - 1);
  }

  /** Median over the cycles of highest minus lowest. */
  double swing(double from, double to) {
    int[] on = switchings(from, to);
    double[] swings =
        java.util.stream.IntStream.range(1, on.length)
            .mapToDouble(
                i -> highest(on[i - 1] * DT, on[i] * DT) - lowest(on[i - 1] * DT, on[i] * DT))
            .sorted()
            .toArray();
    return swings.length == 0 ? Double.NaN : swings[swings.length / 2];
  }

  /** Least-squares slope of the cycles' means, K/s. */
  double slope(double from, double to) {
    int[] on = switchings(from, to);
    if (on.length < 2) {
      return Double.NaN;
    }
    double middle = (on[0] + on[on.length - 1]) * DT / 2;
    double level = mean(on[0] * DT, on[on.length - 1] * DT);
    double xx = 0;
    double xy = 0;
    for (int i = 1; i < on.length; i++) {
      double x = (on[i - 1] + on[i]) * DT / 2 - middle;
      xx += x * x;
      xy += x * (mean(on[i - 1] * DT, on[i] * DT) - level);
    }
    return xy / xx;
  }

  /** The truth as a trace, one reading each second. */
  Trace exact() {
    return sampled("centre", truth, 4, Unit.CELSIUS);
  }

  private static Trace sampled(String name, double[] values, int every, Unit unit) {
    int n = (values.length + every - 1) / every;
    double[] t = new double[n];
    double[] v = new double[n];
    for (int i = 0; i < n; i++) {
      t[i] = i * every * DT;
      v[i] = values[i * every];
    }
    return new Trace(name, t, v, unit);
  }

  /**
   * As a logger writes it every two seconds, with what one probe of the set errs by. What it feels
   * of the elements while they heat and of the walls while they hold differs by as much as from
   * appliance to appliance.
   */
  Trace logged(String name, double offset) {
    Trace exact = sampled(name, truth, INNER, Unit.CELSIUS);
    double[] v = exact.values().clone();
    double common =
        offset + CALIBRATION * random.nextGaussian() + PLACEMENT * random.nextGaussian();
    double alike = random.nextGaussian();
    double heating = UNLIKE * (alike + random.nextGaussian()) / Math.sqrt(2);
    double holding = UNLIKE * (alike + random.nextGaussian()) / Math.sqrt(2);
    int cutOff = cutOff();
    for (int i = 0; i < v.length; i++) {
      double warm = Math.min(1, Math.max(0, (v[i] - offset - ROOM) / 100));
      double felt = warm * (i * INNER < cutOff ? heating : holding);
      v[i] += common + felt + NOISE * random.nextGaussian();
    }
    return exact.withValues(v);
  }

  private int cutOff() {
    int i = 0;
    while (i < power.length && power[i] > 0) {
      i++;
    }
    return i + (int) (60 / DT);
  }

  Trace loggedPower() {
    return sampled("power", power, INNER, Unit.WATT);
  }

  Trace loggedMains(double error) {
    double[] v = new double[truth.length];
    for (int i = 0; i < v.length; i++) {
      v[i] = volt + error + 0.4 * random.nextGaussian();
    }
    return sampled("mains", v, INNER, Unit.VOLT);
  }

  static ProbeAccuracy probe(double lag) {
    return new ProbeAccuracy(
        "probe:P1", CALIBRATION, PLACEMENT, lag, new Radiation("oven", 0, UNLIKE));
  }

  /** Temperature, power and mains of the run, as a program sees them. */
  TraceInput input() {
    return TraceInput.of(logged("centre", 0))
        .withPower(loggedPower())
        .withSetting(build.setting)
        .withAmbient(ROOM)
        .withProbe(probe(build.probeSeconds));
  }

  /** A tap on the clock, a second early or late. */
  double tapped(double second) {
    return second + TAPPED * random.nextGaussian();
  }

  Happening noted(Happening.Kind kind, double second) {
    return new Happening(kind, tapped(second), 1);
  }
}
