package ovenproof.core.trace;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Several probes in one food: what holds for the coldest of them.
 *
 * @param probes spikes taken out, at least two readings each, all on one clock
 */
public record ColdestCore(List<HeatCurve> probes) {

  /** Fewer probes are likely to miss the coldest place (<em>common practice</em>). */
  public static final int ENOUGH = 3;

  /** Longest distance of readings over which a probe is taken to have stayed where it was. */
  private static final double LONGEST_STEP_SECONDS = 30;

  public ColdestCore {
    probes = List.copyOf(probes);
  }

  /** What all measures of one run's food share. */
  /** Compared by plain code: what a record brings is put together at its first use, slowly. */
  private record Asked(List<Trace> cores) implements SharedWork.Key<ColdestCore> {
    @Override
    public boolean equals(@Nullable Object other) {
      return other instanceof Asked a && a.cores.equals(cores);
    }

    @Override
    public int hashCode() {
      return cores.hashCode();
    }
  }

  /** The probes of a run, prepared once for all its measures. */
  public static ColdestCore of(TraceInput input, HeatCurve curve) {
    return curve.shared().once(new Asked(input.cores()), k -> of(k.cores()));
  }

  /** Probes without readings say nothing and are left out. */
  public static ColdestCore of(List<Trace> cores) {
    return new ColdestCore(
        cores.stream().map(HeatCurve::of).filter(c -> c.clean().size() >= 2).toList());
  }

  public boolean isEmpty() {
    return probes.isEmpty();
  }

  public int count() {
    return probes.size();
  }

  /** The probe whose own highest is lowest. */
  public Optional<HeatCurve> coldest() {
    return probes.stream().min(Comparator.comparingDouble(c -> Highest.of(c.smooth())));
  }

  /**
   * When the last of the probes first shows a temperature; NaN when one of them never does.
   *
   * @param celsius to be reached
   */
  public double reachedSecond(double celsius) {
    return probes.stream()
        .mapToDouble(c -> crossing(c.smooth(), celsius))
        .reduce(0, ColdestCore::later);
  }

  private static double later(double a, double b) {
    return Double.isNaN(a) || Double.isNaN(b) ? Double.NaN : Math.max(a, b);
  }

  private static double crossing(Trace trace, double celsius) {
    double[] t = trace.seconds();
    double[] v = trace.values();
    for (int i = 0; i < v.length; i++) {
      if (v[i] >= celsius) {
        return i == 0
            ? t[0]
            : t[i - 1] + (celsius - v[i - 1]) / (v[i] - v[i - 1]) * (t[i] - t[i - 1]);
      }
    }
    return Double.NaN;
  }

  /**
   * The highest temperature at which every probe stayed at once for a time without a break, in the
   * readings as they were logged; NaN when they were not together for so long.
   *
   * @param restSeconds 0 asks for one moment
   */
  public double heldCelsius(double restSeconds) {
    if (isEmpty()) {
      return Double.NaN;
    }
    Trace clock = probes.get(0).clean();
    double[] t = clock.seconds();
    double[] lowest = lowestOfAll(t);
    double limit = Math.max(LONGEST_STEP_SECONDS, 3.5 * clock.medianStepSeconds());
    double best = Double.NaN;
    int from = 0;
    for (int i = 0; i < t.length; i++) {
      if (Double.isNaN(lowest[i]) || i > 0 && t[i] - t[i - 1] > limit) {
        from = Double.isNaN(lowest[i]) ? i + 1 : i;
      }
      if (from > i || t[i] - t[from] < restSeconds) {
        continue;
      }
      int begin = i;
      double low = lowest[i];
      while (t[i] - t[begin] < restSeconds) {
        low = Math.min(low, lowest[--begin]);
        if (low <= best) {
          break;
        }
      }
      best = Double.isNaN(best) || low > best ? low : best;
    }
    return best;
  }

  /** NaN where one of the probes has not begun yet or is over. */
  private double[] lowestOfAll(double[] seconds) {
    return Arrays.stream(seconds)
        .map(
            t ->
                probes.stream()
                    .map(HeatCurve::clean)
                    .mapToDouble(
                        c ->
                            t < c.seconds()[0] || t > c.lastSecond()
                                ? Double.NaN
                                : TimeMean.at(c, t))
                    .reduce(Double.POSITIVE_INFINITY, Math::min))
        .toArray();
  }
}
