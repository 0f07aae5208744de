package ovenproof.kitchen.bench;

import java.util.Arrays;

/** What was true at each second of a run, from heat on. */
public final class RunLog {

  /** What is recorded. */
  public enum Channel {
    /** Air at the five places of the wire frame. */
    CENTRE,
    FRONT_LEFT,
    FRONT_RIGHT,
    BACK_LEFT,
    BACK_RIGHT,
    WALL,
    /** What a core probe's surroundings are: oven air first, food later. */
    CORE_1,
    CORE_2,
    CORE_3,
    WATTS,
    VOLTS,
    ROOM
  }

  private final double[][] values = new double[Channel.values().length][4096];
  private int size;

  void add(double[] second) {
    if (size == values[0].length) {
      for (int c = 0; c < values.length; c++) {
        values[c] = Arrays.copyOf(values[c], 2 * size);
      }
    }
    for (int c = 0; c < values.length; c++) {
      values[c][size] = second[c];
    }
    size++;
  }

  /** Number of seconds. */
  public int size() {
    return size;
  }

  public double[] channel(Channel channel) {
    return Arrays.copyOf(values[channel.ordinal()], size);
  }

  /** Electric energy from heat on to a second, kWh. */
  public double energyKilowattHours(int toSecond) {
    double sum = 0;
    for (int i = 0; i < Math.min(size, toSecond); i++) {
      sum += values[Channel.WATTS.ordinal()][i];
    }
    return sum / 3_600_000;
  }
}
