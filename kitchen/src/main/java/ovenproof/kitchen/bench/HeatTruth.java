package ovenproof.kitchen.bench;

import java.util.Arrays;
import ovenproof.kitchen.bench.RunLog.Channel;

/**
 * What is true of the air of a heat-up run, read off its own seconds without noise. Times in s from
 * heat on, temperatures in °C; NaN for what did not happen.
 *
 * @param firstCrossing mean air over 15 s at the centre first at the level asked for
 * @param steadyMean of the last 20 min
 * @param highest mean over 15 s of the run: a flicker of a second is not what food meets
 * @param overshoot highest such mean of the first 30 min over the steady mean
 * @param spread standard deviation (n − 1) over the five places of their means of the last 20 min
 */
public record HeatTruth(
    double firstCrossing,
    double steadyMean,
    double highest,
    double overshoot,
    double spread,
    double energyKilowattHours) {

  private static final int STEADY_SECONDS = 1200;
  private static final int FIRST_SECONDS = 1800;
  private static final int HALF_WINDOW_SECONDS = 7;

  /** Of a run of the heat-up test. */
  public static HeatTruth of(RunResult run, double levelCelsius) {
    RunLog log = run.log();
    double[] centre = smoothed(log.channel(Channel.CENTRE));
    int first = 0;
    while (first < centre.length && centre[first] < levelCelsius) {
      first++;
    }
    double steady = lastMean(centre);
    double early =
        Arrays.stream(centre, 0, Math.min(FIRST_SECONDS, centre.length)).max().orElse(Double.NaN);
    return new HeatTruth(
        first == centre.length ? Double.NaN : first,
        steady,
        Arrays.stream(centre).max().orElse(Double.NaN),
        early - steady,
        spread(log),
        log.energyKilowattHours(centre.length));
  }

  /** Means over 15 s centred on each second; shorter at the ends. */
  private static double[] smoothed(double[] values) {
    double[] means = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      int from = Math.max(0, i - HALF_WINDOW_SECONDS);
      int to = Math.min(values.length, i + HALF_WINDOW_SECONDS + 1);
      means[i] = Arrays.stream(values, from, to).average().orElse(Double.NaN);
    }
    return means;
  }

  private static double lastMean(double[] values) {
    int from = Math.max(0, values.length - STEADY_SECONDS);
    return Arrays.stream(values, from, values.length).average().orElse(Double.NaN);
  }

  private static double spread(RunLog log) {
    Channel[] places = {
      Channel.CENTRE, Channel.FRONT_LEFT, Channel.FRONT_RIGHT, Channel.BACK_LEFT, Channel.BACK_RIGHT
    };
    double[] means = Arrays.stream(places).mapToDouble(p -> lastMean(log.channel(p))).toArray();
    double mean = Arrays.stream(means).average().orElse(0);
    double squares = Arrays.stream(means).map(m -> (m - mean) * (m - mean)).sum();
    return Math.sqrt(squares / (means.length - 1));
  }
}
