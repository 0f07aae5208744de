package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.List;

/**
 * The swings of a thermostat: whole cycles from peak to peak, found with hysteresis, so that noise
 * is no cycle.
 *
 * @param list in order of time; empty when the curve does not swing
 */
record Cycles(List<Cycle> list) {

  /** A swing smaller than this is not told from noise and creep; common practice. */
  static final double HYSTERESIS_KELVIN = 2;

  /** The cycles of a thermostat differ by less than this share of themselves. */
  private static final double REGULAR_SHARE = 0.25;

  /** A swing larger or longer than this many usual ones is a door, a load, or the heat-up. */
  private static final double LARGEST_SHARE = 2;

  /**
   * One swing.
   *
   * @param startSecond peak it starts from
   * @param endSecond next peak
   */
  record Cycle(
      double startSecond,
      double troughSecond,
      double endSecond,
      double peak,
      double trough,
      double endPeak) {

    double periodSeconds() {
      return endSecond - startSecond;
    }

    double amplitude() {
      return peak - trough;
    }
  }

  /** An extreme of the curve. */
  private record Turn(double second, double value) {}

  static Cycles find(double[] seconds, double[] values, double hysteresis) {
    List<Turn> peaks = new ArrayList<>();
    List<Turn> troughs = new ArrayList<>();
    boolean rising = true;
    int extreme = 0;
    for (int i = 1; i < values.length; i++) {
      double v = values[i];
      double e = values[extreme];
      if (rising ? v > e : v < e) {
        extreme = i;
      } else if (rising ? v < e - hysteresis : v > e + hysteresis) {
        (rising ? peaks : troughs).add(middleOfPlateau(seconds, values, extreme));
        rising = !rising;
        extreme = i;
      }
    }
    return new Cycles(pair(peaks, troughs));
  }

  /** A coarse logger repeats its highest value; the peak lies in the middle of the repeats. */
  private static Turn middleOfPlateau(double[] seconds, double[] values, int first) {
    int last = first;
    while (last + 1 < values.length && values[last + 1] == values[first]) {
      last++;
    }
    return new Turn((seconds[first] + seconds[last]) / 2, values[first]);
  }

  private static List<Cycle> pair(List<Turn> peaks, List<Turn> troughs) {
    List<Cycle> cycles = new ArrayList<>();
    for (int i = 0; i + 1 < peaks.size() && i < troughs.size(); i++) {
      Turn peak = peaks.get(i);
      Turn trough = troughs.get(i);
      cycles.add(
          new Cycle(
              peak.second,
              trough.second,
              peaks.get(i + 1).second,
              peak.value,
              trough.value,
              peaks.get(i + 1).value));
    }
    return cycles;
  }

  int size() {
    return list.size();
  }

  double medianPeriodSeconds() {
    return Medians.of(list.stream().mapToDouble(Cycle::periodSeconds).toArray());
  }

  /** Standard error of the median period, from its scatter; 0 for fewer than two cycles. */
  double medianPeriodU() {
    return Medians.standardError(list.stream().mapToDouble(Cycle::periodSeconds).toArray());
  }

  double medianAmplitude() {
    return Medians.of(list.stream().mapToDouble(Cycle::amplitude).toArray());
  }

  /**
   * The longest run of neighbouring cycles that belong to one hold: none more than twice as long or
   * as large as the median one; a door opened is none of them.
   */
  Cycles ofOneHold() {
    if (list.size() < 2) {
      return this;
    }
    double period = medianPeriodSeconds();
    double amplitude = medianAmplitude();
    double middle = Medians.of(list.stream().mapToDouble(c -> (c.peak + c.trough) / 2).toArray());
    List<Cycle> best = List.of();
    List<Cycle> current = new ArrayList<>();
    for (Cycle cycle : list) {
      // Switched off, the air still has bumps on its way down: they peak below the hold's middle.
      if (cycle.periodSeconds() > LARGEST_SHARE * period
          || cycle.amplitude() > LARGEST_SHARE * amplitude
          || cycle.endPeak() < middle) {
        current = new ArrayList<>();
      } else {
        current.add(cycle);
        best = current.size() > best.size() ? current : best;
      }
    }
    return new Cycles(List.copyOf(best));
  }

  /** These cycles when there are five and they are alike, as noise never is; else none. */
  Cycles ifRegular() {
    double period = scatter(list.stream().mapToDouble(Cycle::periodSeconds).toArray());
    double amplitude = scatter(list.stream().mapToDouble(Cycle::amplitude).toArray());
    boolean regular =
        list.size() >= SteadySearch.CYCLES
            && period < REGULAR_SHARE * medianPeriodSeconds()
            && amplitude < REGULAR_SHARE * medianAmplitude();
    return regular ? this : new Cycles(List.of());
  }

  /** Standard deviation of single readings that the scatter of the swings leaves room for, K. */
  double readingScatter() {
    return scatter(list.stream().mapToDouble(Cycle::amplitude).toArray()) / Math.sqrt(2);
  }

  private static double scatter(double[] values) {
    return Medians.standardError(values) * Math.sqrt(values.length) / 1.2533;
  }

  Cycles from(double second) {
    return new Cycles(list.stream().filter(c -> c.startSecond() >= second).toList());
  }

  Cycles within(double fromSecond, double toSecond) {
    return new Cycles(
        list.stream()
            .filter(c -> c.startSecond() >= fromSecond && c.endSecond() <= toSecond)
            .toList());
  }
}
