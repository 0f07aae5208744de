package ovenproof.kitchen.folder;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import ovenproof.kitchen.bench.RunLog.Channel;
import ovenproof.kitchen.bench.RunResult;

/**
 * What a channel would see over a whole session, second by second: room, a run, cooling down, the
 * next run.
 */
final class SessionClock {

  private static final int BEFORE = 240;
  private static final int AFTER = 300;
  private static final double COOLING_SECONDS = 1300;

  private final LocalDateTime start;
  private final int seconds;

  SessionClock(List<RunResult> runs) {
    LocalDateTime first =
        runs.stream().map(r -> r.plan().started()).min(LocalDateTime::compareTo).orElseThrow();
    this.start = first.minusSeconds(BEFORE);
    this.seconds = runs.stream().mapToInt(r -> offset(r) + r.log().size()).max().orElse(0) + AFTER;
  }

  LocalDateTime start() {
    return start;
  }

  int seconds() {
    return seconds;
  }

  /** Second of the session at which a run began. */
  int offset(RunResult run) {
    return (int) Duration.between(start, run.plan().started()).toSeconds();
  }

  /** A temperature: between runs it falls back to the room. */
  double[] temperature(List<RunResult> runs, Channel channel, double room) {
    double[] felt = new double[seconds];
    Arrays.fill(felt, room);
    double share = -Math.expm1(-1 / COOLING_SECONDS);
    int from = 0;
    for (RunResult run : runs) {
      cool(felt, from, offset(run), room, share);
      double[] values = run.log().channel(channel);
      System.arraycopy(values, 0, felt, offset(run), values.length);
      from = offset(run) + values.length;
    }
    cool(felt, from, seconds, room, share);
    return felt;
  }

  private static void cool(double[] felt, int from, int to, double room, double share) {
    for (int i = Math.max(1, from); i < to; i++) {
      felt[i] = felt[i - 1] + share * (room - felt[i - 1]);
    }
  }

  /** A flow: nothing between runs. */
  double[] flow(List<RunResult> runs, Channel channel, double between) {
    double[] values = new double[seconds];
    Arrays.fill(values, between);
    for (RunResult run : runs) {
      double[] own = run.log().channel(channel);
      System.arraycopy(own, 0, values, offset(run), own.length);
    }
    return values;
  }

  /** Every {@code step}th second. */
  static double[] sampled(double[] each, int step) {
    double[] out = new double[(each.length + step - 1) / step];
    for (int i = 0; i < out.length; i++) {
      out[i] = each[i * step];
    }
    return out;
  }

  /** Means of each {@code step} seconds, as a meter shows them at their end. */
  static double[] averaged(double[] each, int step) {
    double[] out = new double[(each.length + step - 1) / step];
    for (int i = 0; i < out.length; i++) {
      int to = Math.min(each.length, i * step + 1);
      int from = Math.max(0, to - step);
      out[i] = Arrays.stream(each, from, to).average().orElse(0);
    }
    return out;
  }
}
