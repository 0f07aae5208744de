package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.statistics.distribution.TDistribution;
import org.jspecify.annotations.Nullable;

/**
 * Looks for the steady part: cycle means (or minute means when nothing swings) whose line over the
 * next ten minutes rises or falls by less than 1 K.
 */
final class SteadySearch {

  static final double DRIFT_KELVIN = 1;
  static final double DRIFT_SECONDS = 600;
  static final int CYCLES = 5;

  /** Blocks further from the level of the hold than this belong to heating or cooling. */
  private static final double HOLD_BAND_KELVIN = 10;

  private static final int MOST_BLOCKS = 50_000;

  private record Block(double start, double end, double mean) {
    double middle() {
      return (start + end) / 2;
    }
  }

  /** Either a steady state or the reason why there is none. */
  record Found(@Nullable SteadyState state, String why) {}

  private final Trace trace;
  private final List<Gap> gaps;

  SteadySearch(Trace present, List<Gap> gaps) {
    this.trace = present;
    this.gaps = gaps;
  }

  Found search(Cycles cycles) {
    if (trace.size() < 10) {
      return new Found(null, "fewer than ten readings");
    }
    if (cycles.size() >= 2) {
      return ofCycles(cycles);
    }
    return ofMinutes();
  }

  private Found ofCycles(Cycles cycles) {
    List<Block> blocks = new ArrayList<>();
    for (Cycles.Cycle c : cycles.list()) {
      blocks.add(new Block(c.startSecond(), c.endSecond(), mean(c.startSecond(), c.endSecond())));
    }
    if (blocks.size() < CYCLES) {
      return new Found(
          null, "only " + blocks.size() + " whole cycles were recorded, " + CYCLES + " are needed");
    }
    return first(blocks, CYCLES, SteadyState.Swing.CYCLING);
  }

  private Found ofMinutes() {
    double last = trace.lastSecond();
    double span = last - trace.seconds()[0];
    // A record of years, or with a stamp gone astray, gets longer blocks instead of millions.
    double width = Math.max(Math.max(60, 5 * trace.medianStepSeconds()), span / MOST_BLOCKS);
    List<Block> blocks = new ArrayList<>();
    for (double t = trace.seconds()[0]; t + width <= last + 1e-9; t += width) {
      double m = mean(t, t + width);
      if (Double.isFinite(m)) {
        blocks.add(new Block(t, t + width, m));
      }
    }
    int needed = (int) Math.max(3, Math.ceil(DRIFT_SECONDS / width));
    List<Block> hold = hold(blocks);
    if (hold.size() < needed) {
      return new Found(null, notHeld(blocks));
    }
    return first(hold, needed, SteadyState.Swing.STILL);
  }

  private String notHeld(List<Block> blocks) {
    if (blocks.size() < 2) {
      return "the record is too short for ten steady minutes";
    }
    Block end = blocks.get(blocks.size() - 1);
    Block before = blocks.get(Math.max(0, blocks.size() - 11));
    double change = (end.mean - before.mean) / (end.middle() - before.middle()) * DRIFT_SECONDS;
    return String.format(
        java.util.Locale.ROOT,
        "no ten minutes with less than 1 K of drift; at the end it moves %.1f K in 10 min",
        change);
  }

  /** The longest stretch of blocks near the level where the curve spends most of its time. */
  private static List<Block> hold(List<Block> blocks) {
    double level = level(blocks);
    List<Block> best = List.of();
    List<Block> current = new ArrayList<>();
    for (Block block : blocks) {
      if (Math.abs(block.mean - level) > HOLD_BAND_KELVIN) {
        current = new ArrayList<>();
      } else {
        current.add(block);
        best = current.size() > best.size() ? current : best;
      }
    }
    return best;
  }

  /** Most visited 10 K band of the upper 60 % of the range. */
  private static double level(List<Block> blocks) {
    double low = blocks.stream().mapToDouble(Block::mean).min().orElse(0);
    double high = blocks.stream().mapToDouble(Block::mean).max().orElse(0);
    double floor = high - 0.6 * (high - low);
    double[] upper =
        blocks.stream().mapToDouble(Block::mean).filter(m -> m >= floor).sorted().toArray();
    int bestCount = 0;
    double best = high;
    int to = 0;
    for (int from = 0; from < upper.length; from++) {
      while (to < upper.length && upper[to] <= upper[from] + HOLD_BAND_KELVIN) {
        to++;
      }
      if (to - from > bestCount) {
        bestCount = to - from;
        best = Medians.ofSorted(upper, from, to);
      }
    }
    return best;
  }

  /** How the means of the ten minutes from a block on move, K in 10 min. */
  private record Drift10(double kelvin, double u) {}

  private Found first(List<Block> blocks, int needed, SteadyState.Swing swing) {
    double smallest = Double.POSITIVE_INFINITY;
    double before = Double.NaN;
    int perhaps = -1;
    int found = -1;
    int surely = -1;
    double settled = Double.NaN;
    for (int k = 0; k + needed <= blocks.size() && surely < 0; k++) {
      Drift10 drift = drift(blocks, k, needed);
      if (drift == null) {
        before = Double.NaN;
        continue;
      }
      smallest = Math.min(smallest, drift.kelvin);
      perhaps = perhaps < 0 && drift.kelvin - drift.u < DRIFT_KELVIN ? k : perhaps;
      if (found < 0 && drift.kelvin < DRIFT_KELVIN) {
        found = k;
        settled = between(blocks, k, before, drift.kelvin);
      }
      surely = found >= 0 && drift.kelvin + drift.u < DRIFT_KELVIN ? k : surely;
      before = drift.kelvin;
    }
    if (found < 0) {
      return new Found(null, neverSettles(smallest));
    }
    int last = surely < 0 ? blocks.size() - 1 : surely;
    double range = blocks.get(last).start - blocks.get(perhaps).start;
    List<Block> hold = upToGap(blocks.subList(found, blocks.size()));
    return new Found(state(hold, settled, range / 2, swing), "");
  }

  private static String neverSettles(double smallestKelvin) {
    return String.format(
        java.util.Locale.ROOT,
        "its mean never settles to less than 1 K of drift in 10 min (smallest %.1f K)",
        smallestKelvin);
  }

  /** Null when a gap lies in those ten minutes. */
  private @Nullable Drift10 drift(List<Block> blocks, int from, int needed) {
    int to = from + needed;
    double start = blocks.get(from).start;
    while (to < blocks.size() && blocks.get(to - 1).end - start < DRIFT_SECONDS) {
      to++;
    }
    if (!noGap(start, blocks.get(to - 1).end)) {
      return null;
    }
    List<Block> next = blocks.subList(from, to);
    return new Drift10(Math.abs(slope(next)) * DRIFT_SECONDS, slopeU(next) * DRIFT_SECONDS);
  }

  /**
   * Where between two blocks the drift passes the limit; the block's start when it is the first.
   */
  private static double between(List<Block> blocks, int k, double before, double here) {
    double start = blocks.get(k).start;
    if (!(before > here)) {
      return start;
    }
    double share = (before - DRIFT_KELVIN) / (before - here);
    double earlier = blocks.get(k - 1).start;
    return earlier + share * (start - earlier);
  }

  private List<Block> upToGap(List<Block> blocks) {
    int n = 0;
    while (n < blocks.size()
        && noGap(blocks.get(0).start, blocks.get(n).end)
        && (n == 0 || blocks.get(n).start - blocks.get(n - 1).end < 1)) {
      n++;
    }
    return blocks.subList(0, n);
  }

  private boolean noGap(double from, double to) {
    return gaps.stream().noneMatch(g -> g.touches(from, to));
  }

  private SteadyState state(
      List<Block> blocks, double settled, double scatterSeconds, SteadyState.Swing swing) {
    double start = blocks.get(0).start;
    double end = blocks.get(blocks.size() - 1).end;
    double[] means = blocks.stream().mapToDouble(Block::mean).toArray();
    return new SteadyState(
        start,
        settled,
        Math.hypot((end - start) / blocks.size() / Math.sqrt(12), scatterSeconds),
        end,
        mean(start, end),
        standardError(means),
        means.length,
        slope(blocks) * 3600,
        driftU(blocks) * 3600,
        swing);
  }

  /** Scatter of the block means over the root of how many of them are independent. */
  private static double standardError(double[] means) {
    int n = means.length;
    if (n < 2) {
      return 0;
    }
    double mean = java.util.Arrays.stream(means).average().orElse(0);
    double squares = 0;
    double products = 0;
    for (int i = 0; i < n; i++) {
      squares += (means[i] - mean) * (means[i] - mean);
      products += i == 0 ? 0 : (means[i] - mean) * (means[i - 1] - mean);
    }
    double rho = squares > 0 ? Math.max(0, Math.min(0.9, products / squares)) : 0;
    double independent = Math.max(1, n * (1 - rho) / (1 + rho));
    return Math.sqrt(squares / (n - 1) / independent);
  }

  private static double slope(List<Block> blocks) {
    double meanTime = blocks.stream().mapToDouble(Block::middle).average().orElse(0);
    double meanValue = blocks.stream().mapToDouble(Block::mean).average().orElse(0);
    double xx = 0;
    double xy = 0;
    for (Block b : blocks) {
      xx += (b.middle() - meanTime) * (b.middle() - meanTime);
      xy += (b.middle() - meanTime) * (b.mean - meanValue);
    }
    return xx > 0 ? xy / xx : 0;
  }

  /** The standard error widened for the few means it is known from, Student's t at 90 %. */
  private static double driftU(List<Block> blocks) {
    return blocks.size() < 3
        ? 0
        : slopeU(blocks)
            * TDistribution.of(blocks.size() - 2.0).inverseCumulativeProbability(0.95)
            / 1.6448536;
  }

  /** Standard error of that slope, from the scatter of the means about their line. */
  private static double slopeU(List<Block> blocks) {
    int n = blocks.size();
    double meanTime = blocks.stream().mapToDouble(Block::middle).average().orElse(0);
    double meanValue = blocks.stream().mapToDouble(Block::mean).average().orElse(0);
    double slope = slope(blocks);
    double xx = 0;
    double squares = 0;
    for (Block b : blocks) {
      double off = b.mean - meanValue - slope * (b.middle() - meanTime);
      xx += (b.middle() - meanTime) * (b.middle() - meanTime);
      squares += off * off;
    }
    return n > 2 && xx > 0 ? Math.sqrt(squares / (n - 2) / xx) : 0;
  }

  private double mean(double from, double to) {
    return TimeMean.of(trace, from, to);
  }
}
